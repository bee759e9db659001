//! F26: what pallets put on a floor, and what a platform may still carry.

use crate::quantity::expr::{Area, Areal, Bags, Length, Mass, Node, Plain, Worked};
use crate::quantity::num::Direction;

use super::{Answer, OutOfRange, above_zero, like, zero_or_more};

/// Weight of a loaded pallet: `m = bags × m1 + m_pallet`; all 0 or more.
///
/// Source: `floor-load`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::floor::pallet_weight};
/// let read = |t| Worked::read(t).unwrap();
/// let m = pallet_weight(&Worked::read("42 bags").unwrap(), &read("80 lb"), &read("40 lb")).unwrap();
/// assert_eq!(m.in_unit("lb"), 3400.0);
/// ```
pub fn pallet_weight(bags: &Worked<Bags>, m1: &Worked<Mass>, pallet: &Worked<Mass>) -> Answer<Mass> {
    zero_or_more("F26 pallet", "bags", bags)?;
    zero_or_more("F26 pallet", "m1", m1)?;
    zero_or_more("F26 pallet", "m_pallet", pallet)?;
    let all = like(bags.named("bags") * m1.named("m1"), m1.node()) + pallet.named("m_pallet");
    Ok(Worked::new(all.formula("F26 pallet", "m")))
}

/// What a load puts on the floor under it: `q = m ÷ (w × l)`; `w` and `l` its footprint.
///
/// `m ≥ 0`, `w` and `l` above 0. Spread evenly over the footprint: runners and wheels press harder. Source: `floor-load`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::floor::floor_load};
/// let side = |t| Worked::read(t).unwrap();
/// let q = floor_load(&Worked::read("3400 lb").unwrap(), &side("48 in"), &side("40 in")).unwrap();
/// assert_eq!(q.in_unit("lb/ft2"), 255.0);
/// ```
pub fn floor_load(m: &Worked<Mass>, w: &Worked<Length>, l: &Worked<Length>) -> Answer<Areal> {
    zero_or_more("F26 floor load", "m", m)?;
    above_zero("F26 floor load", "w", w)?;
    above_zero("F26 floor load", "l", l)?;
    Ok(Worked::new((m.named("m") / (w.named("w") * l.named("l"))).formula("F26 floor load", "q")))
}

/// What a platform carries: `M = rating × A`; `rating` from the scaffold's own tag, `A` its deck.
///
/// Both above 0. No tag, no rating, nothing on it: a competent person decides. Source: `platform`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::floor::platform_capacity};
/// let m = platform_capacity(&Worked::read("25 lb/ft2").unwrap(), &Worked::read("50 ft2").unwrap()).unwrap();
/// assert_eq!(m.in_unit("lb"), 1250.0);
/// ```
pub fn platform_capacity(rating: &Worked<Areal>, a: &Worked<Area>) -> Answer<Mass> {
    above_zero("F26 platform", "rating", rating)?;
    above_zero("F26 platform", "A", a)?;
    Ok(Worked::new((rating.named("rating") * a.named("A")).formula("F26 platform", "M")))
}

/// Things of one kind on a platform.
#[derive(Clone, Debug)]
pub struct OnDeck {
    /// How many.
    pub count: Worked<Plain>,
    /// Each one's mass: a person with tools, a tub with mud at limit water, a bag.
    pub each: Worked<Mass>,
}

/// What stands on a platform: `m = n1 × m1 + n2 × m2 + …`; at least one kind, all 0 or more.
///
/// Mud counts at its limit water, the heaviest it may lawfully be. Source: `platform`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::floor::{OnDeck, on_deck}};
/// let people = OnDeck { count: Worked::read("3").unwrap(), each: Worked::read("250 lb").unwrap() };
/// assert_eq!(on_deck(&[people]).unwrap().in_unit("lb"), 750.0);
/// ```
pub fn on_deck(things: &[OnDeck]) -> Answer<Mass> {
    const KEY: &str = "F26 on deck";
    let mut sum: Option<Node> = None;
    for (i, thing) in things.iter().enumerate() {
        zero_or_more(KEY, "n", &thing.count)?;
        zero_or_more(KEY, "m", &thing.each)?;
        let own = like(thing.count.named(format!("n{}", i + 1)) * thing.each.named(format!("m{}", i + 1)), thing.each.node());
        sum = Some(match sum {
            Some(before) => before + own,
            None => own,
        });
    }
    match sum {
        Some(sum) => Ok(Worked::new(sum.formula(KEY, "m"))),
        None => Err(OutOfRange { formula: KEY, symbol: "things", value: "0".to_owned(), wants: "1 kind or more".to_owned() }),
    }
}

