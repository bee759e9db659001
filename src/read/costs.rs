//! `company.md`: paces, prices, transport, water, lifts, platform.

use crate::job::{Lift, Platform, Prices, Rates, SiteWater, TextureRates, Transport};

use super::field::{AREAL, FREQUENCY, Field, LENGTH, MASS, MONEY, PACE, PRICE_OF_AREA, SHARE, TIME, VOLUME, WAGE, Want};
use super::group::{Group, all};

const fn pace(name: &'static str, example: &'static str, meaning: &'static str) -> Field {
    Field::new(name, PACE, example, meaning).over("0 ft2/h", "10000 ft2/h")
}

static TEXTURE: &[Field] = &[pace("place", "14 ft2/h", "placing, one person"), pace("carve", "9 ft2/h", "carving, one person")];

/// Keys of `rates`.
pub static RATES: &[Field] = &[
    pace("lath", "45 ft2/h", "paper and lath, one person").free(),
    pace("scratch", "60 ft2/h", "scratch coat, one person").free(),
    pace("color", "70 ft2/h", "one pass of color or sealer over developed surface, one person").free(),
    Field::new("placers_per_tender", Want::Whole, "4", "placers that one mixer tender keeps going").from("1", "20").free(),
    Field::new("textures", Want::Map("rubble", TEXTURE), "", "paces by texture").free(),
];

static PRICE: &[Field] = &[Field::new("load", MONEY, "38.50 USD", "all bags of one load, delivered").from("0 USD", "100000 USD")];

/// Keys of `prices`.
pub static PRICES: &[Field] = &[
    Field::new("dated", Want::Date, "2026-02-16", "day they were asked"),
    Field::new("labor", WAGE, "58 USD/h", "an hour of one person, all in").from("0 USD/h", "10000 USD/h"),
    Field::new("lath_and_paper", PRICE_OF_AREA, "1.12 USD/ft2", "lath, paper and fasteners").from("0 USD/ft2", "1000 USD/ft2").free(),
    Field::new("finish", PRICE_OF_AREA, "0.53 USD/ft2", "color and sealer, over developed surface")
        .from("0 USD/ft2", "1000 USD/ft2")
        .free(),
    Field::new("markup", SHARE, "18 %", "on top of all").from("0 %", "500 %"),
    Field::new("mixes", Want::Map("CARVE-24", PRICE), "", "a load of each mix, by the mix's name"),
];

static PALLET: &[Field] = &[
    Field::new("width", LENGTH, "48 in", "width of a pallet").over("0 in", "200 in").likely("20 in", "80 in"),
    Field::new("depth", LENGTH, "40 in", "depth of a pallet").over("0 in", "200 in").likely("20 in", "80 in"),
    Field::new("weight", MASS, "40 lb", "mass of an empty pallet").from("0 lb", "500 lb").likely("10 lb", "120 lb"),
];

/// Keys of `transport`.
pub static TRANSPORT: &[Field] = &[
    Field::new("payload", MASS, "3300 lb", "most the trailer carries").over("0 lb", "100000 lb").likely("250 lb", "60000 lb"),
    Field::new("pallet", Want::Group(PALLET), "", "the pallet"),
];

/// Keys of `site_water`.
pub static WATER: &[Field] = &[
    Field::new("wash", VOLUME, "5 gal", "one wash-out of the mixer").from("0 gal", "500 gal").likely("1 1/2 gal", "100 gal"),
    // A volume per area is a depth of water.
    Field::new("mist", LENGTH, "0.02 gal/ft2", "one misting of the wall").from("0 gal/ft2", "10 gal/ft2"),
    Field::new("person", VOLUME, "5 gal", "washing of one person in a day").from("0 gal", "100 gal").likely("1 1/2 gal", "30 gal"),
];

const fn from_to(name: &'static str, example: &'static str, meaning: &'static str) -> Field {
    Field::new(name, LENGTH, example, meaning).from("0 in", "80 in")
}

