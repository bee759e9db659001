//! F17: cure counted by warmth. A planning aid that can lengthen a cure and never shorten it; no proof of
//! strength, and poor in winter.

use std::cmp::Ordering;

use crate::quantity::expr::{Duration, Node, Plain, Temperature, Worked};
use crate::quantity::num::{Direction, Num};
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Quantity};

use super::{Answer, OutOfRange, above_zero, like, refuse, shown, zero_or_more};

/// One day on the wall.
#[derive(Clone, Debug)]
pub struct Day {
    /// Mean temperature of the day.
    pub mean: Worked<Temperature>,
    /// Lowest reading of the day, hourly or by a minimum thermometer. A day without one is counted by its mean
    /// alone, and nothing says that it did not freeze.
    pub least: Option<Worked<Temperature>>,
}

/// A day with its credit.
#[derive(Clone, Debug)]
pub struct Credited {
    /// Credit of the day, 0 to 1.
    pub credit: Worked<Plain>,
    /// Credit of all days up to this one.
    pub sum: Worked<Plain>,
}

/// °F as a thermometer reading, held in the scale of `other`, so that one line keeps one scale.
fn fahrenheit(degrees: i64, other: &Worked<Temperature>, symbol: &'static str, source: &'static str) -> Node {
    let scale = find_expr("°F").map_or_else(|| Quantity::plain(Num::int(degrees)), |f| Quantity::of(&Num::int(degrees), f));
    let value = Quantity { si: scale.si, dim: Dim::TEMPERATURE, kind: Kind::Reading };
    Node::constant(value, other.node().unit().or_else(|| find_expr("°F")), symbol, source)
}

const FREEZES: i64 = 32;
const NO_GAIN_BELOW: i64 = 40;

fn colder(t: &Worked<Temperature>, degrees: i64, at_it_too: bool) -> bool {
    let bound = fahrenheit(degrees, t, "", "");
    match t.value().si.compare(&bound.value().si) {
        Ordering::Less => true,
        Ordering::Equal => at_it_too,
        Ordering::Greater => false,
    }
}

fn above_absolute_zero(key: &'static str, symbol: &'static str, t: &Worked<Temperature>) -> Result<(), OutOfRange> {
    let si = &t.value().si;
    if si.is_negative() || si.is_zero() {
        return Err(refuse(key, symbol, t, "a thermometer reading, such as `58 °F`"));
    }
    Ok(())
}

/// Lowest of a day's readings: `T_least = min(T_1, T_2, …)`, hourly readings or a minimum thermometer's.
///
/// At least one reading. The mean never says whether mud froze; this does. Source: `lowest-reading`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cure::coldest};
/// let hours: Vec<_> = ["41 °F", "31 °F", "45 °F"].iter().map(|t| Worked::read(t).unwrap()).collect();
/// assert_eq!(coldest(&hours).unwrap().in_unit("°F").round(), 31.0);
/// ```
pub fn coldest(readings: &[Worked<Temperature>]) -> Answer<Temperature> {
    for t in readings {
        above_absolute_zero("F17 coldest", "T", t)?;
    }
    let least = readings.iter().enumerate().map(|(i, t)| t.named(format!("T_{}", i + 1))).reduce(Node::min);
    let none = || OutOfRange {
        formula: "F17 coldest",
        symbol: "T",
        value: "missing".to_owned(),
        wants: "at least one reading of the day, such as `41 °F`".to_owned(),
    };
    least.map(|t| Worked::new(t.formula("F17 coldest", "T_least"))).ok_or_else(none)
}

/// True if a lowest reading is at or below freezing, 32 °F.
///
/// Source: `lowest-reading`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cure::froze};
/// assert!(froze(&Worked::read("0 °C").unwrap()));
/// assert!(!froze(&Worked::read("33 °F").unwrap()));
/// ```
pub fn froze(least: &Worked<Temperature>) -> bool {
    colder(least, FREEZES, true)
}

