//! Hodbook.
pub mod quantity;
pub mod words;