static LIFT: &[Field] = &[
    Field::new("what", Want::Words, "bag over the mixer lip", "what is lifted where"),
    from_to("reach", "15 in", "from the ankles to the hands, at the start"),
    from_to("reach_end", "20 in", "the same at the end"),
    from_to("height", "20 in", "from the floor to the hands, at the start"),
    from_to("height_end", "40 in", "the same at the end"),
    Field::new("frequency", FREQUENCY, "1 lift/min", "lifts in a minute").from("0 lifts/min", "15 lifts/min"),
    Field::new("lasts", TIME, "2 h", "how long it goes on in a day").over("0 h", "8 h").likely("5 min", "8 h"),
    Field::new("grip", Want::Choice(&["good", "fair", "poor"]), "fair", "how well the hands hold it"),
    Field::new("part", SHARE, "100 %", "share of a mortar bag in the hands").over("0 %", "100 %"),
    Field::new("measure", Want::Text, "two people, or half a bag at a time", "what makes the lift lawful where its index is high").free(),
];

/// Lifts by code.
pub const LIFTS: Field = Field::new("lifts", Want::Map("bag-over-lip", LIFT), "", "lifts that are done over and over").free();

/// Keys of `platform`.
pub static PLATFORM: &[Field] = &[
    Field::new("width", LENGTH, "5 ft", "width of the planks").over("0 ft", "100 ft").likely("1 ft", "20 ft"),
    Field::new("length", LENGTH, "10 ft", "length of the bay").over("0 ft", "1000 ft").likely("3 ft", "300 ft"),
    Field::new("rating", AREAL, "25 lb/ft2", "load the scaffold's tag allows; left out, none is allowed")
        .over("0 lb/ft2", "500 lb/ft2")
        .free(),
    Field::new("tag", Want::Text, "tag at the east tower", "which tag says so").free(),
    Field::new("person", MASS, "250 lb", "one person with tools").over("0 lb", "1000 lb").likely("100 lb", "400 lb"),
    Field::new("people", Want::Whole, "3", "people on it").from("0", "50"),
    Field::new("tub", MASS, "30 lb", "an empty tub").from("0 lb", "1000 lb").likely("2 lb", "200 lb"),
    Field::new("tub_loads", Want::Plain, "2", "loads of wet mix that stand on it").from("0", "50"),
    Field::new("bags", Want::Whole, "3", "bags of mortar, and as many of additive, that stand on it").from("0", "200").free(),
];

pub(super) fn rates(g: &Group) -> Option<Rates> {
    let textures = g
        .map("textures")
        .iter()
        .map(|(texture, t)| Some(TextureRates { texture: texture.clone(), place: t.worked("place")?, carve: t.worked("carve")? }));
    Some(Rates {
        lath: g.worked("lath"),
        scratch: g.worked("scratch"),
        color: g.worked("color"),
        placers_per_tender: g.worked("placers_per_tender"),
        textures: all(textures)?,
    })
}

pub(super) fn prices(g: &Group) -> Option<Prices> {
    Some(Prices {
        dated: g.day("dated")?,
        labor: g.worked("labor")?,
        lath_and_paper: g.worked("lath_and_paper"),
        finish: g.worked("finish"),
        markup: g.worked("markup")?,
        mixes: all(g.map("mixes").iter().map(|(name, m)| Some((name.clone(), m.worked("load")?))))?,
    })
}

pub(super) fn transport(g: &Group) -> Option<Transport> {
    let pallet = g.group("pallet")?;
    Some(Transport {
        payload: g.worked("payload")?,
        pallet: (pallet.worked("width")?, pallet.worked("depth")?),
        pallet_mass: pallet.worked("weight")?,
    })
}

pub(super) fn water(g: &Group) -> Option<SiteWater> {
    Some(SiteWater { wash: g.worked("wash")?, mist: g.worked("mist")?, person: g.worked("person")? })
}

pub(super) fn lifts(entries: &[(crate::job::Text, Group)]) -> Option<Vec<Lift>> {
    all(entries.iter().map(|(code, g)| {
        Some(Lift {
            code: code.clone(),
            what: g.words("what")?,
            reach: (g.worked("reach")?, g.worked("reach_end")?),
            height: (g.worked("height")?, g.worked("height_end")?),
            frequency: g.worked("frequency")?,
            lasts: g.worked("lasts")?,
            grip: g.text("grip")?,
            part: g.worked("part")?,
            measure: g.text("measure"),
        })
    }))
}

pub(super) fn platform(g: &Group) -> Option<Platform> {
    Some(Platform {
        size: (g.worked("width")?, g.worked("length")?),
        rating: g.worked("rating"),
        tag: g.text("tag"),
        person: g.worked("person")?,
        people: g.worked("people")?,
        tub: g.worked("tub")?,
        tub_loads: g.worked("tub_loads")?,
        bags: g.worked("bags"),
    })
}
