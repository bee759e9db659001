//! `cautions/NAME.md`.

use crate::job::{Caution, Edition};

use super::field::{ACCEPTS, APPROVED_BY, Field, WRITTEN_BY, Want};
use super::group::Group;

/// Conditions that call for a caution.
pub const CONDITIONS: &[&str] = &[
    "wet cement",
    "dust",
    "cutting",
    "old base",
    "mixer",
    "power",
    "drills",
    "lifting",
    "height",
    "overhead",
    "forms",
    "weight",
    "fire",
    "solvent",
    "acid",
    "heat",
    "always",
];

/// Keys of a caution.
pub static FIELDS: &[Field] = &[
    Field::new("word", Want::Text, "EYES", "signal word"),
    Field::new("when", Want::Choice(CONDITIONS), "wet cement", "condition that calls for it"),
    WRITTEN_BY,
    APPROVED_BY,
    ACCEPTS,
];

pub(super) fn make(id: &str, g: &Group, editions: Vec<Edition>) -> Option<Caution> {
    Some(Caution { id: id.to_owned(), when: g.text("when")?, editions })
}
