//! D14: an approved mix or site that nobody says to have written: who can tell that the second pair of eyes is a second?

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "author-missing",
    ids: &["D14"],
    severities: &[Severity::Hold],
    title: "an approved mix or site without an author",
    manual: include_str!("author_missing.md"),
    twins: &[("es", include_str!("author_missing.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let signed = ground.job.signed.iter().filter(|s| super::numbers(s.kind) && s.written_by.is_none());
    // A file without an approver has that finding, and one is enough to ask who stands for it.
    let approved = signed.filter_map(|s| Some((s, s.approved_by.as_ref()?)));
    approved
        .map(|(s, approver)| {
            Finding::new(
                CHECK.name,
                Severity::Hold,
                format!("{} approves the {} `{}`, and nobody is named who wrote it", approver.text, s.kind, s.id),
            )
            .at(s.open, "no author is named in this file")
            .related(approver.at, "approves")
            .absent()
            .source("house rule: a second pair of eyes; common practice, no source")
            .help("put the code of the role that wrote it in `written_by`")
        })
        .collect()
}
