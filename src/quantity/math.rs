//! Functions of nodes: roots, angles, powers, and plain numbers in and out of units.

use super::dim::{Dim, Kind};
use super::expr::{How, Node, Op, is_metric, usual_unit};
use super::num::Num;
use super::units;
use super::value::Quantity;

impl Node {
    fn function(self, op: Op, dim: Dim, f: fn(f64) -> f64) -> Node {
        // The ranges are the formulas' to hold; where one slips, zero stands rather than no number at all.
        let x = Some(f(self.value().si.to_f64())).filter(|x| x.is_finite()).unwrap_or_default();
        let metric = self.unit().is_some_and(is_metric);
        let value = Quantity { si: Num::Real(x), dim, kind: Kind::Plain };
        Node::make(value, usual_unit(dim, metric), How::Op(op, vec![self]))
    }

    /// Square root; the dimension's powers are halved (they must be even).
    pub fn sqrt(self) -> Node {
        let d = self.value().dim;
        let half = Dim { length: d.length / 2, mass: d.mass / 2, time: d.time / 2, temperature: d.temperature / 2, money: d.money / 2 };
        self.function(Op::Sqrt, half, libm::sqrt)
    }

    /// Sine of a plain number of radians.
    pub fn sin(self) -> Node {
        self.function(Op::Sin, Dim::NONE, libm::sin)
    }

    /// Arc sine, in radians.
    pub fn asin(self) -> Node {
        self.function(Op::Asin, Dim::NONE, libm::asin)
    }

    /// Cosine of a plain number of radians.
    pub fn cos(self) -> Node {
        self.function(Op::Cos, Dim::NONE, libm::cos)
    }

    /// Arc cosine, in radians.
    pub fn acos(self) -> Node {
        self.function(Op::Acos, Dim::NONE, libm::acos)
    }

    /// e to the power of a plain number.
    pub fn exp(self) -> Node {
        self.function(Op::Exp, Dim::NONE, libm::exp)
    }

    /// Natural logarithm of a plain number above zero.
    pub fn ln(self) -> Node {
        self.function(Op::Ln, Dim::NONE, libm::log)
    }

    /// Logarithm to the base ten of a plain number above zero.
    pub fn log10(self) -> Node {
        self.function(Op::Log10, Dim::NONE, libm::log10)
    }

    /// A plain number of 0 or more to the power of another.
    pub fn pow(self, exponent: Node) -> Node {
        let x = libm::pow(self.value().si.to_f64(), exponent.value().si.to_f64());
        let si = Num::real(x).unwrap_or_else(|| Num::int(0));
        Node::make(Quantity::plain(si), None, How::Op(Op::Pow, vec![self, exponent]))
    }

    /// The size without the sign; exact stays exact.
    pub fn abs(self) -> Node {
        let mut value = self.value().clone();
        if value.si.is_negative() {
            value.si = Num::int(0).sub(&value.si);
        }
        Node::make(value, self.unit(), How::Op(Op::Abs, vec![self]))
    }

    /// The plain number this value has in a unit of its dimension (a reading by its scale): for formulas that
    /// were fitted to numbers. Unchanged, as our bug, if the dimensions differ.
    pub fn bare(&self, symbol: &str) -> Node {
        let unit = units::find_expr(symbol).filter(|u| u.dim() == self.value().dim);
        debug_assert!(unit.is_some(), "{symbol} does not measure {}", self.value().dim.name());
        match unit.and_then(|u| Some((u, self.value().in_unit(u)?))) {
            Some((unit, number)) => Node::make(Quantity::plain(number), None, How::Bare { unit, of: self.clone() }),
            None => self.clone(),
        }
    }

    /// This plain number as an amount of a unit. Unchanged, as our bug, if there is no such unit.
    pub fn dressed(self, symbol: &str) -> Node {
        let unit = units::find_expr(symbol);
        debug_assert!(unit.is_some() && self.value().dim == Dim::NONE, "{symbol} cannot dress this");
        match unit {
            Some(unit) => Node::make(Quantity::of(&self.number(), unit), Some(unit), How::Dressed { of: self }),
            None => self,
        }
    }

    /// Two to the power of a plain number.
    pub fn exp2(self) -> Node {
        self.function(Op::Exp2, Dim::NONE, libm::exp2)
    }
}
