//! Amounts as they are written: their sizes and their units.

pub mod amount_unlikely;
pub mod unit_of_other_system;
