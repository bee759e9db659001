//! F1: what is walked around further openings, and undersides.

use crate::quantity::expr::{Area, Length, Node, Worked};

use super::{Answer, above_zero, like, zero_or_more};

/// Walked around a round opening, all of it: `p = pi × D`, `D` diameter above 0.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::edges::circumference};
/// assert_eq!(format!("{:.3}", circumference(&Worked::read("2 ft").unwrap()).unwrap().in_unit("ft")), "6.283");
/// ```
pub fn circumference(d: &Worked<Length>) -> Answer<Length> {
    above_zero("F1 circumference", "D", d)?;
    Ok(Worked::new(like(Node::pi() * d.named("D"), d.node()).formula("F1 circumference", "p")))
}

/// A leg: `sqrt(h × h + d × d)`; an upright one is `h` itself, and stays exact.
fn leg(h: &Worked<Length>, aside: Node) -> Node {
    let d = || aside.named("d");
    let leg = if aside.value().si.is_zero() { h.named("h") } else { like((h.named("h") * h.named("h") + d() * d()).sqrt(), h.node()) };
    leg.formula("F1 leg", "leg")
}

/// Walked around a trapezoid without its foot: `p = a + leg1 + leg2`, `leg = sqrt(h × h + d × d)`; `a` the side at the
/// head (0 or more), `b` the foot, `h` their distance; `d1` from the foot's left end to under the head's left end,
/// half of `b − a` if none is given, `d2 = b − a − d1`.
///
/// `b` and `h` above 0. A `d1` below 0 leans outwards. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::edges::trapezoid_perimeter};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(trapezoid_perimeter(&read("2 ft"), &read("8 ft"), &read("4 ft"), None).unwrap().in_unit("ft"), 12.0);
/// ```
pub fn trapezoid_perimeter(a: &Worked<Length>, b: &Worked<Length>, h: &Worked<Length>, d1: Option<&Worked<Length>>) -> Answer<Length> {
    zero_or_more("F1 trapezoid perimeter", "a", a)?;
    above_zero("F1 trapezoid perimeter", "b", b)?;
    above_zero("F1 trapezoid perimeter", "h", h)?;
    let over = || b.named("b") - a.named("a");
    let half = || like(over() / Node::given(2, 1), b.node());
    let (left, right) = match d1 {
        Some(d1) => (d1.named("d1"), over() - d1.named("d1")),
        None => (half(), half()),
    };
    let p = a.named("a") + leg(h, left).named("leg1") + leg(h, right).named("leg2");
    Ok(Worked::new(p.formula("F1 trapezoid perimeter", "p")))
}

/// Jambs and head with a sill that is coated too: `p = p0 + w`, `p0` jambs and head, `w` the sill; both above 0.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::edges::with_sill};
/// assert_eq!(with_sill(&Worked::read("11 ft").unwrap(), &Worked::read("3 ft").unwrap()).unwrap().in_unit("ft"), 14.0);
/// ```
pub fn with_sill(p0: &Worked<Length>, w: &Worked<Length>) -> Answer<Length> {
    above_zero("F1 perimeter with sill", "p0", p0)?;
    above_zero("F1 perimeter with sill", "w", w)?;
    Ok(Worked::new((p0.named("p0") + w.named("w")).formula("F1 perimeter with sill", "p")))
}

/// Underside that is coated: `A = w × depth`, `w` its width along the wall, `depth` out from it; both above 0.
///
/// It is worked overhead; the area is that of any other face. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::edges::soffit};
/// assert_eq!(soffit(&Worked::read("6 ft").unwrap(), &Worked::read("16 in").unwrap()).unwrap().in_unit("ft2"), 8.0);
/// ```
pub fn soffit(w: &Worked<Length>, depth: &Worked<Length>) -> Answer<Area> {
    above_zero("F1 soffit", "w", w)?;
    above_zero("F1 soffit", "depth", depth)?;
    Ok(Worked::new((w.named("w") * depth.named("depth")).formula("F1 soffit", "A")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    #[test]
    fn legs_lean_or_stand() {
        let p = trapezoid_perimeter(&q("2 ft"), &q("5 ft"), &q("4 ft"), Some(&q("0 ft"))).unwrap();
        holds(&p, "ft", "11");
        assert_eq!(line(&p).0, "p = a + leg1 + leg2");
        let upright = trapezoid_perimeter(&q("3 ft"), &q("3 ft"), &q("4 ft"), None).unwrap();
        assert!(upright.value().si.exact().is_some());
        holds(&upright, "ft", "11");
        holds(&trapezoid_perimeter(&q("6 ft"), &q("0.5 ft"), &q("4 ft"), Some(&q("-3 ft"))).unwrap(), "ft", "15.72");
    }

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        let refused = soffit(&q("6 ft"), &q("0 in")).unwrap_err();
        assert_eq!(refused.to_string(), "F1 soffit: depth is 0 in, wants more than 0, such as `1 in`");
        assert_eq!(circumference(&q("0 ft")).unwrap_err().symbol, "D");
        assert_eq!(with_sill(&q("11 ft"), &q("0 ft")).unwrap_err().symbol, "w");
        assert_eq!(trapezoid_perimeter(&q("2 ft"), &q("0 ft"), &q("4 ft"), None).unwrap_err().symbol, "b");
    }
}
