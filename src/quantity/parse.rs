//! The quantity grammar: how people write amounts, and what to say when they write them badly.
//!
//! ```text
//! text      = ratio | range | at | amount
//! amount    = term { term }            5 ft 6 in · 1 gal 2 qt · 18.9 lb/ft2 · 7 %
//! term      = number unit
//! number    = mixed | fraction | decimal     1 1/2 · 3/8 · 4.6 · ½ · 1½
//! range     = (amount | number) "to" amount      12 mm to 65 mm · 68 to 74 °F
//! at        = amount "at" amount       50 min at 70 °F
//! ratio     = number ":" number "by" ("mass" | "volume")
//! ```

use std::ops::Range;

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::Zero;

use super::dim::{Dim, Kind};
use super::expr::system;
use super::num::Num;
use super::units::{self, UnitExpr};
use super::value::Quantity;

/// What a text turned out to say.
#[derive(Clone, Debug, PartialEq)]
pub enum Said {
    /// One amount, with the unit of its first term.
    Amount(Quantity, UnitExpr),
    /// From, to.
    Range(Quantity, Quantity),
    /// An amount at a reading.
    At(Quantity, Quantity),
    /// Parts of the first to one of the second; kind says by mass or by volume.
    Ratio(Quantity),
}

/// Why a text is no quantity, at which bytes of it, and what would pass.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Kebab-case name of the fault, the same as the finding's.
    pub name: &'static str,
    /// Bytes of the text at fault.
    pub at: Range<usize>,
    /// What is wrong, both sides shown.
    pub what: String,
    /// What would pass.
    pub help: String,
}

fn fault(name: &'static str, at: Range<usize>, what: impl Into<String>, help: impl Into<String>) -> Fault {
    Fault { name, at, what: what.into(), help: help.into() }
}

/// A plain decimal such as `2.50`, exact; `None` for anything else.
pub fn decimal(text: &str) -> Option<BigRational> {
    let (sign, digits) = text.strip_prefix('-').map_or((1, text), |t| (-1, t));
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let all_digits = |t: &str| t.bytes().all(|b| b.is_ascii_digit());
    if whole.is_empty() || !all_digits(whole) || !all_digits(part) || (part.is_empty() && digits.contains('.')) {
        return None;
    }
    let number: BigInt = format!("{whole}{part}").parse().ok()?;
    let scale = num_traits::pow(BigInt::from(10), part.len());
    Some(BigRational::new(number * sign, scale))
}

const VULGAR: &[(char, i64, i64)] =
    &[('½', 1, 2), ('¼', 1, 4), ('¾', 3, 4), ('⅓', 1, 3), ('⅔', 2, 3), ('⅛', 1, 8), ('⅜', 3, 8), ('⅝', 5, 8), ('⅞', 7, 8)];

struct Reader<'a> {
    text: &'a str,
    pos: usize,
}

