//! The planned days in whole minutes, as their sheets print them, without what a sheet prints of each number.
//!
//! Checks look at every planned day of every site, and the figures of `day` are too many for that. What
//! is worked here is what that table works, step for step; a test holds the two together.

use std::collections::BTreeMap;

use crate::job::weather::Date;
use crate::job::{DayGoal, DayPlan, Job, Mix, Site, Surface};
use crate::quantity::num::Direction;
use crate::quantity::{Dim, Kind, Num, Quantity};
use crate::source::side_by_side;
use crate::trade::day::{Hour, MOST_BATCHES, Times};

use super::minutes_table::{Crew, Met, Patch, table};
use super::{Tally, day, hours, mix_of};

/// A planned day. Times are minutes of the day.
#[derive(Clone, Debug)]
pub struct Outlook {
    /// Which site of the job.
    pub site: usize,
    /// Which day of its plan.
    pub day: usize,
    /// Wall that is planned: the author's area, or what can be carved with the spare left free; never more than is left.
    pub area: Quantity,
    /// Most wall that the crew can carve before it closes.
    pub limit: Quantity,
    /// The same if nobody stopped for a break.
    pub limit_without_breaks: Quantity,
    /// Wall that is left of the surface after the day.
    pub left: Quantity,
    /// Wall that a full batch covers.
    pub full: Quantity,
    /// Wall of the batches, from the first on, that are carved before they close if those after them are not mixed.
    pub good: Quantity,
    /// Batches in order.
    pub patches: Vec<Patch>,
    /// When each patch would be carved if nobody stopped for a break; in the order of the batches.
    pub without_breaks: Vec<Option<i64>>,
    /// The crew.
    pub crew: Crew,
    /// Sunset, where the site's place is known, no lights stand there and the work comes near it.
    pub sunset: Option<i64>,
}

/// Every planned day that can be worked, in the order of the sites and of their plans.
pub(super) fn of(t: &Tally, job: &Job) -> Vec<Outlook> {
    let sites: Vec<(usize, &Site)> = job.sites.iter().enumerate().collect();
    side_by_side(&sites, |(n, site)| {
        let mut all = Vec::new();
        let (Some(plan), Some(mix)) = (&site.plan, mix_of(job, &site.carve_mix.text)) else { return all };
        let mut taken: BTreeMap<&str, Num> = BTreeMap::new();
        let band = hours::band(site, mix);
        for (k, goal) in plan.days.iter().enumerate() {
            let Some(surface) = site.surfaces.iter().find(|s| s.code.text == goal.surface.text) else { continue };
            let before = taken.entry(surface.code.text.as_str()).or_insert_with(|| Num::int(0));
            let place = Place { t, job, site, plan, mix, goal, surface };
            if let Some(outlook) = place.look((*n, k), before, &band) {
                *before = before.add(&outlook.area.si);
                all.push(outlook);
            }
        }
        all
    })
    .concat()
}

struct Place<'a> {
    t: &'a Tally,
    job: &'a Job,
    site: &'a Site,
    plan: &'a DayPlan,
    mix: &'a Mix,
    goal: &'a DayGoal,
    surface: &'a Surface,
}

/// Whole minutes of a time in seconds.
pub(crate) fn minutes(seconds: &Num, direction: Direction) -> i64 {
    let one = num_rational::BigRational::from_integer(1.into());
    let whole = seconds.div(&Num::int(60)).map(|m| m.round(direction, &one));
    whole.and_then(|m| i64::try_from(m.numer()).ok()).unwrap_or(i64::MAX / 4)
}

/// A value for this table: exact fractions of walls and mixes grow long, and every verdict is taken on a rounded value.
fn real(value: &Quantity) -> Num {
    Num::real(value.si.to_f64()).unwrap_or_else(|| value.si.clone())
}

fn area(si: Num) -> Quantity {
    Quantity { si, dim: Dim::AREA, kind: Kind::Plain }
}

fn less(a: &Num, b: &Num) -> bool {
    a.compare(b).is_lt()
}

