//! F1: a flat face or an opening of any outline, by its corners.

use std::cmp::Ordering;

use crate::quantity::Num;
use crate::quantity::expr::{Area, Length, Node, Worked};

use super::{Answer, OutOfRange, like};

/// A corner: distance to the right, and height.
pub type Corner = (Worked<Length>, Worked<Length>);

/// Corners and their places `i` and `i + 1`, the last joined to the first.
fn edges(corners: &[Corner]) -> impl Iterator<Item = (usize, &Corner, usize, &Corner)> {
    let next = corners.iter().enumerate().cycle().skip(1);
    corners.iter().enumerate().zip(next).map(|((i, a), (j, b))| (i + 1, a, j + 1, b))
}

/// Side of the line from `a` to `b` on which `c` lies.
fn side(a: &Corner, b: &Corner, c: &Corner) -> Ordering {
    let minus = |p: &Worked<Length>, q: &Worked<Length>| p.value().si.sub(&q.value().si);
    let left = minus(&b.0, &a.0).mul(&minus(&c.1, &a.1));
    left.compare(&minus(&b.1, &a.1).mul(&minus(&c.0, &a.0)))
}

/// True if `c`, known to be in line with `a` and `b`, lies between them or on one of them.
fn between(a: &Corner, b: &Corner, c: &Corner) -> bool {
    let within = |a: &Num, b: &Num, c: &Num| {
        let (low, high) = if a.compare(b).is_le() { (a, b) } else { (b, a) };
        c.compare(low).is_ge() && c.compare(high).is_le()
    };
    within(&a.0.value().si, &b.0.value().si, &c.0.value().si) && within(&a.1.value().si, &b.1.value().si, &c.1.value().si)
}

fn meet((a, b): (&Corner, &Corner), (c, d): (&Corner, &Corner)) -> bool {
    let (s1, s2, s3, s4) = (side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b));
    let apart = |s: Ordering, t: Ordering| s.is_ne() && t.is_ne() && s != t;
    apart(s1, s2) && apart(s3, s4)
        || [(s1, a, b, c), (s2, a, b, d), (s3, c, d, a), (s4, c, d, b)].iter().any(|(s, p, q, r)| s.is_eq() && between(p, q, r))
}

fn same(a: &Corner, b: &Corner) -> bool {
    a.0.value().si.compare(&b.0.value().si).is_eq() && a.1.value().si.compare(&b.1.value().si).is_eq()
}

/// Refuses fewer than three corners, a corner given twice running, and edges that cross or touch.
fn simple(formula: &'static str, corners: &[Corner]) -> Result<(), OutOfRange> {
    let refused = |value: String, wants: &str| Err(OutOfRange { formula, symbol: "corners", value, wants: wants.to_owned() });
    if corners.len() < 3 {
        return refused(corners.len().to_string(), "3 corners or more");
    }
    let all: Vec<_> = edges(corners).collect();
    for (n, (i, a, j, b)) in all.iter().enumerate() {
        if same(a, b) {
            return refused(format!("the same at {i} and {j}"), "each corner once, the last one is joined to the first by itself");
        }
        for (m, (k, c, l, d)) in all.iter().enumerate().skip(n + 1) {
            let crossed = if m == n + 1 {
                // Neighbours share a corner; they may not run back over one another.
                side(a, b, d).is_eq() && (between(a, b, d) || between(c, d, a))
            } else if n == 0 && m + 1 == all.len() {
                side(c, d, b).is_eq() && (between(c, d, b) || between(a, b, c))
            } else {
                meet((a, b), (c, d))
            };
            if crossed {
                let value = format!("an outline whose edge {i} to {j} meets its edge {k} to {l}");
                return refused(value, "corners in the order in which one walks around the face, edges that do not cross or touch");
            }
        }
    }
    Ok(())
}

