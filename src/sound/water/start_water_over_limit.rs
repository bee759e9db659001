//! W1: a mix starts with more water than it may ever have.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::told::{at_value, authored, number, related_value, text, typed};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "start-water-over-limit",
    ids: &["W1"],
    severities: &[Severity::Stop],
    title: "the start water of a mix is over its limit",
    manual: include_str!("start_water_over_limit.md"),
    twins: &[("es", include_str!("start_water_over_limit.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

/// Judged on the authored values: by less than a mark too much prints alike, and the file is wrong all the same.
fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let (start, limit) = (mix.water.start.node(), mix.water.limit.node());
    if start.value().compare(limit.value()) != Some(Ordering::Greater) {
        return None;
    }
    let (start_id, limit_id) = (format!("{}.start_water", mix.id), format!("{}.limit", mix.id));
    let (starts, most) = (text(ground, &start_id, mix.metric)?, text(ground, &limit_id, mix.metric)?);
    let passes = most.clone();
    // Printed alike, the two would contradict the title: then it shows what was typed.
    let (starts, most) = match (starts == most, authored(ground, start), authored(ground, limit)) {
        (true, Some((a, _)), Some((b, _))) => (typed(&a), typed(&b)),
        _ => (starts, most),
    };
    let unit = if mix.metric { "L" } else { "gal" };
    let over = start.clone() - limit.clone();
    let title = format!("start water {starts} is over the limit {most} of {}", mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!("{} − {} = {} over, for each load", number(start, unit), number(limit, unit), number(&over, unit)))
        .source("mix sheet: the limit is the most water ever, start and added together")
        .help(format!("write `start: {}` or less; a start at the limit leaves no late step", passes));
    let finding = at_value(finding, ground, start, "starts with more");
    let finding = related_value(finding, ground, limit, "than the most it may ever have");
    let mut finding = finding.figure(start_id).figure(limit_id);
    // A ladder whose rungs cannot be worked prints no figure at all: the papers of this mix are named themselves.
    for seen in ground.seen.iter().filter(|s| s.subject.mix(ground.job).is_some_and(|m| m.id == mix.id)) {
        if !finding.figures.contains(&seen.document) {
            finding = finding.figure(&seen.document);
        }
    }
    Some(finding)
}
