//! `glossary.md`.

use crate::job::Word;

use super::field::{ACCEPTS, Field, WRITTEN_BY, Want};
use super::group::Group;

static WORD: &[Field] = &[
    Field::new("en", Want::Text, "start water", "the English word"),
    Field::new("es", Want::Text, "agua inicial", "the Spanish word that the paper prints"),
    Field::new("heard", Want::Text, "agua primera", "what else one hears").free(),
    Field::new("note", Want::Text, "before any powder", "a note").free(),
];

/// Keys of the glossary.
pub static FIELDS: &[Field] = &[
    Field::new("title", Want::Words, "Words we use", "title"),
    Field::new("words", Want::List(WORD), "", "the words"),
    WRITTEN_BY,
    ACCEPTS,
];

pub(super) fn make(g: &Group) -> Vec<Word> {
    let word = |w: &Group| Some(Word { en: w.text("en")?, es: w.text("es")?, heard: w.text("heard"), note: w.text("note") });
    g.list("words").iter().filter_map(word).collect()
}
