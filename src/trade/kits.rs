//! F25: what a class needs.

use crate::quantity::expr::{Loads, Node, Plain, Share, Worked};
use crate::quantity::num::Direction;

use super::{Answer, above_zero, zero_or_more};

/// Teams: `teams = up(n ÷ size, 1)`; `n` trainees, `size` of a team; `n ≥ 0`, `size > 0`.
///
/// The last team may be smaller. Source: `class-kits`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::kits::teams};
/// assert_eq!(teams(&Worked::read("14").unwrap(), &Worked::read("2").unwrap()).unwrap().value().si.to_f64(), 7.0);
/// ```
pub fn teams(n: &Worked<Plain>, size: &Worked<Plain>) -> Answer<Plain> {
    zero_or_more("F25 teams", "n", n)?;
    above_zero("F25 teams", "size", size)?;
    Ok(Worked::new((n.named("n") / size.named("size")).rounded(Direction::Up, 1, 1).formula("F25 teams", "teams")))
}

/// Loads of a class: `N = teams × each + demo + spare + lab`; `each` the loads of one team's panel, already whole or half, `lab` of the
/// water lab.
///
/// All 0 or more. Bags are then a purchase like any other. Source: `class-kits`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::kits::class_loads};
/// let loads = |t| Worked::read(t).unwrap();
/// let n = class_loads(&Worked::read("7").unwrap(), &loads("1 load"), &loads("2 loads"), &loads("1 load"), &loads("1.5 loads")).unwrap();
/// assert_eq!(n.value().si.to_f64(), 11.5);
/// ```
pub fn class_loads(
    teams: &Worked<Plain>,
    each: &Worked<Loads>,
    demo: &Worked<Loads>,
    spare: &Worked<Loads>,
    lab: &Worked<Loads>,
) -> Answer<Loads> {
    const KEY: &str = "F25 loads";
    zero_or_more(KEY, "teams", teams)?;
    for (symbol, n) in [("each", each), ("demo", demo), ("spare", spare), ("lab", lab)] {
        zero_or_more(KEY, symbol, n)?;
    }
    let panels = super::like(teams.named("teams") * each.named("each"), each.node());
    let all = panels + demo.named("demo") + spare.named("spare") + lab.named("lab");
    Ok(Worked::new(all.formula(KEY, "N")))
}

/// Pairs of gloves of one size: `pairs = up(n × days × (1 + reserve), 1)`; `n` hands of that size on the roster.
///
/// All 0 or more; each size is rounded by itself, because a large glove is no use to a small hand. Source: `class-kits`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::kits::gloves};
/// let count = |t| Worked::read(t).unwrap();
/// assert_eq!(gloves(&count("5"), &count("2"), &Worked::read("15 %").unwrap()).unwrap().value().si.to_f64(), 12.0);
/// ```
pub fn gloves(n: &Worked<Plain>, days: &Worked<Plain>, reserve: &Worked<Share>) -> Answer<Plain> {
    zero_or_more("F25 gloves", "n", n)?;
    zero_or_more("F25 gloves", "days", days)?;
    zero_or_more("F25 gloves", "reserve", reserve)?;
    let pairs = n.named("n") * days.named("days") * (Node::given(1, 1) + reserve.named("reserve"));
    Ok(Worked::new(pairs.rounded(Direction::Up, 1, 1).formula("F25 gloves", "pairs")))
}

/// Handouts in one language: `copies = n + spare`; both 0 or more.
///
/// Source: `class-kits`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::kits::handouts};
/// assert_eq!(handouts(&Worked::read("9").unwrap(), &Worked::read("2").unwrap()).unwrap().value().si.to_f64(), 11.0);
/// ```
pub fn handouts(n: &Worked<Plain>, spare: &Worked<Plain>) -> Answer<Plain> {
    zero_or_more("F25 handouts", "n", n)?;
    zero_or_more("F25 handouts", "spare", spare)?;
    Ok(Worked::new((n.named("n") + spare.named("spare")).formula("F25 handouts", "copies")))
}

#[cfg(test)]
mod tests {
    use super::super::coats::scratch;
    use super::super::loads::{Step, loads};
    use super::super::purchase::purchase;
    use super::super::relief::mixed_volume;
    use super::super::testing::{holds, line, q};
    use super::super::yields::tests::load;
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn two_days_for_fourteen() {
        let (carve, ..) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", true, "9 %");
        let (base, ..) = load(("15 lb", "2.30"), ("70 lb", "2.66"), "1.25 gal", true, "7 %");
        let pairs = teams(&q("14"), &q("2")).unwrap();
        holds(&pairs, "", "7");
        holds(&teams(&q("15"), &q("2")).unwrap(), "", "8");
        let panel = mixed_volume(&q("7 ft2"), &q("1.2275 in"), &q("12 %"), &q("5 %")).unwrap();
        holds(&panel, "ft3", "0.8565");
        let each = loads(&panel, &carve, Step::Half).unwrap();
        holds(&each.need, "", "0.917");
        let all = class_loads(&pairs, &each.loads, &q("2 loads"), &q("1 load"), &q("1.5 loads")).unwrap();
        holds(&all, "", "11.5");
        assert_eq!(line(&all).1, "7 × 1 + 2 + 1 + 1.5 = 11.5 load");
        // The class has its spare load already: no reserve on top.
        holds(&purchase(&all, &q("1 bag"), &q("0 %"), &q("0 loads")).unwrap().bags, "", "12");
        let nine = scratch(&q("63 ft2"), &q("1/2 in"), &q("1/8 in"), &q("5 %")).unwrap();
        let made = loads(&nine, &base, Step::Half).unwrap();
        holds(&made.need, "", "4.63");
        holds(&made.loads, "", "5.0");
        for (n, printed) in [("1", "3"), ("5", "12"), ("6", "14"), ("2", "5")] {
            holds(&gloves(&q(n), &q("2"), &q("15 %")).unwrap(), "", printed);
        }
        holds(&handouts(&q("9"), &q("2")).unwrap(), "", "11");
        holds(&handouts(&q("5"), &q("2")).unwrap(), "", "7");
    }

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        assert_eq!(teams(&q("14"), &q("0")).unwrap_err().wants, "more than 0, such as `1`");
        assert_eq!(gloves(&q("1"), &q("2"), &q("-5 %")).unwrap_err().symbol, "reserve");
        assert!(handouts(&q("-1"), &q("2")).is_err());
        assert!(class_loads(&q("7"), &q("-1 load"), &q("0 loads"), &q("0 loads"), &q("0 loads")).is_err());
    }
}
