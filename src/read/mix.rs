//! `mixes/NAME.md`.

use crate::job::{Bagged, CarveWindow, Cure, Edition, Mix, Mixing, TimesAt, Water, Weighed};
use crate::quantity::{Dim, Kind};

use super::field::{
    ACCEPTS, APPROVED_BY, BAGS as BAG_COUNT, DENSITY, Field, LENGTH, MASS, READING, SHARE, STRENGTH, TIME, VOLUME, WRITTEN_BY, Want,
};
use super::group::{Group, all};

const SHELF: Field = Field::new("shelf", TIME, "270 days", "how long a closed, dry bag keeps, from the day it was made")
    .over("0 days", "3650 days")
    .likely("30 days", "1000 days")
    .free();

static ADDITIVE: &[Field] = &[
    Field::new("bag", MASS, "24 lb", "mass of a bag").over("0 lb", "500 lb").likely("1 lb", "112 lb"),
    Field::new("relative_density", Want::Plain, "2.30", "density of the particles against water").from("0.5", "8"),
    Field::new("name", Want::Words, "additive", "name to print"),
    Field::new("class", Want::Text, "polymer powder", "description, as the yard must read it").free(),
    Field::new("per_pallet", BAG_COUNT, "42 bags", "bags on a pallet").over("0 bags", "500 bags").free(),
    SHELF,
];

static MORTAR: &[Field] = &[
    Field::new("bag", MASS, "80 lb", "mass of a bag").over("0 lb", "500 lb").likely("10 lb", "112 lb"),
    Field::new("relative_density", Want::Plain, "2.66", "density of the particles against water").from("0.5", "8"),
    Field::new("class", Want::Text, "\"bagged Type S mortar, sand in it\"", "class, as the yard must read it"),
    Field::new("name", Want::Words, "mortar", "name to print").free(),
    Field::new("per_pallet", BAG_COUNT, "42 bags", "bags on a pallet").over("0 bags", "500 bags").free(),
    SHELF,
];

static BAGS: &[Field] = &[
    Field::new("additive", Want::Plain, "1", "additive bags in a load").over("0", "20"),
    Field::new("mortar", Want::Plain, "1", "mortar bags in a load").over("0", "20"),
];

static WATER: &[Field] = &[
    Field::new("constant", DENSITY, "8.345 lb/gal", "mass of a volume of water, as the mix sheet states it").from("8 lb/gal", "8.7 lb/gal"),
    Field::new("absolute_volume_constant", DENSITY, "62.4 lb/ft3", "water constant of the absolute-volume method")
        .from("60 lb/ft3", "64 lb/ft3"),
    Field::new("start", VOLUME, "1 gal 2 qt 1 pt", "start water per load, before any powder")
        .over("0 gal", "50 gal")
        .likely("1 qt", "20 gal"),
    Field::new("least", VOLUME, "1 gal 1 qt 1 pt", "least start water per load").over("0 gal", "50 gal").likely("1 qt", "20 gal"),
    Field::new("step", VOLUME, "1 cup", "one late addition per load").over("0 gal", "10 gal").likely("1 fl oz", "1 gal"),
    Field::new("limit", VOLUME, "2 gal", "most water ever, per load").over("0 gal", "50 gal").likely("1 qt", "20 gal"),
    Field::new("why", Want::Text, "light sand drinks more", "why the start is far from what is usual for the dry mass, if it is").free(),
];

static MIXING: &[Field] = &[
    Field::new("least", TIME, "4 min", "least time by the timer before anyone judges the mix")
        .over("0 min", "60 min")
        .likely("1 min", "20 min"),
    Field::new("after_step", TIME, "1 min", "time after a late addition").over("0 min", "60 min").likely("15 s", "10 min"),
    Field::new("mixer", Want::Choice(&["paddle", "any"]), "paddle", "mixer that the sheet asks for").free(),
    Field::new(
        "order",
        Want::Choices(&["water", "half mortar", "additive", "slurry", "rest"]),
        "[water, half mortar, additive, slurry, rest]",
        "what goes in, in order; procedures and cards keep to it",
    )
    .free(),
    Field::new("weighed", Want::Group(WEIGHED), "", "a full pail of it that somebody weighed: the proof of air and yield").free(),
];

