//! D14: an acceptance of a STOP.

use crate::finding::{Finding, Severity};
use crate::job::Accept;
use crate::sound::Check;

/// The check.
pub const CHECK: Check = Check {
    name: "acceptance-of-stop",
    ids: &["D14"],
    severities: &[Severity::Stop],
    title: "an acceptance of a STOP",
    manual: include_str!("acceptance_of_stop.md"),
    twins: &[("es", include_str!("acceptance_of_stop.es.md"))],
    run: super::later,
};

pub(super) fn finding(accept: &Accept, of: &Finding) -> Finding {
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("`{}` is a STOP, nobody can accept it", of.name))
        .at(accept.finding.at, "accepted here")
        .derived(of.title.clone())
        .source("house rule: a STOP is never accepted, whoever asks")
        .help("mend what it points at, then take the acceptance out");
    match &of.at {
        Some((span, label)) => finding.related(*span, label.clone()),
        None => finding,
    }
}
