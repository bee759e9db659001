//! M5: a text mixes for less time than the mix needs.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::parse::{self, Said};
use crate::quantity::{Dim, Quantity};
use crate::sound::text::Sentence;
use crate::sound::told::{number, once_a_place, related_value};
use crate::sound::{Check, Ground, Seen};

use super::telling::{self, place, prints};

/// The check.
pub const CHECK: Check = Check {
    name: "mixing-told-short",
    ids: &["M5"],
    severities: &[Severity::Stop],
    title: "a text mixes for less time than the mix needs",
    manual: include_str!("mixing_told_short.md"),
    twins: &[("es", include_str!("mixing_told_short.es.md"))],
    run,
};

const MIXES: &[&str] = &[
    "mix",
    "mixing",
    "mixes",
    "mixed",
    "blend",
    "run",
    "bata",
    "bate",
    "batir",
    "batido",
    "batirla",
    "bátala",
    "mezcle",
    "mezcla",
    "mezclar",
    "mézclela",
];
const UNITS: &[(&str, &str)] = &[
    ("min", "min"),
    ("mins", "min"),
    ("minute", "min"),
    ("minutes", "min"),
    ("minuto", "min"),
    ("minutos", "min"),
    ("sec", "s"),
    ("seconds", "s"),
    ("segundos", "s"),
    ("s", "s"),
];
/// Numbers as words.
const COUNTS: &[(&str, &str)] = &[
    ("a", "1"),
    ("one", "1"),
    ("two", "2"),
    ("three", "3"),
    ("four", "4"),
    ("five", "5"),
    ("un", "1"),
    ("dos", "2"),
    ("tres", "3"),
    ("cuatro", "4"),
    ("cinco", "5"),
    ("half", "1/2"),
    ("medio", "1/2"),
];
/// Words of the short mixing that follows a late step of water, and of other work.
const AGAIN: &[&str] = &[
    "more", "again", "another", "extra", "further", "step", "más", "otra", "otro", "vuelva", "medida", "vez", "dry", "seco", "slurry",
    "lechada",
];
const RANGE: &[&str] = &["to", "or", "and", "a", "o", "y"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts_of_mixes().filter(|s| s.may_say(&[MIXES])).flat_map(|seen| one(ground, seen)).collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    // A text that speaks of every mix of a site is too short for none as long as it is long enough for one.
    let mixes = telling::mixes(ground.job, seen);
    let Some(mix) = mixes.into_iter().min_by(|a, b| a.mixing.least.value().si.compare(&b.mixing.least.value().si)) else {
        return Vec::new();
    };
    let sentences = seen.sentences().iter();
    sentences.filter_map(|sentence| sentence_of(ground, seen, sentence, mix)).collect()
}

fn sentence_of(ground: &Ground<'_>, seen: &Seen<'_>, sentence: &Sentence, mix: &Mix) -> Option<Finding> {
    if prints(seen, sentence, ".after_step") || sentence.has(AGAIN) {
        return None;
    }
    let (at, (time, said)) = (0..sentence.pieces.len()).find_map(|i| Some((i, amount(sentence, i)?)))?;
    let verb = (0..at).rev().find(|i| sentence.is(*i, MIXES))?;
    if telling::turned(sentence, verb, MIXES) || !time.si.compare(&mix.mixing.least.value().si).is_lt() {
        return None;
    }
    let least = number(mix.mixing.least.node(), "min");
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("the text mixes {said}, {} needs {least}", mix.name.text))
        .at(place(seen, sentence, at)?, "too short")
        .source("mix sheet: least mixing time; it always looks dry before it wets out")
        .help(format!("print the slot: `{{{{ mix.mixing | long }}}}`, which says {least}"));
    Some(related_value(finding, ground, mix.mixing.least.node(), "the least time").figure(format!("{}.mixing", mix.id)))
}

/// The time that begins at a word, the smaller one of a range; and how it is written.
fn amount(sentence: &Sentence, at: usize) -> Option<(Quantity, String)> {
    let figures = |i: usize| {
        let w = sentence.word(i)?;
        let counted = COUNTS.iter().find(|(name, _)| *name == w).map(|(_, n)| *n);
        counted.or_else(|| w.starts_with(|c: char| c.is_ascii_digit()).then_some(w))
    };
    let first = figures(at)?;
    let unit = |i: usize| sentence.word(i).and_then(|w| UNITS.iter().find(|(name, _)| *name == w)).map(|(_, u)| *u);
    // `2 to 3 minutes` begins at the 2.
    let ranged = || (sentence.is(at + 1, RANGE) && figures(at + 2).is_some()).then(|| unit(at + 3)).flatten();
    let unit = unit(at + 1).or_else(ranged)?;
    let said = format!("{first} {unit}");
    match parse::read(&said) {
        Ok(Said::Amount(quantity, _)) if quantity.dim == Dim::TIME => Some((quantity, said)),
        _ => None,
    }
}
