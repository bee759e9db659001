//! The typed-number audit: every amount an author typed in shown text.
//!
//! Universe: all text of a document but slot output (headings, cells, boxes, code included), and texts typed inside
//! tags, except the arguments of `fixed`, `over` and `under`. Bare numbers inside tags are left out because they
//! cannot print: a slot refuses to. Candidate: a number, in digits or words, within three words of a unit or listed
//! noun in one sentence. Step numbers, dates, clock times, codes and standards' numbers are none.

use std::sync::OnceLock;

use crate::job::{Body, Text};
use crate::quantity::{Dim, Quantity};
use crate::source::Span;
use crate::words::Lang;

use super::amount::{Amount, amount, is, within_reach};
use super::block::Doc;
use super::flat::{self, Line, Seg};
use super::offsets::span;
use super::tags::{Piece, TokKind, cut, slice};
use super::tokens::{Token, What, near, tokens};

/// One amount typed by hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Typed {
    /// Its characters, unit included.
    pub span: Span,
    /// The characters, runs of space folded.
    pub text: String,
    /// Number and unit, where both can be told.
    pub quantity: Option<Quantity>,
    /// The phrase around it, lower case, slot output as `…`.
    pub words: String,
    /// The whole sentence, with head and first cell for a table cell, lower case.
    pub around: String,
    /// True for an amount of water.
    pub is_water: bool,
    /// Language of the text.
    pub lang: Lang,
    /// Slots that the words around it may mean, found once; start it empty.
    pub told: OnceLock<Vec<(bool, Vec<String>)>>,
}

/// Words after which a number names a thing: `rung 0`, `step 3`, `OSHA 29`.
const LABELS: &[&str] = &[
    "step",
    "rung",
    "row",
    "box",
    "page",
    "chapter",
    "card",
    "figure",
    "table",
    "line",
    "no",
    "number",
    "section",
    "part",
    "type",
    "class",
    "revision",
    "rev",
    "paso",
    "renglón",
    "casilla",
    "página",
    "capítulo",
    "tarjeta",
    "figura",
    "tabla",
    "línea",
    "número",
    "sección",
    "tipo",
    "clase",
    "osha",
    "astm",
    "ansi",
    "cfr",
    "iso",
    "en",
    "aci",
    "§",
    "#",
    "nist",
];

/// Nouns that `half` goes with as a name (`half load`), not as an amount.
const HALVED: &[&str] = &["load", "loads", "bag", "mortar", "carga", "juego", "juegos", "saco", "mortero", "additive", "aditivo"];

/// Words before `one` that make it a pronoun.
const PRONOUN: &[&str] =
    &["no", "the", "any", "each", "every", "this", "that", "which", "another", "some", "last", "next", "first", "wet", "dry", "old", "new"];

/// Every amount typed in a document, in order of its place, each once however often a loop repeats it.
pub fn typed_numbers(doc: &Doc, body: &Body, lang: Lang) -> Vec<Typed> {
    let mut lines = flat::lines(doc, body);
    lines.extend(literals(body));
    let mut out: Vec<Typed> = Vec::new();
    for line in &lines {
        for typed in in_line(line, lang) {
            if !out.iter().any(|o| o.span == typed.span) {
                out.push(typed);
            }
        }
    }
    out.sort_by_key(|t| t.span);
    out
}

/// Every amount typed in a text that stands outside a body: a title, a signal word, a name.
pub fn typed_in(text: &Text, lang: Lang) -> Vec<Typed> {
    in_line(&Line { segs: vec![Seg::Typed(text.text.clone(), text.at)], around: String::new() }, lang)
}

