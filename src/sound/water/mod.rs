//! Water: how much, for how many loads, and when.

pub mod ice_not_melted;
pub mod least_far_under_start;
pub mod mix_water_too_hot;
pub mod panel_water_off_mix;
mod pouring;
pub mod start_water_off_usual;
pub mod start_water_over_limit;
pub mod start_water_under_least;
pub mod step_over_limit;
pub mod step_too_large;
pub mod water_after_open_time;
pub mod water_before_mix_time;
pub mod water_by_eye;
pub mod water_not_scaled;
pub mod water_source_untested;
pub mod water_unmeasured;
