//! Days of a cure, counted exactly.

use num_rational::BigRational;

use crate::job::{Day, Mix, Site};
use crate::quantity::expr::Duration;
use crate::quantity::num::Direction;
use crate::quantity::units::find_expr;
use crate::quantity::{Quantity, Worked};
use crate::sound::Ground;
use crate::sound::told::printed;
use crate::trade::calendar;

/// The number of a day, counted from one fixed day.
pub(super) fn number(day: &Day) -> Option<BigRational> {
    let count = calendar::day_of(day.year, day.month, day.day).ok()?;
    count.value().exact_in(find_expr("day")?)
}

/// First and last day on which mud goes on the wall, by plan and calendar.
pub(super) fn mud(site: &Site) -> Option<(&Day, &Day)> {
    let key = |d: &&Day| (d.year, d.month, d.day);
    let all = || site.plan.iter().flat_map(|p| p.days.iter().map(|g| &g.day)).chain(&site.calendar.carve);
    Some((all().min_by_key(key)?, all().max_by_key(key)?))
}

/// The day at whose end the cure is over, as printed.
pub(super) fn over(ground: &Ground<'_>, site: &Site) -> Option<BigRational> {
    printed(ground, &format!("{}.cure_over", site.id), site.metric)?.number
}

/// Whole days, a part of a day counted as one.
pub(super) fn whole(time: &Worked<Duration>) -> Option<BigRational> {
    let one = BigRational::from_integer(1.into());
    Some(time.value().in_unit(find_expr("day")?)?.round(Direction::Up, &one))
}

/// Least days of the mix sheet before the next trade: its credit at full warmth, or its wet time where that is more.
pub(super) fn least(mix: &Mix) -> Option<BigRational> {
    let wet = whole(&mix.cure.wet)?;
    Some(mix.cure.credit.as_ref().and_then(whole).map_or(wet.clone(), |credit| credit.max(wet)))
}

/// `1 day`, `6 days`.
pub(super) fn said(days: &BigRational) -> String {
    let one = BigRational::from_integer(1.into());
    format!("{days} {}", if *days == one { "day" } else { "days" })
}

/// A time that a reader counts: number and unit as words of either language.
pub(super) fn spoken(number: &str, unit: &str) -> Option<Quantity> {
    const WORDS: &[(&str, i64)] = &[
        ("one", 1),
        ("two", 2),
        ("three", 3),
        ("four", 4),
        ("five", 5),
        ("six", 6),
        ("seven", 7),
        ("eight", 8),
        ("nine", 9),
        ("ten", 10),
        ("fourteen", 14),
        ("twenty-eight", 28),
        ("a", 1),
        ("uno", 1),
        ("un", 1),
        ("una", 1),
        ("dos", 2),
        ("tres", 3),
        ("cuatro", 4),
        ("cinco", 5),
        ("seis", 6),
        ("siete", 7),
        ("ocho", 8),
        ("nueve", 9),
        ("diez", 10),
        ("catorce", 14),
        ("veintiocho", 28),
    ];
    let symbol = match unit {
        "day" | "days" | "d" | "día" | "días" | "dia" | "dias" => ("day", 1),
        "week" | "weeks" | "semana" | "semanas" => ("day", 7),
        "h" | "hour" | "hours" | "hr" | "hrs" | "hora" | "horas" => ("h", 1),
        _ => return None,
    };
    let plain = || crate::quantity::parse::plain(&number.replace(',', ".")).ok();
    let count = WORDS.iter().find(|(w, _)| *w == number).map(|(_, n)| crate::quantity::Num::int(*n)).or_else(plain)?;
    Some(Quantity::of(&count.mul(&crate::quantity::Num::int(symbol.1)), find_expr(symbol.0)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_heard_in_both_languages() {
        let hours = |n, u| spoken(n, u).map(|q| q.exact_in(find_expr("h").unwrap()).unwrap().to_string());
        for (number, unit, want) in
            [("7", "days", "168"), ("una", "semana", "168"), ("48", "h", "48"), ("dos", "días", "48"), ("1.5", "days", "36")]
        {
            assert_eq!(hours(number, unit).as_deref(), Some(want), "{number} {unit}");
        }
        assert!(spoken("the", "days").is_none() && spoken("7", "bags").is_none());
    }

    #[test]
    fn days_are_numbered_on() {
        let at = crate::source::Span { file: 0, start: 0, end: 1 };
        let day = |month, day| Day { year: 2026, month, day, at };
        let one = BigRational::from_integer(1.into());
        assert_eq!(number(&day(3, 1)).unwrap() - number(&day(2, 28)).unwrap(), one);
        assert_eq!((day(3, 1).iso(), said(&one)), ("2026-03-01".to_owned(), "1 day".to_owned()));
    }
}