impl<'a> Reader<'a> {
    fn rest(&self) -> &'a str {
        &self.text[self.pos..]
    }

    fn spaces(&mut self) {
        let rest = self.rest();
        self.pos += rest.len() - rest.trim_start_matches([' ', '\u{a0}']).len();
    }

    fn digits_like(&self) -> usize {
        let bytes = self.rest().as_bytes();
        let mut end = usize::from(bytes.first() == Some(&b'-') && bytes.get(1).is_some_and(u8::is_ascii_digit));
        while bytes.get(end).is_some_and(|b| b.is_ascii_digit() || matches!(b, b'.' | b',' | b'/')) {
            end += 1;
        }
        end
    }

    /// A vulgar fraction glyph here, if there is one.
    fn glyph(&mut self) -> Option<BigRational> {
        let c = self.rest().chars().next()?;
        let (_, n, d) = VULGAR.iter().find(|(g, _, _)| *g == c)?;
        self.pos += c.len_utf8();
        Some(BigRational::new((*n).into(), (*d).into()))
    }

    /// One number: decimal, fraction, mixed or with a fraction glyph.
    fn number(&mut self) -> Result<Option<BigRational>, Fault> {
        self.spaces();
        if let Some(g) = self.glyph() {
            return Ok(Some(g));
        }
        let start = self.pos;
        let len = self.digits_like();
        if len == 0 {
            return Ok(None);
        }
        let word = &self.rest()[..len];
        let at = start..start + len;
        if word.contains(',') {
            return Err(comma(word, at));
        }
        self.pos += len;
        if let Some((n, d)) = word.split_once('/') {
            let (Some(n), Some(d)) = (decimal(n), decimal(d)) else {
                return Err(fault("number-unreadable", at, format!("cannot read `{word}` as a number"), "write a fraction such as `3/8`"));
            };
            return proper(word, n, d, at).map(Some);
        }
        let Some(whole) = decimal(word) else {
            return Err(fault(
                "number-unreadable",
                at,
                format!("cannot read `{word}` as a number"),
                "write a number such as `1.5` or `1 1/2`",
            ));
        };
        if let Some(g) = self.glyph() {
            return Ok(Some(whole + g));
        }
        self.mixed(whole)
    }

    /// The fraction after a whole number, as in `1 1/2`.
    fn mixed(&mut self, whole: BigRational) -> Result<Option<BigRational>, Fault> {
        let back = self.pos;
        self.spaces();
        let start = self.pos;
        let len = self.digits_like();
        let word = &self.rest()[..len];
        if let (true, Some((n, d))) = (start > back && whole.is_integer(), word.split_once('/'))
            && let (Some(n), Some(d)) = (decimal(n), decimal(d))
        {
            self.pos += len;
            return proper(word, n, d, start..start + len).map(|f| Some(whole + f));
        }
        self.pos = back;
        Ok(Some(whole))
    }

    /// A unit word or quotient here; longest spelling first.
    fn unit(&mut self) -> Result<Option<UnitExpr>, Fault> {
        self.spaces();
        let Some(over) = self.unit_word()? else { return Ok(None) };
        let under = self.lower_unit()?;
        let per = if under.is_some() { self.lower_unit()? } else { None };
        Ok(Some(UnitExpr { over, under, per }))
    }

    /// `/ unit`, if it stands here.
    fn lower_unit(&mut self) -> Result<Option<&'static units::Unit>, Fault> {
        let back = self.pos;
        if !self.rest().starts_with('/') {
            return Ok(None);
        }
        self.pos += 1;
        let unit = self.unit_word()?;
        if unit.is_none() {
            self.pos = back;
        }
        Ok(unit)
    }

    fn unit_word(&mut self) -> Result<Option<&'static units::Unit>, Fault> {
        let rest = self.rest();
        for imperial in ["imp gal", "imperial gal", "imp. gal", "UK gal", "British gal"] {
            if rest.starts_with(imperial) {
                let at = self.pos..self.text.len();
                return Err(fault(
                    "gallon-not-us",
                    at,
                    "an imperial gallon is 4.546 L, a US gallon 3.785 L",
                    "measure in US gallons (`gal`) or in litres (`L`)",
                ));
            }
        }
        let names = rest.chars().next().map_or(&[][..], units::spelled_from);
        let longest = names.iter().find(|(name, _)| rest.starts_with(name) && ends_word(name, &rest[name.len()..]));
        Ok(longest.map(|(name, unit)| {
            self.pos += name.len();
            *unit
        }))
    }

    fn keyword(&mut self, word: &str) -> bool {
        self.spaces();
        let found = self.rest().strip_prefix(word).is_some_and(|r| r.is_empty() || r.starts_with([' ', '\u{a0}']));
        if found {
            self.pos += word.len();
        }
        found
    }

    fn done(&mut self) -> bool {
        self.spaces();
        self.pos == self.text.len()
    }

    fn leftover(&mut self) -> Fault {
        self.spaces();
        let at = self.pos..self.text.len();
        let word = &self.text[at.clone()];
        match nearest_unit(word) {
            Some(unit) => fault("unit-unknown", at, format!("no unit is called `{word}`"), format!("did you mean `{unit}`?")),
            None => fault(
                "unit-unknown",
                at,
                format!("no unit is called `{word}`"),
                "write a number and a unit, such as `1 gal 2 qt` or `3/8 in`",
            ),
        }
    }

    /// `term { term }`, all of one dimension, each smaller than the one before.
    fn amount(&mut self) -> Result<Option<(Quantity, UnitExpr)>, Fault> {
        let start = self.pos;
        let Some(first) = self.number()? else { return Ok(None) };
        let number_end = self.pos;
        let Some(unit) = self.unit()? else {
            self.spaces();
            if self.pos < self.text.len() && !self.rest().starts_with("to ") && !self.rest().starts_with([':', '-']) {
                return Err(self.leftover());
            }
            let shown = self.text[start..number_end].trim();
            return Err(fault(
                "unit-missing",
                start..number_end,
                format!("`{shown}` is a number without a unit"),
                format!("write the unit, such as `{shown} gal`, `{shown} in` or `{shown} %`"),
            ));
        };
        let mut total = Quantity::of(&Num::Exact(first), unit);
        let mut last = unit;
        while unit.kind() == Kind::Plain && unit.under.is_none() {
            let back = self.pos;
            let Ok(Some(next)) = self.number() else {
                self.pos = back;
                break;
            };
            let Some(small) = self.unit()? else {
                self.pos = back;
                break;
            };
            if small.dim() == unit.dim() && system(small) != system(unit) {
                return Err(fault(
                    "units-of-two-systems",
                    back..self.pos,
                    format!("`{}` after `{}`: one amount in two unit systems", small.symbol(), last.symbol()),
                    "write all of it in one of them, such as `5 ft 6 in` or `1.68 m`",
                ));
            }
            if small.dim() != unit.dim() || small.factor() >= last.factor() {
                return Err(fault(
                    "units-out-of-order",
                    back..self.pos,
                    format!("`{}` after `{}`", small.symbol(), last.symbol()),
                    format!("write the larger unit first, all of one sort, such as `1 {} …`", unit.symbol()),
                ));
            }
            total.si = total.si.add(&Quantity::of(&Num::Exact(next), small).si);
            last = small;
        }
        Ok(Some((total, unit)))
    }
}

