//! M6 and D10: a text puts things in in another order than the mix.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::text::Sentence;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};
use crate::source::Span;

use super::charging::{self, Event, Kind};
use super::telling;

/// The check.
pub const CHECK: Check = Check {
    name: "charging-order-differs",
    ids: &["M6", "D10"],
    severities: &[Severity::Stop],
    title: "a text puts things in in another order than the mix",
    manual: include_str!("charging_order_differs.md"),
    twins: &[("es", include_str!("charging_order_differs.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    // Water alone has no order.
    let powders = |seen: &&Seen<'_>| charging::POWDERS.iter().any(|list| seen.may_say(&[list]));
    once_a_place(ground.texts_of_mixes().filter(powders).flat_map(|seen| one(ground, seen)).collect())
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for mix in telling::mixes(ground.job, seen) {
        // Numbered steps belong to one mix; a line that lists the whole order may speak for all mixes of a site.
        if seen.subject.mix(ground.job).is_some() {
            let steps: Vec<&Sentence> = seen.sentences().iter().filter(|s| s.step.is_some()).collect();
            found.extend(judged(seen, mix, &steps));
        }
        for line in seen.sentences().iter().filter(|s| s.step.is_none()) {
            let kinds = charging::events(seen, line).iter().map(|e| e.kind).fold(Vec::new(), |mut kinds, kind| {
                if !kinds.contains(&kind) {
                    kinds.push(kind);
                }
                kinds
            });
            if kinds.len() >= 3 {
                found.extend(judged(seen, mix, &[line]));
            }
        }
    }
    found
}

/// The first thing that goes in before another that the mix wants first.
fn judged(seen: &Seen<'_>, mix: &Mix, sentences: &[&Sentence]) -> Option<Finding> {
    let mut firsts: Vec<(Event, Option<u64>)> = Vec::new();
    for sentence in sentences {
        for event in charging::events(seen, sentence) {
            if !firsts.iter().any(|(f, _)| f.kind == event.kind) {
                firsts.push((event, sentence.step));
            }
        }
    }
    let rank = |kind: Kind| mix.mixing.order.iter().position(|o| o.text == kind.key());
    let ranked: Vec<(&Event, Option<u64>, usize)> = firsts.iter().filter_map(|(e, step)| Some((e, *step, rank(e.kind)?))).collect();
    let (early, late, step) = ranked.iter().enumerate().find_map(|(i, (late, _, rank))| {
        let (early, step, _) = ranked.get(..i)?.iter().find(|(_, _, before)| before > rank)?;
        Some((*early, *late, *step))
    })?;
    let order: Vec<&str> = mix.mixing.order.iter().map(|o| o.text.as_str()).collect();
    let order = order.join(", ");
    let who = step.map_or("the text".to_owned(), |n| format!("step {n}"));
    let (first, then) = (early.kind.said(), late.kind.said());
    let title = format!("{who} has {first} before {then}; the order of {} is {order}", mix.name.text);
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source("the charging order of the mix sheet; common practice: another order makes balls and dry pockets")
        .help(format!("put {then} before {first}: {order}"));
    if let Some(at) = early.at {
        finding = finding.at(at, "too early");
    }
    if let Some(at) = late.at.filter(|at| Some(*at) != early.at) {
        finding = finding.related(at, "belongs before it");
    }
    if let (Some(first), Some(last)) = (mix.mixing.order.first(), mix.mixing.order.last()) {
        finding = finding.related(Span { file: first.at.file, start: first.at.start, end: last.at.end }, "the order of the mix");
    }
    Some(finding.figure(format!("{}.mixing", mix.id)))
}
