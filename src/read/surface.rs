//! Surfaces and openings of a site: which measures a shape needs stands in the tables.

use crate::job::{Edge, Face, Opening, Outline, Scratch, Shape, Surface, Text, Waste};

use super::field::{ANGLE, Field, LENGTH, SHARE, Want};
use super::group::{Group, all};

const WIDE: &[&str] = &["rectangle", "gable", "trapezoid", "semicircular arch", "segmental arch"];
const HIGH: &[&str] = &["rectangle", "trapezoid", "column", "half column", "frustum"];
const COLUMNS: &[&str] = &["column", "half column"];
const ARCHES: &[&str] = &["semicircular arch", "segmental arch"];
const HEARTH: &[&str] = &["hearth"];
const TRAPEZOID: &[&str] = &["trapezoid"];
const POLYGON: &[&str] = &["polygon"];
/// Round work has no openings: its coats are rings, and what a hole takes out of a ring nobody measures so.
const WALLS: &[&str] = &["rectangle", "gable", "trapezoid", "semicircular arch", "segmental arch", "circle", "polygon", "hearth", "box"];
const OPENING_WIDE: &[&str] = &["rectangle", "semicircular arch", "segmental arch", "trapezoid"];
const OPENING_SILL: &[&str] = &["semicircular arch", "segmental arch", "trapezoid", "polygon"];
const OPENINGS: &[&str] = &["rectangle", "semicircular arch", "segmental arch", "circle", "trapezoid", "polygon"];
const CORNERS: &str = "[[0 ft, 0 ft], [8 ft, 0 ft], [8 ft, 3 ft], [4 ft, 9 ft]]";

const fn length(name: &'static str, example: &'static str, meaning: &'static str) -> Field {
    Field::new(name, LENGTH, example, meaning).over("0 ft", "1000 ft")
}

const fn place(name: &'static str, example: &'static str, meaning: &'static str) -> Field {
    Field::new(name, LENGTH, example, meaning).from("0 ft", "1000 ft")
}

const fn count(meaning: &'static str) -> Field {
    Field::new("count", Want::Whole, "2", meaning).from("1", "1000")
}

static FRONT: &[Field] = &[length("width", "12 ft", "width of the front"), length("height", "1 ft 6 in", "height of the front")];

static ENDS: &[Field] = &[
    length("width", "1 ft 6 in", "width of an end"),
    length("height", "1 ft 3 in", "height of an end"),
    Field::new("count", Want::Whole, "2", "how many ends").from("1", "20"),
];

static FACES: &[Field] = &[
    length("width", "4 ft", "width of the face"),
    length("height", "2 ft 6 in", "height of the face"),
    count("how many equal ones; one if left out").free(),
];

static OPENING: &[Field] = &[
    Field::new("what", Want::Words, "door", "what it is"),
    Field::new("fire", Want::YesNo, "no", "whether fire burns in it; left out, its words decide").free(),
    Field::new("shape", Want::Choice(OPENINGS), "rectangle", "its shape"),
    length("width", "3 ft", "width of the opening").when("shape", OPENING_WIDE),
    length("height", "4 ft", "height of the opening").when("shape", &["rectangle", "trapezoid"]),
    Field::new("sides", Want::Whole, "4", "sides with a reveal: 3 without a sill, 4 with one").from("3", "4").when("shape", &["rectangle"]),
    place("spring", "6 ft 3 in", "height to the spring line").when("shape", ARCHES),
    length("rise", "1 ft", "rise of the segment above the spring line, at most half the width").when("shape", &["segmental arch"]),
    place("top", "2 ft", "width at the head; `width` is that at the foot").when("shape", TRAPEZOID),
    place("shift", "6 in", "from the foot's left end to under the head's; left out, the head stands in the middle")
        .free_when("shape", TRAPEZOID),
    length("diameter", "2 ft", "diameter of a round opening").when("shape", &["circle"]),
    Field::new("corners", Want::Corners, CORNERS, "its corners in order, how far to the right and how high")
        .from("0 ft", "1000 ft")
        .when("shape", POLYGON),
    length("depth", "4 in", "depth of the reveal that gets a coat").free(),
    Field::new("overhead", LENGTH, "3/4 in", "carve coat that is planned on the underside of its head; the wall's is not meant for it")
        .over("0 in", "24 in")
        .likely("1/16 in", "3 in")
        .free(),
    Field::new("sill_coated", Want::YesNo, "yes", "whether the sill gets a coat beside jambs and head; no if left out")
        .free_when("shape", OPENING_SILL),
    count("how many equal ones; one if left out").free(),
    Field::new(
        "reveal",
        Want::Choice(&["narrower", "equal", "wider"]),
        "narrower",
        "this face's reveal against that of the wall's other face; only `opening_rule: IS 1200-12` asks for it",
    )
    .free(),
    Field::new("reveal_by", Want::Text, "frame carpenter", "who does the reveal where it is not ours, or `nobody` where there is none")
        .free(),
    place("left", "2 ft", "distance from the left edge of the wall, for the drawing").free(),
    place("sill", "4 ft", "height of its foot above the floor, for the drawing").free(),
];

