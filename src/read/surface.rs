//! Surfaces and openings of a site: which measures a shape needs stands in the tables.

use crate::job::{Opening, OpeningShape, Shape, Surface, Text};

use super::field::{Field, LENGTH, Want};
use super::group::{Group, all};

const FLAT: &[&str] = &["rectangle", "gable"];
const COLUMNS: &[&str] = &["column", "half column"];
const ARCHES: &[&str] = &["semicircular arch", "segmental arch"];
const HEARTH: &[&str] = &["hearth"];

const fn length(name: &'static str, example: &'static str, meaning: &'static str) -> Field {
    Field::new(name, LENGTH, example, meaning).over("0 ft", "1000 ft")
}

static FRONT: &[Field] = &[length("width", "12 ft", "width of the front"), length("height", "1 ft 6 in", "height of the front")];

static ENDS: &[Field] = &[
    length("width", "1 ft 6 in", "width of an end"),
    length("height", "1 ft 3 in", "height of an end"),
    Field::new("count", Want::Whole, "2", "how many ends").from("1", "20"),
];

static OPENING: &[Field] = &[
    Field::new("what", Want::Words, "door", "what it is"),
    Field::new("shape", Want::Choice(&["rectangle", "semicircular arch", "segmental arch"]), "rectangle", "its shape"),
    length("width", "3 ft", "width of the opening"),
    length("height", "4 ft", "height of the opening").when("shape", &["rectangle"]),
    Field::new("sides", Want::Whole, "4", "sides with a reveal: 3 without a sill, 4 with one").from("3", "4").when("shape", &["rectangle"]),
    length("spring", "6 ft 3 in", "height to the spring line").when("shape", ARCHES),
    length("rise", "1 ft", "rise of the segment above the spring line").when("shape", &["segmental arch"]),
    length("depth", "4 in", "depth of the reveal that gets a coat").free(),
    Field::new("left", LENGTH, "2 ft", "distance from the left edge of the wall, for the drawing").from("0 ft", "1000 ft").free(),
    Field::new("sill", LENGTH, "4 ft", "height of its foot above the floor, for the drawing").from("0 ft", "1000 ft").free(),
];

/// Keys of a surface.
pub static FIELDS: &[Field] = &[
    Field::new("what", Want::Words, "fireplace wall", "what it is"),
    Field::new("shape", Want::Choice(&["rectangle", "gable", "hearth", "column", "half column"]), "rectangle", "its shape"),
    length("width", "22 ft", "width of the wall").when("shape", FLAT),
    length("height", "9 ft", "height of the wall or the columns").when("shape", &["rectangle", "column", "half column"]),
    length("eave", "9 ft", "height at the eave").when("shape", &["gable"]),
    length("rise", "5 ft 6 in", "rise of the gable above the eave").when("shape", &["gable"]),
    Field::new("front", Want::Group(FRONT), "", "front of the hearth").when("shape", HEARTH),
    Field::new("ends", Want::Group(ENDS), "", "ends of the hearth").when("shape", HEARTH),
    length("diameter", "14 in", "diameter of the core").when("shape", COLUMNS),
    Field::new("count", Want::Whole, "2", "how many columns").from("1", "1000").when("shape", COLUMNS),
    Field::new("texture", Want::Text, "rubble", "name of its texture"),
    Field::new("lifts", Want::Whole, "1", "lifts that are planned for the carve coat").from("1", "20").free(),
    Field::new("openings", Want::Map("D1", OPENING), "", "openings by code").free(),
];

fn shape(g: &Group) -> Option<Shape> {
    Some(match g.text("shape")?.text.as_str() {
        "rectangle" => Shape::Rectangle { width: g.worked("width")?, height: g.worked("height")? },
        "gable" => Shape::Gable { width: g.worked("width")?, eave: g.worked("eave")?, rise: g.worked("rise")? },
        "hearth" => {
            let (front, ends) = (g.group("front")?, g.group("ends")?);
            Shape::Hearth {
                front: (front.worked("width")?, front.worked("height")?),
                ends: (ends.worked("width")?, ends.worked("height")?),
                ends_count: ends.worked("count")?,
            }
        }
        _ => Shape::Column {
            half: g.says("shape", "half column"),
            diameter: g.worked("diameter")?,
            height: g.worked("height")?,
            count: g.worked("count")?,
        },
    })
}

fn opening(code: &Text, g: &Group) -> Option<Opening> {
    let width = g.worked("width")?;
    let shape = match g.text("shape")?.text.as_str() {
        "rectangle" => OpeningShape::Rectangle { width, height: g.worked("height")?, sides: g.worked("sides")? },
        "segmental arch" => OpeningShape::Segmental { width, spring: g.worked("spring")?, rise: g.worked("rise")? },
        _ => OpeningShape::Semicircular { width, spring: g.worked("spring")? },
    };
    Some(Opening {
        code: code.clone(),
        what: g.words("what")?,
        shape,
        depth: g.worked("depth"),
        left: g.worked("left"),
        sill: g.worked("sill"),
    })
}

pub(super) fn make(code: &Text, g: &Group) -> Option<Surface> {
    Some(Surface {
        code: code.clone(),
        what: g.words("what")?,
        shape: shape(g)?,
        texture: g.text("texture")?,
        lifts: g.worked("lifts"),
        openings: all(g.map("openings").iter().map(|(c, o)| opening(c, o)))?,
        at: g.at,
    })
}
