//! A line cut into numbers, words and marks, each with its place; and what counts as a unit or a listed noun.

use num_bigint::BigInt;
use num_rational::BigRational;

use crate::quantity::parse::decimal;
use crate::quantity::units::{self, UnitExpr};
use crate::source::Span;
use crate::words::{EN, Lang};

use super::flat::{Line, Seg};

/// What a token is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum What {
    /// A number in digits.
    Digits(BigRational),
    /// A number in words.
    Spelled(BigRational),
    /// A word, unit or code.
    Word,
    /// Output of a slot, or a number that is no amount: a date, a clock time, an ordinal.
    Other,
    /// A mark between words.
    Mark,
}

/// A token of a line.
#[derive(Clone, Debug)]
pub(super) struct Token {
    pub what: What,
    pub text: String,
    /// Lower case.
    pub lower: String,
    pub at: Option<Span>,
    /// True if no space stands before it.
    pub glued: bool,
}

impl Token {
    pub fn number(&self) -> Option<&BigRational> {
        match &self.what {
            What::Digits(n) | What::Spelled(n) => Some(n),
            _ => None,
        }
    }

    /// True for a mark that ends a sentence or parts two thoughts.
    pub fn stops(&self) -> bool {
        self.what == What::Mark && matches!(self.text.as_str(), "." | "!" | "?" | ";" | "·" | "—" | "…")
    }
}

const GLYPHS: &[(char, i64, i64)] =
    &[('½', 1, 2), ('¼', 1, 4), ('¾', 3, 4), ('⅓', 1, 3), ('⅔', 2, 3), ('⅛', 1, 8), ('⅜', 3, 8), ('⅝', 5, 8), ('⅞', 7, 8)];

fn ratio(n: i64, d: i64) -> BigRational {
    BigRational::new(BigInt::from(n), BigInt::from(d))
}

type Placed = (char, Option<Span>);

/// Cuts a line.
pub(super) fn tokens(line: &Line, lang: Lang) -> Vec<Token> {
    let mut chars: Vec<Placed> = Vec::new();
    for seg in &line.segs {
        match seg {
            Seg::Gap => chars.push((' ', None)),
            Seg::Slot => chars.push(('\u{fffc}', None)),
            Seg::Typed(text, at) => {
                let copied = at.spans(text.len());
                chars.extend(text.char_indices().map(|(i, c)| (c, Some(if copied { at.part(i, i + c.len_utf8()) } else { *at }))));
            }
        }
    }
    let mut out: Vec<Token> = Vec::new();
    let (mut i, mut glued, mut quoted) = (0, false, false);
    while let Some((c, _)) = chars.get(i) {
        if c.is_whitespace() {
            glued = false;
            i += 1;
            continue;
        }
        let rest = chars.get(i..).unwrap_or(&[]);
        let after_number = glued && out.last().is_some_and(|t| t.number().is_some());
        let (len, what) = match c {
            '\u{fffc}' => (1, What::Other),
            c if c.is_ascii_digit() => digits(rest),
            c if glyph(*c).is_some() => (1, glyph(*c).map_or(What::Mark, What::Digits)),
            c if c.is_alphabetic() || *c == '°' => (word(rest), What::Word),
            '%' => (1, What::Word),
            // An inch or foot mark, unless it closes a quotation.
            '"' | '\'' | '″' | '′' if after_number && !quoted => (1, What::Word),
            '"' => {
                quoted = !quoted;
                (1, What::Mark)
            }
            _ => (1, What::Mark),
        };
        let run = rest.get(..len.max(1)).unwrap_or(rest);
        let text: String = run.iter().map(|(c, _)| *c).collect();
        let lower = text.to_lowercase();
        let what = if what == What::Word { spelled(&lower, lang).map_or(What::Word, What::Spelled) } else { what };
        out.push(Token { what, text, lower, at: cover(run), glued });
        i += len.max(1);
        glued = true;
    }
    out
}

fn cover(run: &[Placed]) -> Option<Span> {
    let first = run.first()?.1?;
    let last = run.last()?.1?;
    Some(Span { end: last.end.max(first.end), ..first })
}

