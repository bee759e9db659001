//! Helpers that only tests use: the imports of a source tree, and PDFs read back.

pub mod paper;
pub mod rooms;
