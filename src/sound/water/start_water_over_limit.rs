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
    let ids = [format!("{}.start_water", mix.id), format!("{}.limit", mix.id)];
    let said = [text(ground, &ids[0], mix.metric)?, text(ground, &ids[1], mix.metric)?];
    let as_typed = |node, printed: &String| {
        if said[0] == said[1] { authored(ground, node).map_or(printed.clone(), |(t, _)| typed(&t)) } else { printed.clone() }
    };
    let (starts, most) = (as_typed(start, &said[0]), as_typed(limit, &said[1]));
    let unit = if mix.metric { "L" } else { "gal" };
    let over = start.clone() - limit.clone();
    let title = format!("start water {starts} is over the limit {most} of {}", mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!("{} − {} = {} over, for each load", number(start, unit), number(limit, unit), number(&over, unit)))
        .source("mix sheet: the limit is the most water ever, start and added together")
        .help(format!("write `start: {}` or less; a start at the limit leaves no late step", said[1]));
    let finding = at_value(finding, ground, start, "starts with more");
    let finding = related_value(finding, ground, limit, "than the most it may ever have");
    let [start_id, limit_id] = ids;
    Some(finding.figure(start_id).figure(limit_id))
}
