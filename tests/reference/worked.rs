//! Every worked number of the design, family by family, with its own mixes, through our formulas. Common practice, no
//! source, unless a formula's own source says more. Where ours stands otherwise the line holds ours and names theirs, and
//! the reason stands among the decisions for developers.

use std::collections::BTreeSet;

use hodbook::quantity::expr::{Density, Mass, Sort, Volume, Worked};
use hodbook::quantity::print::derivation;
use hodbook::trade::yields::{Solid, dry_load, load_yield, solids_volume, water_mass, wet_density, wet_load};

use crate::run::{digits, q};
use crate::{arithmetic, worked_crew, worked_day, worked_demo, worked_walls, worked_water};

const DECISIONS: &str = include_str!("../../DEVELOPERS.md");

/// Lines met so far.
#[derive(Default)]
pub struct Book {
    held: usize,
    stand: Vec<String>,
    faults: Vec<String>,
    families: BTreeSet<&'static str>,
}

impl Book {
    /// A number as the design prints it, or as its own corrections do.
    pub fn line<S: Sort>(&mut self, family: &'static str, what: &str, worked: &Worked<S>, unit: &str, printed: &str) {
        arithmetic::follows(&derivation("", worked.node()));
        self.text(family, what, &digits(worked, unit, printed), printed);
    }

    /// An intermediate value, which the printed derivation shows under its symbol.
    pub fn inner<S: Sort>(&mut self, family: &'static str, what: &str, worked: &Worked<S>, symbol: &str, printed: &str) {
        let lines = derivation("", worked.node());
        arithmetic::follows(&lines);
        let line = lines.iter().find(|l| l.symbol == symbol).unwrap_or_else(|| panic!("{family} {what}: no {symbol}"));
        let places = printed.split_once('.').map_or(0, |(_, digits)| digits.len());
        self.text(family, what, &format!("{:.places$}", arithmetic::value(&line.result)), printed);
    }

    /// A text, such as a clock.
    pub fn text(&mut self, family: &'static str, what: &str, got: &str, printed: &str) {
        self.families.insert(family);
        self.held += 1;
        if got != printed {
            self.faults.push(format!("{family} {what}: {got}, not {printed}"));
        }
    }

    /// A number of ours that is not the design's; `why` stands word for word among the decisions.
    pub fn ours<S: Sort>(&mut self, family: &'static str, what: &str, worked: &Worked<S>, unit: &str, numbers: [&str; 2], why: &str) {
        arithmetic::follows(&derivation("", worked.node()));
        self.stands(family, what, &digits(worked, unit, numbers[0]), numbers, why);
    }

    /// A text of ours that is not the design's.
    pub fn stands(&mut self, family: &'static str, what: &str, got: &str, [ours, design]: [&str; 2], why: &str) {
        self.families.insert(family);
        if got != ours || ours == design {
            self.faults.push(format!("{family} {what}: {got}, not {ours} for the design's {design}"));
        }
        let decisions: Vec<&str> = DECISIONS.split_whitespace().collect();
        if !decisions.join(" ").contains(why) {
            self.faults.push(format!("{family} {what}: no decision says `{why}`"));
        }
        self.stand.push(format!("{family} {what}: {ours}, in the design {design}"));
    }
}

fn solid(mass: &str, relative_density: &str) -> Solid {
    Solid { name: "part", mass: q(mass), relative_density: q(relative_density) }
}

/// A load of one of the design's mixes.
pub struct Load {
    /// Volume.
    pub yields: Worked<Volume>,
    /// Mass with its water.
    pub wet: Worked<Mass>,
    /// Mass of its bags.
    pub dry: Worked<Mass>,
}

impl Load {
    /// Wet density.
    pub fn density(&self) -> Worked<Density> {
        wet_density(&self.wet, &self.yields).unwrap()
    }
}

/// A load by the constants that its mix states.
pub fn load(add: (&str, &str), mor: (&str, &str), water: &str, constants: (&str, &str), air: &str) -> Load {
    let parts = [solid(add.0, add.1), solid(mor.0, mor.1)];
    let (m_w, dry) = (water_mass(&q(water), &q(constants.0)).unwrap(), dry_load(&parts).unwrap());
    let yields = load_yield(&solids_volume(&parts, &q(constants.1)).unwrap(), &m_w, &q(constants.1), &q(air)).unwrap();
    Load { yields, wet: wet_load(&dry, &m_w).unwrap(), dry }
}

/// Constants of the mixes in US units, of water by the gallon and of absolute volume.
pub const US: (&str, &str) = ("8.345 lb/gal", "62.4 lb/ft3");
/// And of the metric mix.
pub const METRIC: (&str, &str) = ("1 kg/L", "1000 kg/m3");

/// The carve mix.
pub fn carve(water: &str) -> Load {
    load(("24 lb", "2.30"), ("80 lb", "2.66"), water, US, "9 %")
}

/// The scratch mix.
pub fn scratch() -> Load {
    load(("15 lb", "2.30"), ("70 lb", "2.66"), "1.25 gal", US, "7 %")
}

/// The metric mix.
pub fn light() -> Load {
    load(("10 kg", "1.35"), ("25 kg", "2.65"), "4.6 L", METRIC, "14 %")
}

#[test]
fn every_worked_number_is_held_or_decided() {
    let mut book = Book::default();
    let (walls, flat_scratch) = worked_walls::lines(&mut book);
    worked_demo::lines(&mut book, &walls, &flat_scratch);
    worked_water::lines(&mut book);
    worked_day::lines(&mut book);
    worked_crew::lines(&mut book, &walls);
    println!("worked numbers of the design: {} held, {} stand otherwise", book.held, book.stand.len());
    for line in &book.stand {
        println!("  {line}");
    }
    assert!(book.faults.is_empty(), "{:#?}", book.faults);
    let all: BTreeSet<String> = (1..=30).map(|n| format!("F{n}")).chain(["demo".to_owned()]).collect();
    assert_eq!(book.families.iter().map(|f| (*f).to_owned()).collect::<BTreeSet<_>>(), all);
}
