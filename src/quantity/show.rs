//! How a rounded number is written for the crew: `3 gal 1 qt`, `1 3/4 in`, `34 1/2 loads`, `12.3 L`.
//!
//! Nothing here rounds; the number that comes in is the printed value.

use num_bigint::BigInt;
use num_integer::Integer;
use num_rational::BigRational;
use num_traits::{One, Signed, Zero};

use super::num::{decimal, exact_text};
use super::units::UnitExpr;
use crate::words::Lang;

/// The space between a number and its unit; no line may break there.
pub const JOIN: char = '\u{a0}';

/// How a number of a unit is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// A decimal with so many places: `12.3 L`.
    Decimal(usize),
    /// A decimal without idle zeros, as a scale shows it: `40 lb`, `7.5 lb`.
    Scale,
    /// Gallons, quarts, pints, cups, whichever are there: `3 gal 1 qt`. The number is in gallons.
    Crew,
    /// Whole and fraction: `1 3/4 in`, `34 1/2 loads`.
    Mixed,
    /// Feet and inches with fractions. The number is in feet.
    FeetInches,
    /// A time of day on the 12-hour clock: `1:04 pm`. The number is in minutes since midnight.
    Clock12,
    /// A time of day on the 24-hour clock: `13:04`. The number is in minutes since midnight.
    Clock24,
    /// A date: `15 Mar 2026`. The number is in days since 1970-01-01.
    Date,
    /// The first day on which something may be: `not before 15 Mar 2026`. The number is as for [`Look::Date`].
    NotBefore,
}

/// A mixed number: `34 1/2`, `3/8`, `2`.
pub fn mixed(number: &BigRational) -> String {
    let sign = if number.is_negative() { "-" } else { "" };
    let (whole, part) = number.numer().abs().div_rem(number.denom());
    let fraction = format!("{part}/{}", number.denom());
    match (whole.is_zero(), part.is_zero()) {
        (_, true) => format!("{sign}{whole}"),
        (true, false) => format!("{sign}{fraction}"),
        (false, false) => format!("{sign}{whole}{JOIN}{fraction}"),
    }
}

/// The unit's short name for a count: the symbol, or a word where the trade writes one.
fn short(symbol: &str, many: bool, lang: Lang) -> String {
    match symbol {
        "cup" | "load" | "bag" | "day" => lang.text(&format!("unit.{symbol}.{}", if many { "many" } else { "one" })).to_owned(),
        other => other
            .replace("lb/ft2/h", "lb/ft2·h")
            .replace("kg/m2/h", "kg/m2·h")
            .replace("ft2", "ft²")
            .replace("ft3", "ft³")
            .replace("m2", "m²")
            .replace("m3", "m³")
            .replace("in2", "in²")
            .replace("in3", "in³"),
    }
}

fn long(symbol: &str, many: bool, lang: Lang) -> String {
    let key = format!("unit.{symbol}.long.{}", if many { "many" } else { "one" });
    if lang.has(&key) { lang.text(&key).to_owned() } else { short(symbol, many, lang) }
}

fn many(number: &BigRational) -> bool {
    *number > BigRational::one() || number.is_zero()
}

/// Text of a printed number in a language; `spelled` writes the unit's name out (`4 minutes`).
pub fn text(number: &BigRational, unit: Option<UnitExpr>, look: Look, lang: Lang, spelled: bool) -> String {
    match look {
        Look::Crew => crew(number, lang),
        Look::FeetInches => feet_inches(number),
        Look::Clock12 => clock(number, Some(lang)),
        Look::Clock24 => clock(number, None),
        Look::Date => date(number, lang),
        Look::NotBefore => lang.text("date.not_before").replace("{date}", &date(number, lang)),
        Look::Decimal(places) => with_unit(decimal(number, places), number, unit, lang, spelled),
        Look::Scale => with_unit(exact_text(number), number, unit, lang, spelled),
        Look::Mixed => with_unit(mixed(number), number, unit, lang, spelled),
    }
}

fn with_unit(digits: String, number: &BigRational, unit: Option<UnitExpr>, lang: Lang, spelled: bool) -> String {
    let Some(unit) = unit else { return digits };
    let symbol = unit.symbol();
    let name = if spelled { long(&symbol, many(number), lang) } else { short(&symbol, many(number), lang) };
    format!("{digits}{JOIN}{name}")
}

/// Gallons broken down greedily into the marks on a US pail: whole gallons, quarts, pints, then cups.
fn crew(gallons: &BigRational, lang: Lang) -> String {
    let mut cups = gallons * BigRational::from_integer(BigInt::from(16));
    let mut parts = Vec::new();
    for (name, size) in [("gal", 16), ("qt", 4), ("pt", 2)] {
        let size = BigRational::from_integer(BigInt::from(size));
        let n = (&cups / &size).floor();
        if n.is_positive() {
            parts.push(format!("{}{JOIN}{name}", n.numer()));
            cups -= n * size;
        }
    }
    if cups.is_positive() || parts.is_empty() {
        parts.push(format!("{}{JOIN}{}", mixed(&cups), short("cup", many(&cups), lang)));
    }
    // A plain space between terms: the key box of a card may break there, and nowhere else.
    parts.join(" ")
}