static RETURN: &[Field] = &[
    Field::new("what", Want::Words, "wall end", "what it is"),
    length("length", "9 ft", "length along the edge of the wall"),
    length("depth", "6 in", "depth around the corner"),
    count("how many equal ones; one if left out").free(),
];

static SOFFIT: &[Field] = &[
    Field::new("what", Want::Words, "underside of the shelf", "what it is"),
    length("width", "6 ft", "width along the wall"),
    length("depth", "1 ft 4 in", "depth out from the wall"),
    Field::new("overhead", LENGTH, "3/4 in", "carve coat that is planned on it; the wall's is not meant for it")
        .over("0 in", "24 in")
        .likely("1/16 in", "3 in")
        .free(),
    count("how many equal ones; one if left out").free(),
];

static DROP: &[Field] = &[Field::new("drop", SHARE, "5 %", "droppings, tub and tools").from("0 %", "60 %")];

static OWN_SCRATCH: &[Field] = &[
    Field::new("thickness", LENGTH, "3/8 in", "thickness of the scratch coat here")
        .over("0 in", "6 in")
        .likely("1/16 in", "1 1/2 in")
        .free(),
    Field::new("key", LENGTH, "1/8 in", "allowance for the mud behind the lath here")
        .from("0 in", "6 in")
        .likely("1/32 in", "1/2 in")
        .free(),
    Field::new("waste", Want::Group(DROP), "", "its waste here").free(),
];

/// Keys of a surface.
pub static FIELDS: &[Field] = &[
    Field::new("what", Want::Words, "fireplace wall", "what it is"),
    Field::new(
        "shape",
        Want::Choice(&[
            "rectangle",
            "gable",
            "trapezoid",
            "semicircular arch",
            "segmental arch",
            "circle",
            "polygon",
            "hearth",
            "box",
            "column",
            "half column",
            "frustum",
        ]),
        "rectangle",
        "its shape",
    ),
    length("width", "22 ft", "width of the wall").when("shape", WIDE),
    length("height", "9 ft", "height of the wall or the columns").when("shape", HIGH),
    length("eave", "9 ft", "height at the eave").when("shape", &["gable"]),
    place("spring", "6 ft", "height to the spring line; 0 for a field that is all arch").when("shape", ARCHES),
    length("rise", "5 ft 6 in", "rise of the gable above the eave, or of the segment above the spring line, that at most half the width")
        .when("shape", &["gable", "segmental arch"]),
    place("top", "16 ft", "width at the head; `width` is that at the foot").when("shape", TRAPEZOID),
    place("shift", "2 ft", "from the foot's left end to under the head's; left out, the head stands in the middle")
        .free_when("shape", TRAPEZOID),
    Field::new(
        "corners",
        Want::Corners,
        CORNERS,
        "its corners in order, how far to the right and how high; the last is joined to the first",
    )
    .from("0 ft", "1000 ft")
    .when("shape", POLYGON),
    Field::new("front", Want::Group(FRONT), "", "front of the hearth").when("shape", HEARTH),
    Field::new("ends", Want::Group(ENDS), "", "ends of the hearth").when("shape", HEARTH),
    Field::new("faces", Want::Map("front", FACES), "", "faces of a plinth or chimney that get a coat").when("shape", &["box"]),
    length("diameter", "14 in", "diameter of the circle, or of the column's core").when("shape", &["circle", "column", "half column"]),
    length("foot", "6 ft", "diameter of the core at the foot").when("shape", &["frustum"]),
    length("head", "4 ft", "diameter of the core at the head").when("shape", &["frustum"]),
    count("how many equal ones stand; openings, returns and soffits are those of one").when_else_free("shape", COLUMNS),
    Field::new("texture", Want::Text, "rubble", "name of its texture"),
    Field::new("direct", Want::YesNo, "no", "whether the carve coat goes straight on the base here; as `base.direct` says if left out")
        .free(),
    Field::new("scratch", Want::Group(OWN_SCRATCH), "", "where its scratch coat differs from the site's").free(),
    Field::new("toward", ANGLE, "270 °", "bearing that it looks to, from north by east; a west wall has 270 °, round work none")
        .from("0 °", "360 °")
        .free(),
    Field::new("lifts", Want::Whole, "1", "lifts that are planned for the carve coat").from("1", "20").free(),
    Field::new("one_lot", Want::YesNo, "yes", "whether its color lets no second lot of bags on it; no if left out").free(),
    Field::new("openings", Want::Map("D1", OPENING), "", "openings by code").free_when("shape", WALLS),
    Field::new("returns", Want::Map("R1", RETURN), "", "ends of the wall that turn a corner, by code").free_when("shape", WALLS),
    Field::new("soffits", Want::Map("S1", SOFFIT), "", "undersides, worked overhead, by code").free_when("shape", WALLS),
];

