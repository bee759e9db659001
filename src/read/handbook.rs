//! `handbook.md`.

use crate::job::{BookChapter, Edition, Handbook, Text};

use super::field::{ACCEPTS, APPROVED_BY, Field, WRITTEN_BY, Want};
use super::group::{Group, all};
use super::paper;

/// What a chapter may print beside files.
pub const PARTS: &[&str] = &["cautions", "mixes", "site", "takeoff", "worksheet", "index", "in force", "glossary", "trouble"];

static CHAPTER: &[Field] = &[
    Field::new("id", Want::Text, "safety", "word used in links"),
    Field::new("title", Want::Words, "Safety", "title"),
    Field::new("thumb", Want::Text, "SAFETY", "word on the thumb tab"),
    Field::new("from", Want::Texts, "[chapters/safety.md, cautions]", "what stands in it, in order: files, or words of the manual"),
];

/// Keys of the book.
pub static FIELDS: &[Field] = &[
    Field::new("title", Want::Words, "Crew handbook", "title on the cover"),
    Field::new("paper", Want::Choice(paper::NAMES), "half letter", "its paper"),
    Field::new("per", Want::Choice(&["site"]), "site", "what one book is made for").free(),
    Field::new("chapters", Want::List(CHAPTER), "", "chapters in order"),
    WRITTEN_BY,
    APPROVED_BY,
    ACCEPTS,
];

/// `chapters/safety.md` becomes `chapters/safety`: the same name that the rest of the program gives the file.
fn part(text: Text) -> Text {
    let name = text.text.strip_suffix(".md").unwrap_or(&text.text).to_owned();
    Text { text: name, at: text.at }
}

pub(super) fn make(g: &Group, editions: Vec<Edition>) -> Option<Handbook> {
    let chapters = g.list("chapters").iter().map(|c| {
        Some(BookChapter {
            id: c.text("id")?,
            titles: c.words("title")?,
            thumb: c.text("thumb")?,
            from: c.texts("from").into_iter().map(part).collect(),
        })
    });
    Some(Handbook { editions, paper: paper::find(&g.text("paper")?.text)?, chapters: all(chapters)? })
}