fn lesser(a: Num, b: Num) -> Num {
    if less(&b, &a) { b } else { a }
}

impl Place<'_> {
    fn figure(&self, id: &str) -> Option<Num> {
        Some(real(self.t.figure(id)?.worked.as_ref().ok()?.value()))
    }

    fn of_surface(&self, name: &str) -> Option<Num> {
        self.figure(&format!("{}/{}.{name}", self.site.id, self.surface.code.text))
    }

    fn look(&self, (site, day): (usize, usize), before: &Num, band: &Hour) -> Option<Outlook> {
        let rates = self.job.company.iter().flat_map(|c| &c.rates).flat_map(|r| &r.textures);
        let own = rates.into_iter().find(|r| r.texture.text == self.surface.texture.text)?;
        let plan = self.plan;
        let crew = Crew {
            split: plan.split,
            place: real(plan.placers.value()).mul(&real(own.place.value())),
            carve: real(plan.carvers.value()).mul(&real(own.carve.value())),
            mixing: minutes(&plan.mixing.value().si, Direction::Up),
            moving: minutes(&plan.moving.value().si, Direction::Up),
            starts: minutes(&plan.starts.value().si, Direction::Down),
            breaks: plan
                .breaks
                .iter()
                .map(|(from, to)| (minutes(&from.value().si, Direction::Down), minutes(&to.value().si, Direction::Down)))
                .collect(),
        };
        let hours = self.hours(band);
        let rests = plan.breaks.iter().fold(Num::int(0), |sum, (from, to)| sum.add(&to.value().si).sub(&from.value().si));
        let limit = self.limit(&crew, &hours, &rests)?;
        let limit_without_breaks = self.limit(&crew, &hours, &Num::int(0))?;
        let wall = self.of_surface("net_area")?;
        let left = wall.sub(before);
        if left.to_f64() <= 1e-9 * wall.to_f64() {
            return None;
        }
        let allowed = limit.mul(&Num::int(1).sub(&real(plan.spare.value())));
        let today = lesser(left.clone(), self.goal.area.as_ref().map_or(allowed, |a| real(a.value())));
        let applied = self.of_surface("volume")?.div(&wall)?;
        let yields = self.figure(&format!("{}.yield", self.mix.id))?;
        let full = real(plan.batch.value()).mul(&yields).div(&applied)?;
        let batches = self.cut(&today, &full, &today.mul(&applied).div(&yields)?)?;
        let (patches, without_breaks, good) = table(&crew, &batches, &met(&hours));
        let end = patches.iter().filter_map(|p| p.kept.as_ref()).map(|k| k.carve.1).max().unwrap_or(0);
        let sunset = self.sunset(end);
        Some(Outlook {
            site,
            day,
            left: area(left.sub(&today)),
            area: area(today),
            limit: area(limit),
            limit_without_breaks: area(limit_without_breaks),
            full: area(full),
            good: area(patches.iter().take(good).fold(Num::int(0), |sum, p| sum.add(&p.area))),
            patches,
            without_breaks,
            crew,
            sunset,
        })
    }

    /// Hours in order: begin, and the mix's times or nothing.
    fn hours(&self, band: &Hour) -> Vec<(i64, Option<Times>)> {
        let date = Date { year: self.goal.day.year, month: self.goal.day.month, day: self.goal.day.day };
        let file = self.job.weather.iter().find(|w| w.site == self.site.id);
        let listed = file.map(|w| w.day(date)).unwrap_or_default();
        if listed.is_empty() {
            return vec![(0, band.times.clone().ok())];
        }
        let cold = hours::cold_night(self.job, self.site, date).is_some();
        let worked = listed.iter().map(|h| {
            let times = hours::times_in(self.t, self.site, self.mix, h).ok().filter(|_| !cold);
            (minutes(&h.at.value().si, Direction::Down), times)
        });
        worked.collect()
    }

    fn limit(&self, crew: &Crew, hours: &[(i64, Option<Times>)], rests: &Num) -> Option<Num> {
        let (starts, ends) = (crew.starts, minutes(&self.plan.ends.value().si, Direction::Down));
        let next = |i: usize| hours.get(i + 1).map(|(from, _)| *from);
        let met = hours.iter().enumerate().filter(|(i, (from, _))| *from < ends && next(*i).is_none_or(|n| n > starts));
        let met: Vec<&Times> = met.filter_map(|(_, (_, times))| times.as_ref()).collect();
        let closes = met.iter().map(|t| t.closes.value().si.clone()).reduce(lesser)?;
        let opens = met.iter().map(|t| t.opens.value().si.clone()).reduce(|a, b| if less(&a, &b) { b } else { a })?;
        if !crew.split {
            let carving = closes.sub(rests);
            let carved = crew.carve.mul(&carving);
            return less(rests, &closes).then(|| lesser(carved, crew.place.mul(&closes)));
        }
        let shift = self.plan.ends.value().si.sub(&self.plan.starts.value().si);
        let spent = opens.add(&self.plan.clean_up.value().si).add(rests);
        let by_shift = less(&spent, &shift).then(|| crew.carve.mul(&shift.sub(&spent)))?;
        let window = closes.sub(&opens).sub(rests);
        if !less(&Num::int(0), &window) {
            return None;
        }
        if !less(&crew.carve, &crew.place) {
            return Some(by_shift);
        }
        let by_window = crew.carve.mul(&window).mul(&crew.place).div(&crew.place.sub(&crew.carve))?;
        Some(lesser(by_shift, by_window))
    }

    /// Loads and wall of each batch.
    fn cut(&self, today: &Num, full: &Num, need: &Num) -> Option<Vec<(Num, Num)>> {
        let step = num_rational::BigRational::new(1.into(), if self.mix.half_load { 2 } else { 1 }.into());
        let total = Num::Exact(need.round(Direction::Up, &step));
        let each = self.plan.batch.value().si.clone();
        let one = num_rational::BigRational::from_integer(1.into());
        let count = usize::try_from(total.div(&each)?.round(Direction::Up, &one).numer()).ok()?;
        if !(1..=MOST_BATCHES).contains(&count) {
            return None;
        }
        let before = Num::int(i64::try_from(count).ok()? - 1);
        let mut all = vec![(each.clone(), full.clone()); count - 1];
        all.push((total.sub(&before.mul(&each)), today.sub(&before.mul(full))));
        Some(all)
    }

    /// Sunset, where the work may come near it: it is dear to work, and most days end in full light.
    fn sunset(&self, end: i64) -> Option<i64> {
        if self.plan.lights || !self.near_dark(end) {
            return None;
        }
        let clock = day::sunset_of(self.site, self.goal)?.ok()?;
        Some(minutes(&clock.value().si, Direction::Down))
    }

    /// True unless the sun is up for another hour at least, by a rough rule that is some 25 min off at most.
    fn near_dark(&self, end: i64) -> bool {
        let Some(place) = &self.site.position else { return false };
        let day = &self.goal.day;
        let of_year = 30.44 * f64::from(day.month - 1) + f64::from(day.day);
        let tilt = -libm::cos(std::f64::consts::TAU * (of_year + 10.0) / 365.25) * 23.44_f64.to_radians();
        let latitude = place.latitude.in_unit("°").to_radians();
        let half = -libm::tan(latitude) * libm::tan(tilt);
        // Where the sun does not set or does not rise the rule has nothing to say.
        if half.abs() >= 0.95 {
            return true;
        }
        let zone = self.goal.zone.in_unit("min");
        let sets = 720.0 + libm::acos(half).to_degrees() * 4.0 - place.longitude.in_unit("°") * 4.0 + zone;
        end as f64 > sets - 60.0
    }
}

fn met(hours: &[(i64, Option<Times>)]) -> Vec<Met> {
    let whole = |t: &Times| {
        let open = minutes(&t.open.value().si, Direction::Down);
        (open, minutes(&t.opens.value().si, Direction::Up), minutes(&t.closes.value().si, Direction::Down))
    };
    hours.iter().map(|(from, times)| Met { from: *from, times: times.as_ref().map(whole) }).collect()
}
