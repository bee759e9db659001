//! What the papers of a firebox say.

use super::{Day, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{Length, Temperature};

/// A record of a firebox or another hot appliance: who read its manual, and what it allows.
#[derive(Debug)]
pub struct Appliance {
    /// File stem.
    pub id: String,
    /// Site code.
    pub site: Text,
    /// Code of the surface that it stands in.
    pub surface: Text,
    /// Code of its opening.
    pub opening: Text,
    /// The manual, by title and place, without a maker's name.
    pub manual: Option<Text>,
    /// How near anything that can burn or char may come.
    pub clearance: Option<Worked<Length>>,
    /// Hottest that the mix sheet allows in service.
    pub service: Option<Worked<Temperature>>,
    /// Hottest that the edge of the mix gets, by the manual.
    pub edge: Option<Worked<Temperature>>,
    /// Who read and compared them, by class.
    pub checked_by: Option<Text>,
    /// Date of that.
    pub date: Option<Day>,
}