fn glyph(c: char) -> Option<BigRational> {
    GLYPHS.iter().find(|(g, _, _)| *g == c).map(|(_, n, d)| ratio(*n, *d))
}

/// Digits with points, commas and slashes inside; dates, clock times and ordinals are no amounts.
fn digits(rest: &[Placed]) -> (usize, What) {
    let at = |i: usize| rest.get(i).map_or(' ', |(c, _)| *c);
    let mut len = 0;
    while at(len).is_ascii_digit() || (matches!(at(len), '.' | ',' | '/' | ':') && at(len + 1).is_ascii_digit()) {
        len += 1;
    }
    let text: String = rest.iter().take(len).map(|(c, _)| *c).collect();
    let iso = len == 4 && at(4) == '-' && at(5).is_ascii_digit() && at(6).is_ascii_digit() && at(7) == '-' && at(8).is_ascii_digit();
    if iso {
        return (10, What::Other);
    }
    let ending: String = (len..len + 3).map(at).take_while(|c| c.is_alphabetic()).collect();
    if matches!(ending.as_str(), "st" | "nd" | "rd" | "th") {
        return (len + 2, What::Other);
    }
    let value = match text.split_once('/') {
        Some((n, d)) => decimal(n).zip(decimal(d)).filter(|(_, d)| *d != ratio(0, 1)).map(|(n, d)| n / d),
        None => read(&text),
    };
    (len, value.map_or(What::Other, What::Digits))
}

/// `1,5` is one and a half as it is written in Spanish; `1,500` is a thousand and a half.
fn read(text: &str) -> Option<BigRational> {
    match text.split_once(',') {
        Some((_, part)) if part.len() == 3 => decimal(&text.replace(',', "")),
        _ => decimal(&text.replace(',', ".")),
    }
}

/// Length of a word. A hyphen before a digit makes a code (`LF-1`); between words it parts them.
fn word(rest: &[Placed]) -> usize {
    let at = |i: usize| rest.get(i).map_or(' ', |(c, _)| *c);
    let mut len = 1;
    loop {
        let (c, next) = (at(len), at(len + 1));
        let inside = c.is_alphanumeric()
            || matches!(c, '°' | '²' | '³')
            || (matches!(c, '-' | '.') && next.is_ascii_digit())
            || (matches!(c, '\'' | '’' | '/') && next.is_alphabetic());
        if !inside {
            return len;
        }
        len += 1;
    }
}

/// Number words that no dictionary of labels holds: fractions, and what comes after twelve.
const ENGLISH: &[(&str, i64, i64)] = &[
    ("half", 1, 2),
    ("quarter", 1, 4),
    ("dozen", 12, 1),
    ("thirteen", 13, 1),
    ("fourteen", 14, 1),
    ("fifteen", 15, 1),
    ("sixteen", 16, 1),
    ("seventeen", 17, 1),
    ("eighteen", 18, 1),
    ("nineteen", 19, 1),
    ("twenty", 20, 1),
    ("thirty", 30, 1),
    ("forty", 40, 1),
    ("fifty", 50, 1),
    ("sixty", 60, 1),
    ("seventy", 70, 1),
    ("eighty", 80, 1),
    ("ninety", 90, 1),
];
const SPANISH: &[(&str, i64, i64)] = &[
    ("medio", 1, 2),
    ("media", 1, 2),
    ("docena", 12, 1),
    ("trece", 13, 1),
    ("catorce", 14, 1),
    ("quince", 15, 1),
    ("dieciséis", 16, 1),
    ("diecisiete", 17, 1),
    ("dieciocho", 18, 1),
    ("diecinueve", 19, 1),
    ("veinte", 20, 1),
    ("veintiuno", 21, 1),
    ("veintidós", 22, 1),
    ("veintitrés", 23, 1),
    ("veinticuatro", 24, 1),
    ("veinticinco", 25, 1),
    ("veintiséis", 26, 1),
    ("veintisiete", 27, 1),
    ("veintiocho", 28, 1),
    ("veintinueve", 29, 1),
    ("treinta", 30, 1),
    ("cuarenta", 40, 1),
    ("cincuenta", 50, 1),
    ("sesenta", 60, 1),
    ("setenta", 70, 1),
    ("ochenta", 80, 1),
    ("noventa", 90, 1),
    ("cien", 100, 1),
];

