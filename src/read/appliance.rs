//! `records/NAME.md`: the papers of a firebox.

use crate::job::Appliance;

use super::field::{ACCEPTS, Field, LENGTH, READING, Want};
use super::group::Group;

/// Keys of an appliance. Those that may be left out are wanted all the same before anything is printed: a check
/// says which of them are not there yet.
pub static FIELDS: &[Field] = &[
    Field::new("site", Want::Text, "EX", "code of the site"),
    Field::new("surface", Want::Text, "EX-1", "code of the surface that it stands in"),
    Field::new("opening", Want::Text, "FB", "code of its opening"),
    Field::new("manual", Want::Text, "installation manual, sheet of clearances", "its manual, by title and place, without a maker's name")
        .free(),
    Field::new("clearance", LENGTH, "9 in", "how near the mix may come, by the manual")
        .over("0 in", "500 in")
        .likely("1/2 in", "60 in")
        .free(),
    Field::new("service", READING, "160 °F", "hottest that the mix sheet allows in service")
        .from("0 °F", "2000 °F")
        .likely("100 °F", "250 °F")
        .free(),
    Field::new("edge", READING, "120 °F", "hottest that the edge of the mix gets, by the manual")
        .from("0 °F", "2000 °F")
        .likely("60 °F", "250 °F")
        .free(),
    Field::new("checked_by", Want::Text, "licensed fireplace installer", "who read and compared them, by class, without a name").free(),
    Field::new("date", Want::Date, "2026-02-13", "date of that").free(),
    ACCEPTS,
];

pub(super) fn make(id: &str, g: &Group) -> Option<Appliance> {
    Some(Appliance {
        id: id.to_owned(),
        site: g.text("site")?,
        surface: g.text("surface")?,
        opening: g.text("opening")?,
        manual: g.text("manual"),
        clearance: g.worked("clearance"),
        service: g.worked("service"),
        edge: g.worked("edge"),
        checked_by: g.text("checked_by"),
        date: g.day("date"),
    })
}
