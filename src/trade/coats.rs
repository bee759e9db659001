//! F3: scratch, lifts, and the extra mud of round work.

use crate::quantity::expr::{Area, Length, Node, Plain, Share, Volume, Worked};
use crate::quantity::num::Direction;

use super::takeoff::Around;
use super::{Answer, above_zero, at_most, below_one, like, mud, rest, zero_or_more};

/// Scratch for a flat face: `V = A × (t_s + key) ÷ (1 − w_drop)`; `A` area, `t_s` scratch thickness, `key` the
/// mud pressed through expanded lath as a thickness (0 on a solid base), `w_drop` the share lost.
///
/// `A` and `t_s` above 0, `key ≥ 0`, `0 % ≤ w_drop < 100 %`. Nothing is carved off a scratch. Source: `scratch-key`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::coats::scratch};
/// let v = scratch(
///     &Worked::read("272 ft2").unwrap(),
///     &Worked::read("1/2 in").unwrap(),
///     &Worked::read("1/8 in").unwrap(),
///     &Worked::read("5 %").unwrap(),
/// );
/// assert_eq!(format!("{:.2}", v.unwrap().in_unit("ft3")), "14.91");
/// ```
pub fn scratch(a: &Worked<Area>, t_s: &Worked<Length>, key: &Worked<Length>, w_drop: &Worked<Share>) -> Answer<Volume> {
    above_zero("F3 scratch", "A", a)?;
    above_zero("F3 scratch", "t_s", t_s)?;
    zero_or_more("F3 scratch", "key", key)?;
    below_one("F3 scratch", "w_drop", w_drop)?;
    let on_wall = mud(a.named("A") * (t_s.named("t_s") + key.named("key")));
    Ok(Worked::new(mud(on_wall / rest(&w_drop.named("w_drop"))).formula("F3 scratch", "V")))
}

/// Lifts of the carve coat: `n = up((t_total − t_scratch) ÷ lift, 1)`; `t_total` the thickest place of the whole
/// work, `t_scratch` the scratch under it, `lift` the mix sheet's greatest lift.
///
/// `0 ≤ t_scratch < t_total`, `lift > 0`. Takes the greatest thickness, never the mean: it is the thick place
/// that falls off. Source: `lift-limit`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::coats::lifts};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(lifts(&read("2 3/4 in"), &read("1/2 in"), &read("1 1/2 in")).unwrap().node().number().plain(), "2");
/// ```
pub fn lifts(t_total: &Worked<Length>, t_scratch: &Worked<Length>, lift: &Worked<Length>) -> Answer<Plain> {
    above_zero("F3 lifts", "t_total", t_total)?;
    zero_or_more("F3 lifts", "t_scratch", t_scratch)?;
    at_most("F3 lifts", "t_scratch", t_scratch, t_total, "the whole thickness")?;
    above_zero("F3 lifts", "lift", lift)?;
    let n = (t_total.named("t_total") - t_scratch.named("t_scratch")) / lift.named("lift");
    Ok(Worked::new(n.rounded(Direction::Up, 1, 1).formula("F3 lifts", "n")))
}

/// Radius of the face that the carve coat starts from: `r = r_core + t_s`.
///
/// `r_core > 0`, `t_s ≥ 0`. The key lies inside the lath and adds nothing to it. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::coats::scratch_face};
/// assert_eq!(scratch_face(&Worked::read("7 in").unwrap(), &Worked::read("1/2 in").unwrap()).unwrap().in_unit("in"), 7.5);
/// ```
pub fn scratch_face(r_core: &Worked<Length>, t_s: &Worked<Length>) -> Answer<Length> {
    above_zero("F3 face radius", "r_core", r_core)?;
    zero_or_more("F3 face radius", "t_s", t_s)?;
    Ok(Worked::new((r_core.named("r_core") + t_s.named("t_s")).formula("F3 face radius", "r")))
}

