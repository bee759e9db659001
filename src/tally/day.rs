//! The day plan: what is carved when, batch by batch, clocked on the day's own weather.

use indexmap::IndexMap;

use crate::job::{DayGoal, DayPlan, Job, Mix, Site, Surface};
use crate::quantity::Mark;
use crate::quantity::expr::{Area, Clock, Duration, Length, Loads, Node, Pace, Plain, Volume, Worked};
use crate::trade::clocks::Break;
use crate::trade::day::{self, Blank, Day, Fault, Hour, Plan};
use crate::trade::loads::Step;
use crate::trade::sun::{self, Spot};
use crate::trade::{batch, placing, window};

use super::hours::{self, Sky};
use super::{Basis, Res, Role, Tally, mix_of, res};

/// What the figures of a planned day do not say: which rows are black, and what is wrong with the others.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// Site.
    pub site: String,
    /// The day as `2026-03-02`.
    pub day: String,
    /// Code of the surface.
    pub surface: String,
    /// Prefix of its figures, such as `larkenfell/2026-03-02`.
    pub prefix: String,
    /// Where its temperatures come from.
    pub sky: Sky,
    /// Ids of its hours' figures, in order.
    pub hours: Vec<String>,
    /// A line for each batch, or why there is no table.
    pub rows: Result<Vec<Row>, String>,
    /// The same for each late start: how many minutes, prefix, lines.
    pub late: Vec<(String, Result<Vec<Row>, String>)>,
}

/// One batch of a sheet.
#[derive(Clone, Debug)]
pub struct Row {
    /// Prefix of its figures, such as `larkenfell/2026-03-02/1`.
    pub prefix: String,
    /// Why the row is black, if it is.
    pub black: Option<String>,
    /// Keys of what is wrong, in the dictionaries.
    pub faults: Vec<&'static str>,
}

/// Works every planned day of a site.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site) {
    let Some(plan) = &site.plan else { return };
    // Areas that earlier days take of a surface.
    let mut taken: IndexMap<&str, Vec<String>> = IndexMap::new();
    for goal in &plan.days {
        let Some(surface) = site.surfaces.iter().find(|s| s.code.text == goal.surface.text) else { continue };
        let before = taken.entry(surface.code.text.as_str()).or_default();
        let sheet = Sheets { t, job, site, plan, goal, surface, prefix: format!("{}/{}", site.id, goal.iso()) }.sheet(before);
        before.push(format!("{}.area", sheet.prefix));
        t.sheets.push(sheet);
    }
}

/// Sunset of a planned day, where the site's place is known.
pub(super) fn sunset_of(site: &Site, goal: &DayGoal) -> Option<Res<Clock>> {
    let place = site.position.as_ref()?;
    let spot = Spot { latitude: place.latitude.clone(), longitude: place.longitude.clone(), zone: goal.zone.clone() };
    let day = &goal.day;
    let sunset = sun::day_number(day.year, day.month, day.day).and_then(|n| {
        let mark = Mark { file: day.at.file, start: day.at.start, end: day.at.end };
        let typed = Node::authored(n.value().clone(), None, &goal.iso(), "plan.days", Some(mark));
        sun::sunset(&Worked::new(typed), &spot)
    });
    Some(res(sunset))
}

struct Sheets<'a, 't> {
    t: &'t mut Tally,
    job: &'a Job,
    site: &'a Site,
    plan: &'a DayPlan,
    goal: &'a DayGoal,
    surface: &'a Surface,
    prefix: String,
}

impl Sheets<'_, '_> {
    fn id(&self, name: &str) -> String {
        format!("{}.{name}", self.prefix)
    }

    fn of_surface(&self, name: &str) -> String {
        format!("{}/{}.{name}", self.site.id, self.surface.code.text)
    }

