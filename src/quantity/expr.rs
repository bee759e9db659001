//! Values that remember how they were worked out.
//!
//! A [`Node`] holds a value and the expression it came from; the value and the printed arithmetic are two
//! readings of one tree, so they cannot disagree. [`Worked`] types a node for the formulas: a length is not
//! an area, and an open time is not a carve window, at compile time.

use std::borrow::Cow;
use std::marker::PhantomData;
use std::ops::{Add, Div, Mul, Sub};
use std::sync::Arc;

use num_rational::BigRational;

use super::dim::{Dim, Kind};
use super::num::{Direction, Num};
use super::units::{self, UnitExpr};
use super::value::Quantity;

/// Where an authored value stands: file number and byte range. Opaque here; the reading room fills it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Mark {
    /// Number of the file in the run.
    pub file: u32,
    /// First byte.
    pub start: u32,
    /// Byte after the last.
    pub end: u32,
}

/// An operation of the printed arithmetic.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Op {
    /// `a + b`
    Add,
    /// `a − b`
    Sub,
    /// `a × b`
    Mul,
    /// `a ÷ b`
    Div,
    /// `sqrt(a)`
    Sqrt,
    /// `sin(a)`, radians
    Sin,
    /// `asin(a)`, radians
    Asin,
    /// `2^a`
    Exp2,
    /// `exp(a)`
    Exp,
    /// `ln(a)`
    Ln,
    /// `log10(a)`
    Log10,
    /// `cos(a)`, radians
    Cos,
    /// `acos(a)`, radians
    Acos,
    /// `abs(a)`
    Abs,
    /// `a^b`
    Pow,
    /// `max(a, b)`
    Max,
    /// `min(a, b)`
    Min,
}

/// How a node came about.
#[derive(Debug)]
pub enum How {
    /// Written by the author: the text as typed, the key path, the place.
    Authored {
        /// Text as typed.
        text: Box<str>,
        /// Key path, such as `water.start`.
        key: Box<str>,
        /// Place, if it came from a file.
        mark: Option<Mark>,
    },
    /// A published constant.
    Constant {
        /// Symbol or name.
        symbol: &'static str,
        /// Row or standard that states it.
        source: &'static str,
    },
    /// A number that belongs to the formula's own shape, such as the 2 of a half.
    Given,
    /// An operation.
    Op(Op, Vec<Node>),
    /// An input of a formula under its symbol there.
    Named {
        /// Symbol in the formula.
        symbol: Cow<'static, str>,
        /// The input.
        of: Node,
    },
    /// The result of a formula.
    Formula {
        /// Key of the formula, such as `F1 gable`.
        key: &'static str,
        /// Symbol of the result.
        symbol: &'static str,
        /// The expression.
        body: Node,
    },
    /// A measured value as the plain number it has in a unit: what an empirical formula takes.
    Bare {
        /// The unit.
        unit: UnitExpr,
        /// The value.
        of: Node,
    },
    /// A plain number as an amount of the node's unit: what an empirical formula gives.
    Dressed {
        /// The number.
        of: Node,
    },
    /// A value rounded to a measure.
    Rounded {
        /// Direction.
        direction: Direction,
        /// The measure, in the node's unit.
        measure: Box<BigRational>,
        /// The value before.
        of: Node,
    },
    /// Another figure, by its id.
    Figure {
        /// Figure id.
        id: Arc<str>,
        /// Its derivation.
        of: Node,
    },
}

#[derive(Debug)]
struct Inner {
    /// Shared by a figure, its name in a formula and the formula's result.
    value: Arc<Quantity>,
    unit: Option<UnitExpr>,
    how: How,
}

/// A value with its derivation. Cheap to clone.
#[derive(Clone, Debug)]
pub struct Node(Arc<Inner>);

