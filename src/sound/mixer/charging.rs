//! What a sentence says goes into the mixer, in the order in which it says so.

use crate::sound::Seen;
use crate::sound::text::{Piece, Sentence};
use crate::source::Span;

use super::telling::{self, ADDITIVE, HALF, MORTAR, PUTS_IN, REST, figure, place};

/// What goes in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// The start water.
    Water,
    /// The first half of the mortar.
    Half,
    /// The additive.
    Additive,
    /// Nothing: it is mixed to a slurry.
    Slurry,
    /// The rest of the mortar.
    Rest,
}

impl Kind {
    /// The word of the mix's `order`.
    pub(super) fn key(self) -> &'static str {
        match self {
            Kind::Water => "water",
            Kind::Half => "half mortar",
            Kind::Additive => "additive",
            Kind::Slurry => "slurry",
            Kind::Rest => "rest",
        }
    }

    /// The same in a sentence.
    pub(super) fn said(self) -> &'static str {
        match self {
            Kind::Water => "the water",
            Kind::Half => "half of the mortar",
            Kind::Additive => "the additive",
            Kind::Slurry => "the slurry",
            Kind::Rest => "the rest of the mortar",
        }
    }
}

/// One of them, with its place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Event {
    /// What goes in.
    pub kind: Kind,
    /// Where the text says so.
    pub at: Option<Span>,
}

const WATER: &[&str] = &["water", "agua"];
const SLURRY: &[&str] = &["slurry", "lechada"];
/// What else than water a text may have go in: words, and slots.
pub(super) const POWDERS: [&[&str]; 5] = [ADDITIVE, SLURRY, HALF, REST, &["#mortar_first", "#mortar_rest"]];
const BAG: &[&str] = &["bag", "bags", "saco", "sacos"];
/// A sentence with one of these weighs or reads a bag; nothing goes in.
const WEIGHS: &[&str] = &[
    "scale", "weigh", "weighs", "weight", "read", "check", "stack", "keep", "báscula", "pese", "peso", "pesa", "lea", "revise", "apile",
    "separe",
];
/// Words that look back: `after the slurry` puts nothing in.
const AFTER: &[&str] = &["after", "once", "when", "until", "tras", "hasta", "cuando"];
/// How far from a half its mortar may stand: `half of the mortar`, `mortar, 1 bag, half of it`.
const NEAR: usize = 5;

/// What a sentence puts in, in its order.
pub(super) fn events(seen: &Seen<'_>, sentence: &Sentence) -> Vec<Event> {
    if sentence.has(WEIGHS) {
        return Vec::new();
    }
    let found: Vec<(usize, Kind)> = (0..sentence.pieces.len()).filter_map(|i| Some((i, kind(seen, sentence, i)?))).collect();
    // A word alone may only be spoken of; beside others, behind a verb or with its amount it goes in.
    let others = |own: Kind| {
        let mut kinds: Vec<Kind> = Vec::new();
        for (_, kind) in found.iter().filter(|(_, k)| *k != own) {
            if !kinds.contains(kind) {
                kinds.push(*kind);
            }
        }
        kinds.len()
    };
    let told = |i: usize| {
        let verb = (0..i).rev().find(|k| sentence.is(*k, PUTS_IN));
        verb.is_some_and(|v| !telling::turned(sentence, v, PUTS_IN))
    };
    let amount = |end: &str| telling::prints(seen, sentence, end);
    let counts = |i: usize, kind: Kind| match kind {
        Kind::Water => matches!(sentence.pieces.get(i), Some(Piece::Value(_))) || told(i) || others(kind) >= 2,
        Kind::Additive => told(i) || amount(".additive") || others(kind) >= 1,
        Kind::Half | Kind::Slurry | Kind::Rest => true,
    };
    let kept = found.iter().filter(|(i, kind)| counts(*i, *kind) && !looks_back(sentence, *i));
    kept.map(|(i, kind)| Event { kind: *kind, at: place(seen, sentence, *i) }).collect()
}

fn kind(seen: &Seen<'_>, sentence: &Sentence, i: usize) -> Option<Kind> {
    if let Some(id) = figure(seen, sentence, i) {
        let ends = [
            (".start_water", Kind::Water),
            (".half_start_water", Kind::Water),
            (".mortar_first", Kind::Half),
            (".mortar_rest", Kind::Rest),
        ];
        return ends.iter().find(|(end, _)| id.ends_with(end)).map(|(_, kind)| *kind);
    }
    let near = |list: &[&str], stop: &[&str]| {
        let ahead = (i + 1..=i + NEAR).take_while(|k| !sentence.is(*k, stop)).any(|k| sentence.is(k, list));
        let behind = (i.saturating_sub(NEAR)..i).rev().take_while(|k| !sentence.is(*k, stop)).any(|k| sentence.is(k, list));
        ahead || behind
    };
    if sentence.is(i, WATER) {
        return Some(Kind::Water);
    }
    if sentence.is(i, ADDITIVE) {
        return Some(Kind::Additive);
    }
    if sentence.is(i, SLURRY) {
        return Some(Kind::Slurry);
    }
    if sentence.is(i, HALF) && near(MORTAR, ADDITIVE) {
        return Some(Kind::Half);
    }
    let of_it = [MORTAR, ADDITIVE, SLURRY, BAG].iter().any(|list| sentence.has(list));
    (sentence.is(i, REST) && of_it).then_some(Kind::Rest)
}

/// True if the word is only looked back at, or turned round, in its clause.
fn looks_back(sentence: &Sentence, at: usize) -> bool {
    let clause = (0..at).rev().take_while(|i| !matches!(sentence.pieces.get(*i), Some(Piece::Mark)));
    // `Mix until slurry` makes one; the words below it look back.
    let slurry = sentence.is(at, SLURRY);
    let back = clause.into_iter().any(|i| {
        let made = slurry && sentence.is(i, &["until", "hasta"]);
        !made && (sentence.is(i, AFTER) || sentence.is(i, &["después"]) && sentence.is(i + 1, &["de", "del"]))
    });
    back || telling::negated(sentence, at)
}