/// Any flat outline by its corners: `A = 1/2 × abs((x1 × y2 − x2 × y1) + …)`, `x` to the right and `y` up from any one
/// place, the last corner joined to the first.
///
/// At least 3 corners, walked in either direction; an outline whose edges cross or touch is refused with the
/// edges. Exact where the corners are. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::polygon::polygon};
/// let at = |x, y| (Worked::read(x).unwrap(), Worked::read(y).unwrap());
/// let stair = [at("0 ft", "0 ft"), at("12 ft", "0 ft"), at("12 ft", "9 ft"), at("8 ft", "9 ft")];
/// assert_eq!(polygon(&stair).unwrap().in_unit("ft2"), 72.0);
/// let crossed = [at("0 ft", "0 ft"), at("4 ft", "4 ft"), at("4 ft", "0 ft"), at("0 ft", "4 ft")];
/// assert!(polygon(&crossed).unwrap_err().value.contains("edge 1 to 2 meets its edge 3 to 4"));
/// ```
pub fn polygon(corners: &[Corner]) -> Answer<Area> {
    simple("F1 polygon", corners)?;
    let parts = edges(corners).map(|(i, a, j, b)| {
        let (x, y) = (|n: usize| format!("x{n}"), |n: usize| format!("y{n}"));
        a.0.named(x(i)) * b.1.named(y(j)) - b.0.named(x(j)) * a.1.named(y(i))
    });
    let Some(sum) = parts.reduce(|sum, part| sum + part) else {
        return Err(OutOfRange { formula: "F1 polygon", symbol: "corners", value: "0".to_owned(), wants: "3 corners or more".to_owned() });
    };
    Ok(Worked::new((Node::given(1, 2) * sum.abs()).formula("F1 polygon", "A")))
}

/// Length walked around an outline: `p = e1 + e2 + …`, `e = sqrt(dx × dx + dy × dy)`; level and upright edges are
/// taken as they stand and stay exact. With `sill` false the level edges at the very foot are left out.
///
/// Range as in [`polygon`]; an outline of which nothing is left is refused. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::polygon::polygon_perimeter};
/// let at = |x, y| (Worked::read(x).unwrap(), Worked::read(y).unwrap());
/// let pointed = [at("0 ft", "0 ft"), at("0 ft", "4 ft"), at("3 ft", "8 ft"), at("6 ft", "4 ft"), at("6 ft", "0 ft")];
/// let walked = |sill| format!("{:.3}", polygon_perimeter(&pointed, sill).unwrap().in_unit("ft"));
/// assert_eq!((walked(false), walked(true)), ("18.000".to_owned(), "24.000".to_owned()));
/// ```
pub fn polygon_perimeter(corners: &[Corner], sill: bool) -> Answer<Length> {
    simple("F1 polygon perimeter", corners)?;
    let foot = corners.iter().map(|c| &c.1.value().si).min_by(|a, b| a.compare(b));
    let at_foot = |c: &Corner| foot.is_some_and(|f| c.1.value().si.compare(f).is_eq());
    let walked = edges(corners).filter(|(_, a, _, b)| sill || !(at_foot(a) && at_foot(b)));
    let lengths = walked.map(|(i, a, j, b)| {
        let across = || b.0.named(format!("x{j}")) - a.0.named(format!("x{i}"));
        let up = || b.1.named(format!("y{j}")) - a.1.named(format!("y{i}"));
        let edge = if up().value().si.is_zero() {
            across().abs()
        } else if across().value().si.is_zero() {
            up().abs()
        } else {
            like((across() * across() + up() * up()).sqrt(), a.0.node())
        };
        edge.formula("F1 edge", "e").named(format!("e{i}"))
    });
    let wants = "an edge that is not a sill".to_owned();
    let none = OutOfRange { formula: "F1 polygon perimeter", symbol: "corners", value: "all at the foot".to_owned(), wants };
    let sum = lengths.reduce(|sum, e| sum + e).ok_or(none)?;
    Ok(Worked::new(sum.formula("F1 polygon perimeter", "p")))
}

