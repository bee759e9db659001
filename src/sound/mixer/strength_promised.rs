//! M16: a strength is printed as a promise.

use crate::finding::{Finding, Severity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};

use super::telling::{self, figure, place};

/// The check.
pub const CHECK: Check = Check {
    name: "strength-promised",
    ids: &["M16"],
    severities: &[Severity::Warn],
    title: "a strength is printed as a promise",
    manual: include_str!("strength_promised.md"),
    twins: &[("es", include_str!("strength_promised.es.md"))],
    run,
};

/// Words that promise. The manual page lists them.
const PROMISES: &[&str] = &[
    "will be",
    "will have",
    "will reach",
    "will test",
    "reaches",
    "reach",
    "attains",
    "achieves",
    "develops",
    "guaranteed",
    "guarantee",
    "guarantees",
    "gets to",
    "cures to",
    "hardens to",
    "tests at",
    "exceeds",
    "será de",
    "será",
    "tendrá",
    "alcanza",
    "alcanzará",
    "alcance",
    "llega a",
    "llegará a",
    "garantiza",
    "garantizada",
    "garantizado",
    "garantizamos",
    "desarrolla",
    "supera",
    "da más de",
];
/// Units of strength as people type them.
const UNITS: &[&str] = &["psi", "mpa", "ksi"];
/// What a strength is told by: its unit, or the slot that prints the class.
const STRENGTHS: &[&str] = &["psi", "mpa", "ksi", "#strength_class"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts_of_mixes().filter(|s| s.may_say(&[PROMISES, STRENGTHS])).flat_map(|seen| one(ground, seen)).collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for sentence in seen.sentences() {
        let (Some(number), Some((at, promise))) = (strength(seen, sentence), promise(sentence)) else { continue };
        let Some(span) = place(seen, sentence, at) else { continue };
        let said = said(ground, seen, sentence, number);
        let slot = telling::mixes(ground.job, seen).iter().any(|m| m.strength_class.is_some());
        let instead = if slot { "`{{ mix.strength_class }} class, per mix sheet`" } else { "the class of the mix sheet, as its name" };
        let mut finding =
            Finding::new(CHECK.name, Severity::Warn, format!("`{promise}` {said} is a promise, a strength class is only a name"))
                .at(span, "promises")
                .source("ASTM C270: tests in a laboratory do not speak for the mortar on a wall (recalled, not verified against a copy)")
                .help(format!("print {instead}, and promise nothing"))
                .value(promise);
        if let Some(number_at) = place(seen, sentence, number).filter(|p| *p != span) {
            finding = finding.related(number_at, "this strength");
        }
        found.push(finding);
    }
    found
}

/// Where a strength stands: a printed one, or a number with a unit of strength behind it.
fn strength(seen: &Seen<'_>, sentence: &Sentence) -> Option<usize> {
    (0..sentence.pieces.len()).find(|i| match sentence.pieces.get(*i) {
        Some(Piece::Value(_)) => figure(seen, sentence, *i).is_some_and(|id| id.ends_with(".strength_class")),
        Some(Piece::Word(w, _)) => w.starts_with(|c: char| c.is_ascii_digit()) && sentence.is(i + 1, UNITS),
        _ => false,
    })
}

/// Where a promise begins, if nothing turns it round.
fn promise(sentence: &Sentence) -> Option<(usize, &'static str)> {
    let found = PROMISES.iter().filter_map(|p| telling::phrase(sentence, p).map(|at| (at, *p)));
    found.filter(|(at, _)| !telling::negated(sentence, *at)).min_by_key(|(at, _)| *at)
}

fn said(ground: &Ground<'_>, seen: &Seen<'_>, sentence: &Sentence, at: usize) -> String {
    match figure(seen, sentence, at) {
        Some(id) => crate::sound::told::text(ground, id, seen.voice.metric).unwrap_or_default(),
        None => format!("{} {}", sentence.word(at).unwrap_or_default(), sentence.word(at + 1).unwrap_or_default()),
    }
}