/// A number word. The English words count in English texts only: `ten` and `once` mean other things in Spanish, and the reverse.
fn spelled(lower: &str, lang: Lang) -> Option<BigRational> {
    let english = lang == EN;
    if let Some((_, n, d)) = if english { ENGLISH } else { SPANISH }.iter().find(|(w, _, _)| *w == lower) {
        return Some(ratio(*n, *d));
    }
    // `uno` and `una` are articles more often than numbers.
    let first = if english { 1 } else { 2 };
    let of = |l: Lang| l.number(lower).filter(|n| *n >= first);
    // A face in two languages carries Spanish numbers in an English file; `once` alone reads both ways.
    let other = || Lang::all().filter(|l| *l != lang && *l != EN).find_map(of).filter(|n| *n != 1 && lower != "once");
    of(lang).or_else(other).map(|n| ratio(n, 1))
}

/// What stands near a number to make it a quantity.
#[derive(Clone, Copy, Debug)]
pub(super) struct Near {
    /// The unit, if our table has it.
    pub unit: Option<UnitExpr>,
    /// True if the spelling is a unit only right after a number: `in`, `m`, `second`.
    pub touching: bool,
}

const TOUCHING: &[&str] = &[
    "in", "m", "s", "g", "h", "l", "L", "F", "C", "pt", "second", "seconds", "'", "\"", "foot", "yard", "cuarto", "cuartos", "pie", "pies",
    "metro", "lift", "coat", "paso", "capa",
];

const SPELLINGS: &[(&str, &str)] = &[
    ("mins", "min"),
    ("hrs", "h"),
    ("gals", "gal"),
    ("qts", "qt"),
    ("pts", "pt"),
    ("galon", "gal"),
    ("pulg", "in"),
    ("pulgada", "in"),
    ("pulgadas", "in"),
    ("pie", "ft"),
    ("pies", "ft"),
    ("metro", "m"),
    ("metros", "m"),
    ("milímetro", "mm"),
    ("milímetros", "mm"),
    ("centímetros", "cm"),
    ("yarda", "yd"),
    ("yardas", "yd"),
    ("onza", "oz"),
    ("onzas", "oz"),
    ("gramos", "g"),
    ("segundos", "s"),
    ("dia", "day"),
    ("dias", "day"),
    ("bulto", "bag"),
    ("bultos", "bag"),
    ("carga", "load"),
    ("cargas", "load"),
    ("″", "in"),
    ("′", "ft"),
    ("degrees", "°F"),
    ("grados", "°C"),
];

const NOUNS: &[&str] = &[
    "lifts", "lift", "coats", "coat", "steps", "step", "weeks", "week", "pasada", "pasadas", "capa", "capas", "medida", "medidas", "pasos",
    "semana", "semanas", "batch", "batches", "tanda", "tandas",
];

/// The unit or listed noun a word is, if it is one.
pub(super) fn near(token: &Token) -> Option<Near> {
    if token.what != What::Word {
        return None;
    }
    let touching = TOUCHING.contains(&token.text.as_str()) || TOUCHING.contains(&token.lower.as_str());
    let alias = SPELLINGS.iter().find(|(w, _)| *w == token.lower).and_then(|(_, u)| units::find_expr(u));
    let tidy = token.text.replace("ft²", "ft2");
    // A capital at the start of a sentence is no other unit, but `L` and `l`, `C` and `c` are not the same.
    let lower = || if token.lower.chars().count() > 2 { units::find_expr(&token.lower) } else { None };
    if let Some(unit) = alias.or_else(|| units::find_expr(&tidy)).or_else(lower) {
        return Some(Near { unit: Some(unit), touching });
    }
    NOUNS.contains(&token.lower.as_str()).then_some(Near { unit: None, touching })
}
