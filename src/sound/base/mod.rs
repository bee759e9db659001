//! The base: what the coats hang on.

pub mod weight_over_allowance;