    fn sheet(mut self, before: &[String]) -> Sheet {
        let mix = mix_of(self.job, &self.site.carve_mix.text);
        let (sky, hours) = match mix {
            Some(mix) => hours::of_day(self.t, self.job, self.site, self.goal, mix, &self.prefix),
            None => (Sky::Band, Vec::new()),
        };
        self.paces();
        self.sunset();
        self.limit(&hours.iter().map(|(_, h)| h).collect::<Vec<_>>());
        self.area(before);
        let rows = self.table(mix, &hours, None, &self.prefix.clone());
        let late = self.plan.late.iter().map(|by| {
            let minutes = by.in_unit("min");
            (format!("{}+{minutes}", self.prefix), by)
        });
        let late: Vec<(String, Worked<Duration>)> = late.map(|(p, by)| (p, by.clone())).collect();
        let late = late.into_iter().map(|(prefix, by)| (prefix.clone(), self.table(mix, &hours, Some(&by), &prefix))).collect();
        Sheet {
            site: self.site.id.clone(),
            day: self.goal.iso(),
            surface: self.surface.code.text.clone(),
            sky,
            hours: hours.into_iter().map(|(id, _)| id).collect(),
            prefix: self.prefix,
            rows,
            late,
        }
    }

    fn paces(&mut self) {
        let rates = self.job.company.iter().flat_map(|c| &c.rates).flat_map(|r| &r.textures);
        let own = rates.into_iter().find(|r| r.texture.text == self.surface.texture.text);
        let pace = |people: &Worked<Plain>, place: bool| -> Res<Pace> {
            let own = own.ok_or_else(|| format!("the company file has no rates for {}", self.surface.texture.text))?;
            res(placing::crew_pace(people, if place { &own.place } else { &own.carve }))
        };
        let (place, carve) = (pace(&self.plan.placers, true), pace(&self.plan.carvers, false));
        self.t.put(self.id("place_pace"), "figure.place_pace", Role::Pace, Basis::Practice, place);
        self.t.put(self.id("carve_pace"), "figure.carve_pace", Role::Pace, Basis::Practice, carve);
        self.t.put(self.id("ends"), "figure.shift_ends", Role::Clock, Basis::Author, Ok(self.plan.ends.clone()));
    }

    fn sunset(&mut self) {
        let Some(sunset) = sunset_of(self.site, self.goal) else { return };
        self.t.put(self.id("sunset"), "figure.sunset", Role::Clock, Basis::Standard, sunset);
    }

    /// The most wall that can be carved, by the worst of the hours that the crew works in.
    fn limit(&mut self, hours: &[&Hour]) {
        let met: Vec<_> = hours
            .iter()
            .enumerate()
            .filter(|(i, h)| {
                let next_begins = hours.get(i + 1).map(|n| n.from.in_unit("min"));
                h.from.in_unit("min") < self.plan.ends.in_unit("min") && next_begins.is_none_or(|n| n > self.plan.starts.in_unit("min"))
            })
            .filter_map(|(_, h)| h.times.as_ref().ok())
            .collect();
        let none = || "no hour of the shift has a carve window".to_owned();
        let closes = met.iter().map(|t| &t.closes).min_by(|a, b| a.value().si.compare(&b.value().si)).ok_or_else(none);
        let opens = met.iter().map(|t| &t.opens).max_by(|a, b| a.value().si.compare(&b.value().si)).ok_or_else(none);
        let limit: Res<Area> = (|| {
            let (place, carve): (Worked<Pace>, Worked<Pace>) = (self.t.get(&self.id("place_pace"))?, self.t.get(&self.id("carve_pace"))?);
            let rests = res(window::rests(&self.plan.breaks))?;
            let (opens, closes) = (opens?, closes?);
            if !self.plan.split {
                return res(window::same_limit(&place, &carve, closes, &rests));
            }
            let shift = res(window::shift_length(&self.plan.starts, &self.plan.ends))?;
            let by_shift = res(window::shift_limit(&carve, &shift, opens, &self.plan.clean_up, &rests))?;
            match window::split_limit(&place, &carve, (opens, closes), &rests).map_err(String::from)? {
                Some(by_window) if by_window.value().si.compare(&by_shift.value().si).is_lt() => Ok(by_window),
                _ => Ok(by_shift),
            }
        })();
        self.t.put(self.id("limit"), "figure.carve_limit", Role::AreaAllowed, Basis::Practice, limit);
        let allowed = (|| res(window::with_spare(&self.t.get(&self.id("limit"))?, &self.plan.spare)))();
        self.t.put(self.id("allowed"), "figure.carve_allowed", Role::AreaAllowed, Basis::Practice, allowed);
    }

