//! The cold that follows a day of placing: lows of the next two days, from the lines of the hours and of the days.

use crate::job::weather::{Date, Weather};
use crate::job::{Protection, Site};
use crate::quantity::Node;
use crate::quantity::expr::{Clock, Temperature, Worked};
use crate::quantity::num::{Direction, exact_text};
use crate::quantity::units::find_expr;

/// Minutes of a day.
const DAY: i64 = 24 * 60;
/// Minutes that a wall is kept warm after placing.
const WARM: i64 = 48 * 60;

/// The coldest line of a day that follows, or is, a day of placing.
#[derive(Clone, Debug)]
pub struct Low {
    /// The day of the low.
    pub date: Date,
    /// Its time, where the hours know it.
    pub at: Option<Worked<Clock>>,
    /// How cold.
    pub air: Worked<Temperature>,
    /// The day of placing.
    pub placed: Date,
}

impl Low {
    /// The reading in a unit, rounded down to tenths: a low never gets warmer on its way to a page.
    pub fn text(&self, metric: bool) -> String {
        degrees(self.air.node(), metric)
    }

    /// Why nothing is placed, for a black row.
    pub fn said(&self, metric: bool) -> String {
        let (limit, low) = (if metric { "4.4 °C" } else { "40 °F" }, self.text(metric));
        format!("{low} on {} is inside the 48 h and not above {limit}, with no heat planned", self.date.iso())
    }

    /// True if the low falls into the first 24 hours after the set. Mud of a day has set by the next morning, so the
    /// day itself and the next one count.
    pub fn after_set(&self) -> bool {
        self.date.count() - self.placed.count() <= 1
    }
}

/// A reading to a tenth, rounded down.
pub fn degrees(node: &Node, metric: bool) -> String {
    let unit = if metric { "°C" } else { "°F" };
    let tenth = num_rational::BigRational::new(1.into(), 10.into());
    let number = find_expr(unit).and_then(|u| node.value().in_unit(u)).map(|n| n.round(Direction::Down, &tenth));
    number.map_or_else(String::new, |n| {
        format!("{} {unit}", if n.is_integer() { exact_text(&n) } else { crate::quantity::num::decimal(&n, 1) })
    })
}

/// The lows of the hours in which a day's mud must be kept warm: from the first water until 48 h after the shift.
/// Without a plan the day counts from its first to its last minute. One low a day, the coldest.
pub fn lows(site: &Site, weather: &Weather, placed: Date) -> Vec<Low> {
    let (from, to) = site.plan.as_ref().map_or((0, DAY), |p| (minutes(&p.starts), minutes(&p.ends)));
    let first = placed.count();
    let mut lows: Vec<Low> = Vec::new();
    let mut add = |low: Low| match lows.iter_mut().find(|l| l.date == low.date) {
        Some(old) if old.air.value().si.compare(&low.air.value().si).is_le() => {}
        Some(old) => *old = low,
        None => lows.push(low),
    };
    let mut has_hours = false;
    let lines: Vec<_> = lines_of(weather, first).map(|(date, hour)| (date_in(*date, first, weather.typical) - first, hour)).collect();
    for (i, (day, hour)) in lines.iter().enumerate() {
        has_hours |= *day == 0;
        // A line stands until the next: the one before the first water is the air of the first water.
        let next = lines.get(i + 1).filter(|(d, _)| d == day).map(|(d, h)| d * DAY + minutes(&h.at));
        let at = day * DAY + minutes(&hour.at);
        if (at >= from || *day == 0 && next.is_some_and(|n| n > from)) && at <= to + WARM {
            add(Low { date: shifted(placed, *day), at: Some(hour.at.clone()), air: hour.air.clone(), placed });
        }
    }
    for daily in &weather.days {
        let day = daily.date.count() - first;
        // The least of the day itself comes before the work, so that hours know better.
        if (1..=2).contains(&day) || day == 0 && !has_hours {
            add(Low { date: daily.date, at: None, air: daily.least.clone(), placed });
        }
    }
    lows.sort_by_key(|l| l.date);
    lows
}

/// The first low that forbids placing on a day, if nothing is planned against it.
pub fn cold_ahead(site: &Site, weather: &Weather, placed: Date) -> Option<Low> {
    if site.protection.as_ref().is_some_and(Protection::warms) {
        return None;
    }
    lows(site, weather, placed).into_iter().find(|low| is_cold(&low.air))
}

/// True for air that is not above 40 °F, IBC 2512.4.
fn is_cold(air: &Worked<Temperature>) -> bool {
    let rule = crate::trade::rules::find("ibc plaster warmth");
    rule.is_some_and(|r| r.kept::<Temperature>(air).is_err())
}

