//! D3: an amount stands in the other unit system than the file around it.

use crate::finding::{Finding, Severity};
use crate::job::{Doubt, Odd};
use crate::quantity::expr::{system, usual_unit};
use crate::sound::told::system_name;
use crate::sound::{Check, Ground};

use super::{amount, in_short};

/// The check.
pub const CHECK: Check = Check {
    name: "unit-of-other-system",
    ids: &["D3"],
    severities: &[Severity::Warn],
    title: "an amount stands in the other unit system than its file",
    manual: include_str!("unit_of_other_system.md"),
    twins: &[("es", include_str!("unit_of_other_system.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.doubts.iter().filter_map(one).collect()
}

fn one(doubt: &Doubt) -> Option<Finding> {
    let Odd::System(metric) = doubt.odd else { return None };
    let text = &doubt.text.text;
    let title = format!("`{}` is {text}, the amounts around it are in {} units", doubt.name, system_name(metric));
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .at(doubt.text.at, doubt.meaning)
        .source("common practice, no source: a sheet speaks in one row of units, and a slip hides among two")
        .help(format!(
            "write it in {} units; an entry that is sold or marked in {} units is written so in all of its amounts, and one amount \
             that is meant is accepted with the reason",
            system_name(metric),
            system_name(!metric)
        ))
        .about(doubt.key.as_str());
    Some(match in_own(doubt, metric) {
        Some(line) => finding.derived(line),
        None => finding,
    })
}

/// The amount in the file's own units: the unit of the table's example where it is one of them.
fn in_own(doubt: &Doubt, metric: bool) -> Option<String> {
    let (said, _) = amount(&doubt.text.text)?;
    let example = amount(doubt.example).map(|(_, unit)| unit).filter(|unit| system(*unit) == Some(metric));
    let unit = example.or_else(|| usual_unit(said.dim, metric))?;
    Some(format!("{} = {}", doubt.text.text, in_short(&said, unit)?))
}
