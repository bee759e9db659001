//! Measured values: numbers, dimensions, the table of units, the grammar people write them in, and
//! derivations. Knows no files and no findings.

pub mod date;
pub mod dim;
pub mod expr;
mod math;
pub mod num;
pub mod parse;
pub mod print;
pub mod show;
mod small;
pub mod sorts;
pub mod units;
pub mod value;

pub use dim::{Dim, Kind};
pub use expr::{Mark, Node, Sort, Worked};
pub use num::{Direction, Num};
pub use value::Quantity;
