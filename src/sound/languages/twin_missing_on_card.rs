//! B1: a card or caution is missing in the only language that a reader has.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

use super::readers;

/// The check.
pub const CHECK: Check = Check {
    name: "twin-missing-on-card",
    ids: &["B1"],
    severities: &[Severity::Stop],
    title: "a card or caution is missing in the only language that a reader has",
    manual: include_str!("twin_missing_on_card.md"),
    twins: &[("es", include_str!("twin_missing_on_card.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let lacks = readers::lacks(ground.job).into_iter().filter(|l| l.grave);
    lacks.map(|lack| readers::finding(&lack, CHECK.name, Severity::Stop)).collect()
}
