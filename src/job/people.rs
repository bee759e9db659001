//! The company: people by role, mixers, measures, rates.

use super::{Day, Edition, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{Loads, Mass, Share, Volume};

/// The company file.
#[derive(Debug)]
pub struct Company {
    /// Name to print.
    pub name: Text,
    /// True if the company works in metric units.
    pub metric: bool,
    /// Language codes of its paper, first one first.
    pub languages: Vec<Text>,
    /// Pinned date, if the folder pins one.
    pub on: Option<Day>,
    /// People by role code.
    pub people: Vec<Person>,
    /// Mixers by code.
    pub mixers: Vec<Mixer>,
    /// Volume measures on site, by code.
    pub measures: Vec<Measure>,
    /// The scale for half loads.
    pub scale: Option<Scale>,
    /// Spare material to buy.
    pub reserve: Option<Reserve>,
    /// Money that every price is in, by its three letters.
    pub currency: Option<Text>,
    /// Paces of work.
    pub rates: Option<super::Rates>,
    /// Prices.
    pub prices: Option<super::Prices>,
    /// Trailer and pallet.
    pub transport: Option<super::Transport>,
    /// Water that is not mixed.
    pub site_water: Option<super::SiteWater>,
    /// Lifts by hand.
    pub lifts: Vec<super::Lift>,
    /// The scaffold platform.
    pub platform: Option<super::Platform>,
    /// Editions, English first: name and notes.
    pub editions: Vec<Edition>,
}

/// One person, by role.
#[derive(Debug)]
pub struct Person {
    /// Role code such as `LEAD`.
    pub code: Text,
    /// What the role is.
    pub role: Text,
    /// Language codes the person reads.
    pub languages: Vec<Text>,
}

/// A mixer.
#[derive(Debug)]
pub struct Mixer {
    /// Code such as `pan45`.
    pub code: Text,
    /// Name to print, by language code; English under `en`.
    pub names: Vec<(String, Text)>,
    /// What sort of mixer.
    pub sort: Text,
    /// Volume of the vessel.
    pub holds: Worked<Volume>,
    /// Share of it that mixes well.
    pub fill: Worked<Share>,
    /// Most wet mass it may turn.
    pub rating: Worked<Mass>,
    /// Least batch that covers the blades.
    pub least: Worked<Loads>,
    /// What drives it, if said.
    pub drive: Option<Text>,
}

/// A measure on site.
#[derive(Debug)]
pub struct Measure {
    /// Code such as `jug`.
    pub code: Text,
    /// What it holds.
    pub holds: Worked<Volume>,
    /// Its smallest mark.
    pub marked: Worked<Volume>,
}

/// A scale on site.
#[derive(Debug)]
pub struct Scale {
    /// Most it weighs.
    pub holds: Worked<Mass>,
    /// Its smallest mark.
    pub marked: Worked<Mass>,
}

/// Spare material.
#[derive(Debug)]
pub struct Reserve {
    /// Share over the need.
    pub share: Worked<Share>,
    /// Never less than this.
    pub least: Worked<Loads>,
}
