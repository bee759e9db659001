//! Thickness: coats, lifts and textures.

pub mod bags_on_most;
mod basis;
mod clause;
pub mod face_over_mix;
pub mod feather_edge;
pub mod fill_impossible;
pub mod fill_off_panel;
pub mod fill_unmeasured;
pub mod fill_unusual;
pub mod groove_near_scratch;
pub mod groove_to_lath;
pub mod groove_under_mix;
pub mod lath_not_buried;
pub mod lift_too_thick;
pub mod lifts_on_mean;
mod of;
pub mod overhead_too_thick;
pub mod overhead_unplanned;
mod panels;
pub mod round_taken_flat;
pub mod smooth_scratch;
pub mod texture_off_panel;
pub mod thinner_than_mix;
