//! The checks, one file each in family folders. They see what the paper will say and give findings.

pub mod seen;

pub use seen::{Role, Seen};
