//! B1: a text of the book is missing in the only language that a reader has.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

use super::readers;

/// The check.
pub const CHECK: Check = Check {
    name: "twin-missing",
    ids: &["B1"],
    severities: &[Severity::Hold],
    title: "a text of the book is missing in the only language that a reader has",
    manual: include_str!("twin_missing.md"),
    twins: &[("es", include_str!("twin_missing.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let lacks = readers::lacks(ground.job).into_iter().filter(|l| !l.grave);
    lacks.map(|lack| readers::finding(&lack, CHECK.name, Severity::Hold)).collect()
}
