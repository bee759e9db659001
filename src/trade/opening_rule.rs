//! F1: published rules for what an opening takes off a face, beside ours, for ONE coated face.
//!
//! Ours ([`net`](super::net::net)) deducts every opening at its real size and adds every coated return. The rules
//! here are for measuring and paying; a rule that deducts less than the hole orders more mud than it takes, one
//! that deducts more orders less.

use crate::quantity::expr::{Area, Node, Worked};
use crate::quantity::{Kind, Num, Quantity, units};

use super::{Answer, above_zero};

/// This face's reveal against the other face's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Reveal {
    /// Narrower: the frame stands near this face.
    Narrower,
    /// Equal: the frame stands in the middle.
    Equal,
    /// Wider: the frame stands near the other face.
    Wider,
}

fn metres2(n: i64, d: i64) -> Quantity {
    units::find_expr("m2").map_or_else(|| Quantity::plain(Num::frac(n, d)), |unit| Quantity::of(&Num::frac(n, d), unit))
}

/// True if an opening of `a` is over `n/d` m2.
fn over(a: &Worked<Area>, n: i64, d: i64) -> bool {
    a.value().si.compare(&metres2(n, d).si).is_gt()
}

fn part(n: i64, d: i64, source: &'static str) -> Node {
    let share = Quantity { kind: Kind::Share, ..Quantity::plain(Num::frac(n, d)) };
    Node::constant(share, units::find_expr("%"), "part", source)
}

/// What IS 1200 Part 12 takes off one coated face for an opening: `D = part × A`; `part` is 0 % up to 0.5 m2; over
/// that up to 3 m2 it is 100 % where this face has the narrower reveal, 50 % where both are equal, 0 % where the
/// other face has the narrower one; over 3 m2 it is 100 %.
///
/// `A > 0`, of one opening. The standard speaks of both faces of a wall. Carved work coats one, so it stands where the
/// standard has two unlike finishes, and the side of the narrower reveal decides. Source: `is-1200-12`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::opening_rule::{Reveal, deducted_is1200}};
/// let off = |a| deducted_is1200(&Worked::read(a).unwrap(), Reveal::Equal).unwrap().in_unit("m2");
/// assert_eq!((off("0.5 m2"), off("2 m2"), off("4 m2")), (0.0, 1.0, 4.0));
/// ```
pub fn deducted_is1200(a: &Worked<Area>, reveal: Reveal) -> Answer<Area> {
    above_zero("F1 IS deduction", "A", a)?;
    let part = match (over(a, 1, 2), over(a, 3, 1), reveal) {
        (false, ..) => part(0, 1, "IS 1200-12, openings up to 0.5 m2"),
        (_, true, _) => part(1, 1, "IS 1200-12, openings over 3 m2"),
        (_, _, Reveal::Narrower) => part(1, 1, "IS 1200-12, over 0.5 to 3 m2, the face with the narrower reveal"),
        (_, _, Reveal::Equal) => part(1, 2, "IS 1200-12, over 0.5 to 3 m2, equal reveals"),
        (_, _, Reveal::Wider) => part(0, 1, "IS 1200-12, over 0.5 to 3 m2, the face with the wider reveal"),
    };
    Ok(Worked::new((part * a.named("A")).formula("F1 IS deduction", "D")))
}

/// What IS 1200 Part 12 adds for the coated returns of an opening: `R = part × A_r`; `part` is 0 % for an opening `a` up
/// to 3 m2, 100 % over that. `A_r` is the area of the returns of that opening.
///
/// Both above 0. Jambs, sill and soffit are counted where they are coated. Source: `is-1200-12`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::opening_rule::reveals_is1200};
/// let added = |a| reveals_is1200(&Worked::read("0.9 m2").unwrap(), &Worked::read(a).unwrap()).unwrap().in_unit("m2");
/// assert_eq!((added("3 m2"), added("3.01 m2")), (0.0, 0.9));
/// ```
pub fn reveals_is1200(reveals: &Worked<Area>, a: &Worked<Area>) -> Answer<Area> {
    above_zero("F1 IS reveals", "A_r", reveals)?;
    above_zero("F1 IS reveals", "A", a)?;
    let part = if over(a, 3, 1) {
        part(1, 1, "IS 1200-12, openings over 3 m2: reveals added")
    } else {
        part(0, 1, "IS 1200-12, openings up to 3 m2: no reveals")
    };
    Ok(Worked::new((part * reveals.named("A_r")).formula("F1 IS reveals", "R")))
}

/// What an estimate of 1878 takes off for an opening: `D = max(A, least)`, `least` = 2 yd2; every opening counts, and
/// none as less.
///
/// `A > 0`, of one opening. It speaks of flat plaster and of no reveals; ours are added all the same. A vent then takes
/// more off the face than its hole, so this rule orders **less mud than the wall takes** wherever there are small
/// openings. Source: `reed-1878`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::opening_rule::deducted_reed};
/// let off = |a| deducted_reed(&Worked::read(a).unwrap()).unwrap().in_unit("ft2");
/// assert_eq!((off("1 ft2"), off("24 ft2")), (18.0, 24.0));
/// ```
pub fn deducted_reed(a: &Worked<Area>) -> Answer<Area> {
    above_zero("F1 Reed deduction", "A", a)?;
    let yards = units::find_expr("yd2");
    let two = yards.map_or_else(|| metres2(2, 1), |unit| Quantity::of(&Num::int(2), unit));
    let least = Node::constant(two, yards, "least", "S. B. Reed, 1878: an average opening, at least 2 yd2");
    Ok(Worked::new(a.named("A").max(least).formula("F1 Reed deduction", "D")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    #[test]
    fn an_opening_on_each_side_of_each_limit() {
        for (a, narrower, equal, wider) in [
            ("0.5 m2", "0.00", "0.00", "0.00"),
            ("0.51 m2", "0.51", "0.26", "0.00"),
            ("3 m2", "3.00", "1.50", "0.00"),
            ("3.01 m2", "3.01", "3.01", "3.01"),
        ] {
            for (reveal, printed) in [(Reveal::Narrower, narrower), (Reveal::Equal, equal), (Reveal::Wider, wider)] {
                let off = deducted_is1200(&q(a), reveal).unwrap();
                assert_eq!(crate::quantity::num::decimal(off.value().si.exact().unwrap(), 2), printed, "{a} {reveal:?}");
            }
        }
        // The limit is exact across units: 5 ft2 is 0.4645 m2, 5.4 ft2 is 0.5017 m2.
        assert!(deducted_is1200(&q("5 ft2"), Reveal::Narrower).unwrap().value().si.is_zero());
        holds(&deducted_is1200(&q("5.4 ft2"), Reveal::Narrower).unwrap(), "ft2", "5.4");
        assert_eq!(line(&deducted_is1200(&q("2 m2"), Reveal::Equal).unwrap()).0, "D = part × A");
    }

    #[test]
    fn small_openings_count_two_square_yards() {
        let vent = deducted_reed(&q("96 in2")).unwrap();
        holds(&vent, "yd2", "2");
        assert_eq!(line(&vent).0, "D = max(A, least)");
        holds(&deducted_reed(&q("2.1 m2")).unwrap(), "m2", "2.1");
    }

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        let refused = deducted_reed(&q("0 ft2")).unwrap_err();
        assert_eq!(refused.to_string(), "F1 Reed deduction: A is 0 ft2, wants more than 0, such as `1 ft2`");
        assert!(deducted_is1200(&q("0 m2"), Reveal::Equal).is_err());
        assert!(reveals_is1200(&q("0 m2"), &q("1 m2")).is_err());
    }
}
