//! D14: the author of a mix or a site approves it.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "approver-is-author",
    ids: &["D14"],
    severities: &[Severity::Hold],
    title: "the author of a mix or a site approves it",
    manual: include_str!("approver_is_author.md"),
    twins: &[("es", include_str!("approver_is_author.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let signed = ground.job.signed.iter().filter(|s| super::numbers(s.kind));
    let both = signed.filter_map(|s| Some((s, s.written_by.as_ref()?, s.approved_by.as_ref()?)));
    both.filter(|(_, author, approver)| author.text == approver.text)
        .map(|(s, author, approver)| {
            Finding::new(CHECK.name, Severity::Hold, format!("{} wrote the {} `{}` and approves it", author.text, s.kind, s.id))
                .at(approver.at, "approves")
                .related(author.at, "wrote it")
                .source("house rule: a second pair of eyes; common practice, no source")
                .help(format!("let another role than {} approve it", author.text))
        })
        .collect()
}
