//! Takeoff: measures that give no area.

pub mod surface_unworked;
