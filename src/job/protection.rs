//! What stands ready on a site against cold, heat, wind, sun and rain, and what was read on the base.

use super::{Day, Text};
use crate::quantity::Worked;
use crate::quantity::expr::Temperature;

/// The weather plan of a site: what is not named does not stand ready.
#[derive(Debug, Default)]
pub struct Protection {
    /// `vented heater`, `electric heater` or `unvented heater`, in a closed tent or room.
    pub heat: Option<Text>,
    /// `screens`, `fog` or `screens and fog`.
    pub wind: Option<Text>,
    /// True if walls, bags and water stand in shade.
    pub shade: bool,
    /// What keeps rain off the fresh face, in words.
    pub cover: Option<Text>,
    /// Least and most temperature that the mix is kept between.
    pub mix: Option<(Worked<Temperature>, Worked<Temperature>)>,
}

impl Protection {
    /// True if something warms the wall: a heater that poisons the air and the skin of the wall does not count.
    pub fn warms(&self) -> bool {
        self.heat.as_ref().is_some_and(|h| h.text != "unvented heater")
    }

    /// True if the wind is broken and the face kept damp by fog.
    pub fn screens_and_fog(&self) -> bool {
        self.wind.as_ref().is_some_and(|w| w.text == "screens and fog")
    }

    /// True if the heat is planned for: shade, something against the wind, and a most for the mix.
    pub fn hot_plan(&self) -> bool {
        self.shade && self.wind.is_some() && self.mix.is_some()
    }
}

/// What was read on a base before the mud goes on.
#[derive(Debug)]
pub struct Reading {
    /// The day.
    pub day: Day,
    /// Code of the surface; every surface if not stated.
    pub surface: Option<Text>,
    /// Temperature of the base.
    pub temperature: Option<Worked<Temperature>>,
    /// `dry`, `damp` or `saturated`.
    pub water: Option<Text>,
}
