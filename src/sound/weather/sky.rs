//! The weather of the planned days, site by site, gone over once for all checks that ask.
//!
//! A first look is taken with plain numbers; only an hour that comes near a limit is worked exactly and judged by what
//! is printed of it. A job of a thousand sites has a hundred thousand hours, and nearly all of them are fine.

use std::sync::Arc;

use num_rational::BigRational;

use crate::finding::Finding;
use crate::job::weather::{Date, Hour, Weather};
use crate::job::{Day, DayGoal, Mix, Protection, Site};
use crate::quantity::num::{Direction, decimal, exact_text};
use crate::quantity::units::{UnitExpr, find_expr};
use crate::quantity::{Num, Quantity};
use crate::sound::told::{at_value, typed, voice};
use crate::sound::{Ground, limits};
use crate::tally::nights::{self, Low};
use crate::tally::{Role, hours, mix_of};

/// A site with its weather.
#[derive(Debug)]
pub struct Sky<'a> {
    /// The site.
    pub site: &'a Site,
    /// Its weather.
    pub weather: &'a Weather,
    /// The mix of its carve coat.
    pub mix: Option<&'a Mix>,
    /// The planned days that have hours.
    pub days: Vec<Shift<'a>>,
    /// Days on which mud is placed: scratch, carve, plan; in order.
    pub placing: Arc<[Date]>,
    /// Lows near or below the limit that follow them; none where something warms the wall.
    pub lows: Arc<[Low]>,
}

/// A planned day: the hours that its crew works in.
#[derive(Debug)]
pub struct Shift<'a> {
    /// The first goal of the day.
    pub goal: &'a DayGoal,
    /// Its date.
    pub date: Date,
    /// Hours in order, each standing until the next.
    pub hours: Vec<Met<'a>>,
}

/// An hour, with plain numbers for the first look.
#[derive(Debug)]
pub struct Met<'a> {
    /// The hour.
    pub hour: &'a Hour,
    /// Air, °F.
    pub air: f64,
    /// Mud, °F: as measured, or worked, or as warm as the air.
    pub mud: f64,
    /// Evaporation at the wall, lb/ft2/h.
    pub drying: f64,
}

/// A goal of the plan, its date, and its hours: which line; air, mud, drying.
type KeptDay = (usize, Date, Vec<(usize, [f64; 3])>);

/// The weather of a site as it is kept between the checks: numbers and places in the job's own lists.
#[derive(Debug)]
pub struct Kept {
    site: usize,
    weather: usize,
    days: Vec<KeptDay>,
    placing: Arc<[Date]>,
    lows: Arc<[Low]>,
}

/// The skies of a job, worked at the first call.
pub fn skies<'a>(ground: &Ground<'a>) -> Vec<Sky<'a>> {
    let job = ground.job;
    let kept = ground.sky.get_or_init(|| {
        let own = |(n, site): (usize, &Site)| {
            let weather = job.weather.iter().position(|w| w.site == site.id)?;
            Some(keep(ground, (n, site), (weather, job.weather.get(weather)?)))
        };
        job.sites.iter().enumerate().filter_map(own).collect()
    });
    kept.iter().filter_map(|k| k.sky(ground)).collect()
}

impl Kept {
    fn sky<'a>(&self, ground: &Ground<'a>) -> Option<Sky<'a>> {
        let job = ground.job;
        let (site, weather) = (job.sites.get(self.site)?, job.weather.get(self.weather)?);
        let shift = |(goal, date, hours): &(usize, Date, Vec<(usize, [f64; 3])>)| {
            let met = |(line, [air, mud, drying]): &(usize, [f64; 3])| {
                Some(Met { hour: &weather.hours.get(*line)?.1, air: *air, mud: *mud, drying: *drying })
            };
            let goal = site.plan.as_ref()?.days.get(*goal)?;
            Some(Shift { goal, date: *date, hours: hours.iter().filter_map(met).collect() })
        };
        Some(Sky {
            site,
            weather,
            mix: mix_of(job, &site.carve_mix.text),
            days: self.days.iter().filter_map(shift).collect(),
            placing: self.placing.clone(),
            lows: self.lows.clone(),
        })
    }
}

