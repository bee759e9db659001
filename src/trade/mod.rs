//! The formulas of the trade, one file per family, pure: they take measured values and give measured values
//! with their derivations, or say which input is out of range and what would pass.
//!
//! Every function's doc has the same parts: symbols and units, range and what happens outside it, assumption,
//! and `Source:` with a key of [`sources`]. Units are the author's; a result is written in the units of its
//! inputs. Nothing here rounds for print: only counts that the trade buys, mixes or pours whole are rounded.

use std::cmp::Ordering;
use std::fmt;

use crate::quantity::expr::{Node, Sort, Worked, is_metric};

pub mod age;
pub mod arches;
pub mod batch;
pub mod calendar;
pub mod carry;
pub mod classes;
pub mod clocks;
pub mod coats;
pub mod cone;
pub mod cost;
pub mod cure;
pub mod day;
pub mod dew_point;
pub mod drying_limits;
pub mod edges;
pub mod error_budget;
pub mod evaporation;
pub mod finish;
pub mod floor;
pub mod joints;
pub mod kits;
pub mod labour;
pub mod lath;
pub mod learning;
pub mod legible;
pub mod lifting;
pub mod lifting_tables;
pub mod limits;
pub mod loads;
pub mod log;
pub mod maturity;
pub mod mix_targets;
pub mod mix_temperature;
pub mod moisture;
pub mod net;
pub mod open_time;
pub mod opening_rule;
pub mod parts;
pub mod pigment;
pub mod placing;
pub mod polygon;
pub mod proportion;
pub mod protect;
pub mod purchase;
pub mod relief;
pub mod rules;
pub mod site_water;
pub mod sources;
pub mod sums;
pub mod sun;
pub mod sun_face;
mod table;
pub mod takeoff;
pub mod vapour;
pub mod water;
pub mod weight;
pub mod window;
pub mod yard;
pub mod yields;

#[cfg(test)]
mod day_tests;

/// An input outside a formula's range.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OutOfRange {
    /// Key of the formula, such as `F1 segment`.
    pub formula: &'static str,
    /// Symbol of the input there.
    pub symbol: &'static str,
    /// The value with its unit.
    pub value: String,
    /// The range and what would pass.
    pub wants: String,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {} is {}, wants {}", self.formula, self.symbol, self.value, self.wants)
    }
}

impl std::error::Error for OutOfRange {}

/// What a formula gives.
pub type Answer<S> = Result<Worked<S>, OutOfRange>;

/// A value as a message shows it.
pub(crate) fn shown(node: &Node) -> String {
    match node.unit() {
        Some(unit) => format!("{} {}", node.number().plain(), unit.symbol()),
        None => node.number().plain(),
    }
}

pub(crate) fn refuse<S: Sort>(formula: &'static str, symbol: &'static str, x: &Worked<S>, wants: impl Into<String>) -> OutOfRange {
    OutOfRange { formula, symbol, value: shown(x.node()), wants: wants.into() }
}

fn unit_of<S: Sort>(x: &Worked<S>) -> String {
    x.node().unit().map_or_else(String::new, |u| format!(" {}", u.symbol()))
}

/// Refuses zero and less: for divisors and for anything that must exist.
pub(crate) fn above_zero<S: Sort>(formula: &'static str, symbol: &'static str, x: &Worked<S>) -> Result<(), OutOfRange> {
    let si = &x.value().si;
    if si.is_negative() || si.is_zero() {
        return Err(refuse(formula, symbol, x, format!("more than 0, such as `1{}`", unit_of(x))));
    }
    Ok(())
}

/// Refuses less than zero.
pub(crate) fn zero_or_more<S: Sort>(formula: &'static str, symbol: &'static str, x: &Worked<S>) -> Result<(), OutOfRange> {
    if x.value().si.is_negative() {
        return Err(refuse(formula, symbol, x, format!("0 or more, such as `1{}`", unit_of(x))));
    }
    Ok(())
}

/// Refuses a share that is not at least 0 and below 1: waste and air, which stand as `1 − x` in a divisor.
pub(crate) fn below_one<S: Sort>(formula: &'static str, symbol: &'static str, x: &Worked<S>) -> Result<(), OutOfRange> {
    if x.value().si.is_negative() || x.value().si.to_f64() >= 1.0 {
        return Err(refuse(formula, symbol, x, "0 % or more and less than 100 %, such as `5 %`"));
    }
    Ok(())
}

/// Refuses `x` above `bound`.
pub(crate) fn at_most<S: Sort>(
    formula: &'static str,
    symbol: &'static str,
    x: &Worked<S>,
    bound: &Worked<S>,
    what: &str,
) -> Result<(), OutOfRange> {
    if x.value().si.compare(&bound.value().si) == Ordering::Greater {
        return Err(refuse(formula, symbol, x, format!("at most {} ({what})", shown(bound.node()))));
    }
    Ok(())
}

/// The node written in another node's unit, so that inches stay inches through a product with a plain number.
pub(crate) fn like(node: Node, other: &Node) -> Node {
    match other.unit() {
        Some(unit) => node.written_in(&unit.symbol()),
        None => node,
    }
}

/// Volumes of mud are read in cubic feet, or in litres rather than cubic metres.
pub(crate) fn mud(node: Node) -> Node {
    if node.unit().is_some_and(is_metric) { node.written_in("L") } else { node }
}

/// `1 − x`, the part that is left.
pub(crate) fn rest(x: &Node) -> Node {
    Node::given(1, 1) - x.clone()
}

#[cfg(test)]
mod knife_edge_tests;

#[cfg(test)]
pub(crate) mod testing {
    use super::*;
    use crate::quantity::print;

    /// Reads an input of a test.
    pub fn q<S: Sort>(text: &str) -> Worked<S> {
        Worked::read(text).unwrap()
    }

    /// Holds a result to a printed number: equal when rounded to its digits.
    pub fn holds<S: Sort>(worked: &Worked<S>, unit: &str, printed: &str) {
        let places = printed.split_once('.').map_or(0, |(_, d)| d.len());
        let got = if unit.is_empty() { worked.value().si.to_f64() } else { worked.in_unit(unit) };
        assert_eq!(format!("{got:.places$}"), printed, "{got} {unit}");
    }

    /// Symbols and numbers of a result's own line.
    pub fn line<S: Sort>(worked: &Worked<S>) -> (String, String) {
        let lines = print::derivation("", worked.node());
        let first = lines.first().unwrap();
        (format!("{} = {}", first.symbol, first.symbols), format!("{} = {} {}", first.numbers, first.result, first.unit))
    }
}
