//! F19, F18: published limits of lath, joints, veneer and mixing, as data, and how far a value stands from one.
//!
//! A limit of a neighbouring trade is not a limit of carved mud: the basis says whose it is, and the caller decides
//! what a crossed one is worth.

use crate::quantity::expr::{Node, Sort, Worked};

use super::sources::Basis;
use super::{Answer, OutOfRange, refuse, shown};

/// Which side of a limit passes. The limit itself passes on both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// As much or less.
    AtMost,
    /// As much or more.
    AtLeast,
}

/// One published limit.
#[derive(Debug)]
pub struct Limit {
    /// What it limits.
    pub what: &'static str,
    /// The side that passes.
    pub bound: Bound,
    /// The value, in the source's own unit.
    pub value: &'static str,
    /// Row of the table of reference facts, and what says so.
    pub source: &'static str,
    /// How far it can be leaned on.
    pub basis: Basis,
}

const fn limit(what: &'static str, bound: Bound, value: &'static str, source: &'static str) -> Limit {
    Limit { what, bound, value, source, basis: Basis::NeighbourStandard }
}

use Bound::{AtLeast, AtMost};

const C1063: &str = "LTH-01: rules of ASTM C1063 as a joint maker prints them";

/// Longest side of a panel between control joints.
pub const PANEL_SIDE: Limit = limit("side of a panel", AtMost, "18 ft", C1063);
/// Largest panel on a wall.
pub const PANEL_AREA: Limit = limit("area of a panel", AtMost, "144 ft2", C1063);
/// Longest panel for its width.
pub const PANEL_RATIO: Limit = limit("length to width of a panel", AtMost, "2.5", C1063);
/// Largest panel on soffits and curved work.
pub const CURVED_AREA: Limit =
    limit("area of a curved or overhead panel", AtMost, "100 ft2", "LTH-02: rules of ASTM C1063 as a joint maker prints them");
/// Gap of casing beads back to back, with the lath cut.
pub const JOINT_GAP: Limit = limit("gap between casing beads at a joint", AtLeast, "1/8 in", "LTH-03: a plaster trade association");
/// Lap of lath along its sides.
pub const SIDE_LAP: Limit = limit("side lap of lath", AtLeast, "1/2 in", "LTH-04: NAVEDTRA 14044, p. 217");
/// Lap of lath at its ends.
pub const END_LAP: Limit = limit("end lap of lath", AtLeast, "1 in", "LTH-04: NAVEDTRA 14044, p. 217");
/// Fasteners along framing.
pub const FASTENERS: Limit = limit("fastener spacing", AtMost, "7 in", "LTH-05: IRC R703.7.1 as a city amended it");
/// Framing under lath.
pub const FRAMING: Limit = limit("framing spacing", AtMost, "24 in", "LTH-05: IRC R703.7.1 as a city amended it");
/// Fasteners along framing, the Navy's closer rule.
pub const NAVY_FASTENERS: Limit = limit("fastener spacing, Navy", AtMost, "6 in", "LTH-06: NAVEDTRA 14044, p. 217");
/// How deep a fastener goes into vertical framing.
pub const PENETRATION: Limit = limit("fastener penetration", AtLeast, "3/4 in", "LTH-06: NAVEDTRA 14044, p. 217");
/// Wire ties on channels.
pub const NAVY_TIES: Limit = limit("tie spacing on channels", AtMost, "4 in", "LTH-06: NAVEDTRA 14044, p. 217");
/// Wire ties where ends fall between framing.
pub const TIES: Limit = limit("tie spacing between framing", AtMost, "9 in", "LTH-07: a joint maker's rules");
/// Lath mass on close supports.
pub const LATH_MASS: Limit = limit("lath mass", AtLeast, "2.5 lb/yd2", "LTH-14: a stucco handbook");
/// Lath mass where supports stand 16 in apart.
pub const LATH_MASS_16: Limit = limit("lath mass, supports 16 in apart", AtLeast, "3.4 lb/yd2", "LTH-14: a stucco handbook");
/// Thickness of a weep screed.
pub const SCREED: Limit = limit("weep screed thickness", AtLeast, "0.019 in", "LTH-15: IBC 2512.1.2");
/// Flange of a weep screed.
pub const SCREED_FLANGE: Limit = limit("weep screed flange", AtLeast, "3 1/2 in", "LTH-15: IBC 2512.1.2");
/// Weep screed above earth.
pub const ABOVE_EARTH: Limit = limit("weep screed above earth", AtLeast, "4 in", "LTH-15: IBC 2512.1.2");
/// Weep screed above paving.
pub const ABOVE_PAVING: Limit = limit("weep screed above paving", AtLeast, "2 in", "LTH-15: IBC 2512.1.2");
/// Paper over wood sheathing.
pub const PAPER_LAYERS: Limit = limit("layers of paper over wood sheathing", AtLeast, "2", "LTH-16: IBC 2510.6, read in part");
/// Drainage space in moist and marine zones.
pub const DRAINAGE_SPACE: Limit = limit("drainage space", AtLeast, "3/16 in", "LTH-16: IBC 2021, as a trade association prints it");
/// Coats over lath.
pub const COATS_ON_LATH: Limit = limit("plaster coats over lath", AtLeast, "3", "LTH-18: IBC 2512.1");
/// Coats over masonry or concrete.
pub const COATS_ON_MASONRY: Limit = limit("plaster coats over masonry", AtLeast, "2", "LTH-18: IBC 2512.1");
/// Weight of adhered veneer in the building code of the 1970s.
pub const OLD_VENEER: Limit = limit("weight of adhered veneer", AtMost, "15 lb/ft2", "DL-21: UBC of the 1970s, in a masonry text of 1976");

