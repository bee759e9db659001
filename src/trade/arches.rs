//! F1: openings and the perimeters walked around them.

use crate::quantity::expr::{Area, Length, Node, Worked};

use super::{Answer, OutOfRange, above_zero, refuse, shown, zero_or_more};

/// Half of a length, in the length's own unit.
fn half(x: &Node) -> Node {
    super::like(x.clone() / Node::given(2, 1), x)
}

/// Which sides of a rectangular opening are returned with mud.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Sides {
    /// Head and both jambs: a door, or a sill that is not coated.
    Three,
    /// All four.
    Four,
}

/// Perimeter walked around a rectangular opening: `p = w + 2 × h`, or `2 × (w + h)` with the sill.
///
/// `w` width and `h` height above 0. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::arches::{Sides, rectangular_perimeter}};
/// let p = rectangular_perimeter(&Worked::read("3 ft").unwrap(), &Worked::read("4 ft").unwrap(), Sides::Four).unwrap();
/// assert_eq!(p.in_unit("ft"), 14.0);
/// ```
pub fn rectangular_perimeter(w: &Worked<Length>, h: &Worked<Length>, sides: Sides) -> Answer<Length> {
    above_zero("F1 perimeter", "w", w)?;
    above_zero("F1 perimeter", "h", h)?;
    let two = || Node::given(2, 1);
    let p = match sides {
        Sides::Three => w.named("w") + two() * h.named("h"),
        Sides::Four => two() * (w.named("w") + h.named("h")),
    };
    Ok(Worked::new(p.formula("F1 perimeter", "p")))
}

/// Opening with a semicircular head: `A = w × h + pi × w × w ÷ 8`, `w` width above 0, `h` height to the spring
/// (0 or more).
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::arches::semicircular_opening};
/// let door = semicircular_opening(&Worked::read("3 ft 6 in").unwrap(), &Worked::read("6 ft 3 in").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", door.in_unit("ft2")), "26.69");
/// ```
pub fn semicircular_opening(w: &Worked<Length>, h: &Worked<Length>) -> Answer<Area> {
    above_zero("F1 semicircular opening", "w", w)?;
    zero_or_more("F1 semicircular opening", "h", h)?;
    let head = Node::pi() * (w.named("w") * w.named("w")) / Node::given(8, 1);
    Ok(Worked::new((w.named("w") * h.named("h") + head).formula("F1 semicircular opening", "A")))
}

/// Perimeter walked around an opening with a semicircular head, floor or sill left out: `p = 2 × h + pi × w ÷ 2`.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::arches::semicircular_perimeter};
/// let p = semicircular_perimeter(&Worked::read("3 ft 6 in").unwrap(), &Worked::read("6 ft 3 in").unwrap()).unwrap();
/// assert_eq!(format!("{:.3}", p.in_unit("ft")), "17.998");
/// ```
pub fn semicircular_perimeter(w: &Worked<Length>, h: &Worked<Length>) -> Answer<Length> {
    above_zero("F1 perimeter", "w", w)?;
    zero_or_more("F1 perimeter", "h", h)?;
    let head = Node::pi() * w.named("w") / Node::given(2, 1);
    Ok(Worked::new((Node::given(2, 1) * h.named("h") + head).formula("F1 perimeter", "p")))
}

/// Radius and angle of a segmental arch, checked.
///
/// A rise above half the span is no segment of this kind (the angle would be over half a turn), and a rise of
/// 0 is a lintel: both are refused here, so the divisor is above 0 and the arc sine's argument at most 1.
fn radius_and_angle(s: &Worked<Length>, f: &Worked<Length>) -> Result<(Node, Node), OutOfRange> {
    above_zero("F1 radius", "s", s)?;
    above_zero("F1 radius", "f", f)?;
    let most = Worked::<Length>::new(half(s.node()));
    if f.value().si.compare(&most.value().si).is_gt() {
        let wants = format!("at most half the span, {}; a taller arch is pointed or horseshoe: measure it in parts", shown(most.node()));
        return Err(refuse("F1 radius", "f", f, wants));
    }
    let (s, f) = (s.named("s"), f.named("f"));
    let radius = ((s.clone() * s.clone() / Node::given(4, 1) + f.clone() * f.clone()) / (Node::given(2, 1) * f)).formula("F1 radius", "R");
    let sine = s / (Node::given(2, 1) * radius.clone());
    // Only inputs that are not exact can land a hair above 1, at a full half circle.
    let sine = if sine.value().si.to_f64() > 1.0 { sine.min(Node::given(1, 1)) } else { sine };
    let angle = (Node::given(2, 1) * sine.asin()).formula("F1 angle", "theta");
    Ok((radius, angle))
}