/// True if results worked from this unit are written in SI.
pub fn is_metric(unit: UnitExpr) -> bool {
    matches!(
        unit.over.symbol,
        "mm" | "cm" | "m" | "km" | "m2" | "m3" | "L" | "mL" | "kg" | "g" | "°C" | "K" | "MPa" | "kPa" | "hPa" | "Pa" | "J" | "kJ" | "°C·h"
    )
}

/// The system of a unit, true for metric; none for times, counts, money and the like, which both measure alike.
pub fn system(unit: UnitExpr) -> Option<bool> {
    let neutral = |dim: Dim| matches!(dim, Dim::NONE | Dim::TIME | Dim::MONEY);
    let parts = [Some(unit.over), unit.under, unit.per];
    parts.into_iter().flatten().find(|part| !neutral(part.dim)).map(|part| is_metric(UnitExpr::alone(part)))
}

/// The unit in which a result of a dimension is written when a formula names none: ft, ft2, ft3, lb, min … or SI.
pub fn usual_unit(dim: Dim, metric: bool) -> Option<UnitExpr> {
    let symbol = match (dim, metric) {
        (Dim::LENGTH, false) => "ft",
        (Dim::LENGTH, true) => "m",
        (Dim::AREA, false) => "ft2",
        (Dim::AREA, true) => "m2",
        (Dim::VOLUME, false) => "ft3",
        (Dim::VOLUME, true) => "m3",
        (Dim::MASS, false) => "lb",
        (Dim::MASS, true) => "kg",
        (Dim::DENSITY, false) => "lb/ft3",
        (Dim::DENSITY, true) => "kg/m3",
        (Dim::AREAL, false) => "lb/ft2",
        (Dim::AREAL, true) => "kg/m2",
        (Dim::TEMPERATURE, false) => "°F",
        (Dim::TEMPERATURE, true) => "°C",
        (Dim::STRESS, false) => "psi",
        (Dim::STRESS, true) => "MPa",
        (Dim::TIME, _) => "min",
        (Dim::SPEED, false) => "mph",
        (Dim::SPEED, true) => "km/h",
        (Dim::PACE, false) => "ft2/h",
        (Dim::PACE, true) => "m2/h",
        (Dim::DRYING, false) => "lb/ft2/h",
        (Dim::DRYING, true) => "kg/m2/h",
        (Dim::COVERAGE, false) => "ft2/gal",
        (Dim::COVERAGE, true) => "m2/L",
        (Dim::MATURITY, _) => "°C·h",
        _ => return None,
    };
    units::find_expr(symbol)
}

impl Node {
    pub(super) fn make(value: impl Into<Arc<Quantity>>, unit: Option<UnitExpr>, how: How) -> Node {
        Node(Arc::new(Inner { value: value.into(), unit, how }))
    }

    /// An authored value, shown in `unit`.
    pub fn authored(value: Quantity, unit: Option<UnitExpr>, text: &str, key: &str, mark: Option<Mark>) -> Node {
        Node::make(value, unit, How::Authored { text: text.into(), key: key.into(), mark })
    }

    /// A published constant.
    pub fn constant(value: Quantity, unit: Option<UnitExpr>, symbol: &'static str, source: &'static str) -> Node {
        Node::make(value, unit, How::Constant { symbol, source })
    }

    /// A plain exact number of the formula's own shape.
    pub fn given(n: i64, d: i64) -> Node {
        Node::make(Quantity::plain(Num::frac(n, d)), None, How::Given)
    }

    /// π, as the nearest `f64`.
    pub fn pi() -> Node {
        Node::make(Quantity::plain(Num::Real(std::f64::consts::PI)), None, How::Constant { symbol: "pi", source: "mathematics" })
    }

    /// The value.
    pub fn value(&self) -> &Quantity {
        &self.0.value
    }

    /// The unit this node is written in; `None` for a plain number.
    pub fn unit(&self) -> Option<UnitExpr> {
        self.0.unit
    }

    /// How it came about.
    pub fn how(&self) -> &How {
        &self.0.how
    }

