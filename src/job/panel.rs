//! A mock-up panel: the look that was signed for, and what it measured.

use super::{Day, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{Length, Temperature, Volume};

/// The record of one texture on a mock-up panel.
#[derive(Debug)]
pub struct Panel {
    /// File stem.
    pub id: String,
    /// Site code.
    pub site: Text,
    /// Name of the texture it shows.
    pub texture: Text,
    /// Surfaces it is the standard for.
    pub surfaces: Vec<Text>,
    /// Day it was carved.
    pub date: Day,
    /// `upright`, `overhead` or `flat`.
    pub stood: Text,
    /// Name of its carve mix.
    pub mix: Text,
    /// Revision of that mix on the day.
    pub rev: Text,
    /// Water in a load, start and added.
    pub water: Worked<Volume>,
    /// Temperature of the mix.
    pub temperature: Worked<Temperature>,
    /// Carve coat over the scratch coat at each point of the grid.
    pub depths: Vec<Worked<Length>>,
    /// Who signed, by class.
    pub signed_by: Text,
}
