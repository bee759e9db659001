//! F3: mud on a tapered round, the curved face only.

use crate::quantity::expr::{Length, Node, Share, Volume, Worked};

use super::takeoff::slant;
use super::{Answer, above_zero, below_one, mud, rest, zero_or_more};

/// `pi × t × ((r1 + r2) × slant + (2 × t_under + t) × h)`: a coat of `t`, square to a cone's face, over `t_under` of
/// another. It is the annulus of a column when both radii are one.
fn layer(r1: &Worked<Length>, r2: &Worked<Length>, h: &Worked<Length>, under: Option<&Worked<Length>>, t: Node) -> Node {
    let face = (r1.named("r1") + r2.named("r2")) * slant(r1, r2, h).named("slant");
    let out = match under {
        Some(under) => super::like(Node::given(2, 1) * under.named("t_s"), under.node()) + t.clone(),
        None => t.clone(),
    };
    mud(Node::pi() * (t * (face + out * h.named("h"))))
}

/// Mud that stays on a tapered round: `V = pi × t × ((r1 + r2) × slant + (2 × t_s + t) × h)`,
/// `slant = sqrt(h² + (r1 − r2)²)`; `r1` and `r2` radii of the core at foot and head, `h` height, `t` mean thickness
/// square to the face, `t_s` the scratch coat under it, if any: the carve coat starts at its face.
///
/// `r1`, `t`, `h` above 0, `r2` and `t_s` 0 or more. Top and foot are not counted. Waste is added by
/// [`with_waste`](super::relief::with_waste). Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cone::cone_annulus};
/// let read = |t| Worked::read(t).unwrap();
/// let v = cone_annulus(&read("3 ft"), &read("2 ft"), Some(&read("1/2 in")), &read("1 1/4 in"), &read("4 ft")).unwrap();
/// assert_eq!(format!("{:.3}", v.in_unit("ft3")), "6.992");
/// ```
pub fn cone_annulus(
    r1: &Worked<Length>,
    r2: &Worked<Length>,
    t_s: Option<&Worked<Length>>,
    t: &Worked<Length>,
    h: &Worked<Length>,
) -> Answer<Volume> {
    above_zero("F3 cone annulus", "r1", r1)?;
    zero_or_more("F3 cone annulus", "r2", r2)?;
    above_zero("F3 cone annulus", "t", t)?;
    above_zero("F3 cone annulus", "h", h)?;
    if let Some(t_s) = t_s {
        zero_or_more("F3 cone annulus", "t_s", t_s)?;
    }
    Ok(Worked::new(layer(r1, r2, h, t_s, t.named("t")).formula("F3 cone annulus", "V")))
}

/// Scratch for a tapered round: `V = pi × (t_s + key) × ((r1 + r2) × slant + (t_s + key) × h) ÷ (1 − w_drop)`; radii,
/// height and slant as in [`cone_annulus`], the rest as in [`scratch`](super::coats::scratch).
///
/// `r1`, `t_s`, `h` above 0, `r2` and `key` 0 or more, `0 % ≤ w_drop < 100 %`. Source: `scratch-key`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cone::scratch_cone};
/// let read = |t| Worked::read(t).unwrap();
/// let drop = Worked::read("5 %").unwrap();
/// let v = scratch_cone(&read("3 ft"), &read("2 ft"), &read("1/2 in"), &read("1/8 in"), &read("4 ft"), &drop).unwrap();
/// assert_eq!(format!("{:.3}", v.in_unit("ft3")), "3.587");
/// ```
pub fn scratch_cone(
    r1: &Worked<Length>,
    r2: &Worked<Length>,
    t_s: &Worked<Length>,
    key: &Worked<Length>,
    h: &Worked<Length>,
    w_drop: &Worked<Share>,
) -> Answer<Volume> {
    above_zero("F3 scratch cone", "r1", r1)?;
    zero_or_more("F3 scratch cone", "r2", r2)?;
    above_zero("F3 scratch cone", "t_s", t_s)?;
    zero_or_more("F3 scratch cone", "key", key)?;
    above_zero("F3 scratch cone", "h", h)?;
    below_one("F3 scratch cone", "w_drop", w_drop)?;
    let on_wall = layer(r1, r2, h, None, t_s.named("t_s") + key.named("key"));
    Ok(Worked::new(mud(on_wall / rest(&w_drop.named("w_drop"))).formula("F3 scratch cone", "V")))
}

