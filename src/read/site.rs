//! `sites/NAME.md`: the table. [`super::surface`] has the surfaces.

use crate::job::{Base, BatchPlan, Calendar, Climate, Edition, Mean, OpeningRule, Scratch, Site, Texture, Waste};
use crate::quantity::{Dim, Kind};

use super::details;
use super::field::{ACCEPTS, APPROVED_BY, AREAL, Field, LENGTH, LOADS, SHARE, WRITTEN_BY, Want};
use super::group::{Group, all};
use super::{plan, protection, supply, surface};

static CLIMATE: &[Field] = &[
    Field::new("where", Want::Choice(&["indoors", "outdoors"]), "indoors", "where the work stands"),
    Field::new("band", Want::Range(Dim::TEMPERATURE, Kind::Reading), "68 °F to 74 °F", "temperatures of the planned work")
        .from("-40 °F", "140 °F"),
    Field::new("humidity", SHARE, "38 %", "humidity, if known").from("0 %", "100 %").free(),
];

static BASE: &[Field] = &[
    Field::new("kind", Want::Choice(&["framed", "solid"]), "framed", "framed or solid"),
    Field::new("what", Want::Text, "wood studs 16 in apart, sheathing, paper, expanded lath", "what the coats hang on, in words"),
    Field::new("wrb_layers", Want::Whole, "2", "layers of water-resistive barrier").from("0", "9").free(),
    Field::new("lath_and_paper", AREAL, "0.9 lb/ft2", "weight of lath and paper").from("0 lb/ft2", "20 lb/ft2").free(),
    Field::new("direct", Want::YesNo, "no", "whether the carve coat goes straight on it, without a scratch coat; no if left out").free(),
    Field::new("letter", Want::Text, "lf-engineer", "the engineer's letter: a file name in records, without `.md`").free(),
    Field::new("readings", Want::List(protection::READINGS), "", "what was read on it before the mud goes on").free(),
];

static MIXES: &[Field] = &[
    Field::new("scratch", Want::Text, "SCRATCH-15", "name of the scratch mix; not needed where nothing gets a scratch coat").free(),
    Field::new("carve", Want::Text, "CARVE-24", "name of the carve mix"),
];

static BATCH: &[Field] = &[
    Field::new("mix", Want::Text, "CARVE-24", "name of the mix"),
    Field::new("mixer", Want::Text, "pan45", "code of the mixer"),
    Field::new("loads", LOADS, "1 load", "loads in the batch").over("0 loads", "100 loads"),
];

static LOT: &[Field] = &[
    Field::new("mix", Want::Text, "CARVE-24", "name of the mix it is for"),
    Field::new("material", Want::Choice(&["mortar", "additive"]), "mortar", "which of its bags"),
    Field::new("lot", Want::Text, "S-118", "lot number on the bag"),
    Field::new("bag", super::field::MASS, "80 lb", "mass of a bag, as it stands on the bag")
        .over("0 lb", "500 lb")
        .likely("1 lb", "112 lb"),
    Field::new("made", Want::Date, "2026-01-12", "day it was made, as it stands on the bag"),
    Field::new("state", Want::Choice(&["dry", "damp", "lumpy"]), "dry", "how the bags were when somebody looked"),
];

static DROP: &[Field] = &[Field::new("drop", SHARE, "5 %", "droppings, tub and tools").from("0 %", "60 %")];

static WASTE: &[Field] = &[
    Field::new("carve", SHARE, "12 %", "cut off and dead").from("0 %", "60 %").free(),
    Field::new("drop", SHARE, "5 %", "droppings, tub and tools").from("0 %", "60 %"),
];

static SCRATCH: &[Field] = &[
    Field::new("thickness", LENGTH, "1/2 in", "thickness of the scratch coat").over("0 in", "6 in").likely("1/16 in", "1 1/2 in"),
    Field::new("key", LENGTH, "1/8 in", "allowance for the mud behind the lath").from("0 in", "6 in").likely("1/32 in", "1/2 in"),
    Field::new("waste", Want::Group(DROP), "", "its waste"),
];

