//! Who answers for a file, and what was accepted in it. The checks of this family judge findings, so they run
//! when all the others have.

pub mod acceptance_by_author;
pub mod acceptance_idle;
pub mod acceptance_lapsed;
pub mod acceptance_of_stop;
pub mod acceptance_unknown;
pub mod approver_is_author;
pub mod approver_missing;
pub mod author_missing;
mod settle;

pub use settle::{Settled, idle, settle};

use crate::finding::Finding;
use crate::sound::Ground;

/// The run of a check that judges other findings: [`settle`] does its work.
fn later(_: &Ground<'_>) -> Vec<Finding> {
    Vec::new()
}

/// Kinds of file whose numbers go on paper, and that need a second reader.
fn numbers(kind: &str) -> bool {
    matches!(kind, "mix" | "site")
}
