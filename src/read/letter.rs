//! `records/NAME.md`: an engineer's letter.

use crate::job::Letter;

use super::field::{ACCEPTS, AREAL, Field, Want};
use super::group::Group;

/// Keys of a letter.
pub static FIELDS: &[Field] = &[
    Field::new("site", Want::Text, "EX", "code of the site"),
    Field::new("ref", Want::Text, "EX-E1", "reference printed on it"),
    Field::new("date", Want::Date, "2026-02-12", "date of the letter"),
    Field::new("from", Want::Text, "licensed engineer of record", "who signed, by class, without a name"),
    Field::new("allows", AREAL, "30 lb/ft2", "weight it allows").over("0 lb/ft2", "1000 lb/ft2"),
    Field::new("what", Want::Text, "weight of the carved wall on the framing", "what it speaks of"),
    ACCEPTS,
];

pub(super) fn make(id: &str, g: &Group) -> Option<Letter> {
    Some(Letter {
        id: id.to_owned(),
        site: g.text("site")?,
        reference: g.text("ref")?,
        date: g.day("date")?,
        from: g.text("from")?,
        allows: g.worked("allows")?,
        what: g.text("what")?,
    })
}
