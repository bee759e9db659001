//! A mix design.

use super::{Day, Edition, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{
    CarveTime, Density, Duration, Length, Mass, OpenTime, PartsByMass, Plain, Share, Strength, Temperature, Volume,
};

/// A mix design: one load of it, its limits and its clocks.
#[derive(Debug)]
pub struct Mix {
    /// File stem, such as `carve-24`; the id in figures.
    pub id: String,
    /// Name to print.
    pub name: Text,
    /// Revision letter.
    pub rev: Text,
    /// Date of the revision.
    pub date: Option<Day>,
    /// `scratch` or `carve`.
    pub coat: Text,
    /// True if the sheet is in metric units.
    pub metric: bool,
    /// The additive.
    pub additive: Bagged,
    /// The bagged mortar.
    pub mortar: Bagged,
    /// Additive bags in a load.
    pub additive_bags: Worked<Plain>,
    /// Mortar bags in a load.
    pub mortar_bags: Worked<Plain>,
    /// Design ratio of mortar to additive by mass.
    pub ratio: Worked<PartsByMass>,
    /// Air in the mixed mortar.
    pub air: Worked<Share>,
    /// Water per load.
    pub water: Water,
    /// Mixing times.
    pub mixing: Mixing,
    /// Open time and the temperature it holds at.
    pub open_time: (Worked<OpenTime>, Worked<Temperature>),
    /// When the wall can be carved.
    pub carve_window: Option<CarveWindow>,
    /// The sheet's own table of times; it wins over the rule of thumb.
    pub times: Vec<TimesAt>,
    /// Most thickness overhead, if the sheet states one.
    pub overhead: Option<Worked<Length>>,
    /// Share of cement in the mortar, by its maker.
    pub cement: Option<Worked<Share>>,
    /// Pigment, as a share of the cement.
    pub pigment: Option<Worked<Share>>,
    /// Sort of the pigment: `metal oxide` or `carbon black`.
    pub pigment_sort: Option<Text>,
    /// Admixtures that the sheet allows, by class.
    pub admixtures: Vec<Text>,
    /// Least and most total thickness.
    pub thickness: (Worked<Length>, Worked<Length>),
    /// Most thickness of one lift.
    pub lift: Worked<Length>,
    /// Half loads allowed, by scale.
    pub half_load: bool,
    /// Strength class of the mix sheet: a name, never a promise.
    pub strength_class: Option<Worked<Strength>>,
    /// Cure by the mix sheet.
    pub cure: Cure,
    /// Rake of a scratch mix (`rough`, `smooth`).
    pub rake: Option<Text>,
    /// Least wait before the next coat.
    pub recoat: Option<Worked<Duration>>,
    /// Editions, English first: name and notes.
    pub editions: Vec<Edition>,
}

/// A bagged material.
#[derive(Debug)]
pub struct Bagged {
    /// Mass of a bag.
    pub bag: Worked<Mass>,
    /// Relative density of the particles.
    pub relative_density: Worked<Plain>,
    /// Bags on a pallet.
    pub per_pallet: super::PerPallet,
    /// How long a closed, dry bag keeps.
    pub shelf: Option<Worked<Duration>>,
    /// Class or description, as the yard must read it.
    pub class: Option<Text>,
    /// Name to print by language code.
    pub names: Vec<(String, Text)>,
}

/// Water per load, with the constants of the mix sheet.
#[derive(Debug)]
pub struct Water {
    /// Mass of a volume of water.
    pub constant: Worked<Density>,
    /// Water constant of the absolute-volume method.
    pub absolute: Worked<Density>,
    /// Before powder.
    pub start: Worked<Volume>,
    /// Least start.
    pub least: Worked<Volume>,
    /// One late addition.
    pub step: Worked<Volume>,
    /// Most ever.
    pub limit: Worked<Volume>,
    /// Why it starts far from what is usual, if it does.
    pub why: Option<Text>,
}

/// Mixing times.
#[derive(Debug)]
pub struct Mixing {
    /// Least time by the timer before anyone judges it.
    pub least: Worked<Duration>,
    /// Time after a late step.
    pub after_step: Worked<Duration>,
    /// Mixer that the sheet asks for: `paddle` or `any`.
    pub mixer: Option<Text>,
    /// What goes in, in order; empty if the sheet does not say.
    pub order: Vec<Text>,
    /// A full pail of it that somebody weighed.
    pub weighed: Option<Weighed>,
}

/// A weighed pail: the only proof of a yield.
#[derive(Debug)]
pub struct Weighed {
    /// Wet density that came out.
    pub density: Worked<Density>,
    /// Day it was weighed.
    pub date: Day,
}

/// Cure of the mix sheet.
#[derive(Debug)]
pub struct Cure {
    /// Wet time.
    pub wet: Worked<Duration>,
    /// What follows, such as `air`.
    pub then: Text,
    /// Days at full warmth before the next trade.
    pub credit: Option<Worked<Duration>>,
}

/// The carve window: from mud on the wall, at a temperature.
#[derive(Debug)]
pub struct CarveWindow {
    /// Opens.
    pub opens: Worked<CarveTime>,
    /// Closes.
    pub closes: Worked<CarveTime>,
    /// Temperature where both hold.
    pub at: Worked<Temperature>,
}

/// A row of the sheet's own table of times.
#[derive(Debug)]
pub struct TimesAt {
    /// Temperature of the mix.
    pub at: Worked<Temperature>,
    /// Open time there.
    pub open: Worked<OpenTime>,
    /// Opening of the carve window, if stated.
    pub opens: Option<Worked<CarveTime>>,
    /// Its closing, if stated.
    pub closes: Option<Worked<CarveTime>>,
}
