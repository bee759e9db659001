//! Amounts in a line of tokens: a number, its fractions, its unit, smaller units after it.

use num_rational::BigRational;

use crate::quantity::num::Num;
use crate::quantity::units::{self, UnitExpr};
use crate::quantity::{Dim, Quantity};

use super::tokens::{Near, Token, What, near};

/// How many words a unit or listed noun may stand away from its number.
pub(super) const REACH: usize = 3;

/// A number with its unit, by tokens.
pub(super) struct Amount {
    pub start: usize,
    pub end: usize,
    pub terms: Vec<(BigRational, Option<UnitExpr>)>,
    /// True if a unit or listed noun follows at once.
    pub direct: bool,
    /// True if the number is only an article: `a week`, `un galón`. Then it must name a figure, or be water.
    pub article: bool,
}

impl Amount {
    pub fn quantity(&self) -> Option<Quantity> {
        let (first, unit) = self.terms.first()?;
        let mut q = Quantity::of(&Num::Exact(first.clone()), (*unit)?);
        for (n, u) in self.terms.iter().skip(1) {
            q.si = q.si.add(&Quantity::of(&Num::Exact(n.clone()), (*u)?).si);
        }
        Some(q)
    }
}

/// True if the token at `i` is one of the words.
pub(super) fn is(all: &[Token], i: usize, words: &[&str]) -> bool {
    all.get(i).is_some_and(|t| words.contains(&t.lower.as_str()))
}

/// The number that starts at a token, fractions and `and a half` taken in.
fn number(all: &[Token], i: usize) -> Option<(BigRational, usize)> {
    let token = all.get(i)?;
    let mut value = token.number()?.clone();
    let mut end = i + 1;
    if let Some(next) = all.get(end) {
        let part = next.number().filter(|n| **n < BigRational::from_integer(1.into()) && matches!(next.what, What::Digits(_)));
        if let (true, Some(part)) = (value.is_integer(), part) {
            value += part;
            end += 1;
        }
    }
    // `fifty-five`, `sesenta y cinco`.
    let whole = |n: i64| BigRational::from_integer(n.into());
    let tens = matches!(token.what, What::Spelled(_)) && (2..10).any(|n| value == whole(n * 10));
    let joint = all.get(end).filter(|t| matches!(t.lower.as_str(), "-" | "y")).map_or(end, |_| end + 1);
    if let (true, Some(Token { what: What::Spelled(ones), .. })) = (tens, all.get(joint))
        && (1..10).any(|n| *ones == whole(n))
    {
        value += ones;
        end = joint + 1;
    }
    let half = if is(all, end, &["and"]) && is(all, end + 1, &["a"]) && is(all, end + 2, &["half", "quarter"]) {
        Some(end + 2)
    } else {
        (is(all, end, &["y"]) && is(all, end + 1, &["medio", "media"])).then_some(end + 1)
    };
    if let Some(part) = half.and_then(|h| all.get(h)?.number()) {
        value += part;
        end = half.map_or(end, |h| h + 1);
    }
    Some((value, end))
}

/// A unit or noun right at a token: hyphens and the articles of `half a gallon` are stepped over.
fn unit_at(all: &[Token], i: usize, fraction: bool) -> Option<(Near, usize)> {
    let mut i = i;
    if all.get(i).is_some_and(|t| t.text == "-") {
        i += 1;
    }
    if fraction && is(all, i, &["a", "an", "of", "de", "un", "una"]) {
        i += 1;
    }
    let squared = is(all, i, &["square", "sq", "cubic", "cu", "fl", "fluid", "deg", "per"]);
    if let (true, Some(a), Some(b)) = (squared, all.get(i), all.get(i + 1)) {
        let power = match a.lower.as_str() {
            "square" | "sq" => "2",
            "cubic" | "cu" => "3",
            _ => "",
        };
        let length = near(b).and_then(|n| n.unit).map(|u| u.symbol()).unwrap_or_default();
        let spelled = units::find_expr(&format!("{} {}", a.lower, b.text)).or_else(|| units::find_expr(&format!("{length}{power}")));
        if let Some(unit) = spelled {
            return Some((Near { unit: Some(unit), touching: false }, i + 2));
        }
    }
    near(all.get(i)?).map(|n| (n, i + 1))
}

/// The fraction behind a unit: `a gallon and a half`, `pulgada y cuarto`.
fn behind(all: &[Token], i: usize) -> Option<(BigRational, usize)> {
    let at = if is(all, i, &["and"]) && is(all, i + 1, &["a"]) {
        i + 2
    } else if is(all, i, &["y"]) {
        i + 1
    } else {
        return None;
    };
    let part = match all.get(at)?.lower.as_str() {
        "half" | "medio" | "media" => (1, 2),
        "quarter" | "cuarto" => (1, 4),
        _ => return None,
    };
    // `y media pinta` is another amount.
    let alone = unit_at(all, at + 1, true).is_none();
    alone.then(|| (BigRational::new(part.0.into(), part.1.into()), at + 1))
}

/// A week is seven days, which the table of units has.
fn week(token: &Token) -> Option<UnitExpr> {
    matches!(token.lower.as_str(), "week" | "weeks" | "semana" | "semanas").then(|| units::find_expr("day")).flatten()
}