/// Cure credit of a day: `credit = counts × min(max((T_mean − T_0) ÷ (T_full − T_0), 0), 1)`; `T_mean` the day's
/// mean, `T_0` 32 °F, `T_full` 70 °F.
///
/// `counts` is 0 for a mean below 40 °F and for a day whose lowest reading froze, else 1. Both temperatures above
/// absolute zero. `least` may be missing; see [`Day`]. Source: `cure-credit`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cure::day_credit};
/// let f = |t| Worked::read(t).unwrap();
/// assert_eq!(day_credit(&f("51 °F"), None).unwrap().value().si.to_f64(), 0.5);
/// assert_eq!(day_credit(&f("51 °F"), Some(&f("32 °F"))).unwrap().value().si.to_f64(), 0.0);
/// assert_eq!(day_credit(&f("38 °F"), None).unwrap().value().si.to_f64(), 0.0);
/// ```
pub fn day_credit(mean: &Worked<Temperature>, least: Option<&Worked<Temperature>>) -> Answer<Plain> {
    above_absolute_zero("F17 day credit", "T_mean", mean)?;
    let (counts, why) = match least {
        Some(least) => {
            above_absolute_zero("F17 day credit", "T_least", least)?;
            if least.value().si.compare(&mean.value().si).is_gt() {
                let wants = format!("no more than the day's mean, {}", shown(mean.node()));
                return Err(refuse("F17 day credit", "T_least", least, wants));
            }
            if froze(least) { (0, "a day that froze counts zero") } else { (1, "no frost that day") }
        }
        None => (1, "no lowest reading was given"),
    };
    let (counts, why) = if colder(mean, NO_GAIN_BELOW, false) { (0, "a mean below 40 °F counts zero") } else { (counts, why) };
    let counts = Node::constant(Quantity::plain(Num::int(counts)), None, "counts", why);
    let datum = || fahrenheit(FREEZES, mean, "T_0", "datum 0 °C of ASTM C1074, recalled, not re-read");
    let full = fahrenheit(70, mean, "T_full", "a full day of cure: common practice, no source");
    let warmth = (mean.named("T_mean") - datum()) / (full - datum());
    let credit = counts * warmth.max(Node::given(0, 1)).min(Node::given(1, 1));
    Ok(Worked::new(credit.formula("F17 day credit", "credit")))
}

/// Credit day by day: [`day_credit`], and `sum = sum_before + credit`.
///
/// Out of range where a day is. Source: `cure-credit`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cure::{Day, credits}};
/// let days = ["51 °F", "70 °F"].map(|t| Day { mean: Worked::read(t).unwrap(), least: None });
/// assert_eq!(credits(&days).unwrap().last().unwrap().sum.value().si.to_f64(), 1.5);
/// ```
pub fn credits(days: &[Day]) -> Result<Vec<Credited>, OutOfRange> {
    let mut all: Vec<Credited> = Vec::with_capacity(days.len());
    for day in days {
        let credit = day_credit(&day.mean, day.least.as_ref())?;
        let before = all.last().map_or_else(|| Node::given(0, 1), |d| d.sum.named("sum_before"));
        let sum = Worked::new((before + credit.named("credit")).formula("F17 credit sum", "sum"));
        all.push(Credited { credit, sum });
    }
    Ok(all)
}

/// Cure by the mix sheet: `wet + air`; `wet` the time it is kept wet, `air` the time it must then stand in air.
///
/// `wet > 0`, `air ≥ 0`. A polymer mud must dry to form its film, so wet time is not lengthened into air time.
/// Source: `sheet-cure`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cure::sheet_cure};
/// let t = |t| Worked::read(t).unwrap();
/// assert_eq!(sheet_cure(&t("2 days"), &t("5 days")).unwrap().in_unit("day"), 7.0);
/// ```
pub fn sheet_cure(wet: &Worked<Duration>, air: &Worked<Duration>) -> Answer<Duration> {
    above_zero("F17 sheet cure", "wet", wet)?;
    zero_or_more("F17 sheet cure", "air", air)?;
    Ok(Worked::new((wet.named("wet") + air.named("air")).formula("F17 sheet cure", "cure")))
}

