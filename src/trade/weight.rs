//! F18: what the coats weigh on the wall.

use crate::quantity::expr::{Area, Areal, Density, Length, Node, Plain, Pressure, Worked};
use crate::quantity::num::Num;
use crate::quantity::value::Quantity;

use super::{Answer, OutOfRange, above_zero, like, zero_or_more};

/// Weight of one layer: `q = t × d`; `t` thickness (0 or more), `d` density above 0.
///
/// Source: `dead-load`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::weight::coat_weight};
/// let q = coat_weight(&Worked::read("1 1/2 in").unwrap(), &Worked::read("120 lb/ft3").unwrap()).unwrap();
/// assert_eq!(q.in_unit("lb/ft2"), 15.0);
/// ```
pub fn coat_weight(t: &Worked<Length>, d: &Worked<Density>) -> Answer<Areal> {
    zero_or_more("F18 coat weight", "t", t)?;
    above_zero("F18 coat weight", "d", d)?;
    Ok(Worked::new((t.named("t") * d.named("d")).formula("F18 coat weight", "q")))
}

/// The scratch under a carve coat.
#[derive(Clone, Debug)]
pub struct Scratch {
    /// Thickness.
    pub thickness: Worked<Length>,
    /// Mud pressed through the lath, as a thickness: it hangs on the wall too.
    pub key: Worked<Length>,
    /// Wet density of the scratch mix.
    pub density: Worked<Density>,
}

/// Dead load: `q = t × d + (t_s + key) × d_s + q_base`; `t` carve thickness (mean, or the greatest for the faces), `d` its
/// wet density, the scratch with its key mud at its own density, `q_base` lath and paper.
///
/// Thicknesses and `q_base` 0 or more, densities above 0. Wet densities stand for dry, on the safe side. A planning
/// figure: an engineer's letter, or the heaviest 4 × 8 ft, is compared by the caller, who also rounds up.
/// Source: `dead-load`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::weight::{Scratch, dead_load}};
/// let scratch = Scratch {
///     thickness: Worked::read("1/2 in").unwrap(),
///     key: Worked::read("1/8 in").unwrap(),
///     density: Worked::read("128 lb/ft3").unwrap(),
/// };
/// let base = Worked::read("0.9 lb/ft2").unwrap();
/// let q = dead_load(&Worked::read("1.2275 in").unwrap(), &Worked::read("124.8 lb/ft3").unwrap(), Some(&scratch), &base).unwrap();
/// assert_eq!(format!("{:.1}", q.in_unit("lb/ft2")), "20.3");
/// ```
pub fn dead_load(t: &Worked<Length>, d: &Worked<Density>, scratch: Option<&Scratch>, base: &Worked<Areal>) -> Answer<Areal> {
    zero_or_more("F18 dead load", "t", t)?;
    above_zero("F18 dead load", "d", d)?;
    zero_or_more("F18 dead load", "q_base", base)?;
    let mut sum: Node = t.named("t") * d.named("d");
    if let Some(Scratch { thickness, key, density }) = scratch {
        zero_or_more("F18 dead load", "t_s", thickness)?;
        zero_or_more("F18 dead load", "key", key)?;
        above_zero("F18 dead load", "d_s", density)?;
        sum = sum + (thickness.named("t_s") + key.named("key")) * density.named("d_s");
    }
    Ok(Worked::new((sum + base.named("q_base")).formula("F18 dead load", "q")))
}

/// A part of a wall and what it weighs.
#[derive(Clone, Debug)]
pub struct Part {
    /// Its area, flat, openings out.
    pub area: Worked<Area>,
    /// Its weight: at faces, for the heaviest patch.
    pub weight: Worked<Areal>,
}

/// Weight of the heaviest patch: `q = (A1 × q1 + A2 × q2 + …) ÷ A_patch`, the heaviest part first, each as far as it goes;
/// `A_patch` the patch that is looked at, 4 × 8 ft by custom.
///
/// At least one part, areas and `A_patch` above 0, weights 0 or more. Takes the most unfavourable place: the parts touch, and
/// the patch may lie all on faces, so weights at faces belong here. A wall smaller than the patch is the patch. Openings and
/// the curve of round work are not looked at. Source: `heaviest-patch`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::weight::{Part, heaviest_patch}};
/// let part = |a, q| Part { area: Worked::read(a).unwrap(), weight: Worked::read(q).unwrap() };
/// let parts = [part("100 ft2", "12 lb/ft2"), part("8 ft2", "20 lb/ft2")];
/// assert_eq!(heaviest_patch(&parts, &Worked::read("32 ft2").unwrap()).unwrap().in_unit("lb/ft2"), 14.0);
/// ```
pub fn heaviest_patch(parts: &[Part], size: &Worked<Area>) -> Answer<Areal> {
    const KEY: &str = "F18 heaviest patch";
    above_zero(KEY, "A_patch", size)?;
    for part in parts {
        above_zero(KEY, "A", &part.area)?;
        zero_or_more(KEY, "q", &part.weight)?;
    }
    let mut order: Vec<&Part> = parts.iter().collect();
    order.sort_by(|a, b| b.weight.value().si.compare(&a.weight.value().si));
    let (mut weight, mut covered): (Option<Node>, Option<Node>) = (None, None);
    let mut left = size.named("A_patch");
    for (i, part) in order.iter().enumerate() {
        let (a, q) = (part.area.named(format!("A{}", i + 1)), part.weight.named(format!("q{}", i + 1)));
        if part.area.value().si.compare(&left.value().si).is_ge() {
            let Some(before) = weight else { return Ok(Worked::new(q.formula(KEY, "q"))) };
            return Ok(Worked::new(((before + left * q) / size.named("A_patch")).formula(KEY, "q")));
        }
        left = left - a.clone();
        weight = Some(weight.map_or_else(|| a.clone() * q.clone(), |w| w + a.clone() * q.clone()));
        covered = Some(covered.map_or_else(|| a.clone(), |c| c + a.clone()));
    }
    match (weight, covered) {
        (Some(weight), Some(covered)) => Ok(Worked::new((weight / covered).formula(KEY, "q"))),
        _ => Err(OutOfRange { formula: KEY, symbol: "parts", value: "0".to_owned(), wants: "1 part or more".to_owned() }),
    }
}