fn ends_word(name: &str, after: &str) -> bool {
    let word_like = name.chars().last().is_some_and(char::is_alphanumeric);
    !(word_like && after.chars().next().is_some_and(|c| c.is_alphanumeric() || matches!(c, '²' | '³')))
}

fn nearest_unit(word: &str) -> Option<&'static str> {
    let word = word.split([' ', '/']).next().unwrap_or("");
    let lower = word.to_lowercase();
    units::units()
        .iter()
        .flat_map(|u| u.also.iter().chain([&u.symbol]).map(move |name| (*name, u.symbol)))
        // A unit that stands where none may is not mended by itself.
        .filter(|(name, _)| *name != word)
        .filter(|(name, _)| name.to_lowercase() == lower || (name.len() > 3 && strsim::levenshtein(name, &lower) <= 2))
        .map(|(_, symbol)| symbol)
        .next()
}

fn comma(word: &str, at: Range<usize>) -> Fault {
    let point = word.replace(',', ".");
    let none = word.replace(',', "");
    let help = if word.split(',').next_back().is_some_and(|t| t.len() == 3) {
        format!("write `{none}` without a thousands mark, or `{point}` if it is a decimal")
    } else {
        format!("write the decimal with a point: `{point}`")
    };
    fault("decimal-comma", at, format!("a comma in `{word}` can be read two ways"), help)
}

fn proper(word: &str, n: BigRational, d: BigRational, at: Range<usize>) -> Result<BigRational, Fault> {
    if d.is_zero() {
        return Err(fault("number-unreadable", at, format!("`{word}` divides by zero"), "write a fraction such as `3/8`"));
    }
    if n > d {
        // `11/2` in a thickness may be eleven halves or one and a half with the space lost.
        let digits = n.numer().to_string();
        let lost = digits.split_at(1);
        let mixed = if lost.1.is_empty() { String::new() } else { format!("`{} {}/{}` or ", lost.0, lost.1, d.numer()) };
        let whole = (&n / &d).floor();
        let rest = &n - &whole * &d;
        let meant = if rest.is_zero() { format!("{}", whole.numer()) } else { format!("{} {}/{}", whole.numer(), rest.numer(), d.numer()) };
        return Err(fault("fraction-ambiguous", at, format!("`{word}` can be read two ways"), format!("write {mixed}`{meant}`")));
    }
    Ok(n / d)
}

/// Reads a whole text by the grammar.
///
/// # Errors
/// One [`Fault`] at the bytes that cannot be read, with what would pass.
pub fn read(text: &str) -> Result<Said, Fault> {
    let mut r = Reader { text, pos: 0 };
    if text.trim().is_empty() {
        return Err(fault("quantity-empty", 0..text.len(), "there is nothing here", "write a number and a unit"));
    }
    if let Some(ratio) = ratio(text)? {
        return Ok(ratio);
    }
    if let Some(range) = bare_range(text)? {
        return Ok(range);
    }
    let Some((first, unit)) = r.amount()? else {
        return Err(r.leftover());
    };
    if r.done() {
        return Ok(Said::Amount(first, unit));
    }
    let joined = if r.keyword("to") {
        "to"
    } else if r.keyword("at") {
        "at"
    } else {
        return Err(r.leftover());
    };
    let Some((second, _)) = r.amount()? else { return Err(r.leftover()) };
    if !r.done() {
        return Err(r.leftover());
    }
    if joined == "at" {
        return Ok(Said::At(first, second));
    }
    range(text, first, second)
}

