//! F1: areas of walls, round work and returns.

use crate::quantity::expr::{Area, Length, Node, Worked};

use super::{Answer, above_zero, like, zero_or_more};

/// How much of a round a column shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Around {
    /// Free on all sides.
    Whole,
    /// Half engaged in a wall.
    Half,
}

fn area(node: Node, key: &'static str) -> Answer<Area> {
    Ok(Worked::new(node.formula(key, "A")))
}

/// Rectangle: `A = w × h`, `w` width and `h` height, lengths above 0.
///
/// Assumes square corners. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::takeoff::rectangle};
/// let wall = rectangle(&Worked::read("22 ft").unwrap(), &Worked::read("9 ft").unwrap()).unwrap();
/// assert_eq!(wall.in_unit("ft2"), 198.0);
/// ```
pub fn rectangle(w: &Worked<Length>, h: &Worked<Length>) -> Answer<Area> {
    above_zero("F1 rectangle", "w", w)?;
    above_zero("F1 rectangle", "h", h)?;
    area(w.named("w") * h.named("h"), "F1 rectangle")
}

/// Gable triangle above the eaves: `A = 1/2 × w × rise`, lengths above 0.
///
/// The wall below the eaves is a [`rectangle`]. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::takeoff::gable};
/// let top = gable(&Worked::read("22 ft").unwrap(), &Worked::read("5 ft 6 in").unwrap()).unwrap();
/// assert_eq!(top.in_unit("ft2"), 60.5);
/// ```
pub fn gable(w: &Worked<Length>, rise: &Worked<Length>) -> Answer<Area> {
    above_zero("F1 gable", "w", w)?;
    above_zero("F1 gable", "rise", rise)?;
    area(Node::given(1, 2) * w.named("w") * rise.named("rise"), "F1 gable")
}

/// Trapezoid: `A = (a + b) ÷ 2 × h`, `a` and `b` the parallel sides (one may be 0), `h` their distance.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::takeoff::trapezoid};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(trapezoid(&read("8 ft"), &read("12 ft"), &read("10 ft")).unwrap().in_unit("ft2"), 100.0);
/// ```
pub fn trapezoid(a: &Worked<Length>, b: &Worked<Length>, h: &Worked<Length>) -> Answer<Area> {
    zero_or_more("F1 trapezoid", "a", a)?;
    above_zero("F1 trapezoid", "b", b)?;
    above_zero("F1 trapezoid", "h", h)?;
    let sum = a.named("a") + b.named("b");
    let mean = like(sum / Node::given(2, 1), a.node());
    area(mean * h.named("h"), "F1 trapezoid")
}

/// Circle: `A = pi × D × D ÷ 4`, `D` diameter above 0.
///
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::takeoff::circle};
/// assert!((circle(&Worked::read("2 ft").unwrap()).unwrap().in_unit("ft2") - 3.141593).abs() < 1e-6);
/// ```
pub fn circle(d: &Worked<Length>) -> Answer<Area> {
    above_zero("F1 circle", "D", d)?;
    area(Node::pi() * (d.named("D") * d.named("D")) / Node::given(4, 1), "F1 circle")
}

/// Face of a round column: `A = pi × D × h`, half of it when half engaged; `D` core diameter, `h` height, above 0.
///
/// The area is that of the core, not of the finished face: thickness is bought by [`annulus`](super::coats::annulus).
/// Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::takeoff::{Around, column}};
/// let post = column(&Worked::read("14 in").unwrap(), &Worked::read("9 ft").unwrap(), Around::Half).unwrap();
/// assert_eq!(format!("{:.3}", post.in_unit("ft2")), "16.493");
/// ```
pub fn column(d: &Worked<Length>, h: &Worked<Length>, around: Around) -> Answer<Area> {
    above_zero("F1 column", "D", d)?;
    above_zero("F1 column", "h", h)?;
    let whole = Node::pi() * (d.named("D") * h.named("h"));
    match around {
        Around::Whole => area(whole, "F1 column"),
        Around::Half => area(Node::given(1, 2) * whole, "F1 half column"),
    }
}

/// Tapered round: `slant = sqrt(h² + (r1 − r2)²)`, `A = pi × (r1 + r2) × slant`; `r1` and `r2` radii at foot and
/// head (the head's may be 0), `h` height, above 0.
///
/// Assumes a straight taper; top and foot are not counted. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::takeoff::frustum};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(format!("{:.2}", frustum(&read("3 ft"), &read("2 ft"), &read("4 ft")).unwrap().in_unit("ft2")), "64.77");
/// ```
pub fn frustum(r1: &Worked<Length>, r2: &Worked<Length>, h: &Worked<Length>) -> Answer<Area> {
    above_zero("F1 frustum", "r1", r1)?;
    zero_or_more("F1 frustum", "r2", r2)?;
    above_zero("F1 frustum", "h", h)?;
    area(Node::pi() * ((r1.named("r1") + r2.named("r2")) * slant(r1, r2, h)), "F1 frustum")
}