/// Weight of lath and paper: `q = q_lath + layers × q_paper`, each 0 or more.
///
/// Laps are not added: they are a tenth or so of little. Source: `dead-load`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::weight::base_weight};
/// let read = |t| Worked::read(t).unwrap();
/// let q = base_weight(&read("3.6 lb/yd2"), &read("0.25 lb/ft2"), &Worked::read("2").unwrap()).unwrap();
/// assert_eq!(q.in_unit("lb/ft2"), 0.9);
/// ```
pub fn base_weight(lath: &Worked<Areal>, paper: &Worked<Areal>, layers: &Worked<Plain>) -> Answer<Areal> {
    zero_or_more("F18 base", "q_lath", lath)?;
    zero_or_more("F18 base", "q_paper", paper)?;
    zero_or_more("F18 base", "layers", layers)?;
    let papers = like(layers.named("layers") * paper.named("q_paper"), paper.node());
    Ok(Worked::new((lath.named("q_lath") + papers).formula("F18 base", "q")))
}

/// What is left to a stated weight: `left = q_allowed − q`; below 0 the wall is over it by that much.
///
/// Both 0 or more. `q_allowed` is an engineer's figure for this wall; a published limit is compared by
/// [`margin`](super::limits::margin). Source: `weight-compared`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::weight::left_to};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(left_to(&read("25.8 lb/ft2"), &read("28 lb/ft2")).unwrap().node().number().plain(), "2.2");
/// ```
pub fn left_to(q: &Worked<Areal>, allowed: &Worked<Areal>) -> Answer<Areal> {
    zero_or_more("F18 left", "q", q)?;
    zero_or_more("F18 left", "q_allowed", allowed)?;
    Ok(Worked::new((allowed.named("q_allowed") - q.named("q")).formula("F18 left", "left")))
}

