//! F20: how much real surface a texture has, and what colour and sealer it drinks.

use crate::quantity::expr::{Area, Coverage, Length, Node, Plain, Share, Volume, Worked};
use crate::quantity::num::Direction;

use super::{Answer, OutOfRange, above_zero, at_most, like, refuse, zero_or_more};

/// Developed-surface factors by texture, low and high: common practice, no source. A mock-up measured with a string wins.
pub const BOOK_FACTORS: &[(&str, &str, &str)] = &[
    ("plank", "1.10", "1.25"),
    ("ashlar", "1.15", "1.15"),
    ("rubble", "1.30", "1.30"),
    ("boulder", "1.40", "1.40"),
    ("bark", "1.45", "1.45"),
];

/// Developed-surface factor of V-grooves: `f = ((p − w) + 2 × sqrt(w ÷ 2 × w ÷ 2 + d × d)) ÷ p`; `p` from groove to groove,
/// `w` width and `d` depth of a groove.
///
/// `p > 0`, `0 ≤ w ≤ p`, `d ≥ 0`. Straight sides, a flat face between. Source: `geometry`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::finish::groove_factor};
/// let read = |t| Worked::read(t).unwrap();
/// let f = groove_factor(&read("6 in"), &read("3/4 in"), &read("1 in")).unwrap();
/// assert_eq!(format!("{:.3}", f.value().si.to_f64()), "1.231");
/// ```
pub fn groove_factor(p: &Worked<Length>, w: &Worked<Length>, d: &Worked<Length>) -> Answer<Plain> {
    above_zero("F20 groove", "p", p)?;
    zero_or_more("F20 groove", "w", w)?;
    at_most("F20 groove", "w", w, p, "from groove to groove")?;
    zero_or_more("F20 groove", "d", d)?;
    let half = || w.named("w") / Node::given(2, 1);
    let flank = (half() * half() + d.named("d") * d.named("d")).sqrt();
    let across = p.named("p") - w.named("w") + Node::given(2, 1) * flank;
    Ok(Worked::new((across / p.named("p")).formula("F20 groove", "f")))
}

/// A texture's area and its developed-surface factor.
#[derive(Clone, Debug)]
pub struct Textured {
    /// Flat area.
    pub area: Worked<Area>,
    /// Real surface to flat.
    pub factor: Worked<Plain>,
}

/// Real surface: `A = A1 × f1 + A2 × f2 + …`, at least one part; areas 0 or more, factors 1 or more.
///
/// Source: `developed-surface`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::finish::{Textured, developed}};
/// let wall = Textured { area: Worked::read("100 ft2").unwrap(), factor: Worked::read("1.3").unwrap() };
/// assert_eq!(developed(&[wall]).unwrap().in_unit("ft2"), 130.0);
/// ```
pub fn developed(parts: &[Textured]) -> Answer<Area> {
    const KEY: &str = "F20 developed";
    let mut sum: Option<Node> = None;
    for (i, part) in parts.iter().enumerate() {
        zero_or_more(KEY, "A", &part.area)?;
        if part.factor.value().si.to_f64() < 1.0 {
            return Err(refuse(KEY, "f", &part.factor, "1 or more, such as `1.3`: no texture has less surface than a flat wall"));
        }
        let own = part.area.named(format!("A{}", i + 1)) * part.factor.named(format!("f{}", i + 1));
        let own = like(own, part.area.node());
        sum = Some(match sum {
            Some(before) => before + own,
            None => own,
        });
    }
    match sum {
        Some(sum) => Ok(Worked::new(sum.formula(KEY, "A"))),
        None => Err(OutOfRange { formula: KEY, symbol: "parts", value: "0".to_owned(), wants: "1 part or more".to_owned() }),
    }
}