/// Texts typed inside tags, a line each.
fn literals(body: &Body) -> Vec<Line> {
    let offset = usize::try_from(body.offset).unwrap_or(0);
    let mut out = Vec::new();
    for piece in cut(&body.text).0 {
        let Piece::Tag(tag) = piece else { continue };
        let mut quiet = 0_usize;
        let mut last = String::new();
        for tok in &tag.toks {
            let word = slice(&body.text, &tok.at);
            match word.as_str() {
                "(" if quiet > 0 || ["fixed", "over", "under"].contains(&last.as_str()) => quiet += 1,
                ")" => quiet = quiet.saturating_sub(1),
                _ => {}
            }
            if tok.kind == TokKind::Text && quiet == 0 && tok.at.len() > 2 {
                let at = tok.at.start + 1..tok.at.end - 1;
                let place = span(body.file, offset + at.start..offset + at.end);
                out.push(Line { segs: vec![Seg::Typed(slice(&body.text, &at), place)], around: String::new() });
            }
            last = word;
        }
    }
    out
}

pub(super) fn in_line(line: &Line, lang: Lang) -> Vec<Typed> {
    let all = tokens(line, lang);
    let mut out = Vec::new();
    let mut i = 0;
    while i < all.len() {
        let Some(amount) = amount(&all, i) else {
            i += 1;
            continue;
        };
        if candidate(&all, &amount) {
            out.extend(typed(&all, &amount, line, lang));
        }
        i = amount.end.max(i + 1);
    }
    out
}

fn candidate(all: &[Token], amount: &Amount) -> bool {
    let Some(first) = all.get(amount.start) else { return false };
    let back = |n: usize| amount.start.checked_sub(n).and_then(|k| all.get(k));
    let before = back(1).map_or("", |t| t.lower.as_str());
    let after = all.get(amount.end).map_or("", |t| t.lower.as_str());
    if amount.article {
        // `a gallon of water` is an amount, `not a cup more` is none; another unit must name a figure.
        let of_water = matches!(after, "of" | "de" | "more") && is(all, amount.end + 1, &["water", "agua"]);
        return of_water && !matches!(before, "not" | "no" | "never" | "ni") || names_a_figure(all, amount);
    }
    if !amount.direct {
        // `29 CFR 1926.451(g)(1)`, `rung 0`, `No. 4`, `2 Mar 2026`.
        let dotted = back(1).is_some_and(|t| t.text == ".") && back(2).is_some_and(|t| t.lower == "no");
        let paragraph = back(1).is_some_and(|t| t.text == "(" && t.glued);
        if LABELS.contains(&before) || dotted || paragraph || after == "cfr" || (first.glued && back(1).is_some_and(|t| t.text == "#")) {
            return false;
        }
        let year = first.text.len() == 4 && (first.text.starts_with("19") || first.text.starts_with("20"));
        if year || month(after) || month(before) {
            return false;
        }
    }
    if matches!(first.what, What::Spelled(_)) {
        // `entre dos` counts people.
        if !amount.direct && matches!(before, "entre" | "between") {
            return false;
        }
        // `in one go`, `of one lot`, `one lift is thin`: nothing is measured.
        let counted = amount.terms.first().is_some_and(|(_, unit)| unit.is_some_and(|u| u.symbol() != "lift"));
        if first.lower == "one" && !(amount.direct && counted) {
            return false;
        }
        // `the two bags` are those that were spoken of.
        if matches!(before, "los" | "las" | "the" | "both" | "these") && amount.quantity().is_none_or(|q| q.dim == Dim::NONE) {
            return false;
        }
        if first.lower == "one" && (PRONOUN.contains(&before) || matches!(after, "of" | "another" | "side")) {
            return false;
        }
        // `half load`, `half this bag`, `half of the mortar` name a part; `half a bag` and `half load of 40 lb` are amounts.
        if matches!(first.lower.as_str(), "half" | "medio" | "media") {
            let mut i = amount.start + 1;
            while is(all, i, &["-", "of", "the", "this", "that", "each", "every", "del", "de", "el", "ese", "este", "cada", "your"]) {
                i += 1;
            }
            let measured = all.get(i + 1).is_some_and(|t| t.number().is_some() || near(t).is_some_and(|n| n.unit.is_some()));
            if is(all, i, HALVED) && !measured {
                return false;
            }
        }
    }
    amount.direct || within_reach(all, amount)
}