    fn area(&mut self, before: &[String]) {
        let area = (|| {
            let wall: Worked<Area> = self.t.get(&self.of_surface("net_area"))?;
            // A day that could not be worked takes nothing.
            let taken: Vec<Worked<Area>> = before.iter().filter_map(|id| self.t.get(id).ok()).collect();
            match &self.goal.area {
                Some(planned) => res(window::today(&wall, &taken, planned)),
                None => res(window::today(&wall, &taken, &self.t.get(&self.id("allowed"))?)),
            }
        })();
        self.t.put(self.id("area"), "figure.area_today", Role::AreaAllowed, Basis::Practice, area);
        let left = (|| {
            let wall: Worked<Area> = self.t.get(&self.of_surface("net_area"))?;
            let taken = before.iter().cloned().chain([self.id("area")]).filter_map(|id| self.t.get(&id).ok());
            res(window::left_after(&wall, &taken.collect::<Vec<_>>()))
        })();
        self.t.put(self.id("left"), "figure.area_left", Role::Area, Basis::Practice, left);
        let applied =
            (|| res(placing::applied(&self.t.get::<Volume>(&self.of_surface("volume"))?, &self.t.get(&self.of_surface("net_area"))?)))();
        self.t.put(self.id("applied"), "figure.applied", Role::MeanThickness, Basis::Practice, applied);
    }

    fn table(
        &mut self,
        mix: Option<&Mix>,
        hours: &[(String, Hour)],
        late: Option<&Worked<Duration>>,
        prefix: &str,
    ) -> Result<Vec<Row>, String> {
        let mix = mix.ok_or("the site names no carve mix")?;
        let mut plan = self.made(mix, hours)?;
        let worked = day::day(&plan, late).map_err(String::from)?;
        let lost = |r: &day::Row| r.times.as_ref().is_ok_and(|k| k.faults.iter().any(|f| matches!(f, Fault::Stale | Fault::Closed)));
        // A day that cannot be worked as planned: what can is worked alone, the rest is black. Late starts are a
        // comparison, and show all.
        if late.is_some() || !worked.rows.iter().any(lost) {
            return Ok(self.rows(mix, &worked, prefix, &[]));
        }
        let black: Vec<day::Row> = worked.rows.iter().skip(worked.good).cloned().collect();
        plan.batches.truncate(worked.good);
        let kept = if plan.batches.is_empty() {
            Day { rows: Vec::new(), good: 0, good_area: None, area: None, carved: None, done: None }
        } else {
            day::day(&plan, late).map_err(String::from)?
        };
        Ok(self.rows(mix, &kept, prefix, &black))
    }

    fn made(&self, mix: &Mix, hours: &[(String, Hour)]) -> Result<Plan, String> {
        let step = if mix.half_load { Step::Half } else { Step::Whole };
        let area = self.t.get(&self.id("area"))?;
        let (yields, applied): (Worked<Volume>, Worked<Length>) =
            (self.t.get(&format!("{}.yield", mix.id))?, self.t.get(&self.id("applied"))?);
        let batches = day::cut(&area, &self.plan.batch, &yields, &applied, step).map_err(String::from)?;
        let breaks: Vec<Break> = self.plan.breaks.clone();
        Ok(Plan {
            starts: self.plan.starts.clone(),
            batches,
            mixing: self.plan.mixing.clone(),
            moving: self.plan.moving.clone(),
            place: self.t.get(&self.id("place_pace"))?,
            carve: self.t.get(&self.id("carve_pace"))?,
            split: self.plan.split,
            hours: hours.iter().map(|(_, h)| h.clone()).collect(),
            breaks,
            ends: self.plan.ends.clone(),
            clean_up: self.plan.clean_up.clone(),
            sunset: if self.plan.lights { None } else { self.t.get::<Clock>(&self.id("sunset")).ok() },
        })
    }