fn outline(g: &Group) -> Option<Outline> {
    Some(match g.text("shape")?.text.as_str() {
        "rectangle" => Outline::Rectangle { width: g.worked("width")?, height: g.worked("height")? },
        "gable" => Outline::Gable { width: g.worked("width")?, eave: g.worked("eave")?, rise: g.worked("rise")? },
        "trapezoid" => {
            Outline::Trapezoid { width: g.worked("width")?, top: g.worked("top")?, height: g.worked("height")?, shift: g.worked("shift") }
        }
        "semicircular arch" => Outline::Semicircular { width: g.worked("width")?, spring: g.worked("spring")? },
        "segmental arch" => Outline::Segmental { width: g.worked("width")?, spring: g.worked("spring")?, rise: g.worked("rise")? },
        "circle" => Outline::Circle { diameter: g.worked("diameter")? },
        _ => Outline::Polygon { corners: g.corners("corners")? },
    })
}

fn shape(g: &Group) -> Option<Shape> {
    Some(match g.text("shape")?.text.as_str() {
        "hearth" => {
            let (front, ends) = (g.group("front")?, g.group("ends")?);
            Shape::Hearth {
                front: (front.worked("width")?, front.worked("height")?),
                ends: (ends.worked("width")?, ends.worked("height")?),
                ends_count: ends.worked("count")?,
            }
        }
        "box" => Shape::Box(all(g.map("faces").iter().map(|(code, f)| {
            Some(Face { code: code.clone(), width: f.worked("width")?, height: f.worked("height")?, count: f.worked("count") })
        }))?),
        "column" | "half column" => {
            Shape::Column { half: g.says("shape", "half column"), diameter: g.worked("diameter")?, height: g.worked("height")? }
        }
        "frustum" => Shape::Frustum { foot: g.worked("foot")?, head: g.worked("head")?, height: g.worked("height")? },
        _ => Shape::Flat(outline(g)?),
    })
}

fn opening(code: &Text, g: &Group) -> Option<Opening> {
    let four = g.count("sides") == Some(4);
    Some(Opening {
        code: code.clone(),
        what: g.words("what")?,
        fire: g.said("fire"),
        outline: outline(g)?,
        depth: g.worked("depth"),
        overhead: g.worked("overhead"),
        sill_coated: four || g.yes("sill_coated"),
        count: g.worked("count"),
        reveal: g.text("reveal"),
        reveal_by: g.text("reveal_by"),
        left: g.worked("left"),
        sill: g.worked("sill"),
    })
}

fn edge(code: &Text, g: &Group, along: &str) -> Option<Edge> {
    Some(Edge {
        code: code.clone(),
        what: g.words("what")?,
        length: g.worked(along)?,
        depth: g.worked("depth")?,
        overhead: g.worked("overhead"),
        count: g.worked("count"),
    })
}

/// The site's scratch coat with what the surface says of its own.
fn scratch(g: &Group, of_site: Option<&Scratch>) -> Option<Scratch> {
    let own = g.group("scratch");
    let pick = |name: &str| own.and_then(|o| o.worked(name));
    let drop = own.and_then(|o| o.group("waste")).and_then(|w| w.worked("drop"));
    Some(Scratch {
        thickness: pick("thickness").or_else(|| of_site.map(|s| s.thickness.clone()))?,
        key: pick("key").or_else(|| of_site.map(|s| s.key.clone()))?,
        waste: Waste { carve: None, drop: drop.or_else(|| of_site.map(|s| s.waste.drop.clone()))? },
    })
}

/// `direct` is what the base of the site says.
pub(super) fn make(code: &Text, g: &Group, of_site: Option<&Scratch>, direct: bool) -> Option<Surface> {
    let direct = g.said("direct").unwrap_or(direct);
    Some(Surface {
        code: code.clone(),
        what: g.words("what")?,
        shape: shape(g)?,
        count: g.worked("count"),
        texture: g.text("texture")?,
        // A coat that is wanted and not stated was reported: without it every load would be short.
        scratch: if direct { None } else { Some(scratch(g, of_site)?) },
        lifts: g.worked("lifts"),
        one_lot: g.yes("one_lot"),
        openings: all(g.map("openings").iter().map(|(c, o)| opening(c, o)))?,
        returns: all(g.map("returns").iter().map(|(c, e)| edge(c, e, "length")))?,
        soffits: all(g.map("soffits").iter().map(|(c, e)| edge(c, e, "width")))?,
        toward: g.worked("toward"),
        at: g.at,
    })
}