/// Calendar day, the first day on the wall being 1, at whose end a cure is over: the day that brings the credit to
/// `need`, and never before the mix sheet's own minimum.
///
/// `day = max(n, up(sheet, 1))`; `n` counts the days that began with less than `need`:
/// `n = n_before + min(up(max(need − sum_before, 0), 1), 1)`. `need` in days, of a key of the mix or of the next
/// trade; `sheet` the least cure of the mix sheet. `need > 0`, `sheet ≥ 0`. Refused where the days given do not
/// reach `need`: list more days. Print it as *not before*, with the credit ticks. Source: `cure-credit`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cure::{Day, calendar_day}};
/// let days = ["51 °F", "38 °F", "70 °F"].map(|t| Day { mean: Worked::read(t).unwrap(), least: None });
/// let day = |need, sheet| calendar_day(&days, &Worked::read(need).unwrap(), &Worked::read(sheet).unwrap());
/// assert_eq!(day("1 day", "2 days").unwrap().value().si.to_f64(), 3.0);
/// assert_eq!(day("1 day", "5 days").unwrap().value().si.to_f64(), 5.0);
/// assert!(day("2 days", "2 days").is_err());
/// ```
pub fn calendar_day(days: &[Day], need: &Worked<Duration>, sheet: &Worked<Duration>) -> Answer<Plain> {
    above_zero("F17 calendar day", "need", need)?;
    zero_or_more("F17 calendar day", "sheet", sheet)?;
    let wanted = need.named("need").bare("day");
    let mut sum: Option<Worked<Plain>> = None;
    let mut n: Option<Worked<Plain>> = None;
    for day in credits(days)? {
        let before = sum.as_ref().map_or_else(|| Node::given(0, 1), |s| s.named("sum_before"));
        let short = (wanted.clone() - before).max(Node::given(0, 1));
        let one = short.rounded(Direction::Up, 1, 1).min(Node::given(1, 1));
        let so_far = n.as_ref().map_or_else(|| Node::given(0, 1), |n| n.named("n_before"));
        n = Some(Worked::new((so_far + one).formula("F17 days short", "n")));
        sum = Some(day.sum);
    }
    let least = sheet.named("sheet").bare("day").rounded(Direction::Up, 1, 1);
    match (n, sum) {
        (Some(n), Some(sum)) if sum.value().si.compare(&wanted.value().si).is_ge() => {
            Ok(Worked::new(n.named("n").max(least).formula("F17 calendar day", "day")))
        }
        (_, sum) => {
            let got = sum.map_or_else(|| "0".to_owned(), |s| s.node().rounded(Direction::Down, 1, 100).number().plain());
            Err(refuse("F17 calendar day", "need", need, format!("at most the {got} credit days of the days listed; list more days")))
        }
    }
}

/// As [`calendar_day`] where every day is as warm as the next, in a room that is kept so: `day = max(up(need ÷ credit, 1),
/// up(sheet, 1))`; `credit` of [`day_credit`] at the room's coldest.
///
/// `need > 0`, `sheet ≥ 0`. Refused where such a day counts nothing. Source: `cure-credit`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cure::steady_day};
/// let day = |t| steady_day(&Worked::read(t).unwrap(), &Worked::read("7 days").unwrap(), &Worked::read("2 days").unwrap());
/// assert_eq!(day("68 °F").unwrap().value().si.to_f64(), 8.0);
/// assert!(day("39 °F").is_err());
/// ```
pub fn steady_day(mean: &Worked<Temperature>, need: &Worked<Duration>, sheet: &Worked<Duration>) -> Answer<Plain> {
    above_zero("F17 steady day", "need", need)?;
    zero_or_more("F17 steady day", "sheet", sheet)?;
    let credit = day_credit(mean, None)?;
    if credit.value().si.is_zero() {
        return Err(refuse("F17 steady day", "T_mean", mean, "40 °F or more: colder days count nothing"));
    }
    let warm = (need.named("need").bare("day") / credit.named("credit")).rounded(Direction::Up, 1, 1);
    let least = sheet.named("sheet").bare("day").rounded(Direction::Up, 1, 1);
    Ok(Worked::new(warm.max(least).formula("F17 steady day", "day")))
}