    /// The number in the node's unit.
    pub fn number(&self) -> Num {
        match self.0.unit {
            Some(unit) => self.0.value.in_unit(unit).unwrap_or_else(|| self.0.value.si.clone()),
            None => self.0.value.si.clone(),
        }
    }

    /// The same node written in another unit of its dimension; unchanged if the dimensions differ.
    pub fn written_in(self, symbol: &str) -> Node {
        match units::find_expr(symbol) {
            // The text of these holds for their own unit only: they are kept, and written in the other one from outside.
            Some(unit)
                if unit.dim() == self.0.value.dim
                    && self.0.unit != Some(unit)
                    && matches!(self.how(), How::Dressed { .. } | How::Rounded { .. }) =>
            {
                Node::make(self.0.value.clone(), Some(unit), How::Named { symbol: Cow::Borrowed(""), of: self })
            }
            Some(unit) if unit.dim() == self.0.value.dim => match Arc::try_unwrap(self.0) {
                Ok(inner) => Node::make(inner.value, Some(unit), inner.how),
                Err(shared) => {
                    let node = Node(shared);
                    let value = node.0.value.clone();
                    match node.how() {
                        How::Op(op, args) => Node::make(value, Some(unit), How::Op(*op, args.clone())),
                        How::Formula { key, symbol, body } => {
                            Node::make(value, Some(unit), How::Formula { key, symbol, body: body.clone() })
                        }
                        _ => Node::make(value, Some(unit), How::Named { symbol: Cow::Borrowed(""), of: node }),
                    }
                }
            },
            _ => self,
        }
    }

    /// This node as an input of a formula, under its symbol.
    pub fn named(&self, symbol: impl Into<Cow<'static, str>>) -> Node {
        Node::make(self.0.value.clone(), self.unit(), How::Named { symbol: symbol.into(), of: self.clone() })
    }

    /// This node as the result of a formula.
    pub fn formula(self, key: &'static str, symbol: &'static str) -> Node {
        let (value, unit) = (self.0.value.clone(), self.unit());
        Node::make(value, unit, How::Formula { key, symbol, body: self })
    }

    /// This node as another figure that a derivation refers to.
    pub fn figure(&self, id: &str) -> Node {
        Node::make(self.0.value.clone(), self.unit(), How::Figure { id: id.into(), of: self.clone() })
    }

    /// Rounded to a whole multiple of `n/d` of the node's unit. Exact from here on.
    pub fn rounded(&self, direction: Direction, n: i64, d: i64) -> Node {
        let measure = BigRational::new(n.into(), d.max(1).into());
        let number = Num::Exact(self.number().round(direction, &measure));
        let mut value = match self.unit() {
            Some(unit) => Quantity::of(&number, unit),
            None => Quantity::plain(number),
        };
        value.kind = self.value().kind;
        Node::make(value, self.unit(), How::Rounded { direction, measure: Box::new(measure), of: self.clone() })
    }

    fn combine(op: Op, a: Node, b: Node, dim: Dim, si: Num) -> Node {
        // A share, a count or a plain number says nothing about the system: the first measured operand does.
        let metric = [a.unit(), b.unit()].into_iter().flatten().find(|u| u.dim() != Dim::NONE).is_some_and(is_metric);
        let unit = match op {
            // A share beside a plain number is read as a plain number: 1 − 5 %, not 100 % − 5 %.
            Op::Add | Op::Sub | Op::Max | Op::Min if dim == Dim::NONE && a.unit() != b.unit() => None,
            Op::Add | Op::Sub | Op::Max | Op::Min => a.unit().or(b.unit()),
            _ => usual_unit(dim, metric),
        };
        let kind = match op {
            Op::Sub if a.value().kind == Kind::Reading && b.value().kind == Kind::Reading => Kind::Difference,
            Op::Sub if a.value().kind == b.value().kind && matches!(a.value().kind, Kind::Clock | Kind::Date) => Kind::Plain,
            Op::Add | Op::Max | Op::Min | Op::Sub => a.value().kind,
            _ => Kind::Plain,
        };
        Node::make(Quantity { si, dim, kind }, unit, How::Op(op, vec![a, b]))
    }

