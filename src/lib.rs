//! Hodbook.
pub mod finding;
pub mod job;
pub mod quantity;
pub mod source;
pub mod words;
