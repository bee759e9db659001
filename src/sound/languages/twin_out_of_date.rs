//! B2: the twin of a card, a caution or the safety chapter translates an older text.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

use super::twins;

/// The check.
pub const CHECK: Check = Check {
    name: "twin-out-of-date",
    ids: &["B2"],
    severities: &[Severity::Stop],
    title: "the twin of a card or caution translates an older text",
    manual: include_str!("twin_out_of_date.md"),
    twins: &[("es", include_str!("twin_out_of_date.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let grave = twins::pairs(ground.job).into_iter().filter(|p| p.grave);
    grave.filter_map(|pair| twins::out_of_date(&pair, CHECK.name, Severity::Stop)).collect()
}