    /// The rows of a day, and behind them those that were planned and must not be mixed.
    fn rows(&mut self, mix: &Mix, day: &Day, prefix: &str, lost: &[day::Row]) -> Vec<Row> {
        let mut rows = Vec::new();
        let whole = day.rows.len();
        for (n, row) in day.rows.iter().chain(lost).enumerate() {
            let own = format!("{prefix}/{}", n + 1);
            let id = |name: &str| format!("{own}.{name}");
            self.t.own(id("loads"), "figure.loads", Role::Loads, Basis::Author, &row.batch.loads);
            let water =
                (|| res(batch::batch_water(&self.t.get::<Loads>(&id("loads"))?, &self.t.get(&format!("{}.start_water", mix.id))?)))();
            self.t.put(id("start_water"), "figure.start_water", Role::StartWater, Basis::MixSheet, water);
            self.t.own(id("area"), "figure.area_batch", Role::Area, Basis::Practice, &row.batch.area);
            let black = match &row.times {
                _ if n >= whole => Some(why_lost(lost).to_owned()),
                Err(Blank::NoTime(why)) => Some(why.clone()),
                Err(Blank::NoWeather) => Some("the weather of the day begins later".to_owned()),
                Err(Blank::NextDay) => Some("it would be placed after midnight".to_owned()),
                Ok(_) => None,
            };
            let mut clock = |name: &str, label, time: Option<&Worked<Clock>>| {
                let worked = time.cloned().ok_or_else(|| black.clone().unwrap_or_default());
                self.t.put(id(name), label, Role::Clock, Basis::Practice, worked);
            };
            let kept = row.times.as_ref().ok().filter(|_| n < whole);
            clock("water_in", "figure.water_in", Some(&row.water_in));
            clock("mixed", "figure.mixed", Some(&row.mixed));
            clock("on_wall", "figure.on_wall", Some(&row.on_wall));
            clock("placed", "figure.placed", Some(&row.placed));
            clock("discard", "figure.discard", kept.map(|k| &k.discard));
            clock("opens", "figure.opens", kept.map(|k| &k.opens.0));
            clock("opens_last", "figure.opens_last", kept.map(|k| &k.opens.1));
            clock("closes", "figure.closes", kept.map(|k| &k.closes));
            clock("carve_start", "figure.carve_start", kept.map(|k| &k.carve.0));
            clock("carve_end", "figure.carve_end", kept.map(|k| &k.carve.1));
            let slack = kept.map(|k| k.slack.clone()).ok_or_else(|| black.clone().unwrap_or_default());
            self.t.put(id("slack"), "figure.slack", Role::Slack, Basis::Practice, slack);
            let faults = kept.map_or_else(Vec::new, |k| k.faults.iter().map(|f| fault(*f)).collect());
            rows.push(Row { prefix: own, black, faults });
        }
        self.close(day, prefix);
        rows
    }

    /// What is said of the whole day.
    fn close(&mut self, day: &Day, prefix: &str) {
        let id = |name: &str| format!("{prefix}.{name}");
        let last = day.good.checked_sub(1).and_then(|n| day.rows.get(n)).map(|r| r.water_in.clone());
        let none = || "no batch of this day can be carved in time".to_owned();
        self.t.put(id("last_batch"), "figure.last_batch", Role::Clock, Basis::Practice, last.ok_or_else(none));
        self.t.put(id("good_area"), "figure.good_area", Role::AreaAllowed, Basis::Practice, day.good_area.clone().ok_or_else(none));
        self.t.put(id("carved"), "figure.carved", Role::Clock, Basis::Practice, day.carved.clone().ok_or_else(none));
        self.t.put(id("done"), "figure.done", Role::Clock, Basis::Practice, day.done.clone().ok_or_else(none));
    }
}

/// Why the rest of a day is black: the worse of its reasons.
fn why_lost(lost: &[day::Row]) -> &'static str {
    let stale = lost.iter().any(|r| r.times.as_ref().is_ok_and(|k| k.faults.contains(&Fault::Stale)));
    if stale { "it would be too old before it is placed" } else { "it would close before it is carved" }
}

fn fault(fault: Fault) -> &'static str {
    match fault {
        Fault::Stale => "fault.stale",
        Fault::Closed => "fault.closed",
        Fault::Dark => "fault.dark",
        Fault::Overtime => "fault.overtime",
    }
}
