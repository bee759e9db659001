//! `chapters/NAME.md`.

use super::field::{ACCEPTS, APPROVED_BY, Field, WRITTEN_BY, Want};

/// Keys of a chapter text.
pub static FIELDS: &[Field] = &[Field::new("title", Want::Text, "Safety", "title"), WRITTEN_BY, APPROVED_BY, ACCEPTS];
