//! W8: a step lets water in before the mixing time is over.

use crate::finding::{Finding, Severity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::{once_a_place, typed};
use crate::sound::{Check, Ground, Seen};
use crate::source::Span;

/// The check.
pub const CHECK: Check = Check {
    name: "water-before-mix-time",
    ids: &["W8"],
    severities: &[Severity::Stop],
    title: "a step lets water in before the mixing time is over",
    manual: include_str!("water_before_mix_time.md"),
    twins: &[("es", include_str!("water_before_mix_time.es.md"))],
    run,
};

/// Words that let something in. The manual page lists them.
const LETS_IN: &[&str] = &[
    "add",
    "adds",
    "adding",
    "pour",
    "pours",
    "pouring",
    "give",
    "hose",
    "spray",
    "agregue",
    "agréguele",
    "agregar",
    "agrega",
    "añada",
    "añádale",
    "añadir",
    "eche",
    "échele",
    "echar",
    "vierta",
    "viértale",
    "verter",
    "póngale",
    "dele",
    "déle",
    "rocíe",
];
/// Words that let water in and need not name it, and the words that then follow: `splash some in` does, `splashes burn` does not.
const SPLASHES: &[&str] = &["splash", "dash", "squirt", "trickle", "salpique", "chorro", "chorrito"];
const SPLASHED: &[&str] = &["some", "in", "more", "a", "it", "of", "water", "un", "de", "agua", "más"];
/// Water.
const WATER: &[&str] =
    &["water", "cup", "cups", "pint", "pints", "quart", "quarts", "gallon", "gallons", "agua", "taza", "tazas", "pinta", "cuarto", "galón"];
/// Words before the water that make it what something goes into: `add the mortar to the water`.
const INTO: &[&str] = &["to", "into", "in", "al", "en", "sobre"];
const ARTICLES: &[&str] = &["the", "a", "start", "el", "la", "this", "that"];
/// Words that turn the next verb round.
const NOT: &[&str] = &["no", "not", "never", "don't", "nobody", "before", "without", "nunca", "ni", "jamás", "nadie", "antes", "sin"];
/// Words that may stand between the one and the other: `nobody may ever add`, `no se le agregue`.
const BETWEEN: &[&str] = &[
    "or", "and", "a", "an", "any", "ever", "you", "one", "may", "must", "should", "to", "o", "y", "se", "le", "les", "lo", "la", "me",
    "más", "vuelva", "debe", "puede", "de", "que", "they", "anyone", "usted",
];
/// Words of a mixing step that has no slot for its time.
const TIMER: &[&str] = &["timer", "cronómetro"];
const MIXING: &[&str] = &["mix", "mixing", "mixes", "bata", "batir", "bate", "batido"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.seen.iter().flat_map(|seen| one(ground, seen)).collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let all: Vec<Sentence> = seen.sentences().iter().filter(|s| s.step.is_some()).cloned().collect();
    let has = |s: &Sentence, name: &str| s.values().filter_map(|i| seen.doc.values.get(i)).any(|u| u.value.figure.ends_with(name));
    let timed = |s: &Sentence| has(s, ".mixing");
    let by_words = |s: &Sentence| {
        let any = |list: &[&str]| s.pieces.iter().any(|p| matches!(p, Piece::Word(w, _) if list.contains(&w.as_str())));
        any(TIMER) && any(MIXING)
    };
    let Some(mixing) = all.iter().position(timed).or_else(|| all.iter().position(by_words)) else { return Vec::new() };
    let early = all.get(..mixing).unwrap_or(&[]);
    let starts = |s: &Sentence| has(s, ".start_water");
    // The step of the start water is the one that must let water in.
    let first = early.iter().find(|s| starts(s)).or_else(|| early.iter().find(|s| lets_in(s).is_some())).and_then(|s| s.step);
    let mut found = Vec::new();
    for sentence in early.iter().filter(|s| s.step != first) {
        let step_slot = sentence.values().filter_map(|i| seen.doc.values.get(i)).find(|u| u.value.figure.ends_with(".step"));
        let at = lets_in(sentence).or_else(|| step_slot.filter(|_| !turned_anywhere(sentence)).map(|u| u.at));
        let (Some(at), Some(number)) = (at, sentence.step) else { continue };
        found.push(finding(ground, seen, number, at, all.get(mixing)));
    }
    found
}

/// The place of the word that lets water in, if one does.
fn lets_in(sentence: &Sentence) -> Option<Span> {
    let word = |p: &Piece| if let Piece::Word(w, _) = p { Some(w.clone()) } else { None };
    let words: Vec<Option<String>> = sentence.pieces.iter().map(word).collect();
    let is = |i: usize, list: &[&str]| words.get(i).and_then(Option::as_deref).is_some_and(|w| list.contains(&w));
    let into = |i: usize| (0..i).rev().find(|k| !is(*k, ARTICLES)).is_some_and(|k| is(k, INTO));
    let water = (0..words.len()).find(|i| is(*i, WATER) && !into(*i));
    for i in 0..words.len() {
        if is(i, SPLASHES) && is(i + 1, SPLASHED) && !turned(&words, i) {
            return place(sentence, i);
        }
        if is(i, LETS_IN) && !turned(&words, i) {
            // `Add no water`: the turning word stands between the verb and the water.
            let open = water.is_some_and(|w| w < i || !(i + 1..w).any(|k| is(k, NOT)));
            if open {
                return place(sentence, i);
            }
        }
    }
    None
}

/// True if a turning word stands before the word, with nothing between but small words and other such verbs.
fn turned(words: &[Option<String>], at: usize) -> bool {
    for word in words.get(..at).unwrap_or(&[]).iter().rev() {
        let Some(word) = word.as_deref() else { return false };
        if NOT.contains(&word) {
            return true;
        }
        if ![BETWEEN, LETS_IN, SPLASHES].iter().any(|list| list.contains(&word)) {
            return false;
        }
    }
    false
}

fn turned_anywhere(sentence: &Sentence) -> bool {
    sentence.pieces.iter().any(|p| matches!(p, Piece::Word(w, _) if NOT.contains(&w.as_str())))
}

fn place(sentence: &Sentence, at: usize) -> Option<Span> {
    sentence.pieces.get(at).and_then(Piece::place)
}

fn finding(ground: &Ground<'_>, seen: &Seen<'_>, number: u64, at: Span, mixing: Option<&Sentence>) -> Finding {
    let slot = mixing.and_then(|s| s.values().filter_map(|i| seen.doc.values.get(i)).find(|u| u.value.figure.ends_with(".mixing")));
    // The least time is the mix's own; a text without its slot still speaks of one mix or of several.
    let own = seen.subject.mix(ground.job).map(|m| format!("{}.mixing", m.id));
    let id = slot.map(|u| u.value.figure.clone()).or(own);
    let least = id.as_deref().and_then(|id| crate::sound::told::text(ground, id, seen.voice.metric));
    let time = least.clone().map_or("the mixing time".to_owned(), |t| format!("{t} of mixing"));
    let mut finding = Finding::new(CHECK.name, Severity::Stop, format!("step {number} lets water in before {time}"))
        .at(at, "lets water in")
        .source("mix sheet: least mixing time; common practice: it always looks dry before it wets out");
    if let Some(step) = mixing.and_then(|s| s.step) {
        let until = least.map_or(String::new(), |t| format!(", after {}", typed(&t)));
        finding = finding.help(format!("move it below step {step}{until}, or take it out"));
    }
    let related = slot.map(|u| u.at).or_else(|| mixing.and_then(|s| s.pieces.iter().find_map(Piece::place)));
    if let Some(span) = related {
        finding = finding.related(span, "the mixing time runs here");
    }
    match id {
        Some(id) => finding.figure(id),
        None => finding,
    }
}
