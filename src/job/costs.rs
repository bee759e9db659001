//! What work and material take: paces, prices, transport, lifting, platforms.

use super::{Day, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{Areal, Bags, Duration, Frequency, Length, Mass, Money, Pace, Plain, PriceOfArea, Share, Volume, Wage};

/// How fast a person works.
#[derive(Debug)]
pub struct Rates {
    /// Paper and lath.
    pub lath: Option<Worked<Pace>>,
    /// Scratch coat.
    pub scratch: Option<Worked<Pace>>,
    /// One pass of colour or sealer, over developed surface.
    pub color: Option<Worked<Pace>>,
    /// Placers that one mixer tender keeps going.
    pub placers_per_tender: Option<Worked<Plain>>,
    /// Paces by texture.
    pub textures: Vec<TextureRates>,
}

/// Paces of one texture, one person.
#[derive(Debug)]
pub struct TextureRates {
    /// Texture.
    pub texture: Text,
    /// Placing.
    pub place: Worked<Pace>,
    /// Carving.
    pub carve: Worked<Pace>,
}

/// What things cost. Never printed on a crew's card.
#[derive(Debug)]
pub struct Prices {
    /// Day they were asked.
    pub dated: Day,
    /// An hour of anyone.
    pub labor: Worked<Wage>,
    /// Lath, paper and fasteners.
    pub lath_and_paper: Option<Worked<PriceOfArea>>,
    /// Colour and sealer, over developed surface.
    pub finish: Option<Worked<PriceOfArea>>,
    /// On top of all, for overhead and profit.
    pub markup: Worked<Share>,
    /// A load of each mix: all its bags once.
    pub mixes: Vec<(Text, Worked<Money>)>,
}

/// Trailer and pallet.
#[derive(Debug)]
pub struct Transport {
    /// Most the trailer carries.
    pub payload: Worked<Mass>,
    /// Width and depth of a pallet.
    pub pallet: (Worked<Length>, Worked<Length>),
    /// Mass of an empty pallet.
    pub pallet_mass: Worked<Mass>,
}

/// Water on site that is not mixed.
#[derive(Debug)]
pub struct SiteWater {
    /// One wash-out of the mixer.
    pub wash: Worked<Volume>,
    /// One misting, per area: a depth of water.
    pub mist: Worked<Length>,
    /// Washing of one person in a day.
    pub person: Worked<Volume>,
}

/// A hand lift that is done over and over.
#[derive(Debug)]
pub struct Lift {
    /// Code such as `bag-over-lip`.
    pub code: Text,
    /// What is lifted where, by language code.
    pub what: Vec<(String, Text)>,
    /// Hands from the ankles, at the start and at the end.
    pub reach: (Worked<Length>, Worked<Length>),
    /// Hands above the floor, at the start and at the end.
    pub height: (Worked<Length>, Worked<Length>),
    /// Lifts in a minute.
    pub frequency: Worked<Frequency>,
    /// How long it goes on in a day.
    pub lasts: Worked<Duration>,
    /// `good`, `fair` or `poor`.
    pub grip: Text,
    /// Share of a bag in the hands.
    pub part: Worked<Share>,
    /// The measure that makes a lift over its index lawful, if one is stated.
    pub measure: Option<Text>,
}

/// A scaffold platform, by its tag.
#[derive(Debug)]
pub struct Platform {
    /// Width and length.
    pub size: (Worked<Length>, Worked<Length>),
    /// Rating on the tag; none without a tag.
    pub rating: Option<Worked<Areal>>,
    /// Which tag says so.
    pub tag: Option<Text>,
    /// Mass that one person with tools counts for.
    pub person: Worked<Mass>,
    /// People on it.
    pub people: Worked<Plain>,
    /// Empty mass of a tub.
    pub tub: Worked<Mass>,
    /// Loads of wet mix in a tub.
    pub tub_loads: Worked<Plain>,
    /// Bags of each sort, the heaviest mix's, that stand on it.
    pub bags: Option<Worked<Plain>>,
}

/// Bags on one pallet.
pub type PerPallet = Option<Worked<Bags>>;