#[cfg(test)]
mod tests {
    use super::super::coats::{annulus, scratch_annulus, scratch_face};
    use super::super::takeoff::Around;
    use super::super::testing::{holds, line, q};
    use super::*;

    #[test]
    fn without_a_taper_it_is_a_column() {
        let face = scratch_face(&q("9 in"), &q("1/2 in")).unwrap();
        let column = annulus(&face, &q("1 1/4 in"), &q("10 ft 6 in"), Around::Whole).unwrap().in_unit("ft3");
        let cone = cone_annulus(&q("9 in"), &q("9 in"), Some(&q("1/2 in")), &q("1 1/4 in"), &q("10 ft 6 in")).unwrap();
        assert!((cone.in_unit("ft3") - column).abs() < 1e-12);
        let column = scratch_annulus(&q("9 in"), &q("1/2 in"), &q("1/8 in"), &q("10 ft 6 in"), &q("6 %"), Around::Whole).unwrap();
        let cone = scratch_cone(&q("9 in"), &q("9 in"), &q("1/2 in"), &q("1/8 in"), &q("10 ft 6 in"), &q("6 %")).unwrap();
        assert!((cone.in_unit("ft3") - column.in_unit("ft3")).abs() < 1e-12);
    }

    // By the path of the centre of the strip: geometry.
    #[test]
    fn a_coat_turned_about_the_axis() {
        // 3, 4, 5: the middle of a coat of 1 ft lies 0.5 ft off the face, and 0.4 ft further out.
        let v = cone_annulus(&q("6 ft"), &q("3 ft"), None, &q("1 ft"), &q("4 ft")).unwrap();
        let turned = 2.0 * std::f64::consts::PI * (4.5 + 0.4) * 5.0 * 1.0;
        assert!((v.in_unit("ft3") - turned).abs() < 1e-9);
        assert_eq!(line(&v).0, "V = pi × t × ((r1 + r2) × slant + t × h)");
        // Over 1 ft of another coat the strip lies 0.8 ft further out.
        let over = cone_annulus(&q("6 ft"), &q("3 ft"), Some(&q("1 ft")), &q("1 ft"), &q("4 ft")).unwrap();
        holds(&over, "ft3", &format!("{:.3}", 2.0 * std::f64::consts::PI * (4.9 + 0.8) * 5.0));
    }

    // The rock base of the design, on the cone: more than its 7.92 ft3 and its 3.55 ft3, which are a flat of the area.
    // Common practice, no source.
    #[test]
    fn a_rock_base() {
        use super::super::relief::{mean_thickness, with_waste};
        let rubble = mean_thickness(&q("3/8 in"), &q("1 3/4 in"), &q("62 %")).unwrap();
        let v = cone_annulus(&q("3 ft"), &q("2 ft"), Some(&q("1/2 in")), &rubble, &q("4 ft")).unwrap();
        holds(&with_waste(&v, &q("12 %"), &q("5 %")).unwrap(), "ft3", "8.21");
        let under = scratch_cone(&q("3 ft"), &q("2 ft"), &q("1/2 in"), &q("1/8 in"), &q("4 ft"), &q("5 %")).unwrap();
        holds(&under, "ft3", "3.59");
    }

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        assert_eq!(cone_annulus(&q("0 ft"), &q("2 ft"), None, &q("1 in"), &q("4 ft")).unwrap_err().symbol, "r1");
        let refused = scratch_cone(&q("3 ft"), &q("2 ft"), &q("1/2 in"), &q("1/8 in"), &q("4 ft"), &q("100 %")).unwrap_err();
        assert_eq!(refused.symbol, "w_drop");
        assert!(refused.wants.contains("such as `5 %`"));
    }
}
