//! Quantities: a number with its dimension and kind, held in SI.

use std::cmp::Ordering;

use num_rational::BigRational;
use num_traits::Zero;

use super::dim::{Dim, Kind};
use super::num::Num;
use super::units::UnitExpr;

/// A number with a dimension and a kind. The number is in SI base units (m, kg, s, K), exact if the author's was.
///
/// 0 kg is a mass; it is not the plain number 0.
#[derive(Clone, Debug, PartialEq)]
pub struct Quantity {
    /// Value in SI.
    pub si: Num,
    /// Dimension.
    pub dim: Dim,
    /// Kind.
    pub kind: Kind,
}

impl Quantity {
    /// A plain number.
    pub fn plain(n: Num) -> Quantity {
        Quantity { si: n, dim: Dim::NONE, kind: Kind::Plain }
    }

    /// `number` of a unit; a thermometer reading is moved to kelvin by the unit's offset.
    pub fn of(number: &Num, unit: UnitExpr) -> Quantity {
        let factor = Num::Exact(unit.factor());
        let shifted = if unit.under.is_none() && !unit.over.offset.is_zero() {
            number.add(&Num::Exact(unit.over.offset.clone()))
        } else {
            number.clone()
        };
        Quantity { si: shifted.mul(&factor), dim: unit.dim(), kind: unit.kind() }
    }

    /// The number in a unit of the same dimension (a reading by its scale, a difference without the offset).
    ///
    /// `None` when the dimensions differ.
    pub fn in_unit(&self, unit: UnitExpr) -> Option<Num> {
        if unit.dim() != self.dim {
            return None;
        }
        let number = self.si.div(&Num::Exact(unit.factor()))?;
        let reading = self.kind == Kind::Reading && unit.under.is_none();
        Some(if reading { number.sub(&Num::Exact(unit.over.offset.clone())) } else { number })
    }

    /// The exact number in a unit, when the quantity is exact and the dimensions agree.
    pub fn exact_in(&self, unit: UnitExpr) -> Option<BigRational> {
        self.in_unit(unit).and_then(|n| n.exact().cloned())
    }

    /// Compares two quantities of one dimension; `None` when the dimensions differ.
    pub fn compare(&self, other: &Quantity) -> Option<Ordering> {
        (self.dim == other.dim).then(|| self.si.compare(&other.si))
    }

    /// The same number under another kind.
    pub fn as_kind(mut self, kind: Kind) -> Quantity {
        self.kind = kind;
        self
    }
}
