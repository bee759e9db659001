//! F6: what a mixer takes, how many batches, and what goes into one.

use crate::quantity::expr::{Bags, Loads, Mass, Node, Plain, Share, Volume, Worked};
use crate::quantity::num::Direction;

use super::loads::Step;
use super::{Answer, OutOfRange, above_zero, like, refuse, zero_or_more};

/// What a mixer takes.
#[derive(Clone, Debug)]
pub struct Capacity {
    /// Loads by volume, unrounded.
    pub by_volume: Worked<Loads>,
    /// Loads by the mass rating, unrounded, where the mixer states one.
    pub by_mass: Option<Worked<Loads>>,
    /// The smaller of the two, rounded down.
    pub loads: Worked<Loads>,
}

/// Loads a mixer takes: `n = down(min(V_mixer × fill ÷ y, rating ÷ m_wet), 1)`, or down to halves; `V_mixer` drum or
/// tub volume, `fill` its usable share, `y` and `m_wet` yield and wet mass of a load **at the limit water**,
/// `rating` the maker's greatest mass.
///
/// `V_mixer`, `y`, `m_wet`, `rating` above 0, `0 % < fill ≤ 100 %`. At limit water because that is the largest the
/// batch may become. A mixer too small for one step takes 0 loads; that is an answer, not an error.
/// Source: `mixer-fill`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{batch::capacity, loads::Step}};
/// let (v, fill) = (Worked::read("4.5 ft3").unwrap(), Worked::read("65 %").unwrap());
/// let c = capacity(&v, &fill, &Worked::read("0.989 ft3").unwrap(), None, Step::Whole).unwrap();
/// assert_eq!(c.loads.value().si.to_f64(), 2.0);
/// ```
pub fn capacity(
    mixer: &Worked<Volume>,
    fill: &Worked<Share>,
    y: &Worked<Volume>,
    mass: Option<(&Worked<Mass>, &Worked<Mass>)>,
    step: Step,
) -> Result<Capacity, OutOfRange> {
    above_zero("F6 by volume", "V_mixer", mixer)?;
    above_zero("F6 by volume", "fill", fill)?;
    above_zero("F6 by volume", "y", y)?;
    if fill.value().si.to_f64() > 1.0 {
        return Err(refuse("F6 by volume", "fill", fill, "more than 0 % and at most 100 %, such as `65 %`"));
    }
    let usable = like(mixer.named("V_mixer") * fill.named("fill"), mixer.node());
    let by_volume: Worked<Loads> = Worked::new((usable / y.named("y")).written_in("load").formula("F6 by volume", "n_volume"));
    let mut least = by_volume.named("n_volume");
    let mut by_mass = None;
    if let Some((rating, m_wet)) = mass {
        above_zero("F6 by mass", "rating", rating)?;
        above_zero("F6 by mass", "m_wet", m_wet)?;
        let n = (rating.named("rating") / m_wet.named("m_wet")).written_in("load").formula("F6 by mass", "n_mass");
        let n: Worked<Loads> = Worked::new(n);
        least = least.min(n.named("n_mass"));
        by_mass = Some(n);
    }
    let loads = Worked::new(least.rounded(Direction::Down, 1, step.parts()).formula("F6 capacity", "n"));
    Ok(Capacity { by_volume, by_mass, loads })
}

/// How loads fall into batches.
#[derive(Clone, Debug)]
pub struct Batches {
    /// All batches, the small last one too.
    pub count: Worked<Plain>,
    /// Batches of full size.
    pub full: Worked<Plain>,
    /// Loads of the last, smaller batch; 0 if there is none.
    pub remainder: Worked<Loads>,
}

/// Batches of `n` loads for `N` loads: `count = up(N ÷ n, 1)`, `full = down(N ÷ n, 1)`, `remainder = N − full × n`.
///
/// `N ≥ 0`, `n > 0`. Source: `mixer-fill`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::batch::batches};
/// let b = batches(&Worked::read("34.5 loads").unwrap(), &Worked::read("2 loads").unwrap()).unwrap();
/// assert_eq!((b.full.value().si.to_f64(), b.remainder.value().si.to_f64()), (17.0, 0.5));
/// ```
pub fn batches(total: &Worked<Loads>, n: &Worked<Loads>) -> Result<Batches, OutOfRange> {
    zero_or_more("F6 batches", "N", total)?;
    above_zero("F6 batches", "n", n)?;
    let quotient = || total.named("N") / n.named("n");
    let count = Worked::new(quotient().rounded(Direction::Up, 1, 1).formula("F6 batches", "count"));
    let full: Worked<Plain> = Worked::new(quotient().rounded(Direction::Down, 1, 1).formula("F6 full batches", "full"));
    let used = like(full.named("full") * n.named("n"), total.node());
    let remainder = Worked::new((total.named("N") - used).formula("F6 remainder", "remainder"));
    Ok(Batches { count, full, remainder })
}

/// Water of a batch: `W = n × w`; `n` loads (0 or more), `w` water per load (0 or more).
///
/// Exact; rounding down to a listed measure is the print's. Source: `water-by-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::batch::batch_water};
/// let w = batch_water(&Worked::read("3 loads").unwrap(), &Worked::read("1 gal 2 qt").unwrap()).unwrap();
/// assert_eq!(w.in_unit("gal"), 4.5);
/// ```
pub fn batch_water(n: &Worked<Loads>, w: &Worked<Volume>) -> Answer<Volume> {
    zero_or_more("F6 water", "n", n)?;
    zero_or_more("F6 water", "w", w)?;
    Ok(Worked::new(like(n.named("n") * w.named("w"), w.node()).formula("F6 water", "W")))
}