static TEXTURE: &[Field] = &[
    Field::new("least", LENGTH, "3/8 in", "thickness at the bottom of the grooves; not needed beside a stated mean")
        .over("0 in", "24 in")
        .likely("1/16 in", "4 in")
        .free(),
    Field::new("most", LENGTH, "1 3/4 in", "thickness at the faces").over("0 in", "24 in").likely("1/16 in", "6 in"),
    Field::new("fill", SHARE, "62 %", "share of the relief that stays mud; the mean follows from it").from("0 %", "100 %").free(),
    Field::new("mean", LENGTH, "1 1/4 in", "mean thickness as measured, instead of a fill")
        .over("0 in", "24 in")
        .likely("1/16 in", "6 in")
        .free(),
    Field::new("groove", LENGTH, "1 1/4 in", "how deep the deepest joints are cut below the faces")
        .over("0 in", "24 in")
        .likely("1/16 in", "6 in")
        .free(),
    Field::new("waste", Want::Group(WASTE), "", "its waste"),
    Field::new("developed", Want::Plain, "1.30", "real surface for each unit of flat one, for color and sealer").from("1", "10").free(),
];

static CALENDAR: &[Field] = &[
    Field::new("panel", Want::Date, "2026-02-19", "the panel").free(),
    Field::new("lath", Want::Date, "2026-02-24", "the lath").free(),
    Field::new("scratch", Want::Date, "2026-02-26", "the scratch coat").free(),
    Field::new("carve", Want::Dates, "[2026-03-02, 2026-03-03]", "the carving days").free(),
];

/// Keys of a site.
pub static FIELDS: &[Field] = &[
    Field::new("name", Want::Text, "Example Inn", "name to print"),
    Field::new("code", Want::Text, "EX", "short code"),
    Field::new("units", Want::Choice(&["us", "metric"]), "us", "unit system that stands first on its paper"),
    Field::new("zone", Want::Text, "America/Chicago", "time zone, by its name in the time zone database"),
    Field::new("crew", Want::Texts, "[LEAD, MUD]", "role codes on this site"),
    Field::new("good_until", Want::Date, "2026-03-31", "last day its cards are good"),
    Field::new("climate", Want::Group(CLIMATE), "", "where it is and how warm the work is"),
    Field::new("base", Want::Group(BASE), "", "what the coats hang on"),
    Field::new("mixes", Want::Group(MIXES), "", "the mixes of the two coats"),
    Field::new("batches", Want::List(BATCH), "", "batch sizes that get a card"),
    Field::new("lots", Want::List(LOT), "", "lots of bags that were delivered").free(),
    Field::new("scratch", Want::Group(SCRATCH), "", "the scratch coat; not needed where `base.direct` is yes").free(),
    Field::new("textures", Want::Map("rubble", TEXTURE), "", "textures by name"),
    Field::new(
        "opening_rule",
        Want::Choice(&["deduct all", "IS 1200-12", "Reed 1878"]),
        "deduct all",
        "what openings take off a coated face. `deduct all`, also if left out: each at its real size, every coated return added, common \
         practice, no source for carved work. `IS 1200-12`: up to 0.5 m2 nothing off and no return added; up to 3 m2 all, half or \
         nothing off as this face's reveal is narrower, equal or wider, no return added; over that all off, returns added. `Reed \
         1878`: none as less than 2 yd2, which orders less mud than small openings leave; returns added",
    )
    .free(),
    Field::new("surfaces", Want::Map("EX-1", surface::FIELDS), "", "surfaces by code"),
    Field::new("calendar", Want::Group(CALENDAR), "", "dates of the job").free(),
    Field::new("position", Want::Group(plan::POSITION), "", "where on the globe, for sunset").free(),
    Field::new("plan", Want::Group(plan::DAY), "", "how a carving day is worked").free(),
    Field::new("lath", Want::Group(plan::LATH), "", "sheets, fasteners and paper").free(),
    Field::new("details", Want::Group(details::DETAILS), "", "what the drawings say of the base").free(),
    Field::new("joints", Want::Map("EX-1", details::JOINTS), "", "control joints as planned, by surface").free(),
    Field::new("color_gate", Want::Group(details::GATE), "", "what must be true before color and sealer").free(),
    Field::new("finish", Want::Group(plan::FINISH), "", "color and sealer").free(),
    Field::new("water", Want::Group(plan::WATER), "", "counts for the water that is not mixed").free(),
    Field::new("mixing_water", Want::Group(supply::MIXING_WATER), "", "the water that goes into the mixer").free(),
    Field::new("delivery", Want::Group(supply::DELIVERY), "", "how bags come, and what was told to the yard").free(),
    Field::new("labor", Want::Group(plan::LABOR), "", "hours that no pace gives").free(),
    Field::new("tolerances", Want::Group(plan::TOLERANCES), "", "how well things are known, for the error budget").free(),
    Field::new("cure", Want::Group(plan::CURE), "", "who keeps the cure, and who comes next").free(),
    Field::new("protection", Want::Group(protection::FIELDS), "", "what stands ready against cold, heat, wind, sun and rain").free(),
    Field::new("safety", Want::Group(plan::SAFETY), "", "what keeps people whole: dust, eyes, washing, outlets, gray water, heat").free(),
    WRITTEN_BY,
    APPROVED_BY,
    ACCEPTS,
];

