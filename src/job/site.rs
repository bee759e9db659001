//! A site: surfaces, base, textures, climate, calendar.

use super::{Day, Edition, Protection, Reading, Scratch, Surface, Text, Texture};
use crate::quantity::Worked;
use crate::quantity::expr::{Areal, Loads, Mass, Plain, Share, Temperature};

/// A site.
#[derive(Debug)]
pub struct Site {
    /// File stem, such as `larkenfell`; the id in figures.
    pub id: String,
    /// Name to print.
    pub name: Text,
    /// Short code, such as `LF`.
    pub code: Text,
    /// True if the site's paper is metric first.
    pub metric: bool,
    /// IANA time zone.
    pub zone: Text,
    /// Role codes on this site.
    pub crew: Vec<Text>,
    /// Last day its cards are good.
    pub good_until: Day,
    /// Climate.
    pub climate: Climate,
    /// Base of the walls.
    pub base: Base,
    /// Name of the scratch mix; none where no surface gets a scratch coat.
    pub scratch_mix: Option<Text>,
    /// Name of the carve mix.
    pub carve_mix: Text,
    /// Batches to make cards for.
    pub batches: Vec<BatchPlan>,
    /// The scratch coat of surfaces that say nothing else, if there is one.
    pub scratch: Option<Scratch>,
    /// Textures by name.
    pub textures: Vec<Texture>,
    /// What openings take off a face.
    pub opening_rule: OpeningRule,
    /// Surfaces by code.
    pub surfaces: Vec<Surface>,
    /// Dates.
    pub calendar: Calendar,
    /// Where the sun stands, if stated.
    pub position: Option<super::Place>,
    /// How a carving day is worked.
    pub plan: Option<super::DayPlan>,
    /// Sheets, fasteners, paper.
    pub lath: Option<super::Lath>,
    /// What the drawings say of the base.
    pub details: Option<super::Details>,
    /// Control joints that somebody planned.
    pub joints: Vec<super::JointPlan>,
    /// What must be true before color and sealer.
    pub gate: Option<super::Gate>,
    /// Colour and sealer.
    pub finish: Option<super::Finish>,
    /// Water that is not mixed.
    pub water: Option<super::WaterPlan>,
    /// Water that goes into the mixer.
    pub mixing_water: Option<super::MixingWater>,
    /// How bags come.
    pub delivery: Option<super::Delivery>,
    /// Hours that no pace gives.
    pub labor: Option<super::LaborPlan>,
    /// Stated uncertainties.
    pub tolerances: Option<super::Tolerances>,
    /// Lots of bags that were delivered.
    pub lots: Vec<Lot>,
    /// The cure and what follows it.
    pub cure: Option<super::CurePlan>,
    /// What stands ready against the weather.
    pub protection: Option<Protection>,
    /// What keeps people whole.
    pub safety: Option<super::Safety>,
    /// Editions, English first: name and notes.
    pub editions: Vec<Edition>,
}

impl Site {
    /// Names of its mixes, the scratch mix first.
    pub fn mixes(&self) -> impl Iterator<Item = &Text> {
        self.scratch_mix.iter().chain([&self.carve_mix])
    }
}

/// What openings take off a face.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum OpeningRule {
    /// Every opening at its real size; every coated return added.
    #[default]
    DeductAll,
    /// IS 1200 Part 12, read for one coated face.
    Is1200,
    /// An estimate of 1878: none as less than 2 yd2.
    Reed1878,
}

/// Where it is and how warm the work is.
#[derive(Debug)]
pub struct Climate {
    /// `indoors` or `outdoors`.
    pub place: Text,
    /// Temperature band of the planned work.
    pub band: (Worked<Temperature>, Worked<Temperature>),
    /// Humidity, if known.
    pub humidity: Option<Worked<Share>>,
}

/// What the coats hang on.
#[derive(Debug)]
pub struct Base {
    /// `framed` or `solid`.
    pub kind: Text,
    /// Description.
    pub what: Text,
    /// Layers of water-resistive barrier.
    pub wrb_layers: Option<Worked<Plain>>,
    /// Weight of lath and paper.
    pub lath_and_paper: Option<Worked<Areal>>,
    /// True if the carve coat goes straight on it, without a scratch coat.
    pub direct: bool,
    /// Name of the engineer's letter on file (a record's file stem).
    pub letter: Option<Text>,
    /// What was read on it.
    pub readings: Vec<Reading>,
}

/// A batch size that gets its own card.
#[derive(Debug)]
pub struct BatchPlan {
    /// Name of the mix.
    pub mix: Text,
    /// Code of the mixer.
    pub mixer: Text,
    /// Loads in the batch.
    pub loads: Worked<Loads>,
    /// Place of the entry.
    pub at: crate::source::Span,
}

/// A lot of bags as it was received.
#[derive(Debug)]
pub struct Lot {
    /// Name of the mix it is for.
    pub mix: Text,
    /// `mortar` or `additive`.
    pub material: Text,
    /// Lot number on the bag.
    pub number: Text,
    /// Mass of a bag, as it stands on the bag.
    pub bag: Worked<Mass>,
    /// Day it was made.
    pub made: Day,
    /// `dry`, `damp` or `lumpy`.
    pub state: Text,
}

/// Dates of the job.
#[derive(Debug, Default)]
pub struct Calendar {
    /// Panel.
    pub panel: Option<Day>,
    /// Lath.
    pub lath: Option<Day>,
    /// Scratch coat.
    pub scratch: Option<Day>,
    /// Carving days.
    pub carve: Vec<Day>,
}

/// An engineer's letter: a record with a stated weight, compared and never a flag.
#[derive(Debug)]
pub struct Letter {
    /// File stem.
    pub id: String,
    /// Site code.
    pub site: Text,
    /// Reference printed on it.
    pub reference: Text,
    /// Date.
    pub date: Day,
    /// Who signed, by class.
    pub from: Text,
    /// Weight it allows.
    pub allows: Worked<Areal>,
    /// What it speaks of.
    pub what: Text,
}
