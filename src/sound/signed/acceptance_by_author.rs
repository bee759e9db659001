//! D14: a HOLD is accepted by the author of the file.

use crate::finding::{Finding, Severity};
use crate::job::{Accept, Text};
use crate::sound::Check;

/// The check.
pub const CHECK: Check = Check {
    name: "acceptance-by-author",
    ids: &["D14"],
    severities: &[Severity::Hold],
    title: "a HOLD is accepted by the author of the file",
    manual: include_str!("acceptance_by_author.md"),
    twins: &[("es", include_str!("acceptance_by_author.es.md"))],
    run: super::later,
};

pub(super) fn finding(accept: &Accept, author: &Text) -> Finding {
    Finding::new(CHECK.name, Severity::Hold, format!("`{}` is accepted by {}, who wrote the file", accept.finding.text, accept.by.text))
        .at(accept.by.at, "accepts")
        .related(author.at, "wrote it")
        .source("house rule: a second pair of eyes; common practice, no source")
        .help(format!("let another role than {} look at it and put its name there", author.text))
}
