//! F17: from days of cure to a date. A date is a count of days since 1970-01-01, so that waits are added to it exactly.

use crate::quantity::expr::{Date, Duration, Node, Plain, Worked};
use crate::quantity::num::Direction;

use super::{Answer, OutOfRange, above_zero, refuse, zero_or_more};

/// From here on: a date before it is a typing error.
fn a_date(key: &'static str, symbol: &'static str, day: &Worked<Date>) -> Result<(), OutOfRange> {
    let counted = day.node().unit().is_some_and(|u| u.symbol() == "day");
    let whole = day.node().rounded(Direction::Down, 1, 1).value().si.compare(&day.value().si).is_eq();
    if !counted || !whole || day.value().si.is_negative() {
        return Err(refuse(key, symbol, day, "a whole count of days since 1970-01-01, such as `20514 day`"));
    }
    Ok(())
}

/// A day of the calendar as a count of days since 1970-01-01: `D = n + 10957`; `n` the days since 2000-01-01.
///
/// Years 1970 to 2100, a day that the month has. Source: `cure-dates`.
/// ```
/// use hodbook::trade::calendar::day_of;
/// assert_eq!(day_of(2026, 3, 2).unwrap().in_unit("day"), 20514.0);
/// assert!(day_of(2026, 2, 30).is_err());
/// ```
pub fn day_of(year: i16, month: i8, day: i8) -> Answer<Date> {
    let n = super::sun::day_number(year, month, day)?;
    let count = n.named("n") + Node::given(10_957, 1);
    let date: Worked<Date> = Worked::new(count.dressed("day").formula("F17 day", "D"));
    a_date("F17 day", "D", &date)?;
    Ok(date)
}

/// Days that a wait takes on the calendar: `n = up(t, 1)`; `t` a time, counted in days.
///
/// `t ≥ 0`. A part of a day takes the day. Source: `cure-dates`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::calendar::day_count};
/// assert_eq!(day_count(&Worked::read("50 h").unwrap()).unwrap().value().si.to_f64(), 3.0);
/// ```
pub fn day_count(t: &Worked<Duration>) -> Answer<Plain> {
    zero_or_more("F17 day count", "t", t)?;
    Ok(Worked::new(t.named("t").bare("day").rounded(Direction::Up, 1, 1).formula("F17 day count", "n")))
}

/// Date at whose end a cure is over: `D = D_last + n`; `D_last` the day of the last mud, `n` days on the wall, the day
/// after the last mud being the first.
///
/// `D_last` from 1970 on, `n > 0`. Source: `cure-dates`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::calendar::{cure_over, day_of}};
/// let over = cure_over(&day_of(2026, 3, 7).unwrap(), &Worked::read("12").unwrap()).unwrap();
/// assert_eq!(over.in_unit("day"), day_of(2026, 3, 19).unwrap().in_unit("day"));
/// ```
pub fn cure_over(last: &Worked<Date>, n: &Worked<Plain>) -> Answer<Date> {
    a_date("F17 cure over", "D_last", last)?;
    above_zero("F17 cure over", "n", n)?;
    Ok(Worked::new((last.named("D_last") + n.named("n").dressed("day")).formula("F17 cure over", "D")))
}

/// The day after a date at whose end something is over: `D_next = D + 1`.
///
/// From 1970 on. Source: `cure-dates`.
/// ```
/// use hodbook::trade::calendar::{day_of, morning_after};
/// let next = morning_after(&day_of(2026, 3, 31).unwrap()).unwrap();
/// assert_eq!(next.in_unit("day"), day_of(2026, 4, 1).unwrap().in_unit("day"));
/// ```
pub fn morning_after(day: &Worked<Date>) -> Answer<Date> {
    a_date("F17 morning after", "D", day)?;
    Ok(Worked::new((day.named("D") + Node::given(1, 1).dressed("day")).formula("F17 morning after", "D_next")))
}

/// Day of the week: `w = D + 3 − 7 × down((D + 3) ÷ 7, 1)`: 0 Monday to 6 Sunday.
///
/// From 1970 on. Source: `cure-dates`.
/// ```
/// use hodbook::trade::calendar::{day_of, weekday};
/// assert_eq!(weekday(&day_of(2026, 3, 2).unwrap()).unwrap().value().si.to_f64(), 0.0);
/// ```
pub fn weekday(day: &Worked<Date>) -> Answer<Plain> {
    a_date("F17 weekday", "D", day)?;
    let shifted = || day.named("D").bare("day") + Node::given(3, 1);
    let weeks = (shifted() / Node::given(7, 1)).rounded(Direction::Down, 1, 1);
    Ok(Worked::new((shifted() - Node::given(7, 1) * weeks).formula("F17 weekday", "w")))
}