/// A weight as a pressure, for engineers who write kN/m2: `p = q × g`, `q` in kg/m2 and `p` in kPa, which is the same as kN/m2.
///
/// `q ≥ 0`; `g` standard gravity. Source: `weight-compared`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::weight::as_pressure};
/// assert_eq!(format!("{:.2}", as_pressure(&Worked::read("15 lb/ft2").unwrap()).unwrap().in_unit("kPa")), "0.72");
/// ```
pub fn as_pressure(q: &Worked<Areal>) -> Answer<Pressure> {
    zero_or_more("F18 pressure", "q", q)?;
    let g = Node::constant(Quantity::plain(Num::frac(980_665, 100_000)), None, "g", "standard gravity, 9.80665 m/s2");
    let p = (q.named("q").bare("kg/m2") * g).dressed("Pa").written_in("kPa");
    Ok(Worked::new(p.formula("F18 pressure", "p")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::super::yields::tests::load;
    use super::super::yields::wet_density;
    use super::*;

    fn densities() -> (Worked<Density>, Worked<Density>) {
        let (y, wet, _) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", true, "9 %");
        let (ys, wets, _) = load(("15 lb", "2.30"), ("70 lb", "2.66"), "1.25 gal", true, "7 %");
        (wet_density(&wet, &y).unwrap(), wet_density(&wets, &ys).unwrap())
    }

    // Worked example of the design with key mud and the scratch at its own density; common practice, no source.
    #[test]
    fn rubble_mean_and_at_faces() {
        let (d, ds) = densities();
        let scratch = Scratch { thickness: q("1/2 in"), key: q("1/8 in"), density: ds };
        let mean = dead_load(&q("1.2275 in"), &d, Some(&scratch), &q("0.9 lb/ft2")).unwrap();
        holds(&mean, "lb/ft2", "20.3");
        let faces = dead_load(&q("1 3/4 in"), &d, Some(&scratch), &q("0.9 lb/ft2")).unwrap();
        holds(&faces, "lb/ft2", "25.8");
        assert_eq!(line(&mean).0, "q = t × d + (t_s + key) × d_s + q_base");
        assert_eq!(line(&mean).1, "1.2275 × 124.7717 ÷ 12 + (0.5 + 0.125) × 127.9922 ÷ 12 + 0.9 = 20.32937 lb/ft2");
        // Formula vector without the key, all at the carve mix's density, superseded by the lines above.
        let old = dead_load(&q("1.7275 in"), &d, None, &q("0.9 lb/ft2")).unwrap();
        holds(&old, "lb/ft2", "18.9");
        holds(&dead_load(&q("2 1/4 in"), &d, None, &q("0.9 lb/ft2")).unwrap(), "lb/ft2", "24.3");
        // Plank, mean 0.66 in over 3/8 in scratch: the same old way, and with key and the scratch's own density.
        holds(&dead_load(&q("1.035 in"), &d, None, &q("0.9 lb/ft2")).unwrap(), "lb/ft2", "11.7");
        let thin = Scratch { thickness: q("3/8 in"), ..scratch };
        holds(&dead_load(&q("0.66 in"), &d, Some(&thin), &q("0.9 lb/ft2")).unwrap(), "lb/ft2", "13.1");
        assert_eq!(dead_load(&q("-1 in"), &d, None, &q("0.9 lb/ft2")).unwrap_err().wants, "0 or more, such as `1 in`");
    }

    #[test]
    fn the_patch_takes_the_heaviest_first() {
        let part = |a: &str, w: &str| Part { area: q(a), weight: q(w) };
        let four_by_eight: Worked<Area> = q("32 ft2");
        // One texture: the patch may lie all on faces.
        holds(&heaviest_patch(&[part("217 ft2", "25.8 lb/ft2")], &four_by_eight).unwrap(), "lb/ft2", "25.8");
        let three = [part("100 ft2", "13.1 lb/ft2"), part("10 ft2", "25.8 lb/ft2"), part("12 ft2", "18 lb/ft2")];
        let mixed = heaviest_patch(&three, &four_by_eight).unwrap();
        assert_eq!(line(&mixed).0, "q = (A1 × q1 + A2 × q2 + (A_patch − A1 − A2) × q3) ÷ A_patch");
        assert_eq!(line(&mixed).1, "(10 × 25.8 + 12 × 18 + (32 − 10 − 12) × 13.1) ÷ 32 = 18.90625 lb/ft2");
        // A wall smaller than the patch, metric.
        let small = heaviest_patch(&[part("1 m2", "60 kg/m2"), part("1 m2", "90 kg/m2")], &four_by_eight).unwrap();
        assert_eq!(line(&small).1, "(1 × 90 + 1 × 60) ÷ (1 + 1) = 75 kg/m2");
        // A wall of just the patch.
        holds(&heaviest_patch(&[part("32 ft2", "10 lb/ft2")], &four_by_eight).unwrap(), "lb/ft2", "10");
        assert_eq!(heaviest_patch(&[], &four_by_eight).unwrap_err().wants, "1 part or more");
        assert!(heaviest_patch(&three, &q("0 ft2")).is_err());
    }

    #[test]
    fn against_a_letter_and_as_a_pressure() {
        let over = left_to(&q("25.8 lb/ft2"), &q("20 lb/ft2")).unwrap();
        holds(&over, "lb/ft2", "-5.8");
        assert_eq!(line(&over).0, "left = q_allowed − q");
        holds(&as_pressure(&q("59.5 kg/m2")).unwrap(), "kPa", "0.5835");
        assert_eq!(line(&as_pressure(&q("100 kg/m2")).unwrap()).1, "100 × 9.80665 ÷ 1000 = 0.980665 kPa");
        assert_eq!(as_pressure(&q("-1 kg/m2")).unwrap_err().wants, "0 or more, such as `1 kg/m2`");
        assert!(left_to(&q("1 kg/m2"), &q("-1 kg/m2")).is_err());
    }

    #[test]
    fn lath_and_two_papers() {
        let base = base_weight(&q("3.4 lb/yd2"), &q("0.1 lb/ft2"), &q("2")).unwrap();
        holds(&base, "lb/ft2", "0.578");
        assert_eq!(base_weight(&q("-1 lb/yd2"), &q("0 lb/ft2"), &q("2")).unwrap_err().symbol, "q_lath");
    }

    // Worked example of the design, common practice, no source; metric, no lath.
    #[test]
    fn light_rock_on_block() {
        let (y, wet, _) = load(("10 kg", "1.35"), ("25 kg", "2.65"), "4.6 L", false, "14 %");
        let on_block = dead_load(&q("37.44 mm"), &wet_density(&wet, &y).unwrap(), None, &q("0 kg/m2")).unwrap();
        holds(&on_block, "kg/m2", "59.5");
        holds(&on_block, "lb/ft2", "12.2");
    }
}
