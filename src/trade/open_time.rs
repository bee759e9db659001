//! F13: how long mud stays open, and when it can be carved, as the temperature changes.

use std::cmp::Ordering;

use num_rational::BigRational;

use crate::quantity::expr::{CarveTime, Node, OpenTime, Plain, Sort, Temperature, Worked};
use crate::quantity::num::Num;
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Quantity};

use super::{Answer, OutOfRange, above_zero, refuse};

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

fn a_temperature(key: &'static str, symbol: &'static str, t: &Worked<Temperature>) -> Result<(), OutOfRange> {
    let si = &t.value().si;
    if si.is_negative() || si.is_zero() || si.to_f64() > MOST_KELVIN {
        return Err(refuse(key, symbol, t, "a temperature of air or mud, such as `70 °F`"));
    }
    Ok(())
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
    a_temperature("F13 factor", "T_ref", t_ref)?;
    a_temperature("F13 factor", "T", t)?;
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

/// A mix sheet's own table: temperature of the mud, time at it. In any order.
pub type Table<S> = [(Worked<Temperature>, Worked<S>)];

const ROW: &str = "T_row";

/// Times of the rows at or next below `t` and at or next above it; `prefer` picks among rows of one temperature.
fn neighbours<S: Sort>(table: &Table<S>, t: &Worked<Temperature>, prefer: Ordering) -> (Option<Worked<S>>, Option<Worked<S>>) {
    let warmth = |a: &Worked<Temperature>, b: &Worked<Temperature>| a.value().si.compare(&b.value().si);
    let mut found = (None, None);
    let best = |side: &mut Option<(Worked<Temperature>, Worked<S>)>, row: &(Worked<Temperature>, Worked<S>), nearer: Ordering| {
        let take = match side {
            None => true,
            Some((seen, _)) if warmth(&row.0, seen) == nearer => true,
            Some((seen, time)) => warmth(&row.0, seen).is_eq() && row.1.value().si.compare(&time.value().si) == prefer,
        };
        if take {
            *side = Some(row.clone());
        }
    };
    for row in table {
        if warmth(&row.0, t).is_le() {
            best(&mut found.0, row, Ordering::Greater);
        }
        if warmth(&row.0, t).is_ge() {
            best(&mut found.1, row, Ordering::Less);
        }
    }
    (found.0.map(|row| row.1), found.1.map(|row| row.1))
}

fn table_is_whole<S: Sort>(key: &'static str, table: &Table<S>) -> Result<(), OutOfRange> {
    for (at, time) in table {
        a_temperature(key, ROW, at)?;
        above_zero(key, "t_row", time)?;
    }
    Ok(())
}

/// Time at which mud closes, by the mix sheet's own table: open time, or the close of the carve window.
///
/// `t = min(t_cold, t_warm)`, the times of the rows next below and next above `T`: between two rows the shorter
/// stands, not a time in between, which no sheet has stated. On a row it is that row's. Below the coldest row the
/// coldest row's time stands, and is not lengthened. Above the hottest row, and by an empty table, no time is
/// given: ask the maker. Wins over [`open_time`] and [`carve_time`]. Source: `mix-sheet-table`.
/// ```
/// use hodbook::{quantity::expr::{OpenTime, Worked}, trade::open_time::closes_by_table};
/// let row = |t, time| (Worked::read(t).unwrap(), Worked::<OpenTime>::read(time).unwrap());
/// let sheet = [row("50 °F", "70 min"), row("70 °F", "50 min"), row("90 °F", "25 min")];
/// let at = |t| closes_by_table(&sheet, &Worked::read(t).unwrap());
/// assert_eq!(at("75 °F").unwrap().in_unit("min"), 25.0);
/// assert_eq!(at("40 °F").unwrap().in_unit("min"), 70.0);
/// assert!(at("91 °F").is_err());
/// ```
pub fn closes_by_table<S: Sort>(table: &Table<S>, t: &Worked<Temperature>) -> Answer<S> {
    const KEY: &str = "F13 table closes";
    table_is_whole(KEY, table)?;
    a_temperature(KEY, "T", t)?;
    let time = match neighbours(table, t, Ordering::Less) {
        (Some(cold), Some(warm)) => cold.named("t_cold").min(warm.named("t_warm")),
        (None, Some(warm)) => warm.named("t_warm"),
        (_, None) => {
            return Err(refuse(KEY, "T", t, "a temperature no higher than the sheet's hottest row; ask the maker, or cool the mud"));
        }
    };
    Ok(Worked::new(time.written_in("min").formula(KEY, "t")))
}

/// Time at which the carve window opens, by the mix sheet's own table.
///
/// `t = max(t_cold, t_warm)`, the times of the rows next below and next above `T`: between two rows the later
/// stands, so that no one carves early. On a row it is that row's. Outside the table no time is given: colder
/// mud opens later than any row says, and hotter mud may have closed. Source: `mix-sheet-table`.
/// ```
/// use hodbook::{quantity::expr::{CarveTime, Worked}, trade::open_time::opens_by_table};
/// let row = |t, time| (Worked::read(t).unwrap(), Worked::<CarveTime>::read(time).unwrap());
/// let sheet = [row("70 °F", "75 min"), row("90 °F", "40 min")];
/// assert_eq!(opens_by_table(&sheet, &Worked::read("75 °F").unwrap()).unwrap().in_unit("min"), 75.0);
/// assert!(opens_by_table(&sheet, &Worked::read("60 °F").unwrap()).is_err());
/// ```
pub fn opens_by_table<S: Sort>(table: &Table<S>, t: &Worked<Temperature>) -> Answer<S> {
    const KEY: &str = "F13 table opens";
    table_is_whole(KEY, table)?;
    a_temperature(KEY, "T", t)?;
    match neighbours(table, t, Ordering::Greater) {
        (Some(cold), Some(warm)) => {
            let time = cold.named("t_cold").max(warm.named("t_warm"));
            Ok(Worked::new(time.written_in("min").formula(KEY, "t")))
        }
        _ => Err(refuse(KEY, "T", t, "a temperature between the sheet's coldest and hottest rows; ask the maker")),
    }
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
    #[test]
    fn the_sheet_s_own_table_wins_and_fails_safe() {
        // Our own table, not in order, one temperature twice.
        let row = |t, time| (q::<Temperature>(t), q::<CarveTime>(time));
        let sheet = [row("90 °F", "100 min"), row("50 °F", "4 h"), row("70 °F", "200 min"), row("70 °F", "210 min")];
        let closes = |t| closes_by_table(&sheet, &q(t));
        let opens = |t| opens_by_table(&sheet, &q(t));
        holds(&closes("70 °F").unwrap(), "min", "200");
        holds(&opens("70 °F").unwrap(), "min", "210");
        holds(&closes("69 °F").unwrap(), "min", "200");
        holds(&opens("71 °F").unwrap(), "min", "210");
        holds(&closes("71 °F").unwrap(), "min", "100");
        holds(&closes("60 °F").unwrap(), "min", "200");
        holds(&opens("10 °C").unwrap(), "min", "240");
        holds(&closes("33 °F").unwrap(), "min", "240");
        assert!(closes("91 °F").unwrap_err().wants.contains("ask the maker"));
        assert!(opens("49 °F").is_err() && opens("91 °F").is_err());
        assert!(closes_by_table::<CarveTime>(&[], &q("70 °F")).is_err());
        assert!(closes_by_table(&[row("70 °F", "0 min")], &q("70 °F")).is_err());
        assert_eq!(line(&closes("60 °F").unwrap()), ("t = min(t_cold, t_warm)".into(), "min(4 × 60, 200) = 200 min".into()));
    }

    #[test]
    fn a_table_that_turns_keeps_the_shorter() {
        // A sheet that gives less time in the cold (frost): between its rows the shorter still stands.
        let row = |t, time| (q::<Temperature>(t), q::<OpenTime>(time));
        let sheet = [row("40 °F", "30 min"), row("70 °F", "50 min")];
        holds(&closes_by_table(&sheet, &q("55 °F")).unwrap(), "min", "30");
        holds(&closes_by_table(&sheet, &q("35 °F")).unwrap(), "min", "30");
    }
}
