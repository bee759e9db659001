//! What drawings and data sheets say of a site beside its measures: no figure rests on it, the checks do.

use super::{Day, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{Duration, Length, Plain};
use crate::source::Span;

/// What the drawings say of the base.
#[derive(Debug)]
pub struct Details {
    /// Span over the most that the framing bends: 360 for L/360.
    pub deflection: Option<Worked<Plain>>,
    /// Foot of the work above earth.
    pub weep_earth: Option<Worked<Length>>,
    /// Foot of the work above paving.
    pub weep_paving: Option<Worked<Length>>,
    /// How the scratch coat must look before the carve coat.
    pub scratch_state: Option<Text>,
    /// Who waterproofs what stands in water, and by which detail.
    pub waterproofing: Option<Text>,
    /// Water that touches the work: `pool`, `fish` or `drinking`.
    pub water: Option<Text>,
    /// Who says that this water may touch it.
    pub water_by: Option<Text>,
    /// Place of the group.
    pub at: Span,
}

/// Control joints that somebody planned for a surface.
#[derive(Debug)]
pub struct JointPlan {
    /// Code of the surface.
    pub surface: Text,
    /// Upright joints.
    pub upright: Worked<Plain>,
    /// Level joints.
    pub level: Worked<Plain>,
    /// `cut` or `through`: what the lath does at a joint.
    pub lath: Text,
}

/// What must be true of a wall before color and sealer.
#[derive(Debug)]
pub struct Gate {
    /// Days since the last mud.
    pub after: Option<Worked<Duration>>,
    /// Highest pH of the surface.
    pub ph: Option<Worked<Plain>>,
    /// How dry, and how that is measured.
    pub moisture: Option<Text>,
    /// Day on which color or sealer is planned to start.
    pub starts: Option<Day>,
    /// What color is mixed for at once: `wall` or `batch`.
    pub lot: Option<Text>,
    /// Place of the group.
    pub at: Span,
}
