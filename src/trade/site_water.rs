//! F21: water a site must have on hand.

use crate::quantity::expr::{Area, Length, Loads, Node, Plain, Volume, Worked};

use super::{Answer, OutOfRange, like, zero_or_more};

/// Loads of one mix and the water of each.
#[derive(Clone, Debug)]
pub struct Mixed {
    /// Loads.
    pub loads: Worked<Loads>,
    /// Water of a load: at its limit, for what must be on hand.
    pub water: Worked<Volume>,
}

/// Water of mixes: `W = N1 × w1 + N2 × w2 + …`; at least one mix, all 0 or more.
///
/// At limit water this is the most that lawful batches can take. Source: `site-water`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::site_water::{Mixed, mix_water}};
/// let mix = Mixed { loads: Worked::read("20 loads").unwrap(), water: Worked::read("1.5 gal").unwrap() };
/// assert_eq!(mix_water(&[mix]).unwrap().in_unit("gal"), 30.0);
/// ```
pub fn mix_water(mixes: &[Mixed]) -> Answer<Volume> {
    const KEY: &str = "F21 mix water";
    let mut sum: Option<Node> = None;
    for (i, mix) in mixes.iter().enumerate() {
        zero_or_more(KEY, "N", &mix.loads)?;
        zero_or_more(KEY, "w", &mix.water)?;
        let own = like(mix.loads.named(format!("N{}", i + 1)) * mix.water.named(format!("w{}", i + 1)), mix.water.node());
        sum = Some(match sum {
            Some(before) => before + own,
            None => own,
        });
    }
    match sum {
        Some(sum) => Ok(Worked::new(sum.formula(KEY, "W"))),
        None => Err(OutOfRange { formula: KEY, symbol: "mixes", value: "0".to_owned(), wants: "1 mix or more".to_owned() }),
    }
}

/// Wash-outs: `W = washes × w`; `washes` of mixer and tubs, `w` water of one, both 0 or more.
///
/// Wash water is alkaline and goes to a lined pit, not to a drain. Source: `site-water`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::site_water::wash_out};
/// let w = wash_out(&Worked::read("10").unwrap(), &Worked::read("5 gal").unwrap()).unwrap();
/// assert_eq!(w.in_unit("gal"), 50.0);
/// ```
pub fn wash_out(washes: &Worked<Plain>, w: &Worked<Volume>) -> Answer<Volume> {
    zero_or_more("F21 wash-out", "washes", washes)?;
    zero_or_more("F21 wash-out", "w", w)?;
    Ok(Worked::new(like(washes.named("washes") * w.named("w"), w.node()).formula("F21 wash-out", "W")))
}

/// Misting: `W = A × rate × times`; `rate` water per area and misting, such as `0.02 gal/ft2`, `times` mistings in all.
///
/// All 0 or more. Water per area is a depth, and is held as one. Source: `site-water`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::site_water::misting};
/// let rate = Worked::read("0.02 gal/ft2").unwrap();
/// let w = misting(&Worked::read("272 ft2").unwrap(), &rate, &Worked::read("6").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", w.in_unit("gal")), "32.64");
/// ```
pub fn misting(a: &Worked<Area>, rate: &Worked<Length>, times: &Worked<Plain>) -> Answer<Volume> {
    zero_or_more("F21 misting", "A", a)?;
    zero_or_more("F21 misting", "rate", rate)?;
    zero_or_more("F21 misting", "times", times)?;
    // A rate of gallons gives gallons.
    let unit = rate.node().unit().filter(|u| u.under.is_some()).map_or("ft3", |u| u.over.symbol);
    let once = (a.named("A") * rate.named("rate")).written_in(unit);
    let all = (once * times.named("times")).written_in(unit);
    Ok(Worked::new(all.formula("F21 misting", "W")))
}

/// Washing of people: `W = people × days × w`; `w` water of one person and day, all 0 or more.
///
/// Source: `site-water`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::site_water::people_water};
/// let count = |t| Worked::read(t).unwrap();
/// assert_eq!(people_water(&count("5"), &count("6"), &Worked::read("5 gal").unwrap()).unwrap().in_unit("gal"), 150.0);
/// ```
pub fn people_water(people: &Worked<Plain>, days: &Worked<Plain>, w: &Worked<Volume>) -> Answer<Volume> {
    zero_or_more("F21 people", "people", people)?;
    zero_or_more("F21 people", "days", days)?;
    zero_or_more("F21 people", "w", w)?;
    let all = people.named("people") * days.named("days") * w.named("w");
    Ok(Worked::new(like(all, w.node()).formula("F21 people", "W")))
}

/// Water to have on hand: `W = W_mix + W_wash + W_mist + W_people`, each 0 or more.
///
/// Drinking water and water for eyes are not in it. Source: `site-water`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::site_water::site_water};
/// let read = |t| Worked::read(t).unwrap();
/// let w = site_water(&read("94.7 gal"), &read("50 gal"), &read("32.6 gal"), &read("150 gal")).unwrap();
/// assert_eq!(format!("{:.0}", w.in_unit("gal")), "327");
/// ```
pub fn site_water(mix: &Worked<Volume>, wash: &Worked<Volume>, mist: &Worked<Volume>, people: &Worked<Volume>) -> Answer<Volume> {
    for (symbol, part) in [("W_mix", mix), ("W_wash", wash), ("W_mist", mist), ("W_people", people)] {
        zero_or_more("F21 site water", symbol, part)?;
    }
    let sum = mix.named("W_mix") + wash.named("W_wash") + mist.named("W_mist") + people.named("W_people");
    Ok(Worked::new(sum.formula("F21 site water", "W")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn water_of_the_inn() {
        let mixes =
            |carve: &str, scratch: &str| [("34.5 loads", carve), ("20 loads", scratch)].map(|(n, w)| Mixed { loads: q(n), water: q(w) });
        holds(&mix_water(&mixes("1 gal 2 qt", "1.25 gal")).unwrap(), "gal", "76.75");
        let limit = mix_water(&mixes("1.875 gal", "1.5 gal")).unwrap();
        holds(&limit, "gal", "94.7");
        assert!(limit.value().si.exact().is_some());
        let wash = wash_out(&q("10"), &q("5 gal")).unwrap();
        let mist = misting(&q("271.96 ft2"), &q("0.02 gal/ft2"), &q("6")).unwrap();
        holds(&mist, "gal", "32.6");
        let people = people_water(&q("5"), &q("6"), &q("5 gal")).unwrap();
        let all = site_water(&limit, &wash, &mist, &people).unwrap();
        holds(&all, "gal", "327");
        assert_eq!(line(&mist).1, "271.96 × 0.02 × 6 = 32.6352 gal");
        assert_eq!(line(&limit).1, "34.5 × 1.875 + 20 × 1.5 = 94.6875 gal");
    }

    #[test]
    fn metric_and_out_of_range() {
        holds(&misting(&q("41.42 m2"), &q("0.8 L/m2"), &q("6")).unwrap(), "L", "198.8");
        assert_eq!(wash_out(&q("-1"), &q("5 gal")).unwrap_err().wants, "0 or more, such as `1`");
        assert_eq!(mix_water(&[]).unwrap_err().wants, "1 mix or more");
        assert!(people_water(&q("5"), &q("-1"), &q("5 gal")).is_err());
        assert!(misting(&q("-1 ft2"), &q("0.02 gal/ft2"), &q("6")).is_err());
        assert!(site_water(&q("-1 gal"), &q("0 gal"), &q("0 gal"), &q("0 gal")).is_err());
    }
}
