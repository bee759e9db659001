//! F26: the tables of the lifting equation: how often, how long, how held.

use crate::quantity::expr::{Duration, Frequency, Node, Plain, Worked};
use crate::quantity::num::Num;
use crate::quantity::value::Quantity;

use super::{Answer, refuse, zero_or_more};

/// Which form of the equation.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum System {
    /// Inches and pounds.
    Us,
    /// Centimetres and kilograms.
    Metric,
}

/// How the hands hold a load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grip {
    /// Handles, or a box with hand holes.
    Good,
    /// A bag that does not sag, or a box without holes: fingers bent under it.
    Fair,
    /// A sagging or slippery bag.
    Poor,
}

/// Lifts in how many minutes, and the values: hands low, hands high, for each of [`HOURS`].
type Row = (i64, i64, [(i64, i64); 3]);

/// Hundredths of FM by lifts a minute (in fifths for the first row): up to 1 h, up to 2 h, up to 8 h; for each the value with
/// hands below 30 in (75 cm) and from there up. Recalled, not re-read; the value at 3 a minute and 1 h was read.
const FREQUENCY: &[Row] = &[
    (1, 5, [(100, 100), (95, 95), (85, 85)]),
    (1, 2, [(97, 97), (92, 92), (81, 81)]),
    (1, 1, [(94, 94), (88, 88), (75, 75)]),
    (2, 1, [(91, 91), (84, 84), (65, 65)]),
    (3, 1, [(88, 88), (79, 79), (55, 55)]),
    (4, 1, [(84, 84), (72, 72), (45, 45)]),
    (5, 1, [(80, 80), (60, 60), (35, 35)]),
    (6, 1, [(75, 75), (50, 50), (27, 27)]),
    (7, 1, [(70, 70), (42, 42), (22, 22)]),
    (8, 1, [(60, 60), (35, 35), (18, 18)]),
    (9, 1, [(52, 52), (30, 30), (0, 15)]),
    (10, 1, [(45, 45), (26, 26), (0, 13)]),
    (11, 1, [(41, 41), (0, 23), (0, 0)]),
    (12, 1, [(37, 37), (0, 21), (0, 0)]),
    (13, 1, [(0, 34), (0, 0), (0, 0)]),
    (14, 1, [(0, 31), (0, 0), (0, 0)]),
    (15, 1, [(0, 28), (0, 0), (0, 0)]),
];

const HOURS: [i64; 3] = [1, 2, 8];

fn hundredths(n: i64, symbol: &'static str, source: &'static str) -> Worked<Plain> {
    Worked::new(Node::constant(Quantity::plain(Num::frac(n, 100)), None, symbol, source))
}

/// Frequency multiplier FM of a rate, of how long it goes on, and of whether the hands start `low`, below 30 in (75 cm).
///
/// Rate 0 to 15 lifts a minute, 0 to 8 h; a rate between two rows takes the row of the higher, on the safe side. Where the
/// table says 0 no lift is advised, and it is refused. Recalled, not re-read. Source: `lifting-equation`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::lifting_tables::frequency};
/// let fm = frequency(&Worked::read("3 lift/min").unwrap(), &Worked::read("1 h").unwrap(), true).unwrap();
/// assert_eq!(fm.value().si.to_f64(), 0.88);
/// ```
pub fn frequency(rate: &Worked<Frequency>, lasts: &Worked<Duration>, low: bool) -> Answer<Plain> {
    const KEY: &str = "F26 frequency";
    zero_or_more(KEY, "F", rate)?;
    zero_or_more(KEY, "lasts", lasts)?;
    let over = |x: &Num, n: i64, d: i64| x.compare(&Num::frac(n, d)).is_gt();
    let Some(column) = HOURS.iter().position(|h| !over(&lasts.value().si, h * 3600, 1)) else {
        return Err(refuse(KEY, "lasts", lasts, "at most 8 h, such as `2 h`"));
    };
    let value = |row: &Row| row.2.get(column).map_or(0, |v| if low { v.0 } else { v.1 });
    let found = FREQUENCY.iter().find(|(n, d, _)| !over(&rate.value().si, *n, d * 60)).map_or(0, value);
    if found == 0 {
        let most = FREQUENCY.iter().rev().find(|row| value(row) > 0).map_or(1, |row| row.0);
        return Err(refuse(KEY, "F", rate, format!("at most {most} lift/min for this long, from this height")));
    }
    let read = "revised lifting equation, frequency table; recalled, not re-read";
    Ok(Worked::new(hundredths(found, "FM_table", read).node().clone().formula(KEY, "FM")))
}

/// Coupling multiplier CM of a grip, and of whether the hands are `low`, below 30 in (75 cm): good 1.00, fair 0.95 low and
/// 1.00 above, poor 0.90.
///
/// Poor is recalled, not re-read. Source: `lifting-equation`.
/// ```
/// use hodbook::trade::lifting_tables::{Grip, coupling};
/// assert_eq!(coupling(Grip::Fair, true).value().si.to_f64(), 0.95);
/// ```
pub fn coupling(grip: Grip, low: bool) -> Worked<Plain> {
    let n = match (grip, low) {
        (Grip::Good, _) | (Grip::Fair, false) => 100,
        (Grip::Fair, true) => 95,
        (Grip::Poor, _) => 90,
    };
    Worked::new(hundredths(n, "CM_table", "revised lifting equation, coupling table").node().clone().formula("F26 coupling", "CM"))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, q};
    use super::*;

    fn fm(rate: &str, lasts: &str, low: bool) -> Answer<Plain> {
        frequency(&q(&format!("{rate} lift/min")), &q(lasts), low)
    }

    #[test]
    fn rows_and_columns() {
        for (rate, lasts, printed) in [
            ("0", "20 min", "1.00"),
            ("0.2", "1 h", "1.00"),
            ("0.3", "1 h", "0.97"),
            ("3", "1 h", "0.88"),
            ("3", "61 min", "0.79"),
            ("3", "2 h 1 min", "0.55"),
            ("4", "8 h", "0.45"),
            ("4.5", "8 h", "0.35"),
        ] {
            holds(&fm(rate, lasts, true).unwrap(), "", printed);
        }
        holds(&fm("10", "8 h", false).unwrap(), "", "0.13");
        assert_eq!(fm("10", "8 h", true).unwrap_err().wants, "at most 8 lift/min for this long, from this height");
        assert!(fm("15", "1 h", false).is_ok());
        assert!(fm("16", "1 h", false).unwrap_err().wants.starts_with("at most 15 lift/min"));
        assert_eq!(fm("1", "9 h", false).unwrap_err().wants, "at most 8 h, such as `2 h`");
        assert!(fm("-1", "1 h", false).is_err());
    }

    #[test]
    fn more_lifts_longer_never_raise_it() {
        for pair in FREQUENCY.windows(2) {
            let [(_, _, a), (_, _, b)] = pair else { panic!() };
            for (a, b) in a.iter().zip(b) {
                assert!(a.0 >= b.0 && a.1 >= b.1 && b.1 >= b.0);
            }
        }
        for (_, _, row) in FREQUENCY {
            assert!(row.windows(2).all(|p| p[0].0 >= p[1].0 && p[0].1 >= p[1].1));
        }
        holds(&coupling(Grip::Poor, false), "", "0.90");
        holds(&coupling(Grip::Fair, false), "", "1.00");
        holds(&coupling(Grip::Good, true), "", "1.00");
    }
}