/// Mass of one material in a part load: `m = n × m1`; `n` loads in halves, `m1` the material's mass per load.
///
/// Both above 0; `n` a whole number of half loads, because both materials are halved together, on a scale.
/// Source: `whole-and-half-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::batch::part_load};
/// assert_eq!(part_load(&Worked::read("1/2 load").unwrap(), &Worked::read("80 lb").unwrap()).unwrap().in_unit("lb"), 40.0);
/// assert!(part_load(&Worked::read("0.3 load").unwrap(), &Worked::read("80 lb").unwrap()).is_err());
/// ```
pub fn part_load(n: &Worked<Loads>, m1: &Worked<Mass>) -> Answer<Mass> {
    above_zero("F6 part load", "n", n)?;
    above_zero("F6 part load", "m1", m1)?;
    if !Step::Half.divides(n) {
        return Err(refuse("F6 part load", "n", n, "whole and half loads, such as `1/2 load`"));
    }
    Ok(Worked::new(like(n.named("n") * m1.named("m1"), m1.node()).formula("F6 part load", "m")))
}

/// The order in which the mortar goes in.
#[derive(Clone, Debug)]
pub struct Charge {
    /// Mortar that goes in after the water, before the additive.
    pub first: Worked<Bags>,
    /// Mortar that goes in after the additive.
    pub rest: Worked<Bags>,
}

/// Mortar before and after the additive: `first = up(b ÷ 2, 1)`, `rest = b − first`; `b` bags of mortar in the batch.
///
/// `b > 0`. Bags are opened whole, so the first half rounds up; less than one bag is on the scale anyway and
/// halves exactly. Source: `charging-order`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::batch::charge};
/// let c = charge(&Worked::read("3 bags").unwrap()).unwrap();
/// assert_eq!((c.first.value().si.to_f64(), c.rest.value().si.to_f64()), (2.0, 1.0));
/// ```
pub fn charge(b: &Worked<Bags>) -> Result<Charge, OutOfRange> {
    above_zero("F6 first mortar", "b", b)?;
    let half = like(b.named("b") / Node::given(2, 1), b.node());
    let first = if b.value().si.to_f64() < 1.0 { half } else { half.rounded(Direction::Up, 1, 1) };
    let first: Worked<Bags> = Worked::new(first.formula("F6 first mortar", "first"));
    let rest = Worked::new((b.named("b") - first.named("first")).formula("F6 rest of mortar", "rest"));
    Ok(Charge { first, rest })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::super::yields::tests::load;
    use super::*;

    // Worked example of the design with capacity at limit water; common practice, no source.
    #[test]
    fn capacity_is_taken_at_limit_water() {
        let (start, ..) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", true, "9 %");
        let (limit, wet, _) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.875 gal", true, "9 %");
        let pan = |fill: &str, y: &Worked<Volume>| capacity(&q("4.5 ft3"), &q(fill), y, None, Step::Whole).unwrap();
        holds(&pan("65 %", &start).loads, "", "3"); // formula vector at start water
        holds(&pan("65 %", &limit).loads, "", "2");
        holds(&pan("70 %", &limit).loads, "", "3");
        let tub = capacity(&q("17 gal"), &q("60 %"), &start, None, Step::Whole).unwrap();
        holds(&tub.by_volume, "", "1.46");
        holds(&tub.loads, "", "1");
        let rated = capacity(&q("4.5 ft3"), &q("70 %"), &limit, Some((&q("300 lb"), &wet)), Step::Half).unwrap();
        holds(&rated.by_mass.unwrap(), "", "2.51");
        holds(&rated.loads, "", "2.5");
        assert_eq!(line(&rated.loads).0, "n = down(min(n_volume, n_mass), 0.5)");
        assert_eq!(line(&tub.by_volume).0, "n_volume = V_mixer × fill ÷ y");
        let small = capacity(&q("1 gal"), &q("60 %"), &limit, None, Step::Half).unwrap();
        assert!(small.loads.value().si.is_zero());
        assert!(capacity(&q("1 gal"), &q("160 %"), &limit, None, Step::Half).is_err());
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn seventeen_batches_and_a_half_load() {
        let b = batches(&q("34.5 loads"), &q("2 loads")).unwrap();
        holds(&b.full, "", "17");
        holds(&b.count, "", "18");
        holds(&b.remainder, "", "0.5");
        assert_eq!(line(&b.remainder).1, "34.5 − 17 × 2 = 0.5 load");
        holds(&batch_water(&b.remainder, &q("1 gal 2 qt")).unwrap(), "qt", "3");
        holds(&part_load(&b.remainder, &q("80 lb")).unwrap(), "lb", "40.0");
        holds(&part_load(&b.remainder, &q("24 lb")).unwrap(), "lb", "12.0");
        let three = batch_water(&q("3 loads"), &q("1 gal 2 qt")).unwrap();
        holds(&three, "gal", "4.5");
        assert_eq!(line(&three).1, "3 × 1.5 = 4.5 gal");
        assert!(three.value().si.exact().is_some());
        assert!(batches(&q("34.5 loads"), &q("0 loads")).is_err());
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn two_bags_then_additive_then_one() {
        for (bags, first, rest) in
            [("3 bags", "2.00", "1.00"), ("2 bags", "1.00", "1.00"), ("1 bag", "1.00", "0.00"), ("1/2 bag", "0.25", "0.25")]
        {
            let c = charge(&q(bags)).unwrap();
            holds(&c.first, "", first);
            holds(&c.rest, "", rest);
        }
    }
}
