//! W8: a step lets water in before the mixing time is over.

use crate::finding::{Finding, Severity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::{once_a_place, typed};
use crate::sound::{Check, Ground, Seen};
use crate::source::Span;

use super::pouring::{NOT, lets_in};

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

/// Words of a mixing step that has no slot for its time.
const TIMER: &[&str] = &["timer", "cronómetro"];
const MIXING: &[&str] = &["mix", "mixing", "mixes", "bata", "batir", "bate", "batido"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts_of_mixes().flat_map(|seen| one(ground, seen)).collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let all: Vec<Sentence> = seen.sentences().iter().filter(|s| s.step.is_some()).cloned().collect();
    let has = |s: &Sentence, name: &str| s.values().filter_map(|i| seen.doc.values.get(i)).any(|u| u.figure.ends_with(name));
    let timed = |s: &Sentence| has(s, ".mixing");
    let by_words = |s: &Sentence| s.has(TIMER) && s.has(MIXING);
    let Some(mixing) = all.iter().position(timed).or_else(|| all.iter().position(by_words)) else { return Vec::new() };
    let early = all.get(..mixing).unwrap_or(&[]);
    let starts = |s: &Sentence| has(s, ".start_water");
    // The step of the start water is the one that must let water in.
    let first = early.iter().find(|s| starts(s)).or_else(|| early.iter().find(|s| lets_in(s).is_some())).and_then(|s| s.step);
    let mut found = Vec::new();
    for sentence in early.iter().filter(|s| s.step != first) {
        let step_slot = sentence.values().filter_map(|i| seen.doc.values.get(i)).find(|u| u.figure.ends_with(".step"));
        let at = lets_in(sentence).or_else(|| step_slot.filter(|_| !sentence.has(NOT)).map(|u| u.at));
        let (Some(at), Some(number)) = (at, sentence.step) else { continue };
        found.push(finding(ground, seen, number, at, all.get(mixing)));
    }
    found
}

fn finding(ground: &Ground<'_>, seen: &Seen<'_>, number: u64, at: Span, mixing: Option<&Sentence>) -> Finding {
    let slot = mixing.and_then(|s| s.values().filter_map(|i| seen.doc.values.get(i)).find(|u| u.figure.ends_with(".mixing")));
    // The least time is the mix's own; a text without its slot still speaks of one mix or of several.
    let own = seen.subject.mix(ground.job).map(|m| format!("{}.mixing", m.id));
    let id = slot.map(|u| u.figure.to_string()).or(own);
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