static WEIGHED: &[Field] = &[
    Field::new("density", DENSITY, "124 lb/ft3", "wet density that came out").over("0 lb/ft3", "300 lb/ft3"),
    Field::new("date", Want::Date, "2026-02-19", "day it was weighed"),
];

static CURE: &[Field] = &[
    Field::new("wet", TIME, "2 days", "how long it is kept wet").from("0 days", "60 days").likely("12 h", "30 days"),
    Field::new("then", Want::Text, "air", "what follows"),
    Field::new("credit", TIME, "7 days", "days at full warmth before the next trade, as the sheet or that trade asks")
        .from("0 days", "90 days")
        .likely("1 day", "60 days")
        .free(),
];

static WINDOW: &[Field] = &[
    Field::new("opens", TIME, "75 min", "from mud on the wall until it can be carved").over("0 min", "10000 min").likely("5 min", "24 h"),
    Field::new("closes", TIME, "210 min", "from mud on the wall until it is too hard").over("0 min", "10000 min").likely("15 min", "48 h"),
    Field::new("at", READING, "70 °F", "temperature where both hold").from("33 °F", "120 °F"),
];

static TIMES: &[Field] = &[
    Field::new("at", READING, "85 °F", "temperature of the mix").from("33 °F", "120 °F"),
    Field::new("open", TIME, "30 min", "open time there").over("0 min", "1000 min").likely("5 min", "6 h"),
    Field::new("opens", TIME, "45 min", "opening of the carve window there").over("0 min", "10000 min").likely("5 min", "24 h").free(),
    Field::new("closes", TIME, "125 min", "its closing there").over("0 min", "10000 min").likely("15 min", "48 h").free(),
];

/// Keys of a mix.
pub static FIELDS: &[Field] = &[
    Field::new("name", Want::Text, "CARVE-24", "name to print; sites call it by this"),
    Field::new("rev", Want::Text, "A", "revision letter of the sheet"),
    Field::new("date", Want::Date, "2026-02-20", "date of the revision").free(),
    Field::new("coat", Want::Choice(&["scratch", "carve"]), "carve", "the coat it is for"),
    Field::new("units", Want::Choice(&["us", "metric"]), "us", "unit system of the sheet"),
    Field::new("additive", Want::Group(ADDITIVE), "", "the additive bag"),
    Field::new("mortar", Want::Group(MORTAR), "", "the mortar bag"),
    Field::new("bags_per_load", Want::Group(BAGS), "", "bags in one load"),
    Field::new("mortar_to_additive", Want::Ratio, "10:3 by mass", "design ratio of mortar to additive"),
    Field::new("air", SHARE, "9 %", "air in the mixed mortar").from("0 %", "40 %"),
    Field::new("water", Want::Group(WATER), "", "water per load, and its constants"),
    Field::new("mixing", Want::Group(MIXING), "", "mixing times"),
    Field::new("open_time", Want::TimeAt, "50 min at 70 °F", "open time, from powder in water, at the temperature where it holds")
        .over("0 min", "1000 min")
        .likely("5 min", "6 h"),
    Field::new("carve_window", Want::Group(WINDOW), "", "when the wall can be carved").free(),
    Field::new("times", Want::List(TIMES), "", "the sheet's own table of times by temperature; it wins over the rule of thumb").free(),
    Field::new("thickness", Want::Range(Dim::LENGTH, Kind::Plain), "3/8 in to 2 3/4 in", "least and most thickness in all")
        .over("0 in", "24 in")
        .likely("1/32 in", "3 1/2 in"),
    Field::new("lift", LENGTH, "1 1/2 in", "most thickness of one lift").over("0 in", "24 in").likely("1/32 in", "3 1/2 in"),
    Field::new("overhead", LENGTH, "3/4 in", "most thickness overhead").over("0 in", "24 in").likely("1/16 in", "3 in").free(),
    Field::new("cement", SHARE, "22 %", "share of cement in the mortar, from its maker").over("0 %", "100 %").free(),
    Field::new("pigment", SHARE, "4 %", "pigment, as a share of the cement").from("0 %", "100 %").free(),
    Field::new("pigment_sort", Want::Choice(&["metal oxide", "carbon black"]), "metal oxide", "sort of the pigment").free(),
    Field::new("admixtures", Want::Texts, "[non-chloride accelerator]", "admixtures that the sheet allows, by class; none if left out")
        .free(),
    Field::new("half_load", Want::Choice(&["by scale", "no"]), "by scale", "whether half loads are allowed, by scale only"),
    Field::new("rake", Want::Choice(&["rough", "smooth"]), "rough", "rake of a scratch coat").free(),
    Field::new("recoat", TIME, "48 h", "least wait before the next coat").over("0 h", "60 days").likely("2 h", "21 days").free(),
    Field::new("strength_class", STRENGTH, "4800 psi", "strength class of the sheet: a name, never a promise")
        .over("0 psi", "20000 psi")
        .likely("500 psi", "15000 psi")
        .free(),
    Field::new("cure", Want::Group(CURE), "", "cure by the sheet"),
    WRITTEN_BY,
    APPROVED_BY,
    ACCEPTS,
];