/// `pi × t × (2 × r + t) × h`, which is `pi × ((r + t)² − r²) × h` without the squares that nearly cancel.
fn ring(r: &Worked<Length>, t: Node, h: &Worked<Length>, around: Around) -> Node {
    let width = like(Node::given(2, 1) * r.named("r"), r.node()) + t.clone();
    let ring = Node::pi() * (t * width) * h.named("h");
    mud(match around {
        Around::Whole => ring,
        Around::Half => Node::given(1, 2) * ring,
    })
}

/// Mud that stays on a round: `V = pi × t × (2 × r + t) × h`, half of it when half engaged; `r` radius of the face
/// it starts from, `t` mean thickness, `h` height.
///
/// All above 0. For a carve coat `r` is the scratch face ([`scratch_face`]), not the bare core. Waste is added by
/// [`with_waste`](super::relief::with_waste). Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{coats::annulus, takeoff::Around}};
/// let read = |t| Worked::read(t).unwrap();
/// let v = annulus(&read("9 in"), &read("1 1/4 in"), &read("10 ft 6 in"), Around::Whole).unwrap();
/// assert_eq!(format!("{:.3}", v.in_unit("ft3")), "5.512");
/// ```
pub fn annulus(r: &Worked<Length>, t: &Worked<Length>, h: &Worked<Length>, around: Around) -> Answer<Volume> {
    above_zero("F3 annulus", "r", r)?;
    above_zero("F3 annulus", "t", t)?;
    above_zero("F3 annulus", "h", h)?;
    let key = if around == Around::Whole { "F3 annulus" } else { "F3 half annulus" };
    Ok(Worked::new(ring(r, t.named("t"), h, around).formula(key, "V")))
}

/// Scratch for a round: `V = pi × (t_s + key) × (2 × r + t_s + key) × h ÷ (1 − w_drop)`, half of the ring when half
/// engaged; `r` core radius, the rest as in [`scratch`].
///
/// `r`, `t_s`, `h` above 0, `key ≥ 0`, `0 % ≤ w_drop < 100 %`. Source: `scratch-key`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{coats::scratch_annulus, takeoff::Around}};
/// let read = |t| Worked::read(t).unwrap();
/// let v = scratch_annulus(&read("9 in"), &read("1/2 in"), &read("1/8 in"), &read("10 ft 6 in"), &Worked::read("6 %").unwrap(), Around::Whole);
/// assert_eq!(format!("{:.3}", v.unwrap().in_unit("ft3")), "2.837");
/// ```
pub fn scratch_annulus(
    r: &Worked<Length>,
    t_s: &Worked<Length>,
    key: &Worked<Length>,
    h: &Worked<Length>,
    w_drop: &Worked<Share>,
    around: Around,
) -> Answer<Volume> {
    above_zero("F3 scratch annulus", "r", r)?;
    above_zero("F3 scratch annulus", "t_s", t_s)?;
    zero_or_more("F3 scratch annulus", "key", key)?;
    above_zero("F3 scratch annulus", "h", h)?;
    below_one("F3 scratch annulus", "w_drop", w_drop)?;
    let on_wall = ring(r, t_s.named("t_s") + key.named("key"), h, around);
    let name = if around == Around::Whole { "F3 scratch annulus" } else { "F3 half scratch annulus" };
    Ok(Worked::new(mud(on_wall / rest(&w_drop.named("w_drop"))).formula(name, "V")))
}