/// How far an outline reaches: `w = last − first`, of its corners' distances, or of their heights.
///
/// At least one; 0 if all are the same. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::polygon::extent};
/// let xs = ["2 ft", "12 ft", "8 ft"].map(|x| Worked::read(x).unwrap());
/// assert_eq!(extent(&xs).unwrap().in_unit("ft"), 10.0);
/// ```
pub fn extent(places: &[Worked<Length>]) -> Answer<Length> {
    let by = |a: &&Worked<Length>, b: &&Worked<Length>| a.value().si.compare(&b.value().si);
    match (places.iter().min_by(by), places.iter().max_by(by)) {
        (Some(first), Some(last)) => Ok(Worked::new((last.named("last") - first.named("first")).formula("F1 extent", "w"))),
        _ => Err(OutOfRange { formula: "F1 extent", symbol: "last", value: "missing".to_owned(), wants: "one corner or more".to_owned() }),
    }
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    fn outline(corners: &[(&str, &str)]) -> Vec<Corner> {
        corners.iter().map(|(x, y)| (q(x), q(y))).collect()
    }

    #[test]
    fn a_gable_by_its_corners_in_either_direction() {
        let mut gable = outline(&[("0 ft", "0 ft"), ("22 ft", "0 ft"), ("22 ft", "9 ft"), ("11 ft", "14 ft 6 in"), ("0 ft", "9 ft")]);
        holds(&polygon(&gable).unwrap(), "ft2", "258.5");
        assert!(polygon(&gable).unwrap().value().si.exact().is_some());
        gable.reverse();
        holds(&polygon(&gable).unwrap(), "ft2", "258.5");
        let triangle = polygon(&outline(&[("0 in", "0 in"), ("4 ft", "0 ft"), ("0 ft", "3 ft")])).unwrap();
        let (symbols, numbers) = line(&triangle);
        assert_eq!(symbols, "A = 0.5 × abs(x1 × y2 − x2 × y1 + x2 × y3 − x3 × y2 + x3 × y1 − x1 × y3)");
        assert!(numbers.ends_with("= 6 ft2"), "{numbers}");
    }

    #[test]
    fn edges_that_cross_touch_or_run_back_are_named() {
        let said = |corners: &[(&str, &str)]| polygon(&outline(corners)).unwrap_err().value;
        let bow = [("0 ft", "0 ft"), ("4 ft", "4 ft"), ("4 ft", "0 ft"), ("0 ft", "4 ft")];
        assert_eq!(said(&bow), "an outline whose edge 1 to 2 meets its edge 3 to 4");
        // A corner that stands on a far edge.
        let touch = [("0 ft", "0 ft"), ("6 ft", "0 ft"), ("6 ft", "4 ft"), ("3 ft", "0 ft"), ("0 ft", "4 ft")];
        assert_eq!(said(&touch), "an outline whose edge 1 to 2 meets its edge 3 to 4");
        let back = [("0 ft", "0 ft"), ("6 ft", "0 ft"), ("3 ft", "0 ft"), ("3 ft", "4 ft")];
        assert_eq!(said(&back), "an outline whose edge 1 to 2 meets its edge 2 to 3");
        let last = [("0 ft", "0 ft"), ("6 ft", "0 ft"), ("6 ft", "4 ft"), ("3 ft", "0 ft")];
        assert_eq!(said(&last), "an outline whose edge 1 to 2 meets its edge 3 to 4");
        assert_eq!(said(&[("0 ft", "0 ft"), ("6 ft", "0 ft")]), "2");
        assert_eq!(said(&[("0 ft", "0 ft"), ("0 in", "0 in"), ("6 ft", "0 ft")]), "the same at 1 and 2");
        // A corner in the middle of a straight edge is no fault, nor is a dent.
        let dent = [("0 ft", "0 ft"), ("3 ft", "0 ft"), ("6 ft", "0 ft"), ("6 ft", "4 ft"), ("3 ft", "1 ft"), ("0 ft", "4 ft")];
        holds(&polygon(&outline(&dent)).unwrap(), "ft2", "15");
    }

    #[test]
    fn a_perimeter_stays_exact_where_it_can() {
        let niche = outline(&[("0 ft", "0 ft"), ("0 ft", "2 ft"), ("1 ft 6 in", "2 ft"), ("1 ft 6 in", "0 ft")]);
        let p = polygon_perimeter(&niche, false).unwrap();
        assert!(p.value().si.exact().is_some());
        holds(&p, "ft", "5.5");
        assert_eq!(line(&p).0, "p = e1 + e2 + e3");
        assert!(polygon_perimeter(&outline(&[("0 ft", "0 ft")]), true).is_err());
        assert!(extent(&[]).is_err());
    }
}