/// `cuarto de hora`: a fourth, where `cuarto` alone is a quart.
fn fourth(all: &[Token], i: usize) -> bool {
    is(all, i, &["cuarto", "cuartos"]) && is(all, i + 1, &["de"]) && all.get(i + 2).and_then(near).is_some_and(|n| n.unit.is_some())
}

/// An amount whose number is an article or nothing: `a gallon and a half`, `hora y media`, `an hour`.
fn by_article(all: &[Token], start: usize) -> Option<Amount> {
    let article = is(all, start, &["a", "an", "another", "un", "una", "otro", "otra"]);
    let first = if article { start + 1 } else { start };
    let one = || BigRational::from_integer(1.into());
    if article && fourth(all, first) {
        let unit = near(all.get(first + 2)?)?.unit;
        let terms = vec![(BigRational::new(1.into(), 4.into()), unit)];
        return Some(Amount { start, end: first + 3, terms, direct: true, article: false });
    }
    if let (true, Some(days)) = (article, all.get(first).and_then(week)) {
        let terms = vec![(BigRational::from_integer(7.into()), Some(days))];
        return Some(Amount { start, end: first + 1, terms, direct: true, article: true });
    }
    let unit = near(all.get(first)?)?.unit?;
    if let Some((part, end)) = behind(all, first + 1) {
        return Some(Amount { start, end, terms: vec![(one() + part, Some(unit))], direct: true, article: false });
    }
    article.then(|| Amount { start, end: first + 1, terms: vec![(one(), Some(unit))], direct: true, article: true })
}

/// The amount that starts at a token, if a number does.
pub(super) fn amount(all: &[Token], start: usize) -> Option<Amount> {
    let Some((value, end)) = number(all, start) else { return by_article(all, start) };
    let fraction = value < BigRational::from_integer(1.into());
    let mut amount = Amount { start, end, terms: vec![(value, None)], direct: false, article: false };
    if fourth(all, end) {
        let unit = near(all.get(end + 2)?)?.unit;
        let value = amount.terms.first()?.0.clone() / BigRational::from_integer(4.into());
        return Some(Amount { end: end + 3, terms: vec![(value, unit)], direct: true, ..amount });
    }
    if let Some((found, end)) = unit_at(all, end, fraction) {
        amount.direct = true;
        amount.end = end;
        if let Some(first) = amount.terms.first_mut() {
            first.1 = found.unit;
            if let Some(days) = all.get(amount.end - 1).and_then(week) {
                *first = (first.0.clone() * BigRational::from_integer(7.into()), Some(days));
            }
        }
        if let (Some((part, end)), Some(first)) = (behind(all, amount.end), amount.terms.first_mut()) {
            first.0 += part;
            amount.end = end;
        }
        // `half a pint and a cup`.
        if is(all, amount.end, &["and", "y"]) && is(all, amount.end + 1, &["a", "an", "un", "una"]) {
            let small = all.get(amount.end + 2).and_then(near).and_then(|n| n.unit);
            let last = amount.terms.last().and_then(|t| t.1);
            if let (Some(small), Some(last)) = (small, last)
                && small.dim() == last.dim()
                && small.factor() < last.factor()
            {
                amount.terms.push((BigRational::from_integer(1.into()), Some(small)));
                amount.end += 3;
            }
        }
        // `1 gal 2 qt`: smaller units of the same sort go on.
        while let (Some(last), Some((n, e))) = (amount.terms.last().and_then(|t| t.1), number(all, amount.end)) {
            let Some((Near { unit: Some(small), .. }, e)) = unit_at(all, e, false) else { break };
            if small.dim() != last.dim() || small.factor() >= last.factor() || last.under.is_some() || last.dim() == Dim::NONE {
                break;
            }
            amount.terms.push((n, Some(small)));
            amount.end = e;
        }
        return Some(amount);
    }
    // `2 to 3 gal`, `2 more quarts`: the unit comes a little later.
    let mut i = amount.end;
    let mut steps = 0;
    while let Some(token) = all.get(i).filter(|t| !t.stops() && steps < REACH) {
        let found = near(token).filter(|n| !n.touching || i.checked_sub(1).and_then(|k| all.get(k)).is_some_and(|t| t.number().is_some()));
        if let (Some(Near { unit: Some(unit), .. }), Some(first)) = (found, amount.terms.first_mut()) {
            first.1 = Some(unit);
            break;
        }
        if token.what == What::Other {
            break;
        }
        steps += usize::from(token.what != What::Mark);
        i += 1;
    }
    Some(amount)
}

/// True if a unit or listed noun stands near the amount in its sentence.
pub(super) fn within_reach(all: &[Token], amount: &Amount) -> bool {
    let mut words = 0;
    for token in all.iter().skip(amount.end) {
        if token.stops() || words == REACH {
            break;
        }
        words += usize::from(token.what != What::Mark);
        if near(token).is_some_and(|n| !n.touching) {
            return true;
        }
    }
    words = 0;
    for token in all.iter().take(amount.start).rev() {
        if token.stops() || words == REACH {
            break;
        }
        words += usize::from(token.what != What::Mark);
        if near(token).is_some_and(|n| !n.touching) {
            return true;
        }
    }
    false
}
