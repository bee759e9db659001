//! `chapters/NAME.md`.

use super::field::{Field, Want};

/// Keys of a chapter text.
pub static FIELDS: &[Field] = &[Field::new("title", Want::Text, "Safety", "title")];
