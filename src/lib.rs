//! Hodbook.
pub mod cli;
pub mod finding;
pub mod job;
pub mod press;
pub mod prose;
pub mod quantity;
pub mod read;
pub mod register;
pub mod sound;
pub mod source;
pub mod tally;
pub mod trade;
pub mod words;
pub mod work;
