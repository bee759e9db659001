//! Thickness: coats and lifts.

pub mod lift_too_thick;
