//! F18: what the coats weigh on the wall.

use crate::quantity::expr::{Areal, Density, Length, Node, Worked};

use super::{Answer, above_zero, zero_or_more};

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
        // Plank: mean 0.66 in over 3/8 in scratch.
        holds(&dead_load(&q("1.035 in"), &d, None, &q("0.9 lb/ft2")).unwrap(), "lb/ft2", "11.7");
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
