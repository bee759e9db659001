//! `company.md`.

use crate::job::{Company, Edition, Measure, Mixer, Person, Reserve, Scale};

use super::costs;
use super::field::{ACCEPTS, APPROVED_BY, Field, LOADS, MASS, SHARE, VOLUME, WRITTEN_BY, Want};
use super::group::{Group, all};

static PERSON: &[Field] = &[
    Field::new("role", Want::Text, "mixer tender", "what the role is"),
    Field::new("languages", Want::Languages, "[es]", "languages the person reads, best first"),
];

/// What drives a mixer.
const DRIVES: &[&str] = &["120 V", "240 V", "battery", "engine", "air"];

static MIXER: &[Field] = &[
    Field::new("name", Want::Words, "pan mixer", "name to print"),
    Field::new("type", Want::Text, "paddle", "what sort of mixer"),
    Field::new("holds", VOLUME, "4.5 ft3", "volume of the vessel").over("0 ft3", "100 ft3").likely("5 gal", "30 ft3"),
    Field::new("fill", SHARE, "70 %", "share of the vessel that mixes well").over("0 %", "100 %"),
    Field::new("rating", MASS, "380 lb", "most wet mass it may turn, by its plate").over("0 lb", "10000 lb").likely("30 lb", "6000 lb"),
    Field::new("least", LOADS, "1 load", "least batch that covers the blades").over("0 loads", "100 loads"),
    Field::new("drive", Want::Choice(DRIVES), "120 V", "what drives it; not said, it is taken to hang on a 120 V outlet").free(),
];

static MEASURE: &[Field] = &[
    Field::new("holds", VOLUME, "1 gal", "what it holds to its top mark").over("0 gal", "1000 gal").likely("1/2 cup", "60 gal"),
    Field::new("marked", VOLUME, "1 cup", "its smallest mark").over("0 gal", "1000 gal").likely("5 mL", "5 gal"),
];

static SCALE: &[Field] = &[
    Field::new("holds", MASS, "132 lb", "most it weighs").over("0 lb", "10000 lb").likely("20 lb", "2000 lb"),
    Field::new("marked", MASS, "0.1 lb", "its smallest mark").over("0 lb", "10000 lb").likely("0.01 lb", "2 lb"),
];

static RESERVE: &[Field] = &[
    Field::new("share", SHARE, "5 %", "share over the need").from("0 %", "100 %"),
    Field::new("least", LOADS, "1 load", "never less than this").from("0 loads", "100 loads"),
];

/// Keys of the company file.
pub static FIELDS: &[Field] = &[
    Field::new("name", Want::Text, "Example Plaster Works", "name to print"),
    Field::new("units", Want::Choice(&["us", "metric"]), "us", "unit system that stands first on its paper"),
    Field::new("languages", Want::Languages, "[en, es]", "languages of its paper, first one first"),
    Field::new("on", Want::Date, "2026-03-02", "pins the date of every run; left out, it is the day of the run").free(),
    Field::new("people", Want::Map("LEAD", PERSON), "", "people by role code"),
    Field::new("mixers", Want::Map("pan45", MIXER), "", "mixers by code"),
    Field::new("measures", Want::Map("jug", MEASURE), "", "marked measures for water, by code"),
    Field::new("scale", Want::Group(SCALE), "", "the scale for half loads").free(),
    Field::new("reserve", Want::Group(RESERVE), "", "spare material to buy").free(),
    Field::new("currency", Want::Choice(&["USD", "CAD", "AUD", "MXN", "EUR", "GBP"]), "USD", "money that every price is in").free(),
    Field::new("rates", Want::Group(costs::RATES), "", "paces of work").free(),
    Field::new("prices", Want::Group(costs::PRICES), "", "prices; never printed on a crew's card").free(),
    Field::new("transport", Want::Group(costs::TRANSPORT), "", "trailer and pallet").free(),
    Field::new("site_water", Want::Group(costs::WATER), "", "water on site that is not mixed").free(),
    costs::LIFTS,
    Field::new("platform", Want::Group(costs::PLATFORM), "", "the scaffold platform, by its tag").free(),
    WRITTEN_BY,
    APPROVED_BY,
    ACCEPTS,
];

pub(super) fn make(g: &Group, editions: Vec<Edition>) -> Option<Company> {
    let people =
        g.map("people").iter().map(|(code, p)| Some(Person { code: code.clone(), role: p.text("role")?, languages: p.texts("languages") }));
    let mixers = g.map("mixers").iter().map(|(code, m)| {
        Some(Mixer {
            code: code.clone(),
            names: m.words("name")?,
            sort: m.text("type")?,
            holds: m.worked("holds")?,
            fill: m.worked("fill")?,
            rating: m.worked("rating")?,
            least: m.worked("least")?,
            drive: m.text("drive"),
        })
    });
    let measures = g
        .map("measures")
        .iter()
        .map(|(code, m)| Some(Measure { code: code.clone(), holds: m.worked("holds")?, marked: m.worked("marked")? }));
    Some(Company {
        name: g.text("name")?,
        metric: g.says("units", "metric"),
        languages: g.texts("languages"),
        on: g.day("on"),
        people: all(people)?,
        mixers: all(mixers)?,
        measures: all(measures)?,
        scale: g.group("scale").and_then(|s| Some(Scale { holds: s.worked("holds")?, marked: s.worked("marked")? })),
        reserve: g.group("reserve").and_then(|r| Some(Reserve { share: r.worked("share")?, least: r.worked("least")? })),
        currency: g.text("currency"),
        rates: g.group("rates").and_then(costs::rates),
        prices: g.group("prices").and_then(costs::prices),
        transport: g.group("transport").and_then(costs::transport),
        site_water: g.group("site_water").and_then(costs::water),
        lifts: costs::lifts(g.map("lifts"))?,
        platform: g.group("platform").and_then(costs::platform),
        editions,
    })
}
