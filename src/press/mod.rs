//! The press: takes a payload of strings and gives finished pages.
//!
//! Templates lie in `templates/` and are embedded. They see one JSON document and
//! nothing else: no clock, no environment, no file outside memory. What the author
//! wrote reaches them as data, so no character of it can act as markup.
//!
//! [`cards`] sets a run of faces, one page each, and says how every face fitted;
//! [`single`] cuts one card out of a run; [`sheets`] lays small cards on a press
//! sheet; [`book`] sets the bound handbook. All bytes are the same for the same
//! input, and every document passes the typesetter's PDF/UA-1 checks.

mod book;
mod cards;
pub mod fit;
pub mod glyphs;
pub mod inputs;
pub mod lower;
#[allow(missing_docs, reason = "fields carry the names of the documented form; each type says what it is")]
pub mod payload;
mod pdf;
mod settle;
mod sheet;
#[cfg(test)]
mod tests;
mod world;

pub use book::{Bound, book, book_with};
pub use cards::{Pressed, cards, cards_with, face_digest, measured, single};
pub use fit::FaceFit;
pub use glyphs::missing;
pub use sheet::{Pair, SheetPaper, sheets};
pub use world::{PressError, Templates, font_notices};
