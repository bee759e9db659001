//! Cure: how long the wall is kept, day by day where its weather is known, and when the next trade may come.

use crate::job::weather::Daily;
use crate::job::{Day, Job, Mix, Site};
use crate::quantity::Mark;
use crate::quantity::expr::{Date, Duration, Node, Plain, Temperature, Worked};
use crate::trade::{calendar, cure};

use super::{Basis, Res, Role, Tally, mix_of, res};

/// A cure that takes longer than this on its weather is a winter's job and not a date.
const MOST_DAYS: usize = 90;

/// On what a site's cure is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Count {
    /// The mix sheet's wet time alone: it asks for no credit.
    Sheet,
    /// Credit by the weather of each day.
    Weather,
    /// Credit by the cold end of the band that a room is kept in.
    Room,
    /// Credit is asked for and nothing says how warm the days are.
    Nothing,
}

/// Which of them.
pub fn count(job: &Job, site: &Site) -> Count {
    let credit = mix_of(job, &site.carve_mix.text).is_some_and(|m| m.cure.credit.is_some());
    match (credit, daily(job, site).is_empty(), site.climate.place.text == "indoors") {
        (false, ..) => Count::Sheet,
        (_, false, _) => Count::Weather,
        (_, _, true) => Count::Room,
        _ => Count::Nothing,
    }
}

fn daily<'a>(job: &'a Job, site: &Site) -> &'a [Daily] {
    job.weather.iter().find(|w| w.site == site.id).map_or(&[], |w| w.daily())
}

/// Prefixes of a site's days of cure, such as `sedge-basin/cure/2026-03-08`, in order.
pub fn days(tally: &Tally, site: &Site) -> Vec<String> {
    let prefix = format!("{}/cure/", site.id);
    tally
        .figures_of(&site.id)
        .filter(|f| f.id.starts_with(&prefix))
        .filter_map(|f| f.id.strip_suffix(".credit"))
        .map(str::to_owned)
        .collect()
}

/// Works them for a site with a carving day.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site) {
    let Some(mix) = mix_of(job, &site.carve_mix.text) else { return };
    let Some((last, key)) = last_day(site) else { return };
    let id = |name: &str| format!("{}.{name}", site.id);
    t.put(id("last_carve"), "figure.last_carve", Role::Date, Basis::Author, date(last, key));
    let n = calendar_day(t, job, site, mix);
    let basis = if mix.cure.credit.is_some() { Basis::Practice } else { Basis::MixSheet };
    t.put(format!("{}/cure.day", site.id), "figure.cure_day", Role::Count, basis, n);
    let over = (|| res(calendar::cure_over(&t.get(&id("last_carve"))?, &t.get(&format!("{}/cure.day", site.id))?)))();
    t.put(id("cure_over"), "figure.cure_over", Role::Date, basis, over);
    if let Some(plan) = &site.cure {
        let next = (|| {
            let next = res(calendar::morning_after(&t.get(&id("cure_over"))?))?;
            if plan.weekends { Ok(next) } else { res(calendar::working_day(&next)) }
        })();
        t.put(id("next_trade"), "figure.next_trade", Role::NotBefore, basis, next);
    }
}

/// The last day on which mud goes on the wall: of the plan, else of the calendar; whichever is later.
fn last_day(site: &Site) -> Option<(&Day, &'static str)> {
    let planned = site.plan.iter().flat_map(|p| &p.days).map(|goal| (&goal.day, "plan.days"));
    let listed = site.calendar.carve.iter().map(|day| (day, "calendar.carve"));
    planned.chain(listed).max_by_key(|(d, _)| (d.year, d.month, d.day))
}

fn date(day: &Day, key: &str) -> Res<Date> {
    let count = res(calendar::day_of(day.year, day.month, day.day))?;
    let mark = Mark { file: day.at.file, start: day.at.start, end: day.at.end };
    Ok(Worked::new(Node::authored(count.value().clone(), count.node().unit(), &day.iso(), key, Some(mark))))
}

/// The day on the wall, counted from the day after the last mud, at whose end the cure is over.
fn calendar_day(t: &mut Tally, job: &Job, site: &Site, mix: &Mix) -> Res<Plain> {
    let sheet = t.get::<Duration>(&format!("{}.wet_cure", mix.id))?;
    match count(job, site) {
        Count::Sheet => res(calendar::day_count(&sheet)),
        Count::Weather => {
            let need = t.get::<Duration>(&format!("{}.cure_credit", mix.id))?;
            let days = listed(t, job, site, &need)?;
            res(cure::calendar_day(&days, &need, &sheet))
        }
        Count::Room => {
            let coldest = t.get::<Temperature>(&format!("{}.band_low", site.id))?;
            res(cure::steady_day(&coldest, &t.get(&format!("{}.cure_credit", mix.id))?, &sheet))
        }
        Count::Nothing => Err(format!(
            "{} asks for days of credit, and no file says how warm the days are: list date, mean and least in `weather/{}.days.csv`",
            mix.name.text, site.id
        )),
    }
}

/// Days of the weather from the day after the last mud, without a gap, until the credit is reached; with their figures.
fn listed(t: &mut Tally, job: &Job, site: &Site, need: &Worked<Duration>) -> Result<Vec<cure::Day>, String> {
    let last = t.get::<Date>(&format!("{}.last_carve", site.id))?.in_unit("day");
    let wanted = need.in_unit("day");
    let mut days: Vec<cure::Day> = Vec::new();
    for day in daily(job, site) {
        let d = &day.date;
        let number = res(calendar::day_of(d.year, d.month, d.day))?.in_unit("day");
        let next = last + 1.0 + days.len() as f64;
        if number < next {
            continue;
        }
        if number > next || days.len() >= MOST_DAYS {
            break;
        }
        let id = |name: &str| format!("{}/cure/{}.{name}", site.id, d.iso());
        t.own(id("mean"), "figure.day_mean", Role::DayReading, Basis::Author, &day.mean);
        t.own(id("least"), "figure.day_least", Role::DayReading, Basis::Author, &day.least);
        days.push(cure::Day { mean: t.get(&id("mean"))?, least: Some(t.get(&id("least"))?) });
        let credited = cure::credits(&days).map_err(String::from)?;
        let Some(own) = credited.into_iter().next_back() else { break };
        let reached = own.sum.value().si.to_f64() >= wanted;
        t.put(id("credit"), "figure.credit", Role::CreditDays, Basis::Practice, Ok(own.credit));
        t.put(id("sum"), "figure.credit_sum", Role::CreditDays, Basis::Practice, Ok(own.sum));
        if reached {
            break;
        }
    }
    if days.is_empty() {
        return Err(format!("the weather of {} does not list the day after the last mud", site.name.text));
    }
    Ok(days)
}
