//! `sites/NAME.md`: what drawings and data sheets say beside the measures.

use crate::job::{Details, Gate, JointPlan, Text};

use super::field::{Field, LENGTH, TIME, Want};
use super::group::Group;

/// Keys of `details`.
pub static DETAILS: &[Field] = &[
    Field::new("deflection", Want::Plain, "360", "span over the most that the framing bends: 360 for L/360").from("1", "10000").free(),
    Field::new("weep_earth", LENGTH, "6 in", "foot of the work above earth, where water gets out")
        .from("0 in", "200 in")
        .likely("1/2 in", "24 in")
        .free(),
    Field::new("weep_paving", LENGTH, "3 in", "foot of the work above paving, where water gets out")
        .from("0 in", "200 in")
        .likely("1/2 in", "24 in")
        .free(),
    Field::new("scratch_state", Want::Text, "\"damp, dark, no shine\"", "how the scratch coat must look before the carve coat").free(),
    Field::new("waterproofing", Want::Text, "pool trade, their drawing", "who waterproofs what stands in water, by which detail").free(),
    Field::new("water", Want::Choice(&["pool", "fish", "drinking"]), "pool", "water that touches the work").free(),
    Field::new("water_by", Want::Text, "water keeper, in writing", "who says that this water may touch the work").free(),
];

/// Keys of an entry of `joints`.
pub static JOINTS: &[Field] = &[
    Field::new("upright", Want::Whole, "2", "upright control joints").from("0", "200"),
    Field::new("level", Want::Whole, "0", "level control joints").from("0", "200"),
    Field::new("lath", Want::Choice(&["cut", "through"]), "cut", "whether the lath is cut at them or goes through"),
];

/// Keys of `color_gate`.
pub static GATE: &[Field] = &[
    Field::new("after", TIME, "14 days", "least time since the last mud, by the sheet of the color or sealer")
        .over("0 h", "400 days")
        .likely("1 day", "90 days")
        .free(),
    Field::new("ph", Want::Plain, "9.5", "highest pH of the surface, measured").from("1", "14").free(),
    Field::new("moisture", Want::Text, "no dark patch under taped film overnight", "how dry it must be, and how that is measured").free(),
    Field::new("starts", Want::Date, "2026-03-24", "day on which color or sealer is planned to start").free(),
    Field::new("lot", Want::Choice(&["wall", "batch"]), "wall", "what color is mixed for at once: all of a wall, or each batch").free(),
];

pub(super) fn details(g: &Group) -> Details {
    Details {
        deflection: g.worked("deflection"),
        weep_earth: g.worked("weep_earth"),
        weep_paving: g.worked("weep_paving"),
        scratch_state: g.text("scratch_state"),
        waterproofing: g.text("waterproofing"),
        water: g.text("water"),
        water_by: g.text("water_by"),
        at: g.at,
    }
}

pub(super) fn joints((surface, g): &(Text, Group)) -> Option<JointPlan> {
    Some(JointPlan { surface: surface.clone(), upright: g.worked("upright")?, level: g.worked("level")?, lath: g.text("lath")? })
}

pub(super) fn gate(g: &Group) -> Gate {
    Gate {
        after: g.worked("after"),
        ph: g.worked("ph"),
        moisture: g.text("moisture"),
        starts: g.day("starts"),
        lot: g.text("lot"),
        at: g.at,
    }
}
