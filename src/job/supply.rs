//! What comes to a site: mixing water, bags by truck or by own trailer, lots.

use super::Text;
use crate::quantity::Worked;
use crate::quantity::expr::{Areal, Bags, Plain, Temperature};

/// Where the mixing water comes from.
#[derive(Debug)]
pub struct MixingWater {
    /// What it is, in words.
    pub source: Text,
    /// `drinking`, `softened` or `other`.
    pub kind: Text,
    /// The test that lets it be mixed with, where it is not drinking water.
    pub test: Option<Text>,
    /// Warmest that it reaches the mixer.
    pub warmest: Option<Worked<Temperature>>,
    /// `none`, `melted` or `in the mixer`.
    pub ice: Option<Text>,
}

/// How bags come, and what was told to the yard.
#[derive(Debug)]
pub struct Delivery {
    /// `yard` or `own trailer`.
    pub by: Text,
    /// Trips that are planned with the own trailer; one if not stated.
    pub trips: Option<Worked<Plain>>,
    /// What pallets stand on: `ground` or `suspended`.
    pub floor: Text,
    /// What that floor carries, by whoever may say so.
    pub capacity: Option<Worked<Areal>>,
    /// Bags as the yard was told, where that is not what is computed.
    pub ordered: Vec<Ordered>,
    /// Lots that stand on site.
    pub lots: Vec<StandingLot>,
}

/// Bags of one mix as the yard was told.
#[derive(Debug)]
pub struct Ordered {
    /// Name of the mix.
    pub mix: Text,
    /// Additive.
    pub additive: Worked<Bags>,
    /// Mortar.
    pub mortar: Worked<Bags>,
}

/// One lot of bags.
#[derive(Debug)]
pub struct StandingLot {
    /// Name of the mix.
    pub mix: Text,
    /// `additive` or `mortar`.
    pub material: Text,
    /// What is printed on the bags.
    pub lot: Text,
    /// Bags of it.
    pub bags: Worked<Bags>,
}
