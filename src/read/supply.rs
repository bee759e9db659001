//! `sites/NAME.md`: mixing water, delivery, orders as told, lots.

use crate::job::{Delivery, MixingWater, Ordered, StandingLot};

use super::field::{AREAL, BAGS, Field, READING, Want};
use super::group::{Group, all};

/// Keys of `mixing_water`.
pub static MIXING_WATER: &[Field] = &[
    Field::new("source", Want::Text, "tap in the yard", "where the mixing water comes from, in words"),
    Field::new("kind", Want::Choice(&["drinking", "softened", "other"]), "drinking", "what sort of water it is"),
    Field::new("test", Want::Text, "report WT-2 of 2026-01-12", "the test that lets it be mixed with, where it is not drinking water")
        .free(),
    Field::new("warmest", READING, "75 °F", "warmest that it reaches the mixer, heater on").from("32 °F", "212 °F").free(),
    Field::new(
        "ice",
        Want::Choice(&["none", "melted", "in the mixer"]),
        "none",
        "ice in the mixing water: none, melted before it is measured, or put into the mixer",
    )
    .free(),
];

static ORDERED: &[Field] = &[
    Field::new("additive", BAGS, "12 bags", "additive bags").from("0 bags", "100000 bags"),
    Field::new("mortar", BAGS, "12 bags", "mortar bags").from("0 bags", "100000 bags"),
];

static LOT: &[Field] = &[
    Field::new("mix", Want::Text, "CARVE-24", "name of the mix"),
    Field::new("material", Want::Choice(&["additive", "mortar"]), "mortar", "which of its bags"),
    Field::new("lot", Want::Text, "M-118", "lot as printed on the bags"),
    Field::new("bags", BAGS, "40 bags", "bags of this lot").from("0 bags", "100000 bags"),
];

/// Keys of `delivery`.
pub static DELIVERY: &[Field] = &[
    Field::new("by", Want::Choice(&["yard", "own trailer"]), "yard", "who brings the bags"),
    Field::new("trips", Want::Whole, "2", "trips that are planned with the own trailer; one if left out").from("1", "100").free(),
    Field::new(
        "floor",
        Want::Choice(&["ground", "suspended"]),
        "ground",
        "what pallets stand on: the ground, or a floor or deck over a space",
    ),
    Field::new("capacity", AREAL, "100 lb/ft2", "what a suspended floor carries, by whoever may say so")
        .over("0 lb/ft2", "5000 lb/ft2")
        .free(),
    Field::new(
        "ordered",
        Want::Map("CARVE-24", ORDERED),
        "",
        "bags as the yard was told, by the mix's name, where that is not what is computed",
    )
    .free(),
    Field::new("lots", Want::List(LOT), "", "lots that stand on site").free(),
];

pub(super) fn mixing_water(g: &Group) -> Option<MixingWater> {
    Some(MixingWater {
        source: g.text("source")?,
        kind: g.text("kind")?,
        test: g.text("test"),
        warmest: g.worked("warmest"),
        ice: g.text("ice"),
    })
}

pub(super) fn delivery(g: &Group) -> Option<Delivery> {
    let ordered = g
        .map("ordered")
        .iter()
        .map(|(mix, o)| Some(Ordered { mix: mix.clone(), additive: o.worked("additive")?, mortar: o.worked("mortar")? }));
    let lot =
        |l: &Group| Some(StandingLot { mix: l.text("mix")?, material: l.text("material")?, lot: l.text("lot")?, bags: l.worked("bags")? });
    Some(Delivery {
        by: g.text("by")?,
        trips: g.worked("trips"),
        floor: g.text("floor")?,
        capacity: g.worked("capacity"),
        ordered: all(ordered)?,
        lots: all(g.list("lots").iter().map(lot))?,
    })
}
