//! Hodbook.
