//! W4: a mix starts with less water than its sheet lets it.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::told::{at_value, number, related_value, text};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "start-water-under-least",
    ids: &["W4"],
    severities: &[Severity::Stop],
    title: "the start water of a mix is under its minimum",
    manual: include_str!("start_water_under_least.md"),
    twins: &[("es", include_str!("start_water_under_least.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

/// Judged on the authored values. Start prints down and minimum up, so that the printed ones differ at least as much.
fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let (start, least) = (mix.water.start.node(), mix.water.least.node());
    if start.value().compare(least.value()) != Some(Ordering::Less) {
        return None;
    }
    let (start_id, least_id) = (format!("{}.start_water", mix.id), format!("{}.least_water", mix.id));
    let (starts, wants) = (text(ground, &start_id, mix.metric)?, text(ground, &least_id, mix.metric)?);
    let unit = if mix.metric { "L" } else { "gal" };
    let short = least.clone() - start.clone();
    let finding =
        Finding::new(CHECK.name, Severity::Stop, format!("start water {starts} is under the minimum {wants} of {}", mix.name.text))
            .derived(format!("{} − {} = {} short, for each load", number(least, unit), number(start, unit), number(&short, unit)))
            .source("mix sheet: the least start water that wets all of the powder")
            .help(format!("write `start: {wants}` or more, and not over the limit"));
    let finding = at_value(finding, ground, start, "starts with less");
    let finding = related_value(finding, ground, least, "than the least it may have");
    Some(finding.figure(start_id).figure(least_id))
}