/// Length of a tapered round's face from foot to head, for [`frustum`] and the coats on it. Ranges are the caller's.
pub(super) fn slant(r1: &Worked<Length>, r2: &Worked<Length>, h: &Worked<Length>) -> Node {
    let taper = || r1.named("r1") - r2.named("r2");
    // An upright face is as long as it is high, and stays exact.
    let slant = if taper().value().si.is_zero() { h.named("h") } else { (h.named("h") * h.named("h") + taper() * taper()).sqrt() };
    slant.formula("F1 slant", "slant")
}

/// Return of an opening or edge: `A = p × depth`, `p` the perimeter that is walked with mud, `depth` above 0.
///
/// Sills that are not coated and floor lines are left out of `p` by the caller. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::takeoff::reveal};
/// let window = reveal(&Worked::read("14 ft").unwrap(), &Worked::read("4 in").unwrap()).unwrap();
/// assert_eq!(format!("{:.3}", window.in_unit("ft2")), "4.667");
/// ```
pub fn reveal(p: &Worked<Length>, depth: &Worked<Length>) -> Answer<Area> {
    above_zero("F1 reveal", "p", p)?;
    above_zero("F1 reveal", "depth", depth)?;
    area(p.named("p") * depth.named("depth"), "F1 reveal")
}

#[cfg(test)]
mod tests {
    use super::super::arches::{segmental_opening, segmental_perimeter, semicircular_opening, semicircular_perimeter};
    use super::super::net::{net, times, total};
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn a_gable_wall_with_four_openings() {
        let gross = [rectangle(&q("22 ft"), &q("9 ft")).unwrap(), gable(&q("22 ft"), &q("5 ft 6 in")).unwrap()];
        holds(&total(&gross).unwrap(), "ft2", "258.5");
        let fire = segmental_opening(&q("5 ft"), &q("2 ft 6 in"), &q("1 ft")).unwrap();
        let door = semicircular_opening(&q("3 ft 6 in"), &q("6 ft 3 in")).unwrap();
        let windows = times(&rectangle(&q("3 ft"), &q("4 ft")).unwrap(), &q("2")).unwrap();
        holds(&fire, "ft2", "15.94");
        holds(&door, "ft2", "26.69");
        holds(&windows, "ft2", "24.00");
        let openings = [fire, door, windows];
        holds(&total(&openings).unwrap(), "ft2", "66.62");
        holds(&net(&gross, &openings, &[]).unwrap(), "ft2", "191.88");

        let round_fire = segmental_perimeter(&q("5 ft"), &q("2 ft 6 in"), &q("1 ft")).unwrap();
        let round_door = semicircular_perimeter(&q("3 ft 6 in"), &q("6 ft 3 in")).unwrap();
        holds(&round_fire, "ft", "10.517");
        holds(&round_door, "ft", "17.998");
        let reveals = [
            reveal(&round_fire, &q("8 in")).unwrap(),
            reveal(&round_door, &q("6 in")).unwrap(),
            times(&reveal(&q("14 ft"), &q("4 in")).unwrap(), &q("2")).unwrap(),
        ];
        for (r, printed) in reveals.iter().zip(["7.01", "9.00", "9.33"]) {
            holds(r, "ft2", printed);
        }
        holds(&total(&reveals).unwrap(), "ft2", "25.34");
        let wall = net(&gross, &openings, &reveals).unwrap();
        holds(&wall, "ft2", "217.22");
        holds(&wall, "m2", "20.18");
        assert_eq!(line(&wall).0, "A = G1 + G2 − (O1 + O2 + O3) + R1 + R2 + R3");
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn hearth_posts_and_rock_base() {
        let hearth = total(&[rectangle(&q("12 ft"), &q("1 ft 6 in")).unwrap(), {
            times(&rectangle(&q("1 ft 6 in"), &q("1 ft 3 in")).unwrap(), &q("2")).unwrap()
        }])
        .unwrap();
        holds(&hearth, "ft2", "21.75");
        let posts = times(&column(&q("14 in"), &q("9 ft"), Around::Half).unwrap(), &q("2")).unwrap();
        holds(&posts, "ft2", "32.99");
        holds(&frustum(&q("3 ft"), &q("2 ft"), &q("4 ft")).unwrap(), "ft2", "64.77");
        let (symbols, numbers) = line(&column(&q("14 in"), &q("9 ft"), Around::Whole).unwrap());
        assert_eq!(symbols, "A = pi × D × h");
        assert_eq!(numbers, "pi × 14 × 9 ÷ 12 = 32.98672 ft2");
    }

    // Worked example of the design, common practice, no source; metric.
    #[test]
    fn a_metric_wall_with_an_arch() {
        let wall = rectangle(&q("9.6 m"), &q("3.2 m")).unwrap();
        let arch = semicircular_opening(&q("2.4 m"), &q("1.5 m")).unwrap();
        let returns = reveal(&semicircular_perimeter(&q("2.4 m"), &q("1.5 m")).unwrap(), &q("0.45 m")).unwrap();
        holds(&net(&[wall], &[arch], &[returns]).unwrap(), "m2", "27.905");
        holds(&times(&column(&q("0.6 m"), &q("2.1 m"), Around::Whole).unwrap(), &q("2")).unwrap(), "m2", "7.917");
    }

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        let refused = rectangle(&q("0 ft"), &q("9 ft")).unwrap_err();
        assert_eq!(refused.to_string(), "F1 rectangle: w is 0 ft, wants more than 0, such as `1 ft`");
    }
}