/// Area under a segmental arch above its spring: `R = (s² ÷ 4 + f²) ÷ (2 × f)`, `theta = 2 × asin(s ÷ (2 × R))`,
/// `A = R² ÷ 2 × (theta − sin(theta))`; `s` span, `f` rise, `0 < f ≤ s ÷ 2`.
///
/// Assumes one circular arc. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::arches::segment};
/// let head = segment(&Worked::read("5 ft").unwrap(), &Worked::read("1 ft").unwrap()).unwrap();
/// assert_eq!(format!("{:.3}", head.in_unit("ft2")), "3.438");
/// ```
pub fn segment(s: &Worked<Length>, f: &Worked<Length>) -> Answer<Area> {
    let (radius, theta) = radius_and_angle(s, f)?;
    let a = radius.clone() * radius / Node::given(2, 1) * (theta.clone() - theta.sin());
    Ok(Worked::new(a.formula("F1 segment", "A")))
}

/// Length of a segmental arch: `arc = R × theta`; symbols and range as in [`segment`].
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::arches::arc};
/// let length = arc(&Worked::read("5 ft").unwrap(), &Worked::read("1 ft").unwrap()).unwrap();
/// assert_eq!(format!("{:.3}", length.in_unit("ft")), "5.517");
/// ```
pub fn arc(s: &Worked<Length>, f: &Worked<Length>) -> Answer<Length> {
    let (radius, theta) = radius_and_angle(s, f)?;
    Ok(Worked::new((radius * theta).formula("F1 arc", "arc")))
}

/// Opening with a segmental head: `A = w × h + segment`, `w` width (the arch's span), `h` height to the spring
/// (0 or more), `f` rise, `0 < f ≤ w ÷ 2`.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::arches::segmental_opening};
/// let read = |t| Worked::read(t).unwrap();
/// let fire = segmental_opening(&read("5 ft"), &read("2 ft 6 in"), &read("1 ft")).unwrap();
/// assert_eq!(format!("{:.2}", fire.in_unit("ft2")), "15.94");
/// ```
pub fn segmental_opening(w: &Worked<Length>, h: &Worked<Length>, f: &Worked<Length>) -> Answer<Area> {
    above_zero("F1 segmental opening", "w", w)?;
    zero_or_more("F1 segmental opening", "h", h)?;
    let head = segment(w, f)?;
    Ok(Worked::new((w.named("w") * h.named("h") + head.named("segment")).formula("F1 segmental opening", "A")))
}

/// Perimeter walked around an opening with a segmental head, floor or sill left out: `p = 2 × h + arc`.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::arches::segmental_perimeter};
/// let read = |t| Worked::read(t).unwrap();
/// let p = segmental_perimeter(&read("5 ft"), &read("2 ft 6 in"), &read("1 ft")).unwrap();
/// assert_eq!(format!("{:.3}", p.in_unit("ft")), "10.517");
/// ```
pub fn segmental_perimeter(w: &Worked<Length>, h: &Worked<Length>, f: &Worked<Length>) -> Answer<Length> {
    zero_or_more("F1 perimeter", "h", h)?;
    let head = arc(w, f)?;
    Ok(Worked::new((Node::given(2, 1) * h.named("h") + head.named("arc")).formula("F1 perimeter", "p")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, q};
    use super::*;
    use crate::quantity::print::derivation;

    // Worked example of the design, common practice, no source.
    #[test]
    fn a_segmental_head() {
        let head = segment(&q("5 ft"), &q("1 ft")).unwrap();
        holds(&head, "ft2", "3.438");
        holds(&arc(&q("5 ft"), &q("1 ft")).unwrap(), "ft", "5.517");
        let lines = derivation("", head.node());
        let said: Vec<String> =
            lines.iter().map(|l| format!("{} = {} = {} = {} {}", l.symbol, l.symbols, l.numbers, l.result, l.unit)).collect();
        assert_eq!(said[0], "A = R × R ÷ 2 × (theta − sin(theta)) = 3.625 × 3.625 ÷ 2 × (1.5220255 − sin(1.5220255)) = 3.437683 ft2");
        assert_eq!(said[1], "R = (s × s ÷ 4 + f × f) ÷ (2 × f) = (5 × 5 ÷ 4 + 1 × 1) ÷ (2 × 1) = 3.625 ft");
        assert!(said.iter().any(|s| s.starts_with("theta = 2 × asin(s ÷ (2 × R)) = 2 × asin(5 ÷ (2 × 3.625)) = 1.52202")), "{said:#?}");
    }

    #[test]
    fn a_half_circle_is_the_last_segment() {
        let whole = segment(&q("6 ft"), &q("3 ft")).unwrap();
        holds(&whole, "ft2", "14.1372"); // pi × 9 ÷ 2
        let refused = segment(&q("6 ft"), &q("3.2 ft")).unwrap_err();
        assert_eq!((refused.symbol, refused.value.as_str()), ("f", "3.2 ft"));
        assert!(refused.wants.starts_with("at most half the span, 3 ft"));
        assert!(arc(&q("6 ft"), &q("0 ft")).is_err());
    }

    #[test]
    fn perimeters() {
        holds(&rectangular_perimeter(&q("3 ft"), &q("4 ft"), Sides::Four).unwrap(), "ft", "14");
        holds(&rectangular_perimeter(&q("3 ft"), &q("4 ft"), Sides::Three).unwrap(), "ft", "11");
    }
}
