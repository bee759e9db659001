//! Two languages, one set of numbers: twins that follow their originals.

pub mod gallon_unmarked;
pub mod glossary_word_twice;
pub mod heard_word_printed;
pub mod negation_lost;
mod readers;
mod side;
pub mod twin_behind;
pub mod twin_decimal_comma;
pub mod twin_missing;
pub mod twin_missing_on_card;
pub mod twin_numbers_differ;
pub mod twin_out_of_date;
pub mod twin_overflows;
pub mod twin_slots_differ;
pub mod twin_steps_differ;
mod twins;

pub use side::{Sides, Told};
pub use twins::{Pair, follows_for};