/// Words before `an hour`, `a week` that make it the value of a figure.
const NAMED: &[&str] = &["is", "es", "for", "de", "son"];

/// True if an article's amount is said to be a figure: `open time is an hour`, `keep it moist for a week`.
fn names_a_figure(all: &[Token], amount: &Amount) -> bool {
    let Some(before) = amount.start.checked_sub(1) else { return false };
    let sentence = all.get(..before).unwrap_or(&[]).rsplit(Token::stops).next().unwrap_or(&[]);
    let words: Vec<&str> = sentence.iter().map(|t| t.lower.as_str()).collect();
    let words = words.join(" ");
    let names = ["open time", "wet cure", "moist", "wet", "tiempo útil", "cura húmeda", "húmeda", "mojada"];
    is(all, before, NAMED) && names.iter().any(|n| format!(" {words} ").contains(&format!(" {n} ")))
}

/// A month, in full or as the dictionaries cut it; `may`, `mar` and the like only where a date would put them.
fn month(word: &str) -> bool {
    let full = [
        "january",
        "february",
        "march",
        "april",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
        "enero",
        "febrero",
        "marzo",
        "abril",
        "mayo",
        "junio",
        "julio",
        "agosto",
        "septiembre",
        "octubre",
        "noviembre",
        "diciembre",
    ];
    full.contains(&word) || Lang::all().any(|l| (1..=12).any(|m| l.text(&format!("month.{m}")).to_lowercase() == word))
}

fn typed(all: &[Token], amount: &Amount, line: &Line, lang: Lang) -> Option<Typed> {
    let used = all.get(amount.start..amount.end)?;
    let span = Span { end: used.last()?.at?.end, ..used.first()?.at? };
    let text: String =
        used.iter().enumerate().map(|(i, t)| if i > 0 && !t.glued { format!(" {}", t.text) } else { t.text.clone() }).collect();
    let around = |parts: &dyn Fn(&Token) -> bool| {
        let start = all.get(..amount.start)?.iter().rposition(parts).map_or(0, |i| i + 1);
        let end = all.iter().skip(amount.end).position(parts).map_or(all.len(), |i| amount.end + i);
        let words = all.get(start..end)?.iter().map(|t| if t.what == What::Other && t.at.is_none() { "…" } else { t.lower.as_str() });
        Some(words.collect::<Vec<_>>().join(" "))
    };
    let words = around(&|t| t.stops() || (t.what == What::Mark && matches!(t.text.as_str(), "," | ":" | "(" | ")")))?;
    let sentence = format!("{} {}", around(&Token::stops)?, line.around.to_lowercase());
    let quantity = amount.quantity();
    let is_water = water(quantity.as_ref(), amount, &words, &sentence);
    Some(Typed { span, text, quantity, words, around: sentence.trim().to_owned(), is_water, lang, told: OnceLock::new() })
}

/// Volumes that a pail or jug holds are water unless the sentence speaks of something else; a mass is water if the phrase says so.
fn water(quantity: Option<&Quantity>, amount: &Amount, words: &str, sentence: &str) -> bool {
    let says = |text: &str| text.split(' ').any(|w| matches!(w, "water" | "agua" | "wet" | "moje"));
    let hints = [
        "start", "inicial", "limit", "límite", "step", "medida", "add", "added", "agregue", "agregada", "pour", "eche", "échele", "pail",
        "cubeta",
    ];
    let hint = |text: &str| text.split(' ').any(|w| hints.contains(&w));
    match quantity.map(|q| q.dim) {
        Some(Dim::VOLUME) => {
            let liquid = ["gal", "qt", "pt", "cup", "fl oz", "L", "mL"];
            let poured = amount.terms.iter().all(|(_, u)| u.is_some_and(|u| liquid.contains(&u.symbol().as_str())));
            poured && (says(sentence) || hint(sentence))
        }
        Some(Dim::MASS) => says(words),
        Some(_) => false,
        None => says(words),
    }
}