fn range(text: &str, first: Quantity, second: Quantity) -> Result<Said, Fault> {
    match first.compare(&second) {
        None => Err(fault(
            "range-mixed",
            0..text.len(),
            format!("the range goes from {} to {}", first.dim.name(), second.dim.name()),
            "use one sort of unit at both ends",
        )),
        Some(std::cmp::Ordering::Greater) => {
            Err(fault("range-backwards", 0..text.len(), "the range starts above its end", "write the smaller end first"))
        }
        Some(_) => Ok(Said::Range(first, second)),
    }
}

/// `68 to 74 °F`: the unit of the end serves both.
fn bare_range(text: &str) -> Result<Option<Said>, Fault> {
    let Some((from, to)) = text.split_once(" to ") else { return Ok(None) };
    let mut r = Reader { text: from, pos: 0 };
    let Ok(Some(number)) = r.number() else { return Ok(None) };
    if !r.done() {
        return Ok(None);
    }
    let mut end = Reader { text: to, pos: 0 };
    let Some((second, unit)) = end.amount()? else { return Ok(None) };
    if !end.done() {
        return Ok(None);
    }
    range(text, Quantity::of(&Num::Exact(number), unit), second).map(Some)
}

fn ratio(text: &str) -> Result<Option<Said>, Fault> {
    let Some((a, rest)) = text.split_once(':') else { return Ok(None) };
    let at = 0..text.len();
    let help = "write `3:1 by mass` or `3:1 by volume`";
    let (b, by) = rest.split_once(" by ").ok_or_else(|| fault("ratio-unsaid", at.clone(), "parts of what: mass or volume?", help))?;
    let kind = match by.trim() {
        "mass" | "weight" => Kind::ByMass,
        "volume" => Kind::ByVolume,
        other => return Err(fault("ratio-unsaid", at, format!("`{other}` is no way to count parts"), help)),
    };
    let (Some(a), Some(b)) = (decimal(a.trim()), decimal(b.trim())) else {
        return Err(fault("number-unreadable", at, "a ratio needs a number on both sides", help));
    };
    if b.is_zero() || a.is_zero() {
        return Err(fault("number-unreadable", at, "a part of a ratio is zero", help));
    }
    Ok(Some(Said::Ratio(Quantity { si: Num::Exact(a / b), dim: Dim::NONE, kind })))
}

/// Reads one amount of a given dimension and kind.
///
/// # Errors
/// A [`Fault`]; a wrong dimension shows both sides and the fix.
pub fn amount(text: &str, dim: Dim, kind: Kind, example: &str) -> Result<Quantity, Fault> {
    match read(text)? {
        Said::Amount(q, unit) => {
            check(text, &q, unit, dim, kind, example)?;
            if kind == Kind::Difference && q.kind == Kind::Reading {
                // A step of 15 °F has no zero to be counted from.
                let zero = Quantity::of(&Num::int(0), unit).si;
                return Ok(Quantity { si: q.si.sub(&zero), dim, kind });
            }
            Ok(q)
        }
        _ => Err(fault("amount-expected", 0..text.len(), "one amount is wanted here", format!("write it like `{example}`"))),
    }
}

fn check(text: &str, q: &Quantity, unit: UnitExpr, dim: Dim, kind: Kind, example: &str) -> Result<(), Fault> {
    let kinds_agree = q.kind == kind || (kind == Kind::Difference && q.kind == Kind::Reading);
    if q.dim == dim && kinds_agree {
        return Ok(());
    }
    let said = if q.dim == dim { format!("a count of {}", unit.symbol()) } else { q.dim.name() };
    let wanted = match kind {
        Kind::Loads => "a count of loads".to_owned(),
        Kind::Bags => "a count of bags".to_owned(),
        Kind::Share => "a share in %".to_owned(),
        Kind::Angle => "an angle in degrees".to_owned(),
        _ => dim.name(),
    };
    Err(fault(
        "unit-wrong",
        0..text.len(),
        format!("`{}` is {said}, this key holds {wanted}", unit.symbol()),
        format!("write it like `{example}`"),
    ))
}