/// Colour or sealer: `V = A × coats ÷ coverage × (1 + allowance)`; `A` the real surface, `coverage` of one coat.
///
/// `A ≥ 0`, `coats ≥ 0`, `coverage > 0`, `allowance ≥ 0 %`, by custom 8 %. Every coat drinks alike: the first drinks more, so
/// the coverage of a sample on the cured texture belongs here. Source: `developed-surface`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::finish::sealer};
/// let (a, c) = (Worked::read("1026.1 ft2").unwrap(), Worked::read("150 ft2/gal").unwrap());
/// let v = sealer(&a, &Worked::read("2").unwrap(), &c, &Worked::read("8 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.1}", v.in_unit("gal")), "14.8");
/// ```
pub fn sealer(a: &Worked<Area>, coats: &Worked<Plain>, coverage: &Worked<Coverage>, allowance: &Worked<Share>) -> Answer<Volume> {
    zero_or_more("F20 sealer", "A", a)?;
    zero_or_more("F20 sealer", "coats", coats)?;
    above_zero("F20 sealer", "coverage", coverage)?;
    zero_or_more("F20 sealer", "allowance", allowance)?;
    let area = like(a.named("A") * coats.named("coats"), a.node());
    let unit = coverage.node().unit().and_then(|u| u.under).map_or("ft3", |u| u.symbol);
    let volume = (area / coverage.named("coverage")).written_in(unit);
    let volume = (volume * (Node::given(1, 1) + allowance.named("allowance"))).written_in(unit);
    Ok(Worked::new(volume.formula("F20 sealer", "V")))
}

/// Cans to buy: `cans = up(V ÷ can, 1)`; `V ≥ 0`, `can > 0`.
///
/// Source: `developed-surface`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::finish::cans};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(cans(&read("14.8 gal"), &read("5 gal")).unwrap().value().si.to_f64(), 3.0);
/// ```
pub fn cans(v: &Worked<Volume>, can: &Worked<Volume>) -> Answer<Plain> {
    zero_or_more("F20 cans", "V", v)?;
    above_zero("F20 cans", "can", can)?;
    Ok(Worked::new((v.named("V") / can.named("can")).rounded(Direction::Up, 1, 1).formula("F20 cans", "cans")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn sealer_of_the_museum() {
        let f = groove_factor(&q("6 in"), &q("3/4 in"), &q("1 in")).unwrap();
        holds(&f, "", "1.231");
        let wall = |flat: bool| {
            [("415.79 ft2", "1.23"), ("296.88 ft2", "1.45"), ("64.77 ft2", "1.30")]
                .map(|(a, f)| Textured { area: q(a), factor: q(if flat { "1" } else { f }) })
        };
        let real = developed(&wall(false)).unwrap();
        holds(&real, "ft2", "1026.1");
        let gallons = |a: &Worked<Area>| sealer(a, &q("2"), &q("150 ft2/gal"), &q("8 %")).unwrap();
        holds(&gallons(&real), "gal", "14.8");
        holds(&cans(&gallons(&real), &q("5 gal")).unwrap(), "", "3");
        let flat = gallons(&developed(&wall(true)).unwrap());
        holds(&flat, "gal", "11.2");
        // Flat is 24 % short.
        assert_eq!(format!("{:.0}", 100.0 - 100.0 * flat.in_unit("gal") / gallons(&real).in_unit("gal")), "24");
        assert_eq!(line(&gallons(&real)).0, "V = A × coats ÷ coverage × (1 + allowance)");
        assert_eq!(line(&f).0, "f = (p − w + 2 × sqrt(w ÷ 2 × w ÷ 2 + d × d)) ÷ p");
        for (_, low, high) in BOOK_FACTORS {
            let book = |f: &str| developed(&[Textured { area: q("1 ft2"), factor: q(f) }]).unwrap().in_unit("ft2");
            assert!(book(low) >= 1.0 && book(high) >= book(low));
        }
    }

    #[test]
    fn metric_and_out_of_range() {
        let v = sealer(&q("41.42 m2"), &q("2"), &q("3.7 m2/L"), &q("8 %")).unwrap();
        holds(&v, "L", "24.2");
        assert_eq!(v.node().unit().unwrap().symbol(), "L");
        let refused = groove_factor(&q("1/2 in"), &q("3/4 in"), &q("1 in")).unwrap_err();
        assert_eq!(refused.wants, "at most 0.5 in (from groove to groove)");
        assert!(developed(&[Textured { area: q("1 ft2"), factor: q("0.9") }]).unwrap_err().wants.starts_with("1 or more"));
        assert!(developed(&[]).is_err());
        assert!(sealer(&q("1 ft2"), &q("2"), &q("0 ft2/gal"), &q("8 %")).is_err());
        assert!(cans(&q("1 gal"), &q("0 gal")).is_err());
    }
}
