//! F19: sheets of lath, fasteners and paper.

use crate::quantity::expr::{Area, Length, Node, Plain, Share, Worked};
use crate::quantity::num::Direction;

use super::{Answer, OutOfRange, above_zero, like, refuse, zero_or_more};

fn lap(symbol: &'static str, x: &Worked<Length>, side: &Worked<Length>) -> Result<(), OutOfRange> {
    zero_or_more("F19 net sheet", symbol, x)?;
    if x.value().si.compare(&side.value().si).is_ge() {
        return Err(refuse("F19 net sheet", symbol, x, "less than the sheet, such as `1 in`"));
    }
    Ok(())
}

/// What a sheet covers: `A_net = (w − side) × (l − end)`; `w` and `l` the sheet, `side` and `end` its laps.
///
/// `w` and `l` above 0; laps 0 or more and less than the sheet. Assumes that every sheet laps on one side and one end.
/// Source: `lath-count`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::lath::sheet_net};
/// let read = |t| Worked::read(t).unwrap();
/// let net = sheet_net(&read("27 in"), &read("96 in"), &read("1 in"), &read("1 in")).unwrap();
/// assert_eq!(format!("{:.3}", net.in_unit("ft2")), "17.153");
/// ```
pub fn sheet_net(w: &Worked<Length>, l: &Worked<Length>, side: &Worked<Length>, end: &Worked<Length>) -> Answer<Area> {
    above_zero("F19 net sheet", "w", w)?;
    above_zero("F19 net sheet", "l", l)?;
    lap("side", side, w)?;
    lap("end", end, l)?;
    let net = (w.named("w") - side.named("side")) * (l.named("l") - end.named("end"));
    Ok(Worked::new(net.formula("F19 net sheet", "A_net")))
}

fn with_share(share: &Worked<Share>) -> Node {
    Node::given(1, 1) + share.named("waste")
}

/// Sheets to buy: `sheets = up(A ÷ A_net × (1 + waste), 1)`; `A` area to lath, `A_net` what a sheet covers.
///
/// `A ≥ 0`, `A_net > 0`, `waste ≥ 0 %`, a share of the need. Source: `lath-count`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::lath::sheets};
/// let read = |t| Worked::read(t).unwrap();
/// let n = sheets(&read("272 ft2"), &read("17.153 ft2"), &Worked::read("5 %").unwrap()).unwrap();
/// assert_eq!(n.value().si.to_f64(), 17.0);
/// ```
pub fn sheets(a: &Worked<Area>, net: &Worked<Area>, waste: &Worked<Share>) -> Answer<Plain> {
    zero_or_more("F19 sheets", "A", a)?;
    above_zero("F19 sheets", "A_net", net)?;
    zero_or_more("F19 sheets", "waste", waste)?;
    let need = a.named("A") / net.named("A_net") * with_share(waste);
    Ok(Worked::new(need.rounded(Direction::Up, 1, 1).formula("F19 sheets", "sheets")))
}

/// Fasteners to buy: `fasteners = up(A ÷ (stud × spacing) × (1 + waste) ÷ pack, 1) × pack`; `stud` framing spacing, `spacing`
/// along the framing, `pack` how many are sold together (1 for loose ones).
///
/// `A ≥ 0`, the rest above 0, `waste ≥ 0 %`. Counts an even field: edges and openings are in the waste. Source: `lath-count`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::lath::fasteners};
/// let (a, stud, along) = (Worked::read("272 ft2").unwrap(), Worked::read("16 in").unwrap(), Worked::read("7 in").unwrap());
/// let n = fasteners(&a, &stud, &along, &Worked::read("10 %").unwrap(), &Worked::read("10").unwrap()).unwrap();
/// assert_eq!(n.value().si.to_f64(), 390.0);
/// ```
pub fn fasteners(
    a: &Worked<Area>,
    stud: &Worked<Length>,
    spacing: &Worked<Length>,
    waste: &Worked<Share>,
    pack: &Worked<Plain>,
) -> Answer<Plain> {
    zero_or_more("F19 fasteners", "A", a)?;
    above_zero("F19 fasteners", "stud", stud)?;
    above_zero("F19 fasteners", "spacing", spacing)?;
    zero_or_more("F19 fasteners", "waste", waste)?;
    above_zero("F19 fasteners", "pack", pack)?;
    let need = a.named("A") / (stud.named("stud") * spacing.named("spacing")) * with_share(waste);
    let packs = (need / pack.named("pack")).rounded(Direction::Up, 1, 1);
    Ok(Worked::new((packs * pack.named("pack")).formula("F19 fasteners", "fasteners")))
}