/// Time as a whole count of days, up: the least cure on a tag that is ticked by the day.
///
/// `t ≥ 0`. Source: `sheet-cure`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cure::whole_days};
/// assert_eq!(whole_days(&Worked::read("50 h").unwrap()).unwrap().in_unit("day"), 3.0);
/// ```
pub fn whole_days(t: &Worked<Duration>) -> Answer<Duration> {
    zero_or_more("F17 whole days", "t", t)?;
    let days = like(t.named("t"), t.node()).written_in("day").rounded(Direction::Up, 1, 1);
    Ok(Worked::new(days.formula("F17 whole days", "days")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    fn days(means: &[&str], scale: &str) -> Vec<Day> {
        means.iter().map(|t| Day { mean: q(&format!("{t} {scale}")), least: None }).collect()
    }

    const MEANS: [&str; 14] = ["58", "52", "49", "55", "61", "38", "44", "57", "60", "62", "64", "59", "63", "66"];

    // Worked example of the design, common practice, no source.
    #[test]
    fn fourteen_days_in_march() {
        let credited = credits(&days(&MEANS, "°F")).unwrap();
        // The seventh day is 12/38 = 0.3158; the sums are of unrounded credits.
        let credit = ["0.68", "0.53", "0.45", "0.61", "0.76", "0.00", "0.32", "0.66", "0.74", "0.79", "0.84", "0.71", "0.82", "0.89"];
        let sum = ["0.68", "1.21", "1.66", "2.26", "3.03", "3.03", "3.34", "4.00", "4.74", "5.53", "6.37", "7.08", "7.89", "8.79"];
        for ((day, credit), sum) in credited.iter().zip(credit).zip(sum) {
            holds(&day.credit, "", credit);
            holds(&day.sum, "", sum);
            assert!(day.sum.value().si.exact().is_some());
        }
        let day = calendar_day(&days(&MEANS, "°F"), &q("7 days"), &q("2 days")).unwrap();
        holds(&day, "", "12");
        assert_eq!(line(&day).0, "day = max(n, up(sheet, 1))");
        assert_eq!(line(&day).1, "max(12, up(2, 1)) = 12 ");
        let (symbols, numbers) = line(&credited[5].credit);
        assert_eq!(symbols, "credit = counts × min(max((T_mean − T_0) ÷ (T_full − T_0), 0), 1)");
        assert_eq!(numbers, "0 × min(max((38 − 32) ÷ (70 − 32), 0), 1) = 0 ");
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn the_same_days_in_celsius() {
        let means = ["14.4", "11.1", "9.4", "12.8", "16.1", "3.3", "6.7", "13.9", "15.6", "16.7", "17.8", "15.0", "17.2", "18.9"];
        let days = days(&means, "°C");
        let credited = credits(&days).unwrap();
        assert!(credited[5].credit.value().si.is_zero());
        assert_eq!(credited.iter().filter(|d| d.credit.value().si.is_zero()).count(), 1);
        holds(&calendar_day(&days, &q("7 days"), &q("2 days")).unwrap(), "", "12");
        assert_eq!(line(&credited[0].credit).1, "1 × min(max((14.4 − 0) ÷ ((190/9) − 0), 0), 1) = 324/475 ");
    }

    #[test]
    fn frost_is_seen_in_the_lowest_reading() {
        let with = |least: &str| Day { mean: q("45 °F"), least: Some(q(least)) };
        let credit = |least: &str| day_credit(&q("45 °F"), with(least).least.as_ref()).unwrap();
        holds(&credit("33 °F"), "", "0.34");
        holds(&credit("32 °F"), "", "0.00");
        holds(&credit("0 °C"), "", "0.00");
        assert_eq!(credit("30 °F").node().leaves().iter().filter(|n| n.number().plain() == "0").count(), 1);
        assert_eq!(day_credit(&q("45 °F"), Some(&q("46 °F"))).unwrap_err().wants, "no more than the day's mean, 45 °F");
        holds(&day_credit(&q("40 °F"), None).unwrap(), "", "0.21");
        holds(&day_credit(&q("39.9 °F"), None).unwrap(), "", "0.00");
        holds(&day_credit(&q("95 °F"), None).unwrap(), "", "1.00");
        holds(&day_credit(&q("-10 °F"), None).unwrap(), "", "0.00");
        holds(&coldest(&[q("41 °F"), q("-1 °C"), q("36 °F")]).unwrap(), "°C", "-1");
        assert!(coldest(&[]).is_err());
    }

    #[test]
    fn a_room_kept_warm() {
        let day = |t: &str, need: &str| steady_day(&q(t), &q(need), &q("2 days"));
        // 7 ÷ (36 ÷ 38) is 7.39; at 70 °F and over a day is a day.
        for (t, need, at) in [
            ("68 °F", "7 days", "8"),
            ("70 °F", "7 days", "7"),
            ("80 °F", "7 days", "7"),
            ("51 °F", "7 days", "14"),
            ("70 °F", "1 day", "2"),
        ] {
            holds(&day(t, need).unwrap(), "", at);
        }
        assert_eq!(line(&day("68 °F", "7 days").unwrap()).0, "day = max(up(need ÷ credit, 1), up(sheet, 1))");
        assert_eq!(day("39.9 °F", "7 days").unwrap_err().wants, "40 °F or more: colder days count nothing");
        assert!(day("70 °F", "0 days").is_err());
    }

    #[test]
    fn credit_never_shortens_the_sheet() {
        let warm = days(&["70"; 10], "°F");
        holds(&calendar_day(&warm, &q("2 days"), &q("7 days")).unwrap(), "", "7");
        holds(&calendar_day(&warm, &q("2 days"), &q("49 h")).unwrap(), "", "3");
        holds(&calendar_day(&warm, &q("10 days"), &q("2 days")).unwrap(), "", "10");
        let refused = calendar_day(&warm, &q("11 days"), &q("2 days")).unwrap_err();
        assert_eq!(refused.wants, "at most the 10 credit days of the days listed; list more days");
        assert!(calendar_day(&[], &q("1 day"), &q("0 days")).is_err());
        assert!(sheet_cure(&q("0 days"), &q("1 day")).is_err());
        holds(&whole_days(&sheet_cure(&q("2 days"), &q("1 h")).unwrap()).unwrap(), "day", "3");
        holds(&whole_days(&q("48 h")).unwrap(), "day", "2");
    }
}
