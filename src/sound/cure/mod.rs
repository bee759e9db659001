//! Cure, color and sealer: the days after the mud.

pub mod cold_day_counted;
pub mod color_by_batch;
pub mod cure_keeper_missing;
pub mod cure_shortened;
mod days;
pub mod finish_before_gate;
pub mod finish_gate_missing;
pub mod plastic_on_color;
pub mod sealer_on_flat_area;
pub mod wet_cure_differs;
