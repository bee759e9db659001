//! `procedures/NAME.md`.

use crate::job::{Edition, Page};

use super::card;
use super::field::{ACCEPTS, APPROVED_BY, Field, WRITTEN_BY, Want};
use super::group::Group;

/// Keys of a procedure.
pub static FIELDS: &[Field] = &[
    Field::new("code", Want::Text, "P04", "document code"),
    Field::new("title", Want::Text, "Mix CARVE-24", "title"),
    Field::new("per", Want::Choice(card::PER), "mix", "what it is made for"),
    Field::new("mix", Want::Text, "CARVE-24", "name of the mix it speaks of").when("per", &["mix", "batch"]),
    Field::new("cautions", Want::Texts, "[eyes, skin, dust]", "cautions that must stand on it, by file name"),
    WRITTEN_BY,
    APPROVED_BY,
    ACCEPTS,
];

pub(super) fn make(id: &str, g: &Group, editions: Vec<Edition>) -> Option<Page> {
    Some(Page { id: id.to_owned(), code: g.text("code")?, per: card::per(g)?, mix: g.text("mix"), cautions: g.texts("cautions"), editions })
}