fn bagged(g: &Group) -> Option<Bagged> {
    Some(Bagged {
        bag: g.worked("bag")?,
        relative_density: g.worked("relative_density")?,
        per_pallet: g.worked("per_pallet"),
        shelf: g.worked("shelf"),
        class: g.text("class"),
        names: g.words("name").unwrap_or_default(),
    })
}

fn window(g: &Group) -> Option<CarveWindow> {
    Some(CarveWindow { opens: g.worked("opens")?, closes: g.worked("closes")?, at: g.worked("at")? })
}

fn times(g: &Group) -> Option<TimesAt> {
    Some(TimesAt { at: g.worked("at")?, open: g.worked("open")?, opens: g.worked("opens"), closes: g.worked("closes") })
}

pub(super) fn make(id: &str, g: &Group, editions: Vec<Edition>) -> Option<Mix> {
    let (water, bags) = (g.group("water")?, g.group("bags_per_load")?);
    let (mixing, cure) = (g.group("mixing")?, g.group("cure")?);
    Some(Mix {
        id: id.to_owned(),
        name: g.text("name")?,
        rev: g.text("rev")?,
        date: g.day("date"),
        coat: g.text("coat")?,
        metric: g.says("units", "metric"),
        additive: bagged(g.group("additive")?)?,
        mortar: bagged(g.group("mortar")?)?,
        additive_bags: bags.worked("additive")?,
        mortar_bags: bags.worked("mortar")?,
        ratio: g.worked("mortar_to_additive")?,
        air: g.worked("air")?,
        water: Water {
            constant: water.worked("constant")?,
            absolute: water.worked("absolute_volume_constant")?,
            start: water.worked("start")?,
            least: water.worked("least")?,
            step: water.worked("step")?,
            limit: water.worked("limit")?,
            why: water.text("why"),
        },
        mixing: Mixing {
            least: mixing.worked("least")?,
            after_step: mixing.worked("after_step")?,
            mixer: mixing.text("mixer"),
            order: mixing.texts("order"),
            weighed: mixing.group("weighed").and_then(|w| Some(Weighed { density: w.worked("density")?, date: w.day("date")? })),
        },
        open_time: g.pair("open_time")?,
        carve_window: g.group("carve_window").and_then(window),
        times: all(g.list("times").iter().map(times))?,
        overhead: g.worked("overhead"),
        cement: g.worked("cement"),
        pigment: g.worked("pigment"),
        pigment_sort: g.text("pigment_sort"),
        admixtures: g.texts("admixtures"),
        thickness: g.pair("thickness")?,
        lift: g.worked("lift")?,
        half_load: g.says("half_load", "by scale"),
        strength_class: g.worked("strength_class"),
        cure: Cure { wet: cure.worked("wet")?, then: cure.text("then")?, credit: cure.worked("credit") },
        rake: g.text("rake"),
        recoat: g.worked("recoat"),
        editions,
    })
}
