//! F7: what is bought, how it is stacked and how it travels.

use crate::quantity::expr::{Bags, Loads, Mass, Plain, Share, Worked};
use crate::quantity::num::Direction;

use super::{Answer, OutOfRange, above_zero, like, refuse, zero_or_more};

/// A purchase in whole bags.
#[derive(Clone, Debug)]
pub struct Purchase {
    /// Bags to buy.
    pub bags: Worked<Bags>,
    /// Bags beyond the need without reserve: no reserve at all when near 0.
    pub spare: Worked<Bags>,
}

/// Bags of one material: `bags = up(max(N × (1 + reserve), N + least) × b, 1)`; `N` loads, `b` bags of the material per
/// load, `reserve` a share of the need, `least` the smallest reserve in loads.
///
/// `N ≥ 0`, `b > 0`, `0 % ≤ reserve ≤ 100 %`, `least ≥ 0`. No loads need no bags, and no reserve. Rounded up,
/// because a yard sells whole bags. Source: `reserve`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::purchase::purchase};
/// let n = Worked::read("83.5 loads").unwrap();
/// let p = purchase(&n, &Worked::read("1 bag").unwrap(), &Worked::read("5 %").unwrap(), &Worked::read("1 load").unwrap()).unwrap();
/// assert_eq!(p.bags.value().si.to_f64(), 88.0);
/// ```
pub fn purchase(n: &Worked<Loads>, b: &Worked<Bags>, reserve: &Worked<Share>, least: &Worked<Loads>) -> Result<Purchase, OutOfRange> {
    zero_or_more("F7 bags", "N", n)?;
    above_zero("F7 bags", "b", b)?;
    zero_or_more("F7 bags", "reserve", reserve)?;
    zero_or_more("F7 bags", "least", least)?;
    if reserve.value().si.to_f64() > 1.0 {
        return Err(refuse("F7 bags", "reserve", reserve, "0 % to 100 %, such as `5 %`"));
    }
    let need = || like(n.named("N") * b.named("b"), b.node());
    let with_reserve = if n.value().si.is_zero() {
        need()
    } else {
        let share = like(n.named("N") * (crate::quantity::Node::given(1, 1) + reserve.named("reserve")), n.node());
        like(share.max(n.named("N") + least.named("least")) * b.named("b"), b.node())
    };
    let bags: Worked<Bags> = Worked::new(with_reserve.rounded(Direction::Up, 1, 1).formula("F7 bags", "bags"));
    let spare = Worked::new((bags.named("bags") - need()).formula("F7 spare", "spare"));
    Ok(Purchase { bags, spare })
}

/// Weight of bags: `m = bags × m1`, `m1` mass of one bag; both 0 or more.
///
/// Source: `reserve`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::purchase::weight};
/// assert_eq!(weight(&Worked::read("88 bags").unwrap(), &Worked::read("80 lb").unwrap()).unwrap().in_unit("lb"), 7040.0);
/// ```
pub fn weight(bags: &Worked<Bags>, m1: &Worked<Mass>) -> Answer<Mass> {
    zero_or_more("F7 weight", "bags", bags)?;
    zero_or_more("F7 weight", "m1", m1)?;
    Ok(Worked::new(like(bags.named("bags") * m1.named("m1"), m1.node()).formula("F7 weight", "m")))
}

/// How bags stand on pallets.
#[derive(Clone, Debug)]
pub struct Pallets {
    /// Full pallets.
    pub full: Worked<Plain>,
    /// Bags left over.
    pub loose: Worked<Bags>,
}

/// Full pallets and loose bags: `full = down(bags ÷ p, 1)`, `loose = bags − full × p`; `p` bags on a pallet.
///
/// `bags ≥ 0`, `p > 0`. Source: `reserve`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::purchase::pallets};
/// let p = pallets(&Worked::read("88 bags").unwrap(), &Worked::read("42 bags").unwrap()).unwrap();
/// assert_eq!((p.full.value().si.to_f64(), p.loose.value().si.to_f64()), (2.0, 4.0));
/// ```
pub fn pallets(bags: &Worked<Bags>, p: &Worked<Bags>) -> Result<Pallets, OutOfRange> {
    zero_or_more("F7 pallets", "bags", bags)?;
    above_zero("F7 pallets", "p", p)?;
    let full = (bags.named("bags") / p.named("p")).rounded(Direction::Down, 1, 1);
    let full: Worked<Plain> = Worked::new(full.formula("F7 pallets", "full"));
    let stacked = like(full.named("full") * p.named("p"), bags.node());
    let loose = Worked::new((bags.named("bags") - stacked).formula("F7 loose bags", "loose"));
    Ok(Pallets { full, loose })
}