/// Rolls of paper to buy: `rolls = up(A × layers × (1 + waste) ÷ roll, 1)`; `roll` what a roll covers, `waste` laps and waste.
///
/// `A ≥ 0`, `layers ≥ 0`, `roll > 0`, `waste ≥ 0 %`. Source: `lath-count`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::lath::paper_rolls};
/// let read = |t| Worked::read(t).unwrap();
/// let n = paper_rolls(&read("272 ft2"), &Worked::read("2").unwrap(), &Worked::read("10 %").unwrap(), &read("300 ft2")).unwrap();
/// assert_eq!(n.value().si.to_f64(), 2.0);
/// ```
pub fn paper_rolls(a: &Worked<Area>, layers: &Worked<Plain>, waste: &Worked<Share>, roll: &Worked<Area>) -> Answer<Plain> {
    zero_or_more("F19 paper", "A", a)?;
    zero_or_more("F19 paper", "layers", layers)?;
    zero_or_more("F19 paper", "waste", waste)?;
    above_zero("F19 paper", "roll", roll)?;
    let area = like(a.named("A") * layers.named("layers") * with_share(waste), a.node());
    Ok(Worked::new((area / roll.named("roll")).rounded(Direction::Up, 1, 1).formula("F19 paper", "rolls")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn lath_of_the_fireplace_wall() {
        let net = sheet_net(&q("27 in"), &q("96 in"), &q("1 in"), &q("1 in")).unwrap();
        holds(&net, "ft2", "17.153");
        for area in ["272.0 ft2", "271.96 ft2"] {
            let n = sheets(&q(area), &net, &q("5 %")).unwrap();
            holds(&n, "", "17");
            // The design buys tens; loose ones would be 385.
            holds(&fasteners(&q(area), &q("16 in"), &q("7 in"), &q("10 %"), &q("10")).unwrap(), "", "390");
            holds(&fasteners(&q(area), &q("16 in"), &q("7 in"), &q("10 %"), &q("1")).unwrap(), "", "385");
            holds(&paper_rolls(&q(area), &q("2"), &q("10 %"), &q("300 ft2")).unwrap(), "", "2");
        }
        // Without waste the fasteners are 350 and the sheets 15.85.
        holds(&fasteners(&q("272 ft2"), &q("16 in"), &q("7 in"), &q("0 %"), &q("1")).unwrap(), "", "350");
        holds(&sheets(&q("272 ft2"), &net, &q("0 %")).unwrap(), "", "16");
        assert_eq!(line(&net), ("A_net = (w − side) × (l − end)".to_owned(), "(27 − 1) × (96 − 1) ÷ 144 = 1235/72 ft2".to_owned()));
        // Half a square foot more of wall, and a third roll.
        holds(&paper_rolls(&q("273 ft2"), &q("2"), &q("10 %"), &q("300 ft2")).unwrap(), "", "3");
    }

    #[test]
    fn metric_sheets() {
        let net = sheet_net(&q("0.7 m"), &q("2.4 m"), &q("25 mm"), &q("25 mm")).unwrap();
        holds(&net, "m2", "1.603");
        holds(&sheets(&q("27.9 m2"), &net, &q("5 %")).unwrap(), "", "19");
    }

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        let refused = sheet_net(&q("27 in"), &q("96 in"), &q("27 in"), &q("1 in")).unwrap_err();
        assert_eq!((refused.symbol, refused.wants.as_str()), ("side", "less than the sheet, such as `1 in`"));
        assert_eq!(sheets(&q("1 ft2"), &q("0 ft2"), &q("5 %")).unwrap_err().wants, "more than 0, such as `1 ft2`");
        assert!(fasteners(&q("1 ft2"), &q("16 in"), &q("0 in"), &q("5 %"), &q("1")).is_err());
        assert!(paper_rolls(&q("1 ft2"), &q("2"), &q("-5 %"), &q("300 ft2")).is_err());
    }
}
