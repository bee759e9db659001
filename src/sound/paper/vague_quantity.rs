//! D16: a step gives a vague quantity.

use crate::finding::{Finding, Severity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground};
use crate::source::Span;
use crate::words::Lang;

use super::number_without_unit::is_number;

/// The check.
pub const CHECK: Check = Check {
    name: "vague-quantity",
    ids: &["D16"],
    severities: &[Severity::Warn],
    title: "a step gives a vague quantity",
    manual: include_str!("vague_quantity.md"),
    twins: &[("es", include_str!("vague_quantity.es.md"))],
    run,
};

/// Words that make the next number a guess.
const ABOUT: &[&str] =
    &["about", "around", "roughly", "approximately", "nearly", "almost", "unos", "unas", "como", "aproximadamente", "casi", "alrededor"];
/// Words for no number at all, and what must follow.
const FEW: &[&str] =
    &["a few", "a couple of", "a couple", "several", "a handful of", "un par de", "unos cuantos", "unas cuantas", "varios", "varias"];
/// `some mortar`, `un poco de mortero`.
const SOME: &[&str] = &["some", "a bit of", "a little", "enough", "un poco de", "algo de", "poquito"];
/// What a few can be counted of.
const COUNTED: &[&str] = &[
    "minutes", "minute", "hours", "days", "inches", "feet", "cups", "pints", "quarts", "gallons", "pounds", "bags", "loads", "batches",
    "coats", "lifts", "layers", "pins", "times", "minutos", "horas", "días", "pulgadas", "pies", "tazas", "pintas", "galones", "libras",
    "sacos", "juegos", "tandas", "capas", "pasadas", "clavos", "veces",
];
/// What some can be taken of. Water in a mixing step has a check of its own.
const TAKEN: &[&str] = &[
    "mortar", "additive", "mix", "mud", "sand", "cement", "powder", "pigment", "sealer", "mortero", "aditivo", "mezcla", "arena",
    "cemento", "polvo", "pigmento", "sellador",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.texts().filter(|seen| [ABOUT, FEW, SOME].iter().any(|list| seen.may_say(&[list]))) {
        let steps = seen.sentences().iter().filter(|s| s.step.is_some());
        found.extend(steps.filter_map(|s| one(s, seen.voice.lang)));
    }
    once_a_place(found)
}

fn one(sentence: &Sentence, lang: Lang) -> Option<Finding> {
    let pieces = &sentence.pieces;
    let word = |i: usize| sentence.word(i).unwrap_or("");
    let starts = |i: usize, phrase: &str| phrase.split(' ').enumerate().all(|(n, w)| word(i + n) == w).then(|| phrase.split(' ').count());
    let any = |i: usize, list: &[&str]| list.iter().filter_map(|p| starts(i, p)).max();
    let amount = |i: usize| matches!(pieces.get(i), Some(Piece::Value(_))) || is_number(word(i), lang);
    for i in 0..pieces.len() {
        let about = ABOUT.contains(&word(i)) && (amount(i + 1) || matches!(word(i + 1), "a" | "de") && is_number(word(i + 2), lang));
        let few = any(i, FEW).is_some_and(|n| COUNTED.contains(&word(i + n)));
        let some = any(i, SOME).is_some_and(|n| TAKEN.contains(&word(i + n)));
        if !(about || few || some) {
            continue;
        }
        let n = any(i, FEW).or(any(i, SOME)).unwrap_or(1);
        let said: Vec<&str> = (i..=i + n).map(|k| if word(k).is_empty() { "…" } else { word(k) }).collect();
        let title = format!("step {} says `{}`", sentence.step.unwrap_or(0), said.join(" "));
        let mut finding = Finding::new(CHECK.name, Severity::Warn, title)
            .source("common practice, no source: vague words print as confident cards")
            .help("give the number by a slot or `fixed`, or the mark where it stops: `to the stop line`, `until it holds a mark`");
        if let Some(at) = pieces.get(i).and_then(Piece::place) {
            let end = (i..=i + n).filter_map(|k| pieces.get(k).and_then(Piece::place)).map(|s| s.end).max().unwrap_or(at.end);
            finding = finding.at(Span { end: end.max(at.end), ..at }, "how much?");
        }
        return Some(finding);
    }
    None
}
