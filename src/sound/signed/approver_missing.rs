//! D14: a mix or a site that nobody has approved.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "approver-missing",
    ids: &["D14"],
    severities: &[Severity::Hold],
    title: "a mix or a site that nobody has approved",
    manual: include_str!("approver_missing.md"),
    twins: &[("es", include_str!("approver_missing.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let bare = ground.job.signed.iter().filter(|s| super::numbers(s.kind) && s.approved_by.is_none());
    let finding = |s: &crate::job::Signed| {
        let finding = Finding::new(CHECK.name, Severity::Hold, format!("the {} `{}` has no approver", s.kind, s.id))
            .at(s.open, "nobody has approved this file")
            .absent()
            .source("house rule: a second pair of eyes; common practice, no source")
            .help("let a role that did not write it look at it and put its code in `approved_by`");
        match &s.written_by {
            Some(author) => finding.related(author.at, "wrote it"),
            None => finding,
        }
    };
    bare.map(finding).collect()
}