/// What a platform may still carry: `left = M − m`; below 0 it is overloaded by that much.
///
/// `M > 0`, `m ≥ 0`. Source: `platform`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::floor::left_on_platform};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(left_on_platform(&read("1250 lb"), &read("1013 lb")).unwrap().in_unit("lb"), 237.0);
/// ```
pub fn left_on_platform(capacity: &Worked<Mass>, load: &Worked<Mass>) -> Answer<Mass> {
    above_zero("F26 left", "M", capacity)?;
    zero_or_more("F26 left", "m", load)?;
    Ok(Worked::new((capacity.named("M") - load.named("m")).formula("F26 left", "left")))
}

/// How many more may come: `n = down(left ÷ m1, 1)`; `m1` the mass of one person, tub or bag.
///
/// `left ≥ 0`: on an overloaded platform something comes off first. `m1 > 0`. Rounded down. Source: `platform`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::floor::allowed};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(allowed(&read("237 lb"), &read("80 lb")).unwrap().value().si.to_f64(), 2.0);
/// ```
pub fn allowed(left: &Worked<Mass>, each: &Worked<Mass>) -> Answer<Plain> {
    zero_or_more("F26 allowed", "left", left)?;
    above_zero("F26 allowed", "m1", each)?;
    Ok(Worked::new((left.named("left") / each.named("m1")).rounded(Direction::Down, 1, 1).formula("F26 allowed", "n")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::super::yields::tests::load;
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn pallets_on_a_floor() {
        for (bags, printed) in [("42 bags", "255"), ("49 bags", "297")] {
            let m = pallet_weight(&q(bags), &q("80 lb"), &q("40 lb")).unwrap();
            holds(&floor_load(&m, &q("48 in"), &q("40 in")).unwrap(), "lb/ft2", printed);
        }
        let metric = floor_load(&pallet_weight(&q("48 bags"), &q("25 kg"), &q("25 kg")).unwrap(), &q("1.2 m"), &q("0.8 m")).unwrap();
        holds(&metric, "kg/m2", "1276");
        assert!(floor_load(&q("1 lb"), &q("0 in"), &q("1 in")).is_err());
        assert!(pallet_weight(&q("-1 bag"), &q("80 lb"), &q("0 lb")).is_err());
    }

    // Worked example of the design; it weighs the tubs at start water (1013 and 1325 lb) and corrects itself to limit water.
    #[test]
    fn a_light_duty_platform() {
        let (_, start, _) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", true, "9 %");
        let (_, limit, _) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.875 gal", true, "9 %");
        let deck = |wet: &Worked<Mass>, bags: &str| {
            let thing = |n: &str, m: Worked<Mass>| OnDeck { count: q(n), each: m };
            on_deck(&[thing("3", q("250 lb")), thing("2", wet.clone()), thing("1", q("30 lb")), thing(bags, q("104 lb"))]).unwrap()
        };
        let capacity = platform_capacity(&q("25 lb/ft2"), &q("50 ft2")).unwrap();
        holds(&capacity, "lb", "1250");
        for (wet, without, with) in [(&start, "1013", "1325"), (&limit, "1019", "1331")] {
            holds(&deck(wet, "0"), "lb", without);
            holds(&deck(wet, "3"), "lb", with);
            assert!(left_on_platform(&capacity, &deck(wet, "3")).unwrap().value().si.is_negative());
        }
        let left = left_on_platform(&capacity, &deck(&limit, "0")).unwrap();
        holds(&left, "lb", "231");
        holds(&allowed(&left, &q("80 lb")).unwrap(), "", "2");
        // Not even one person more.
        holds(&allowed(&left, &q("250 lb")).unwrap(), "", "0");
        let over = left_on_platform(&capacity, &deck(&limit, "3")).unwrap();
        assert_eq!(allowed(&over, &q("80 lb")).unwrap_err().wants, "0 or more, such as `1 lb`");
        assert_eq!(line(&left).0, "left = M − m");
        assert_eq!(on_deck(&[]).unwrap_err().wants, "1 kind or more");
        assert!(platform_capacity(&q("0 lb/ft2"), &q("50 ft2")).is_err());
    }
}