/// Lines of a day and the two after it: the table is in order, so that they stand together.
fn lines_of(weather: &Weather, first: i64) -> impl Iterator<Item = &(Date, crate::job::weather::Hour)> {
    let typical = weather.typical;
    let hours = if typical {
        weather.hours.as_slice()
    } else {
        let start = weather.hours.partition_point(|(d, _)| d.count() < first);
        let end = weather.hours.partition_point(|(d, _)| d.count() <= first + 2);
        weather.hours.get(start..end).unwrap_or(&[])
    };
    hours.iter().filter(move |(d, _)| (0..=2).contains(&(date_in(*d, first, typical) - first)))
}

/// A day as a count; one of a typical year in the year that the wanted day stands in, or the next.
fn date_in(date: Date, first: i64, typical: bool) -> i64 {
    if !typical {
        return date.count();
    }
    let Some((year, ..)) = crate::quantity::date::civil(first) else { return date.count() };
    let here = Date { year, ..date }.count();
    if here < first { Date { year: year.saturating_add(1), ..date }.count() } else { here }
}

fn shifted(date: Date, days: i64) -> Date {
    crate::quantity::date::civil(date.count() + days).map_or(date, |(year, month, day)| Date { year, month, day })
}

fn minutes(at: &Worked<Clock>) -> i64 {
    at.in_unit("min") as i64
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::Folder;
    use crate::tally::Tally;
    use std::path::Path;

    /// The demo with changes of text in one file.
    fn job(changes: &[(&str, &str, &str)]) -> crate::job::Job {
        let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let folder = changes.iter().fold(folder, |f, (path, old, new)| {
            let text = f.at(path).unwrap().text.clone();
            assert_eq!(text.matches(old).count(), 1, "{old}");
            f.with_text(path, &text.replace(old, new))
        });
        let (job, findings) = crate::read::job(&folder);
        assert!(findings.is_empty(), "{findings:?}");
        job
    }

    const UNHEATED: (&str, &str, &str) = ("sites/sedge-basin.md", "protection: {heat: vented heater, cover:", "protection: {cover:");
    const LAST: Date = Date { year: 2026, month: 3, day: 7 };

    fn lows_of(job: &crate::job::Job) -> Vec<(String, bool, f64)> {
        let (site, weather) = (job.sites.iter().find(|s| s.code.text == "SB"), job.weather.iter().find(|w| w.site == "sedge-basin"));
        let lows = lows(site.unwrap(), weather.unwrap(), LAST);
        lows.iter().map(|l| (l.date.iso(), l.at.is_some(), (l.air.in_unit("°C") * 10.0).round() / 10.0)).collect()
    }

    #[test]
    fn hours_of_the_day_and_leasts_of_the_two_after_it() {
        let expected = [("2026-03-07", true, 10.0), ("2026-03-08", false, 6.0), ("2026-03-09", false, 4.0)];
        assert_eq!(lows_of(&job(&[])), expected.map(|(d, h, t)| (d.to_owned(), h, t)));
        // The dawn before the first water is no matter, a cold hour of the work is.
        let dawn = ("weather/sedge-basin.csv", "2026-03-07T07:00, 9,", "2026-03-07T07:00, -3,");
        assert_eq!(lows_of(&job(&[dawn]))[0].2, 10.0);
        let noon = ("weather/sedge-basin.csv", "2026-03-07T12:00, 16,", "2026-03-07T12:00, 2,");
        assert_eq!(lows_of(&job(&[noon]))[0].2, 2.0);
    }

    /// The rows of the last day are black without heat; the sheet is there, and the other days are worked.
    #[test]
    fn rows_before_a_cold_night_are_black() {
        let black = |job: &crate::job::Job, day: &str| {
            let mut tally = Tally::of(job);
            tally.days(job);
            let sheet = tally.sheets().iter().find(|s| s.site == "sedge-basin" && s.day == day).unwrap();
            let why = sheet.rows.as_ref().err().cloned().or_else(|| sheet.rows.as_ref().ok()?.first()?.black.clone());
            let hour = tally.figure(&format!("{}.open", sheet.hours[3])).unwrap().worked.as_ref().err().cloned();
            (why.is_some(), hour)
        };
        let cold = job(&[UNHEATED]);
        let why = "4 °C on 2026-03-09 is inside the 48 h and not above 4.4 °C, with no heat planned";
        assert_eq!(black(&cold, "2026-03-07"), (true, Some(why.to_owned())));
        assert_eq!(black(&cold, "2026-03-05"), (false, None));
        assert_eq!(black(&job(&[]), "2026-03-07"), (false, None));
    }
}