/// What a round needs against a flat face of the core's area: `ratio = 1 + t ÷ (2 × r)`.
///
/// `r > 0`, `t ≥ 0`. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::coats::ratio_to_flat};
/// let ratio = ratio_to_flat(&Worked::read("9 in").unwrap(), &Worked::read("1 1/4 in").unwrap()).unwrap();
/// assert_eq!(format!("{:.4}", ratio.value().si.to_f64()), "1.0694");
/// ```
pub fn ratio_to_flat(r: &Worked<Length>, t: &Worked<Length>) -> Answer<Plain> {
    above_zero("F3 ratio to flat", "r", r)?;
    zero_or_more("F3 ratio to flat", "t", t)?;
    let twice = like(Node::given(2, 1) * r.named("r"), r.node());
    Ok(Worked::new((Node::given(1, 1) + t.named("t") / twice).formula("F3 ratio to flat", "ratio")))
}

#[cfg(test)]
mod tests {
    use super::super::net::{times, total};
    use super::super::relief::{mean_thickness, mixed_volume, with_waste};
    use super::super::takeoff::{column, frustum};
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source. A flat formula vector: the posts are round.
    #[test]
    fn scratch_on_the_flat_and_lifts() {
        let v = scratch(&q("271.96 ft2"), &q("1/2 in"), &q("1/8 in"), &q("5 %")).unwrap();
        holds(&v, "ft3", "14.910");
        assert_eq!(line(&v).1, "271.96 × (0.5 + 0.125) ÷ 12 ÷ (1 − 5 ÷ 100) = 6799/456 ft3");
        holds(&lifts(&q("2 3/4 in"), &q("1/2 in"), &q("1 1/2 in")).unwrap(), "", "2");
        holds(&lifts(&q("65 mm"), &q("0 mm"), &q("38 mm")).unwrap(), "", "2");
        assert!(lifts(&q("2 in"), &q("3 in"), &q("1 1/2 in")).is_err());
        assert!(lifts(&q("2 in"), &q("1/2 in"), &q("0 in")).is_err());
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn a_trunk_needs_more_than_its_flat() {
        let face = column(&q("18 in"), &q("10 ft 6 in"), Around::Whole).unwrap();
        let flat = mixed_volume(&face, &q("1 1/4 in"), &q("0 %"), &q("0 %")).unwrap();
        holds(&flat, "ft3", "5.154");
        let v = annulus(&q("9 in"), &q("1 1/4 in"), &q("10 ft 6 in"), Around::Whole).unwrap();
        holds(&v, "ft3", "5.512");
        holds(&ratio_to_flat(&q("9 in"), &q("1 1/4 in")).unwrap(), "", "1.0694");
        let (symbols, numbers) = line(&v);
        assert_eq!(symbols, "V = pi × t × (2 × r + t) × h");
        assert_eq!(numbers, "pi × 1.25 × (2 × 9 + 1.25) ÷ 144 × 10.5 = 5.512104 ft3");
    }

    // Worked example of the design with the carve annulus from the scratch face; common practice, no source.
    #[test]
    fn interior_wall_hearth_and_half_posts() {
        let (carve, drop) = (q("12 %"), q("5 %"));
        let rubble = mean_thickness(&q("3/8 in"), &q("1 3/4 in"), &q("62 %")).unwrap();
        holds(&mixed_volume(&q("217.2205 ft2"), &rubble, &carve, &drop).unwrap(), "ft3", "26.579");
        holds(&mixed_volume(&q("21.75 ft2"), &rubble, &carve, &drop).unwrap(), "ft3", "2.661");
        let log = mean_thickness(&q("3/8 in"), &q("1 in"), &q("60 %")).unwrap();
        let face = scratch_face(&q("7 in"), &q("1/2 in")).unwrap();
        let post = annulus(&face, &log, &q("9 ft"), Around::Half).unwrap();
        let posts = with_waste(&post, &carve, &drop).unwrap();
        assert_eq!(format!("{:.3}", 2.0 * posts.in_unit("ft3")), "2.774");

        // Scratch with the annulus on the posts too.
        let flat = scratch(&q("238.97 ft2"), &q("1/2 in"), &q("1/8 in"), &drop).unwrap();
        let round = scratch_annulus(&q("7 in"), &q("1/2 in"), &q("1/8 in"), &q("9 ft"), &drop, Around::Half).unwrap();
        assert_eq!(format!("{:.3}", flat.in_unit("ft3") + 2.0 * round.in_unit("ft3")), "14.991");
    }

    // Worked example of the design under its correction of round work; common practice, no source.
    #[test]
    fn exterior_planks_trunks_and_rock() {
        let plank = mean_thickness(&q("1/4 in"), &q("3/4 in"), &q("82 %")).unwrap();
        let bark = mean_thickness(&q("1/2 in"), &q("2 in"), &q("50 %")).unwrap();
        let rubble = mean_thickness(&q("3/8 in"), &q("1 3/4 in"), &q("62 %")).unwrap();
        let rock = frustum(&q("3 ft"), &q("2 ft"), &q("4 ft")).unwrap();
        let wall: Worked<Area> = q("415.79 ft2");
        let face = scratch_face(&q("9 in"), &q("1/2 in")).unwrap();
        let trunk = annulus(&face, &bark, &q("10 ft 6 in"), Around::Whole).unwrap();
        let carve = [
            mixed_volume(&wall, &plank, &q("10 %"), &q("5 %")).unwrap(),
            with_waste(&trunk, &q("18 %"), &q("6 %")).unwrap(),
            mixed_volume(&rock, &rubble, &q("12 %"), &q("5 %")).unwrap(),
        ];
        holds(&carve[0], "ft3", "26.75");
        holds(&carve[2], "ft3", "7.92");
        let sum = carve[0].in_unit("ft3") + 6.0 * carve[1].in_unit("ft3") + carve[2].in_unit("ft3");
        assert_eq!(format!("{sum:.2}"), "79.81");

        let scratched = [
            scratch(&wall, &q("3/8 in"), &q("1/8 in"), &q("5 %")).unwrap(),
            scratch_annulus(&q("9 in"), &q("1/2 in"), &q("1/8 in"), &q("10 ft 6 in"), &q("6 %"), Around::Whole).unwrap(),
            scratch(&rock, &q("1/2 in"), &q("1/8 in"), &q("5 %")).unwrap(),
        ];
        let sum = scratched[0].in_unit("ft3") + 6.0 * scratched[1].in_unit("ft3") + scratched[2].in_unit("ft3");
        assert_eq!(format!("{sum:.2}"), "38.81");
        holds(&times(&column(&q("18 in"), &q("10 ft 6 in"), Around::Whole).unwrap(), &q("6")).unwrap(), "ft2", "296.88");
        holds(&total(&[wall]).unwrap(), "ft2", "415.79");
    }

    // Worked example of the design, common practice, no source; metric, carved straight on block.
    #[test]
    fn metric_rock_basin_and_piers() {
        let (carve, drop) = (q("15 %"), q("6 %"));
        let rock = mean_thickness(&q("12 mm"), &q("65 mm"), &q("48 %")).unwrap();
        let wall: Worked<Area> = q("27.9045 m2");
        let pier = annulus(&q("0.3 m"), &q("18 mm"), &q("2.1 m"), Around::Whole).unwrap();
        let none: Worked<Share> = q("0 %");
        let bare = |a: &Worked<Area>, t: &Worked<Length>| mixed_volume(a, t, &none, &none).unwrap().in_unit("L");
        let finished = bare(&wall, &rock) + bare(&q("5.6 m2"), &q("22 mm")) + 2.0 * pier.in_unit("L");
        assert_eq!(format!("{finished:.1}"), "1314.7");
        let mixed = mixed_volume(&wall, &rock, &carve, &drop).unwrap().in_unit("L")
            + mixed_volume(&q("5.6 m2"), &q("22 mm"), &carve, &drop).unwrap().in_unit("L")
            + 2.0 * with_waste(&pier, &carve, &drop).unwrap().in_unit("L");
        assert_eq!(format!("{mixed:.1}"), "1645.5");
    }
}
