//! B2: the twin of a text of the book translates an older text.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

use super::twins;

/// The check.
pub const CHECK: Check = Check {
    name: "twin-behind",
    ids: &["B2"],
    severities: &[Severity::Hold],
    title: "the twin of a procedure, chapter or note translates an older text",
    manual: include_str!("twin_behind.md"),
    twins: &[("es", include_str!("twin_behind.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let rest = twins::pairs(ground.job).into_iter().filter(|p| !p.grave);
    rest.filter_map(|pair| twins::out_of_date(&pair, CHECK.name, Severity::Hold)).collect()
}
