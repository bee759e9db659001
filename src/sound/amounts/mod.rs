//! Amounts as they are written: their sizes and their units.

pub mod amount_unlikely;
pub mod unit_of_other_system;

use crate::quantity::parse::{self, Said};
use crate::quantity::units::UnitExpr;
use crate::quantity::{Quantity, num};

/// One amount with its unit, as it is written.
fn amount(text: &str) -> Option<(Quantity, UnitExpr)> {
    match parse::read(text) {
        Ok(Said::Amount(quantity, unit)) => Some((quantity, unit)),
        _ => None,
    }
}

/// An amount in a unit, short: for comparing, not for print. Nothing if it is no amount of it.
fn in_short(quantity: &Quantity, unit: UnitExpr) -> Option<String> {
    Some(format!("{} {}", num::significant(quantity.in_unit(unit)?.to_f64(), 4), unit.symbol()))
}