const TMS: &str = "DL-22: TMS 402 prescriptive, to 2016; recalled, not re-read";

/// Weight of adhered veneer, prescriptive to 2016.
pub const VENEER_WEIGHT: Limit = limit("weight of adhered veneer", AtMost, "15 lb/ft2", TMS);
/// Thickness of a unit of adhered veneer.
pub const VENEER_THICKNESS: Limit = limit("thickness of a veneer unit", AtMost, "2 5/8 in", TMS);
/// Face dimension of a unit of adhered veneer.
pub const VENEER_SIDE: Limit = limit("face dimension of a veneer unit", AtMost, "36 in", TMS);
/// Face area of a unit of adhered veneer.
pub const VENEER_FACE: Limit = limit("face area of a veneer unit", AtMost, "5 ft2", TMS);

/// Shortest mixing of an inspectors' handbook.
pub const MIX_LEAST: Limit = limit("mixing time", AtLeast, "3 min", "BT-02: an inspectors' handbook of plaster");
/// Longest mixing of an inspectors' handbook.
pub const MIX_MOST: Limit = limit("mixing time", AtMost, "10 min", "BT-02: an inspectors' handbook of plaster");
/// Shortest mixing of stucco after all is in.
pub const STUCCO_LEAST: Limit = limit("mixing time of stucco", AtLeast, "3 min", "BT-03: a text on mixing plaster");
/// Longest mixing of stucco after all is in.
pub const STUCCO_MOST: Limit = limit("mixing time of stucco", AtMost, "5 min", "BT-03: a text on mixing plaster");
/// Shortest mixing of perlite mixes.
pub const PERLITE_LEAST: Limit = limit("mixing time of perlite", AtLeast, "2 min", "BT-05: a perlite guide");
/// Longest mixing of perlite mixes: longer breaks the grains.
pub const PERLITE_MOST: Limit = limit("mixing time of perlite", AtMost, "5 min", "BT-05: a perlite guide");
/// Batch water off its target, ready-mixed concrete to 2021.
pub const WATER_OFF_OLD: Limit = limit("batch water off its target", AtMost, "1 %", "BT-09: ASTM C94, to the edition of 2021");
/// All water off its target, ready-mixed concrete to 2021.
pub const ALL_WATER_OFF_OLD: Limit = limit("all water off its target", AtMost, "3 %", "BT-09: ASTM C94, to the edition of 2021");
/// Batch water off its target, ready-mixed concrete from 2021.
pub const WATER_OFF: Limit = limit("batch water off its target", AtMost, "1.5 %", "BT-10: ASTM C94/C94M-21a");

impl Limit {
    /// The limit as a constant under a symbol. A limit of another dimension than asked is our bug and refused.
    ///
    /// # Errors
    /// [`OutOfRange`] if the limit does not measure this sort.
    pub fn constant<S: Sort>(&self, symbol: &'static str) -> Answer<S> {
        let wants = |_| OutOfRange {
            formula: "F19 margin",
            symbol,
            value: self.value.to_owned(),
            wants: format!("{}, which is not a {}", self.what, S::NAME),
        };
        let read = Worked::<S>::read(self.value).map_err(wants)?;
        Ok(Worked::new(Node::constant(read.value().clone(), read.node().unit(), symbol, self.source)))
    }
}

/// What is left to a published limit: `margin = limit − x` for a greatest, `x − limit` for a least; the limit itself passes.
///
/// `x` of the limit's dimension. Past the limit it is refused, with what would pass and who says so.
/// Source: `published-limits`.
/// ```
/// use hodbook::{quantity::expr::{Length, Worked}, trade::limits::{FASTENERS, margin}};
/// let x: Worked<Length> = Worked::read("6 in").unwrap();
/// assert_eq!(margin(&FASTENERS, &x).unwrap().in_unit("in"), 1.0);
/// assert!(margin(&FASTENERS, &Worked::<Length>::read("8 in").unwrap()).is_err());
/// ```
pub fn margin<S: Sort>(limit: &Limit, x: &Worked<S>) -> Answer<S> {
    let edge = limit.constant::<S>("limit")?;
    let (over, words) = match limit.bound {
        AtMost => (edge.node().clone() - x.named("x"), "at most"),
        AtLeast => (x.named("x") - edge.node().clone(), "at least"),
    };
    if over.value().si.is_negative() {
        return Err(refuse("F19 margin", "x", x, format!("{words} {} ({}, {})", shown(edge.node()), limit.what, limit.source)));
    }
    Ok(Worked::new(over.formula("F19 margin", "margin")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;
    use crate::quantity::expr::{Areal, Length};

    #[test]
    fn the_limit_itself_passes() {
        let at: Worked<Areal> = q("15 lb/ft2");
        holds(&margin(&VENEER_WEIGHT, &at).unwrap(), "lb/ft2", "0");
        let lap = margin(&END_LAP, &q::<Length>("40 mm")).unwrap();
        assert_eq!(line(&lap), ("margin = x − limit".to_owned(), "40 − 1 × 25.4 = 14.6 mm".to_owned()));
        let refused = margin(&VENEER_WEIGHT, &q::<Areal>("18.9 lb/ft2")).unwrap_err();
        assert!(refused.wants.starts_with("at most 15 lb/ft2 (weight of adhered veneer, DL-22"), "{}", refused.wants);
        assert!(margin(&VENEER_WEIGHT, &q::<Length>("1 in")).unwrap_err().wants.contains("not a length"));
    }
}