/// Minutes since midnight as a time of day; one past midnight says so, because a card must not point at the wrong day.
fn clock(minutes: &BigRational, twelve: Option<Lang>) -> String {
    let whole = minutes.floor().to_integer();
    let (days, minute) = whole.div_mod_floor(&BigInt::from(24 * 60));
    let (hour, minute) = minute.div_rem(&BigInt::from(60));
    let minute = format!("{minute:0>2}");
    let time = match twelve {
        None => format!("{hour}:{minute}"),
        Some(lang) => {
            let (half, hour) = hour.div_rem(&BigInt::from(12));
            let hour = if hour.is_zero() { BigInt::from(12) } else { hour };
            let word = lang.text(if half.is_zero() { "clock.am" } else { "clock.pm" });
            format!("{hour}:{minute}{JOIN}{word}")
        }
    };
    if days.is_zero() { time } else { format!("{time}{JOIN}({days:+}{JOIN}d)") }
}

/// Days since 1970-01-01 as a date; a day no calendar has is left as its count.
fn date(days: &BigRational, lang: Lang) -> String {
    let civil = num_traits::ToPrimitive::to_i64(&days.floor().to_integer()).and_then(super::date::civil);
    civil.map_or_else(|| exact_text(days), |(year, month, day)| lang.date(year, month, day))
}

fn feet_inches(feet: &BigRational) -> String {
    let whole = feet.floor();
    let inches = (feet - &whole) * BigRational::from_integer(BigInt::from(12));
    match (whole.is_zero(), inches.is_zero()) {
        (false, true) => format!("{}{JOIN}ft", whole.numer()),
        (true, _) => format!("{}{JOIN}in", mixed(&inches)),
        (false, false) => format!("{}{JOIN}ft {}{JOIN}in", whole.numer(), mixed(&inches)),
    }
}

/// An exact number and unit as an author would type it in a file: for helps that say what would pass.
pub fn typed(number: &BigRational, unit: Option<UnitExpr>) -> String {
    match unit {
        Some(u) => format!("{} {}", exact_text(number), u.symbol()),
        None => exact_text(number),
    }
}

#[cfg(test)]
mod tests {
    use super::super::units::find_expr;
    use super::*;
    use crate::words::{EN, ES};

    fn say(n: i64, d: i64, unit: &str, look: Look, lang: Lang) -> String {
        text(&BigRational::new(n.into(), d.into()), find_expr(unit), look, lang, false).replace(JOIN, " ")
    }

    #[test]
    fn water_is_written_as_it_is_measured() {
        assert_eq!(say(3, 1, "gal", Look::Crew, EN), "3 gal");
        assert_eq!(say(13, 4, "gal", Look::Crew, EN), "3 gal 1 qt");
        assert_eq!(say(81, 16, "gal", Look::Crew, EN), "5 gal 1 cup");
        assert_eq!(say(81, 16, "gal", Look::Crew, ES), "5 gal 1 taza");
        assert_eq!(say(111, 16, "gal", Look::Crew, ES), "6 gal 3 qt 1 pt 1 taza");
        assert_eq!(say(1, 32, "gal", Look::Crew, EN), "1/2 cup");
        assert_eq!(say(0, 1, "gal", Look::Crew, EN), "0 cups");
    }

    #[test]
    fn counts_and_lengths() {
        assert_eq!(say(69, 2, "load", Look::Mixed, EN), "34 1/2 loads");
        assert_eq!(say(1, 2, "load", Look::Mixed, ES), "1/2 juego");
        assert_eq!(say(7, 4, "in", Look::Mixed, EN), "1 3/4 in");
        assert_eq!(say(11, 2, "ft", Look::FeetInches, EN), "5 ft 6 in");
        assert_eq!(say(123, 10, "L", Look::Decimal(1), EN), "12.3 L");
        assert_eq!(say(450, 1, "min", Look::Clock12, EN), "7:30 am");
        assert_eq!(say(784, 1, "min", Look::Clock12, ES), "1:04 p. m.");
        assert_eq!(say(720, 1, "min", Look::Clock12, EN), "12:00 pm");
        assert_eq!(say(5, 1, "min", Look::Clock12, EN), "12:05 am");
        assert_eq!(say(784, 1, "min", Look::Clock24, EN), "13:04");
        assert_eq!(say(1450, 1, "min", Look::Clock24, EN), "0:10 (+1 d)");
        assert_eq!(say(20_527, 1, "day", Look::Date, EN), "15 Mar 2026");
        assert_eq!(say(20_527, 1, "day", Look::NotBefore, EN), "not before 15 Mar 2026");
        assert_eq!(say(20_527, 1, "day", Look::NotBefore, ES), "no antes del 15 mar 2026");
        assert_eq!(say(203, 10, "lb/ft2", Look::Decimal(1), EN), "20.3 lb/ft²");
        assert_eq!(text(&BigRational::from_integer(4.into()), find_expr("min"), Look::Mixed, ES, true).replace(JOIN, " "), "4 minutos");
    }
}
