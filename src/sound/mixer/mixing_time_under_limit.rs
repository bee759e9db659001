//! M5: the mixing time of a mix is under the least there is.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::limits;
use crate::sound::told::{at_value, number};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "mixing-time-under-limit",
    ids: &["M5"],
    severities: &[Severity::Stop],
    title: "the mixing time of a mix is under the least there is",
    manual: include_str!("mixing_time_under_limit.md"),
    twins: &[("es", include_str!("mixing_time_under_limit.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

/// As authored: the printed minutes round up, and a time of 2 min 40 s must not pass as 3.
fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let row = limits::find(limits::MIXING)?;
    let (least, time) = (row.quantity()?, mix.mixing.least.value());
    if !time.si.compare(&least.si).is_lt() {
        return None;
    }
    let title =
        format!("{} is mixed for {}, nothing is mixed for less than {}", mix.name.text, number(mix.mixing.least.node(), "min"), row.value);
    let finding = Finding::new(CHECK.name, Severity::Stop, title).source(row.source).help(format!(
        "read the mix sheet again; it looks dry before the polymer lets go, and water goes in that nobody needs: `least: {}` or more",
        row.value
    ));
    Some(at_value(finding, ground, mix.mixing.least.node(), "too short").figure(format!("{}.mixing", mix.id)))
}