fn base(g: &Group) -> Option<Base> {
    Some(Base {
        kind: g.text("kind")?,
        what: g.text("what")?,
        wrb_layers: g.worked("wrb_layers"),
        direct: g.yes("direct"),
        lath_and_paper: g.worked("lath_and_paper"),
        letter: g.text("letter"),
        readings: protection::readings(g)?,
    })
}

fn waste(g: &Group) -> Option<Waste> {
    Some(Waste { carve: g.worked("carve"), drop: g.worked("drop")? })
}

pub(super) fn make(id: &str, g: &Group, editions: Vec<Edition>) -> Option<Site> {
    let (climate, mixes, base) = (g.group("climate")?, g.group("mixes")?, base(g.group("base")?)?);
    let scratch = match g.group("scratch") {
        Some(s) => Some(Scratch { thickness: s.worked("thickness")?, key: s.worked("key")?, waste: waste(s.group("waste")?)? }),
        None => None,
    };
    let surfaces = g.map("surfaces").iter().map(|(code, s)| surface::make(code, s, scratch.as_ref(), base.direct));
    let surfaces = all(surfaces)?;
    let batches = g
        .list("batches")
        .iter()
        .map(|b| Some(BatchPlan { mix: b.text("mix")?, mixer: b.text("mixer")?, loads: b.worked("loads")?, at: b.at }));
    let lots = g.list("lots").iter().map(|l| {
        Some(crate::job::Lot {
            mix: l.text("mix")?,
            material: l.text("material")?,
            number: l.text("lot")?,
            bag: l.worked("bag")?,
            made: l.day("made")?,
            state: l.text("state")?,
        })
    });
    let textures = g.map("textures").iter().map(|(name, t)| {
        let mean = match t.worked("mean") {
            Some(mean) => Mean::Stated(mean),
            None => Mean::Fill(t.worked("least")?, t.worked("fill")?),
        };
        Some(Texture {
            name: name.clone(),
            least: t.worked("least"),
            most: t.worked("most")?,
            groove: t.worked("groove"),
            mean,
            waste: waste(t.group("waste")?)?,
            developed: t.worked("developed"),
        })
    });
    let calendar = g.group("calendar").map_or_else(Calendar::default, |c| Calendar {
        panel: c.day("panel"),
        lath: c.day("lath"),
        scratch: c.day("scratch"),
        carve: c.days("carve"),
    });
    let zone = g.text("zone")?;
    // Surfaces that could not be read were reported; without them every area would be short, so no site then.
    Some(Site {
        id: id.to_owned(),
        name: g.text("name")?,
        code: g.text("code")?,
        metric: g.says("units", "metric"),
        zone: zone.clone(),
        crew: g.texts("crew"),
        good_until: g.day("good_until")?,
        climate: Climate { place: climate.text("where")?, band: climate.pair("band")?, humidity: climate.worked("humidity") },
        base,
        // Where no surface has a scratch coat nobody mixes for one, whatever is named.
        scratch_mix: mixes.text("scratch").filter(|_| surfaces.iter().any(|s| s.scratch.is_some())),
        carve_mix: mixes.text("carve")?,
        batches: all(batches)?,
        lots: all(lots)?,
        scratch,
        textures: all(textures)?,
        opening_rule: match g.text("opening_rule").as_ref().map(|t| t.text.as_str()) {
            Some("IS 1200-12") => OpeningRule::Is1200,
            Some("Reed 1878") => OpeningRule::Reed1878,
            _ => OpeningRule::DeductAll,
        },
        surfaces,
        calendar,
        position: g.group("position").and_then(plan::place),
        plan: g.group("plan").and_then(|p| plan::day(p, &zone)),
        lath: g.group("lath").and_then(plan::lath),
        details: g.group("details").map(details::details),
        joints: all(g.map("joints").iter().map(details::joints))?,
        gate: g.group("color_gate").map(details::gate),
        finish: g.group("finish").and_then(plan::finish),
        water: g.group("water").and_then(plan::water),
        mixing_water: g.group("mixing_water").and_then(supply::mixing_water),
        delivery: g.group("delivery").and_then(supply::delivery),
        labor: g.group("labor").and_then(plan::labor),
        tolerances: g.group("tolerances").and_then(plan::tolerances),
        cure: g.group("cure").and_then(plan::cure),
        protection: g.group("protection").map(protection::protection),
        safety: g.group("safety").map(plan::safety),
        editions,
    })
}