/// A count or plain number written without a unit, such as `1` or `2.30`.
///
/// # Errors
/// A [`Fault`] when the text is not one plain number.
pub fn plain(text: &str) -> Result<Num, Fault> {
    let mut r = Reader { text, pos: 0 };
    match r.number()? {
        Some(n) if r.done() => Ok(Num::Exact(n)),
        _ => Err(fault(
            "number-unreadable",
            0..text.len(),
            format!("cannot read `{text}` as a plain number"),
            "write a number without a unit, such as `2.30`",
        )),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn in_unit(text: &str, unit: &str) -> String {
        match read(text) {
            Ok(Said::Amount(q, _)) => q.in_unit(units::find_expr(unit).unwrap()).map_or_else(|| "wrong".into(), |n| n.plain()),
            other => format!("{other:?}"),
        }
    }

    #[test]
    fn a_step_of_temperature_has_no_zero() {
        let step = amount("15 °F", Dim::TEMPERATURE, Kind::Difference, "").unwrap();
        assert_eq!(step.si.plain(), "25/3");
        assert_eq!(step.kind, Kind::Difference);
    }

    #[test]
    fn people_write_amounts_like_this() {
        assert_eq!(in_unit("0.2 lb/ft2/h", "lb/ft2/h"), "0.2");
        assert_eq!(in_unit("62 USD/h", "USD/h"), "62");
        assert_eq!(in_unit("1 gal 2 qt", "gal"), "1.5");
        assert_eq!(in_unit("1 gal 1 qt 1 pt 1 cup", "gal"), "1.4375");
        assert_eq!(in_unit("3/8 in", "in"), "0.375");
        assert_eq!(in_unit("1 1/2 in", "in"), "1.5");
        assert_eq!(in_unit("1½ in", "in"), "1.5");
        assert_eq!(in_unit("5 ft 6 in", "ft"), "5.5");
        assert_eq!(in_unit("18.9 lb/ft2", "lb/ft2"), "18.9");
        assert_eq!(in_unit("7 %", "%"), "7");
        assert_eq!(in_unit("62.4 lb/ft³", "lb/ft3"), "62.4");
        assert_eq!(in_unit("-5 °C", "°C"), "-5");
        assert_eq!(in_unit("70 °F", "°C"), "190/9");
        assert_eq!(in_unit("2 days", "h"), "48");
        assert_eq!(in_unit("5 ft 6 1/2 in", "in"), "66.5");
    }

    #[test]
    fn ranges_readings_and_ratios() {
        assert!(matches!(read("12 mm to 65 mm"), Ok(Said::Range(_, _))));
        assert!(matches!(read("68 to 74 °F"), Ok(Said::Range(_, _))));
        assert!(matches!(read("50 min at 70 °F"), Ok(Said::At(_, _))));
        match read("10:3 by mass") {
            Ok(Said::Ratio(q)) => assert_eq!((q.si.plain(), q.kind), ("10/3".into(), Kind::ByMass)),
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn bad_writing_is_answered_with_the_fix() {
        let cases = [
            ("11/2 in", "fraction-ambiguous", "write `1 1/2` or `5 1/2`"),
            ("1,5 in", "decimal-comma", "write the decimal with a point: `1.5`"),
            ("2 imp gal", "gallon-not-us", "measure in US gallons (`gal`) or in litres (`L`)"),
            ("2", "unit-missing", "write the unit, such as `2 gal`, `2 in` or `2 %`"),
            ("2 galons", "unit-unknown", "did you mean `gal`?"),
            ("5 ft 6 mm", "units-of-two-systems", "write all of it in one of them, such as `5 ft 6 in` or `1.68 m`"),
            ("2 qt 1 gal", "units-out-of-order", "write the larger unit first, all of one sort, such as `1 qt …`"),
            ("3 in to 1 in", "range-backwards", "write the smaller end first"),
            ("3:1", "ratio-unsaid", "write `3:1 by mass` or `3:1 by volume`"),
            ("", "quantity-empty", "write a number and a unit"),
        ];
        for (text, name, help) in cases {
            let fault = read(text).expect_err(text);
            assert_eq!((fault.name, fault.help.as_str()), (name, help), "{text}");
            assert!(fault.at.end <= text.len());
        }
        let wrong = amount("3 gal", Dim::LENGTH, Kind::Plain, "3/8 in").expect_err("a volume is no length");
        assert_eq!(wrong.what, "`gal` is a volume, this key holds a length");
    }
}
