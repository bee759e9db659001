//! D14: an acceptance names no check.

use crate::finding::{Finding, Severity};
use crate::job::Accept;
use crate::sound::Check;

/// The check.
pub const CHECK: Check = Check {
    name: "acceptance-unknown",
    ids: &["D14"],
    severities: &[Severity::Stop],
    title: "an acceptance names no check",
    manual: include_str!("acceptance_unknown.md"),
    twins: &[("es", include_str!("acceptance_unknown.es.md"))],
    run: super::later,
};

pub(super) fn finding(accept: &Accept, name: &str) -> Finding {
    let names: Vec<&str> = crate::sound::CHECKS.iter().map(|c| c.name).collect();
    Finding::new(CHECK.name, Severity::Stop, format!("no check is called `{name}`"))
        .at(accept.finding.at, "accepted here")
        .source("house rule: an acceptance names the finding it accepts")
        .help(crate::prose::did_you_mean(name, &names))
}
