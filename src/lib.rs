//! Hodbook.
pub mod cli;
pub mod finding;
pub mod job;
pub mod prose;
pub mod quantity;
pub mod register;
pub mod source;
pub mod tally;
pub mod words;
pub mod work;