fn keep(ground: &Ground<'_>, (n, site): (usize, &Site), (w, weather): (usize, &Weather)) -> Kept {
    let mix = mix_of(ground.job, &site.carve_mix.text);
    let placing = placing(site);
    // Nearly every job has no cold line at all, and then nobody asks what follows which day.
    let chilly = |q: &Quantity| q.si.to_f64() < 279.0;
    let any = weather.hours.iter().any(|(_, h)| chilly(h.air.value())) || weather.days.iter().any(|d| chilly(d.least.value()));
    let warm = site.protection.as_ref().is_some_and(Protection::warms);
    let lows: Vec<Low> = if any && !warm {
        placing.iter().flat_map(|day| nights::lows(site, weather, *day)).filter(|l| chilly(l.air.value())).collect()
    } else {
        Vec::new()
    };
    Kept { site: n, weather: w, days: shifts(ground, site, weather, mix), placing: placing.into(), lows: lows.into() }
}

/// Days on which mud goes on the wall, in order.
fn placing(site: &Site) -> Vec<Date> {
    let planned = site.plan.iter().flat_map(|p| &p.days).map(|g| &g.day);
    let mut days: Vec<Date> = site.calendar.carve.iter().chain(&site.calendar.scratch).chain(planned).map(Day::date).collect();
    days.sort_unstable();
    days.dedup();
    days
}

fn shifts(ground: &Ground<'_>, site: &Site, weather: &Weather, mix: Option<&Mix>) -> Vec<KeptDay> {
    let Some(plan) = &site.plan else { return Vec::new() };
    let weights = mix.and_then(|m| {
        let of = |name: &str| Some(ground.tally.figure(&format!("{}.{name}", m.id))?.worked.as_ref().ok()?.value().si.to_f64());
        Some((of("dry_weight")?, of("start_water_weight")?))
    });
    let (starts, ends) = (plan.starts.value().si.to_f64(), plan.ends.value().si.to_f64());
    let mut out: Vec<KeptDay> = Vec::new();
    for (n, goal) in plan.days.iter().enumerate() {
        let date = goal.day.date();
        if out.iter().any(|(_, d, _)| *d == date) {
            continue;
        }
        let lines: Vec<(usize, &Hour)> = weather.numbered(date).collect();
        let from = |h: &Hour| h.at.value().si.to_f64();
        let worked = |(i, (_, h)): &(usize, &(usize, &Hour))| from(h) < ends && lines.get(i + 1).is_none_or(|(_, n)| from(n) > starts);
        let hours: Vec<_> = lines.iter().enumerate().filter(worked).map(|(_, (line, h))| (*line, hours::first_look(h, weights))).collect();
        if !hours.is_empty() {
            out.push((n, date, hours));
        }
    }
    out
}

impl Sky<'_> {
    /// What stands ready.
    pub fn plan(&self) -> Option<&Protection> {
        self.site.protection.as_ref()
    }

    /// True if the weather reaches the wall.
    pub fn outdoors(&self) -> bool {
        self.site.climate.place.text == "outdoors"
    }

    /// A value as the papers of the site print it: number, unit, text.
    pub fn printed(&self, ground: &Ground<'_>, role: Role, value: &Quantity) -> Option<(BigRational, UnitExpr, String)> {
        let (number, unit, text) = ground.tally.print_of(role, value, voice(self.site.metric));
        Some((number, unit?, typed(&text)))
    }

    /// A limit in the units of the site: as its source states it, or turned and rounded down.
    pub fn limit(&self, key: &str) -> Option<(Quantity, String, &'static str)> {
        let row = limits::find(key)?;
        let quantity = row.quantity()?;
        let metric = match row.value.rsplit(' ').next()? {
            "°F" => Some(("°C", 1)),
            "mph" => Some(("km/h", 1)),
            "lb/ft2/h" => Some(("kg/m2/h", 3)),
            _ => None,
        };
        let text = match metric.filter(|_| self.site.metric) {
            Some((symbol, places)) => {
                let unit = find_expr(symbol)?;
                let measure = BigRational::new(1.into(), 10_i64.pow(places).into());
                let number = quantity.in_unit(unit)?.round(Direction::Down, &measure);
                let number = if number.is_integer() { exact_text(&number) } else { decimal(&number, places as usize) };
                format!("{number} {symbol}")
            }
            None => row.value.to_owned(),
        };
        Some((quantity, text.replace("ft2/h", "ft²·h").replace("m2/h", "m²·h"), row.source))
    }

    /// `2026-03-11 at 2:00 pm`.
    pub fn when(&self, ground: &Ground<'_>, date: Date, hour: &Hour) -> String {
        let clock = self.printed(ground, Role::Clock, hour.at.value()).map_or_else(String::new, |(_, _, text)| text);
        format!("{} at {clock}", date.iso())
    }

    /// The mud of an hour, worked exactly; as warm as the air where neither mud nor bags and water were measured.
    pub fn mud(&self, ground: &Ground<'_>, hour: &Hour) -> Option<crate::quantity::Worked<crate::quantity::expr::Temperature>> {
        hours::mix_at(ground.tally, self.mix?, hour).ok()
    }

    /// Says what the site does not plan, at its `protection` or where that is missing.
    pub fn lacks(&self, finding: Finding, what: &str) -> Finding {
        finding.related(self.site.code.at, format!("the site's `protection` names no {what}"))
    }
}

