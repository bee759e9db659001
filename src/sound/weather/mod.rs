//! Weather: cold, heat, wind, sun and rain against what stands ready on the site.

pub mod base_frozen;
pub mod base_hot_or_saturated;
pub mod cold_without_heat;
pub mod drying_fast;
pub mod drying_too_fast;
pub mod face_in_sun;
pub mod forecast_old;
pub mod freeze_after_set;
pub mod heater_unvented;
pub mod hot_without_plan;
pub mod mix_target_out_of_reach;
pub mod mix_temperature_out_of_range;
pub mod rain_without_cover;
pub mod sky;
pub mod spray_drifts;
