//! Figures: computed quantities with id, derivation, basis and rounding role.

use crate::quantity::Node;

use super::role::Role;

/// On whose word a figure rests.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Basis {
    /// A cited standard or code.
    Standard,
    /// A standard written for flat plaster or unit masonry.
    Neighbour,
    /// The mix maker's sheet.
    MixSheet,
    /// Common practice, no source.
    Practice,
    /// The author's own measure or choice.
    Author,
    /// Geometry and arithmetic alone.
    Geometry,
}

impl Basis {
    /// Key of its label in the dictionaries.
    pub fn key(self) -> &'static str {
        match self {
            Basis::Standard => "basis.standard",
            Basis::Neighbour => "basis.neighbour",
            Basis::MixSheet => "basis.mix_sheet",
            Basis::Practice => "basis.practice",
            Basis::Author => "basis.author",
            Basis::Geometry => "basis.geometry",
        }
    }
}

/// One computed quantity.
#[derive(Clone, Debug)]
pub struct Figure {
    /// Id such as `larkenfell/LF-1.net_area`.
    pub id: String,
    /// Key of its label in the dictionaries, such as `figure.net_area`.
    pub label: &'static str,
    /// The worked value, or the first missing cause.
    pub worked: Result<Node, String>,
    /// On whose word.
    pub basis: Basis,
    /// Rounding role.
    pub role: Role,
}
