//! Helpers that only tests use: the imports of a source tree, and PDFs read back.
#![allow(clippy::disallowed_methods, reason = "a test reads what it looks at")]

pub mod paper;
pub mod rooms;
