//! Water: how much, for how many loads, and when.

pub mod start_water_over_limit;
pub mod water_before_mix_time;
pub mod water_not_scaled;