/// The same date, or the Monday after it where nobody comes at weekends: `D_work = D + min(max(w − 4, 0), 1) × (7 − w)`;
/// `w` of [`weekday`].
///
/// From 1970 on. Holidays are not looked at. Source: `cure-dates`.
/// ```
/// use hodbook::trade::calendar::{day_of, working_day};
/// let saturday = day_of(2026, 3, 7).unwrap();
/// assert_eq!(working_day(&saturday).unwrap().in_unit("day"), day_of(2026, 3, 9).unwrap().in_unit("day"));
/// ```
pub fn working_day(day: &Worked<Date>) -> Answer<Date> {
    a_date("F17 working day", "D", day)?;
    let w = weekday(day)?;
    let falls = (w.named("w") - Node::given(4, 1)).max(Node::given(0, 1)).min(Node::given(1, 1));
    let wait = falls * (Node::given(7, 1) - w.named("w"));
    Ok(Worked::new((day.named("D") + wait.dressed("day")).formula("F17 working day", "D_work")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;
    use crate::quantity::date;

    fn march(day: i8) -> Worked<Date> {
        day_of(2026, 3, day).unwrap()
    }

    #[test]
    fn a_weekend_ends_on_monday() {
        for (day, works) in [(2, 2), (6, 6), (7, 9), (8, 9), (9, 9), (14, 16), (15, 16)] {
            assert_eq!(working_day(&march(day)).unwrap().in_unit("day"), march(works).in_unit("day"), "{day}");
        }
        let weekdays: Vec<f64> = (1..=8).map(|d| weekday(&march(d)).unwrap().value().si.to_f64()).collect();
        assert_eq!(weekdays, [6.0, 0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0]);
        holds(&weekday(&day_of(1970, 1, 1).unwrap()).unwrap(), "", "3");
        let saturday = working_day(&march(7)).unwrap();
        assert_eq!(line(&saturday).0, "D_work = D + min(max(w − 4, 0), 1) × (7 − w)");
        assert_eq!(line(&saturday).1, "20519 + min(max(5 − 4, 0), 1) × (7 − 5) = 20521 day");
        assert_eq!(line(&weekday(&march(7)).unwrap()).1, "20519 + 3 − 7 × down((20519 + 3) ÷ 7, 1) = 5 ");
    }

    #[test]
    fn days_are_counted_as_the_calendar_prints_them() {
        for (year, month, day) in [(1970, 1, 1), (1999, 12, 31), (2000, 2, 29), (2024, 2, 29), (2026, 3, 2), (2099, 12, 31)] {
            let count = day_of(year, month, day).unwrap().in_unit("day") as i64;
            assert_eq!(date::civil(count), Some((year, month, day)));
        }
        assert!(day_of(2026, 2, 29).is_err());
        assert!(day_of(1969, 12, 31).is_err());
    }

    // Worked example of the design, common practice, no source: 7 credit days on calendar day 12.
    #[test]
    fn the_next_trade_comes_the_morning_after() {
        let over = cure_over(&march(7), &q("12")).unwrap();
        assert_eq!(line(&over), ("D = D_last + n".into(), "20519 + 12 = 20531 day".into()));
        let next = morning_after(&over).unwrap();
        assert_eq!(line(&next), ("D_next = D + 1".into(), "20531 + 1 = 20532 day".into()));
        // A Friday.
        assert_eq!(working_day(&next).unwrap().in_unit("day"), march(20).in_unit("day"));
        holds(&day_count(&q("48 h")).unwrap(), "", "2");
        holds(&day_count(&q("49 h")).unwrap(), "", "3");
    }

    #[test]
    fn what_is_no_date_is_refused() {
        let wants = "a whole count of days since 1970-01-01, such as `20514 day`";
        let count = |n: i64, d: i64, unit: &str| Worked::<Date>::new(Node::given(n, d).dressed(unit));
        for day in [count(41_029, 2, "day"), count(20_514, 1, "h"), count(-1, 1, "day")] {
            assert_eq!(cure_over(&day, &q("1")).unwrap_err().wants, wants);
            assert_eq!(weekday(&day).unwrap_err().wants, wants);
            assert_eq!(morning_after(&day).unwrap_err().wants, wants);
            assert_eq!(working_day(&day).unwrap_err().wants, wants);
        }
        assert_eq!(cure_over(&march(7), &q("0")).unwrap_err().wants, "more than 0, such as `1`");
        assert_eq!(day_count(&q("-1 day")).unwrap_err().wants, "0 or more, such as `1 day`");
    }
}
