//! B8: a no of a text is missing in its twin, or the twin has one that the text has not.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};
use crate::source::Span;

use super::side::{self, Told, Words};
use super::twins::Pair;

/// The check.
pub const CHECK: Check = Check {
    name: "negation-lost",
    ids: &["B8"],
    severities: &[Severity::Stop],
    title: "a no of one language is missing in the other",
    manual: include_str!("negation_lost.md"),
    twins: &[("es", include_str!("negation_lost.es.md"))],
    run,
};

/// Words that say no, by language.
const NO: &[(&str, &[&str])] = &[
    (
        "en",
        &[
            "no",
            "not",
            "never",
            "nobody",
            "none",
            "nothing",
            "nor",
            "neither",
            "without",
            "nowhere",
            "cannot",
            "don't",
            "doesn't",
            "can't",
            "won't",
            "isn't",
            "aren't",
            "mustn't",
            "shouldn't",
            "didn't",
        ],
    ),
    ("es", &["no", "nunca", "jamás", "nadie", "nada", "ninguno", "ninguna", "ningún", "ni", "tampoco", "sin"]),
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (pair, blocks) in side::all(ground) {
        let words = |lang: &str| NO.iter().find(|(code, _)| *code == lang).map(|(_, words)| *words);
        let (Some(mine), Some(its)) = (words(&pair.original.lang), words(&pair.twin.lang)) else { continue };
        for (original, twin) in blocks {
            found.extend(one(&pair, (original, mine), (twin, its)));
        }
    }
    found
}

/// Sentences that say no, counted in a block and its twin: two in one sentence are one, as Spanish has them.
fn one(pair: &Pair<'_>, original: (&Told, &[&str]), twin: (&Told, &[&str])) -> Option<Finding> {
    let said = |(block, no): (&Told, &[&str])| -> Vec<Option<Span>> {
        let first = |s: &Words| s.iter().find(|(w, _)| no.contains(&w.as_str())).map(|(_, at)| *at);
        block.sentences.iter().map(first).collect()
    };
    let (mine, its) = (said(original), said(twin));
    let count = |list: &[Option<Span>]| list.iter().flatten().count();
    let (here, there) = (count(&mine), count(&its));
    let place = match original.0.block.step {
        0 => String::new(),
        step => format!("step {step} of "),
    };
    // In lines that a crew acts on at once each sentence must keep its own no; elsewhere a sentence may be cut in two.
    let moved = pair.grave && mine.len() == its.len() && mine.iter().zip(&its).any(|(a, b)| a.is_some() != b.is_some());
    if (here == 0) != (there == 0) || pair.grave && here != there || moved {
        let odd = mine.iter().zip(&its).find(|(a, b)| a.is_some() != b.is_some());
        let lost = odd.map_or(here > there, |(a, _)| a.is_some());
        let sort = format!("{place}the {} `{}`", pair.sort, pair.name);
        let title = match lost {
            true => format!("a no of {sort} is missing in its twin: {here} here, {there} there"),
            false => format!("the twin of {sort} says no where the original does not: {here} here, {there} there"),
        };
        let (no, other, side) = if lost {
            (odd.and_then(|(a, _)| *a).or(mine.iter().flatten().last().copied()), twin.0, "the twin of it")
        } else {
            (odd.and_then(|(_, b)| *b).or(its.iter().flatten().last().copied()), original.0, "the original")
        };
        let finding = Finding::new(CHECK.name, Severity::Stop, title).source("house rule: the most dangerous word on a card is no");
        let help = if lost { "say no in both languages, sentence by sentence" } else { "say no in both languages, or in neither" };
        return Some(finding.at(no?, "this no").related(other.block.at, side).help(help));
    }
    None
}