/// True if a number is over a limit, or at it where that counts too.
pub fn beyond(number: &BigRational, unit: UnitExpr, limit: &Quantity, at_too: bool) -> bool {
    let order = Quantity::of(&Num::Exact(number.clone()), unit).si.compare(&limit.si);
    order.is_gt() || at_too && order.is_eq()
}

/// How hard an hour dries a fresh face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// Worth a look.
    Watch,
    /// Nothing is placed.
    Stop,
}

/// The worst hour of a shift and how hard it dries, with number, unit and text of the rate.
///
/// Screens or fog take away what is only worth a look. Both together take away a stop, down to a look, unless somebody
/// read the air at the wall, behind the screens and in the fog: then the reading stands.
pub fn worst<'s, 'a>(ground: &Ground<'_>, sky: &Sky<'a>, shift: &'s Shift<'a>) -> Option<(Grade, &'s Met<'a>, String)> {
    let (watch, ..) = sky.limit(limits::DRYING)?;
    let (most, ..) = sky.limit(limits::DRYING_MOST)?;
    let grade = |met: &'s Met<'a>| {
        let rate = hours::drying_at(met.hour, sky.mud(ground, met.hour)?).ok()?;
        let (number, unit, text) = sky.printed(ground, Role::Drying, rate.value())?;
        let by_hand = met.hour.read_at_wall();
        let screened = !by_hand && sky.plan().is_some_and(|p| p.wind.is_some());
        let fogged = !by_hand && sky.plan().is_some_and(Protection::screens_and_fog);
        let grade = match (beyond(&number, unit, &most, true), beyond(&number, unit, &watch, true)) {
            (true, _) if fogged => Grade::Watch,
            (true, _) => Grade::Stop,
            (false, true) if !screened => Grade::Watch,
            _ => return None,
        };
        Some((grade, number, met, text))
    };
    // A printed rate is rounded up by at most a hundredth.
    let near = shift.hours.iter().filter(|m| m.drying > 0.08).filter_map(grade);
    // Of equal hours the first: that is when it begins.
    let worst = near.reduce(|a, b| if (b.0, &b.1) > (a.0, &a.1) { b } else { a })?;
    Some((worst.0, worst.2, worst.3))
}

/// The finding of an hour that dries too fast, but for its severity.
pub fn drying(
    ground: &Ground<'_>,
    sky: &Sky<'_>,
    shift: &Shift<'_>,
    grade: Grade,
    key: &str,
    of: fn(String) -> Finding,
) -> Option<Finding> {
    let (found, met, rate) = worst(ground, sky, shift)?;
    if found != grade {
        return None;
    }
    let (_, most, source) = sky.limit(key)?;
    let (when, hour) = (sky.when(ground, shift.date, met.hour), met.hour);
    let (air, humidity, wind) = hour.at_wall();
    let said = |role, value: &Quantity| sky.printed(ground, role, value).map_or_else(String::new, |(_, _, text)| text);
    let mud = sky.mud(ground, hour)?;
    let hand = if hour.read_at_wall() { ", read at the wall" } else { "" };
    let inputs = [said(Role::MixTemperature, mud.value()), said(Role::Reading, air.value()), said(Role::Humidity, humidity.value())];
    let [mud, air, humid] = inputs;
    let line = format!("mud {mud}, air {air}, humidity {humid}, wind {}{hand}: {rate}", said(Role::Wind, wind.value()));
    let finding = of(format!("evaporation reaches {rate} on {when}, a fresh face takes less than {most}"))
        .derived(line)
        .derived("the drying of a wet slab laid flat: an index on walls, good to some 40 %")
        .source(source)
        .value(rate.clone())
        .about(shift.date.iso());
    Some(at_value(finding, ground, hour.wall_wind.as_ref().unwrap_or(&hour.wind).node(), "in this hour"))
}