    fn same_dim(&self, other: &Node, op: &str) -> Dim {
        let (a, b) = (self.value().dim, other.value().dim);
        assert!(a == b, "a formula tried {} {op} {}", a.name(), b.name());
        a
    }

    /// The larger of two.
    pub fn max(self, other: Node) -> Node {
        let dim = self.same_dim(&other, "max");
        let si = if self.value().si.compare(&other.value().si).is_ge() { self.value().si.clone() } else { other.value().si.clone() };
        Node::combine(Op::Max, self, other, dim, si)
    }

    /// The smaller of two.
    pub fn min(self, other: Node) -> Node {
        let dim = self.same_dim(&other, "min");
        let si = if self.value().si.compare(&other.value().si).is_le() { self.value().si.clone() } else { other.value().si.clone() };
        Node::combine(Op::Min, self, other, dim, si)
    }

    /// Every authored value and constant this value rests on, in reading order, each once.
    pub fn leaves(&self) -> Vec<Node> {
        let mut found = Vec::new();
        self.walk(&mut |node| {
            let leaf = matches!(node.how(), How::Authored { .. } | How::Constant { .. });
            if leaf && !found.iter().any(|f: &Node| Arc::ptr_eq(&f.0, &node.0)) {
                found.push(node.clone());
            }
        });
        found
    }

    fn walk(&self, visit: &mut impl FnMut(&Node)) {
        visit(self);
        match self.how() {
            How::Op(_, args) => args.iter().for_each(|a| a.walk(visit)),
            How::Named { of, .. } | How::Rounded { of, .. } | How::Figure { of, .. } | How::Bare { of, .. } | How::Dressed { of } => {
                of.walk(visit)
            }
            How::Formula { body, .. } => body.walk(visit),
            How::Authored { .. } | How::Constant { .. } | How::Given => {}
        }
    }

    /// True if both are the same node, not merely equal.
    pub fn is(&self, other: &Node) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

impl Add for Node {
    type Output = Node;
    fn add(self, b: Node) -> Node {
        let dim = self.same_dim(&b, "+");
        let si = self.value().si.add(&b.value().si);
        Node::combine(Op::Add, self, b, dim, si)
    }
}

impl Sub for Node {
    type Output = Node;
    fn sub(self, b: Node) -> Node {
        let dim = self.same_dim(&b, "−");
        let si = self.value().si.sub(&b.value().si);
        Node::combine(Op::Sub, self, b, dim, si)
    }
}

impl Mul for Node {
    type Output = Node;
    fn mul(self, b: Node) -> Node {
        let dim = self.value().dim.times(b.value().dim);
        let si = self.value().si.mul(&b.value().si);
        Node::combine(Op::Mul, self, b, dim, si)
    }
}

impl Div for Node {
    type Output = Node;
    /// The formulas check their ranges first, so a zero divisor here is our bug.
    fn div(self, b: Node) -> Node {
        let dim = self.value().dim.over(b.value().dim);
        let quotient = self.value().si.div(&b.value().si);
        assert!(quotient.is_some(), "a formula divided by zero");
        let si = quotient.unwrap_or_else(|| Num::int(0));
        Node::combine(Op::Div, self, b, dim, si)
    }
}

pub use super::sorts::*;

/// A typed value with its derivation.
#[derive(Debug)]
pub struct Worked<S> {
    node: Node,
    sort: PhantomData<S>,
}

impl<S> Clone for Worked<S> {
    fn clone(&self) -> Worked<S> {
        Worked { node: self.node.clone(), sort: PhantomData }
    }
}

impl<S: Sort> Worked<S> {
    /// Types a node. The formulas build nodes whose dimension their types already fix; a mismatch is our bug.
    pub fn new(node: Node) -> Worked<S> {
        let (has, wants) = (node.value().dim, S::DIM);
        assert!(has == wants, "{} given where {} is wanted", has.name(), S::NAME);
        let node = if node.value().kind == S::KIND {
            node
        } else {
            let value = node.value().clone().as_kind(S::KIND);
            let inner = Inner { value: value.into(), unit: node.unit(), how: How::Named { symbol: Cow::Borrowed(""), of: node } };
            Node(Arc::new(inner))
        };
        Worked { node, sort: PhantomData }
    }

