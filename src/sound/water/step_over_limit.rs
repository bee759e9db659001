//! W3: the start and the first late step together are more than the limit.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::told::{at_value, number, related_value, text};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "step-over-limit",
    ids: &["W3"],
    severities: &[Severity::Stop],
    title: "the first late step of a mix goes over its limit",
    manual: include_str!("step_over_limit.md"),
    twins: &[("es", include_str!("step_over_limit.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

/// A start over the limit is another finding, and no step can mend it.
fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let (start, step, limit) = (mix.water.start.node(), mix.water.step.node(), mix.water.limit.node());
    let both = start.clone() + step.clone();
    let starts_over = start.value().compare(limit.value()) == Some(Ordering::Greater);
    if starts_over || both.value().compare(limit.value()) != Some(Ordering::Greater) {
        return None;
    }
    let id = |name: &str| format!("{}.{name}", mix.id);
    let say = |name: &str| text(ground, &id(name), mix.metric);
    let (starts, one, most) = (say("start_water")?, say("step")?, say("limit")?);
    let unit = if mix.metric { "L" } else { "gal" };
    let title = format!("start water {starts} and one step of {one} are over the limit {most} of {}", mix.name.text);
    let left = limit.clone() - start.clone();
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!("{} + {} = {}, for each load", number(start, unit), number(step, unit), number(&both, unit)))
        .derived(format!("{} − {} = {} left for late water", number(limit, unit), number(start, unit), number(&left, unit)))
        .source("mix sheet: the limit is the most water ever, start and added together")
        .help(format!("start with {} or less, or take the limit from the mix sheet again", number(&(limit.clone() - step.clone()), unit)));
    let finding = at_value(finding, ground, step, "one step more");
    let finding = related_value(finding, ground, start, "on top of this start");
    let finding = related_value(finding, ground, limit, "is over this");
    Some(["start_water", "step", "limit"].iter().fold(finding, |f, name| f.figure(id(name))))
}