/// Trips with a vehicle: `trips = up(m ÷ payload, 1)`, `m` weight 0 or more, `payload > 0`.
///
/// Assumes that bags divide freely between trips. Source: `reserve`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::purchase::trips};
/// let n = trips(&Worked::read("13827 lb").unwrap(), &Worked::read("3300 lb").unwrap()).unwrap();
/// assert_eq!(n.value().si.to_f64(), 5.0);
/// ```
pub fn trips(m: &Worked<Mass>, payload: &Worked<Mass>) -> Answer<Plain> {
    zero_or_more("F7 trips", "m", m)?;
    above_zero("F7 trips", "payload", payload)?;
    Ok(Worked::new((m.named("m") / payload.named("payload")).rounded(Direction::Up, 1, 1).formula("F7 trips", "trips")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    fn bought(loads: &str) -> Purchase {
        purchase(&q(loads), &q("1 bag"), &q("5 %"), &q("1 load")).unwrap()
    }

    // Worked examples of the design, common practice, no source: first its formula vectors, then the loads
    // under its correction of round work.
    #[test]
    fn orders_of_the_three_sites() {
        let rows = [("83.5 loads", "88"), ("51.5 loads", "55"), ("34.5 loads", "37"), ("20 loads", "21"), ("66 loads", "70")];
        let corrected = [("85.5 loads", "90"), ("52.5 loads", "56"), ("20.5 loads", "22")];
        for (loads, bags) in rows.into_iter().chain(corrected) {
            holds(&bought(loads).bags, "", bags);
        }
        let all = |carve: &str, scratch: &str, kg: (&str, &str)| {
            let sum = weight(&bought(carve).bags, &q(kg.0)).unwrap().value().si.to_f64()
                + weight(&bought(scratch).bags, &q(kg.1)).unwrap().value().si.to_f64();
            sum / 0.453_592_37
        };
        assert_eq!(format!("{:.0}", all("83.5 loads", "51.5 loads", ("104 lb", "85 lb"))), "13827");
        assert_eq!(format!("{:.0}", all("34.5 loads", "20 loads", ("104 lb", "85 lb"))), "5633");
        // With the corrected loads of round work.
        assert_eq!(format!("{:.0}", all("85.5 loads", "52.5 loads", ("104 lb", "85 lb"))), "14120");
        assert_eq!(format!("{:.0}", all("34.5 loads", "20.5 loads", ("104 lb", "85 lb"))), "5718");
        holds(&trips(&q("14120 lb"), &q("3300 lb")).unwrap(), "", "5");
        holds(&weight(&bought("66 loads").bags, &q("35 kg")).unwrap(), "kg", "2450");
        let stacks = pallets(&q("88 bags"), &q("42 bags")).unwrap();
        holds(&stacks.full, "", "2");
        holds(&stacks.loose, "", "4");
        holds(&trips(&q("13827 lb"), &q("3300 lb")).unwrap(), "", "5");
    }

    #[test]
    fn the_least_reserve_binds_on_small_jobs() {
        holds(&bought("4 loads").bags, "", "5");
        holds(&bought("4 loads").spare, "", "1");
        holds(&bought("0 loads").bags, "", "0");
        let edge = purchase(&q("19.9972 loads"), &q("1 bag"), &q("0 %"), &q("0 loads")).unwrap();
        holds(&edge.spare, "", "0.0028");
        let (symbols, numbers) = line(&bought("83.5 loads").bags);
        assert_eq!(symbols, "bags = up(max(N × (1 + reserve), N + least) × b, 1)");
        assert_eq!(numbers, "up(max(83.5 × (1 + 5 ÷ 100), 83.5 + 1) × 1, 1) = 88 bag");
        assert!(purchase(&q("4 loads"), &q("1 bag"), &q("500 %"), &q("1 load")).is_err());
        assert!(pallets(&q("4 bags"), &q("0 bags")).is_err());
    }
}
