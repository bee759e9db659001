//! F13: how long mud stays open, and when it can be carved, as the temperature changes.

use num_rational::BigRational;

use crate::quantity::expr::{CarveTime, Node, OpenTime, Plain, Sort, Temperature, Worked};
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Quantity};

use super::{Answer, above_zero, refuse};

/// Times grow by half at most: cold mud that has not set may be freezing, not waiting.
const MOST: (i64, i64) = (3, 2);
/// Boiling water: no mud is mixed there, and the power of two stays finite.
const MOST_KELVIN: f64 = 373.15;
/// Below this share of the stated time no time is given.
const LEAST: f64 = 0.35;

/// The 20 °F over which the time halves.
fn halving() -> Node {
    let kelvin = Num::Exact(BigRational::new(100.into(), 9.into()));
    let value = Quantity { si: kelvin, dim: Dim::TEMPERATURE, kind: Kind::Difference };
    Node::constant(value, find_expr("°F"), "T_half", "common practice, no source")
}

/// Factor on a time stated at `T_ref`: `factor = min(2^((T_ref − T) ÷ T_half), 1.5)` with `T_half` 20 °F.
///
/// No lower clamp, which would lengthen the time in heat; below 0.35 no factor is given (ask the maker). Neither
/// temperature above boiling water nor below absolute zero. Meant for
/// mixes stated at about 70 °F. Rounding down to 5 min is the print's. Source: `open-time-halving`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::open_time::factor};
/// let f = |t| factor(&Worked::read("70 °F").unwrap(), &Worked::read(t).unwrap());
/// assert_eq!(f("90 °F").unwrap().value().si.to_f64(), 0.5);
/// assert_eq!(f("50 °F").unwrap().value().si.to_f64(), 1.5);
/// assert!(f("101 °F").is_err());
/// ```
pub fn factor(t_ref: &Worked<Temperature>, t: &Worked<Temperature>) -> Answer<Plain> {
    let zero = |t: &Worked<Temperature>| t.value().si.is_negative() || t.value().si.is_zero();
    for (symbol, t) in [("T_ref", t_ref), ("T", t)] {
        if zero(t) || t.value().si.to_f64() > MOST_KELVIN {
            return Err(refuse("F13 factor", symbol, t, "a temperature of air or mud, such as `70 °F`"));
        }
    }
    let free = ((t_ref.named("T_ref") - t.named("T")) / halving()).exp2();
    if free.value().si.to_f64() < LEAST {
        let wants = "a temperature that leaves at least 0.35 of the stated time; ask the maker, or cool the mud";
        return Err(refuse("F13 factor", "T", t, wants));
    }
    Ok(Worked::new(free.min(Node::given(MOST.0, MOST.1)).formula("F13 factor", "factor")))
}

fn scaled<S: Sort>(stated: &Worked<S>, t_ref: &Worked<Temperature>, t: &Worked<Temperature>, key: &'static str) -> Answer<S> {
    above_zero(key, "t_ref", stated)?;
    let f = factor(t_ref, t)?;
    let time = super::like(stated.named("t_ref") * f.named("factor"), stated.node());
    Ok(Worked::new(time.formula(key, "t")))
}

/// Open time at a temperature: `t = t_ref × factor`; `t_ref` the mix's open time at `T_ref`, [`factor`] at `T`.
///
/// `t_ref > 0`; out of range where [`factor`] is. The mix sheet's own table wins. Source: `open-time-halving`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::open_time::open_time};
/// let (t70, at) = (Worked::read("50 min").unwrap(), |t| Worked::read(t).unwrap());
/// assert_eq!(format!("{:.1}", open_time(&t70, &at("70 °F"), &at("92 °F")).unwrap().in_unit("min")), "23.3");
/// ```
pub fn open_time(stated: &Worked<OpenTime>, t_ref: &Worked<Temperature>, t: &Worked<Temperature>) -> Answer<OpenTime> {
    scaled(stated, t_ref, t, "F13 open time")
}

/// Opening or closing of the carve window at a temperature, counted from placing: `t = t_ref × factor`, as [`open_time`].
///
/// Source: `open-time-halving`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::open_time::carve_time};
/// let (closes, at) = (Worked::read("210 min").unwrap(), |t| Worked::read(t).unwrap());
/// assert_eq!(carve_time(&closes, &at("70 °F"), &at("90 °F")).unwrap().in_unit("min"), 105.0);
/// ```
pub fn carve_time(stated: &Worked<CarveTime>, t_ref: &Worked<Temperature>, t: &Worked<Temperature>) -> Answer<CarveTime> {
    scaled(stated, t_ref, t, "F13 carve time")
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    fn at(t: &str) -> Answer<OpenTime> {
        open_time(&q("50 min"), &q("70 °F"), &q(t))
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn fifty_minutes_at_seventy() {
        holds(&at("85 °F").unwrap(), "min", "29.7");
        holds(&at("92 °F").unwrap(), "min", "23.3");
        holds(&at("50 °F").unwrap(), "min", "75.0");
        // No lower clamp: 0.354 at 100 °F stands, below 0.35 nothing does.
        holds(&at("100 °F").unwrap(), "min", "17.7");
        let refused = at("101 °F").unwrap_err();
        assert!(refused.wants.contains("ask the maker"));
        assert_eq!(refused.value, "101 °F");
    }

    #[test]
    fn scales_of_temperature_mix() {
        let f = factor(&q("70 °F"), &q("25 °C")).unwrap();
        let (symbols, numbers) = line(&f);
        assert_eq!(symbols, "factor = min(2^((T_ref − T) ÷ T_half), 1.5)");
        assert_eq!(numbers, "min(2^((70 − (25 × 1.8 + 32)) ÷ 20), 1.5) = 0.7845841 ");
        holds(&f, "", "0.7846"); // 77 °F
        let metric = factor(&q("20 °C"), &q("25 °C")).unwrap();
        assert_eq!(line(&metric).1, "min(2^((20 − 25) ÷ 20 × 1.8), 1.5) = 0.7320428 ");
    }
}
