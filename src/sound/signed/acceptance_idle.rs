//! D14: an acceptance of nothing.

use crate::finding::{Finding, Severity};
use crate::job::Accept;
use crate::sound::Check;

/// The check.
pub const CHECK: Check = Check {
    name: "acceptance-idle",
    ids: &["D14"],
    severities: &[Severity::Warn],
    title: "an acceptance of nothing",
    manual: include_str!("acceptance_idle.md"),
    twins: &[("es", include_str!("acceptance_idle.es.md"))],
    run: super::later,
};

pub(super) fn finding(accept: &Accept) -> Finding {
    Finding::new(CHECK.name, Severity::Warn, format!("`{}` is accepted here and is not found here", accept.finding.text))
        .at(accept.finding.at, "accepts nothing")
        .source("house rule: an acceptance stands beside what it accepts")
        .help("take it out, or move it to the file that the finding points at")
}
