//! Two languages, one set of numbers: twins that follow their originals.

pub mod twin_behind;
pub mod twin_out_of_date;
pub mod twin_overflows;
pub mod twin_slots_differ;
pub mod twin_steps_differ;
mod twins;

pub use twins::follows_for;
