//! `sites/NAME.md`: what stands ready against the weather, and what was read on the base.

use crate::job::{Protection, Reading};
use crate::quantity::{Dim, Kind};

use super::field::{Field, READING, Want};
use super::group::{Group, all};

/// Keys of `protection`.
pub static FIELDS: &[Field] = &[
    Field::new(
        "heat",
        Want::Choice(&["vented heater", "electric heater", "unvented heater"]),
        "vented heater",
        "what warms the closed tent or room; left out, nothing does",
    )
    .free(),
    Field::new("wind", Want::Choice(&["screens", "fog", "screens and fog"]), "screens and fog", "what keeps the wind from drying the face")
        .free(),
    Field::new("shade", Want::YesNo, "yes", "whether wall, bags and water stand in shade; no if left out").free(),
    Field::new("cover", Want::Text, "tarps on frames, off the face", "what keeps rain off the fresh face, in words").free(),
    Field::new(
        "mix",
        Want::Range(Dim::TEMPERATURE, Kind::Reading),
        "55 °F to 82 °F",
        "temperatures that the mix is kept between; with shade and something against the wind it is the plan for hot days",
    )
    .from("33 °F", "140 °F")
    .free(),
];

/// Keys of an entry of `base.readings`.
pub static READINGS: &[Field] = &[
    Field::new("day", Want::Date, "2026-03-11", "the day"),
    Field::new("surface", Want::Text, "EX-1", "code of the surface; all of them if left out").free(),
    Field::new("temperature", READING, "64 °F", "temperature of the base, by a surface thermometer").from("-40 °F", "200 °F").free(),
    Field::new("water", Want::Choice(&["dry", "damp", "saturated"]), "damp", "how wet it is; saturated: water stands or shines on it")
        .free(),
];

pub(super) fn protection(g: &Group) -> Protection {
    Protection { heat: g.text("heat"), wind: g.text("wind"), shade: g.yes("shade"), cover: g.text("cover"), mix: g.pair("mix") }
}

pub(super) fn readings(base: &Group) -> Option<Vec<Reading>> {
    let one = |r: &Group| {
        Some(Reading { day: r.day("day")?, surface: r.text("surface"), temperature: r.worked("temperature"), water: r.text("water") })
    };
    all(base.list("readings").iter().map(one))
}