    /// Reads a text as an authored value of this sort: for tests, examples and constants of a job.
    ///
    /// # Errors
    /// The grammar's [`Fault`](super::parse::Fault).
    pub fn read(text: &str) -> Result<Worked<S>, super::parse::Fault> {
        use super::parse::Said;
        let node = if S::DIM == Dim::NONE && S::KIND == Kind::Plain {
            Node::authored(Quantity::plain(super::parse::plain(text)?), None, text, "", None)
        } else {
            match super::parse::read(text)? {
                Said::Ratio(q) => Node::authored(q, None, text, "", None),
                Said::Amount(_, unit) => Node::authored(super::parse::amount(text, S::DIM, S::KIND, "")?, Some(unit), text, "", None),
                _ => Node::authored(super::parse::amount(text, S::DIM, S::KIND, "")?, None, text, "", None),
            }
        };
        Ok(Worked::new(node))
    }

    /// The node.
    pub fn node(&self) -> &Node {
        &self.node
    }

    /// The node as an input of a formula, under its symbol there.
    pub fn named(&self, symbol: impl Into<Cow<'static, str>>) -> Node {
        self.node.named(symbol)
    }

    /// The value.
    pub fn value(&self) -> &Quantity {
        self.node.value()
    }

    /// The number in a unit, as `f64`; NaN-free, and zero if the unit is of another dimension.
    pub fn in_unit(&self, symbol: &str) -> f64 {
        units::find_expr(symbol).and_then(|u| self.value().in_unit(u)).map_or(0.0, |n| n.to_f64())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn value_and_expression_are_one() {
        let w: Worked<Length> = Worked::read("22 ft").unwrap();
        let h: Worked<Length> = Worked::read("9 ft").unwrap();
        let area = Worked::<Area>::new((w.named("w") * h.named("h")).formula("F1 rectangle", "A"));
        assert_eq!(area.in_unit("ft2"), 198.0);
        assert_eq!(area.node().leaves().len(), 2);
    }

    #[test]
    fn a_dressed_or_rounded_value_keeps_its_factor() {
        use crate::quantity::print::derivation;
        let numbers =
            |node: Node| derivation("x", &node.formula("F0", "x")).first().map(|l| format!("{} = {} {}", l.numbers, l.result, l.unit));
        let pascals = (Node::given(2, 1) * Node::given(300, 1)).dressed("Pa");
        assert_eq!(numbers(pascals.written_in("kPa")).unwrap(), "2 × 300 ÷ 1000 = 0.6 kPa");
        let length: Worked<Length> = Worked::read("14.2 in").unwrap();
        let up = length.named("l").rounded(Direction::Up, 1, 1).written_in("ft");
        assert_eq!(numbers(up).unwrap(), "up(14.2, 1) ÷ 12 = 1.25 ft");
    }

    #[test]
    fn readings_subtract_to_a_difference() {
        let a: Worked<Temperature> = Worked::read("74 °F").unwrap();
        let b: Worked<Temperature> = Worked::read("70 °F").unwrap();
        let d = a.named("T") - b.named("T0");
        assert_eq!(d.value().kind, Kind::Difference);
        assert_eq!(d.number().plain(), "4");
    }

    #[test]
    #[should_panic(expected = "a formula tried a length + an area")]
    fn lengths_and_areas_do_not_add() {
        let a: Worked<Length> = Worked::read("1 ft").unwrap();
        let b: Worked<Area> = Worked::read("1 ft2").unwrap();
        let _ = a.named("a") + b.named("b");
    }
}
