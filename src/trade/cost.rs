//! F22: money. Exact throughout; cents are the print's, at the last step.

use crate::quantity::expr::{Area, Duration, Loads, Money, Node, PriceOfArea, Share, Sort, Wage, Worked};

use super::{Answer, OutOfRange, above_zero, zero_or_more};

fn currency(node: &Node) -> &'static str {
    node.unit().map_or("", |u| u.over.symbol)
}

/// A product with a price is money of the price's own coin: money has no usual unit.
fn paid(node: Node, price: &Node) -> Node {
    node.written_in(currency(price))
}

fn one_coin<S: Sort>(formula: &'static str, symbol: &'static str, x: &Worked<S>, coin: &str) -> Result<(), OutOfRange> {
    if currency(x.node()) != coin {
        let wants = format!("an amount in {coin}: rates of exchange are the author's");
        return Err(super::refuse(formula, symbol, x, wants));
    }
    Ok(())
}

/// Cost of loads: `c = N × price`; `price` of all materials of a load.
///
/// Both 0 or more. Source: `cost`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cost::load_cost};
/// let c = load_cost(&Worked::read("28.5 loads").unwrap(), &Worked::read("42.70 USD").unwrap()).unwrap();
/// assert_eq!(c.in_unit("USD"), 1216.95);
/// ```
pub fn load_cost(n: &Worked<Loads>, price: &Worked<Money>) -> Answer<Money> {
    zero_or_more("F22 loads", "N", n)?;
    zero_or_more("F22 loads", "price", price)?;
    Ok(Worked::new(paid(n.named("N") * price.named("price"), price.node()).formula("F22 loads", "c")))
}

/// Cost by area: `c = A × price`; `A` flat area for lath and paper, real surface for colour and sealer.
///
/// Both 0 or more. Source: `cost`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cost::area_cost};
/// let c = area_cost(&Worked::read("200 ft2").unwrap(), &Worked::read("1.12 USD/ft2").unwrap()).unwrap();
/// assert_eq!(c.in_unit("USD"), 224.0);
/// ```
pub fn area_cost(a: &Worked<Area>, price: &Worked<PriceOfArea>) -> Answer<Money> {
    zero_or_more("F22 area", "A", a)?;
    zero_or_more("F22 area", "price", price)?;
    Ok(Worked::new(paid(a.named("A") * price.named("price"), price.node()).formula("F22 area", "c")))
}

/// Cost of work: `c = t × wage`; `wage` with all that is paid on top of it.
///
/// Both 0 or more. Source: `cost`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cost::labour_cost};
/// let c = labour_cost(&Worked::read("66 h").unwrap(), &Worked::read("62 USD/h").unwrap()).unwrap();
/// assert_eq!(c.in_unit("USD"), 4092.0);
/// ```
pub fn labour_cost(t: &Worked<Duration>, wage: &Worked<Wage>) -> Answer<Money> {
    zero_or_more("F22 labour", "t", t)?;
    zero_or_more("F22 labour", "wage", wage)?;
    Ok(Worked::new(paid(t.named("t") * wage.named("wage"), wage.node()).formula("F22 labour", "c")))
}

/// Sum of costs: `C = c1 + c2 + …`; at least one, each 0 or more, all in one coin.
///
/// Source: `cost`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cost::subtotal};
/// assert_eq!(subtotal(&[Worked::read("10 USD").unwrap(), Worked::read("2.50 USD").unwrap()]).unwrap().in_unit("USD"), 12.5);
/// assert!(subtotal(&[Worked::read("10 USD").unwrap(), Worked::read("2.50 CAD").unwrap()]).is_err());
/// ```
pub fn subtotal(costs: &[Worked<Money>]) -> Answer<Money> {
    const KEY: &str = "F22 subtotal";
    let Some(first) = costs.first() else {
        return Err(OutOfRange { formula: KEY, symbol: "costs", value: "0".to_owned(), wants: "1 cost or more".to_owned() });
    };
    let coin = currency(first.node());
    let mut sum: Option<Node> = None;
    for (i, cost) in costs.iter().enumerate() {
        zero_or_more(KEY, "c", cost)?;
        one_coin(KEY, "c", cost, coin)?;
        let next = cost.named(format!("c{}", i + 1));
        sum = Some(match sum {
            Some(before) => before + next,
            None => next,
        });
    }
    Ok(Worked::new(sum.unwrap_or_else(|| first.named("c1")).formula(KEY, "C")))
}

/// Price with overhead and profit: `price = C × (1 + markup)`; `C ≥ 0`, `markup ≥ 0 %`.
///
/// Source: `cost`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cost::marked_up};
/// let p = marked_up(&Worked::read("6183 USD").unwrap(), &Worked::read("18 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", p.in_unit("USD")), "7295.94");
/// ```
pub fn marked_up(c: &Worked<Money>, markup: &Worked<Share>) -> Answer<Money> {
    zero_or_more("F22 price", "C", c)?;
    zero_or_more("F22 price", "markup", markup)?;
    let price = paid(c.named("C") * (Node::given(1, 1) + markup.named("markup")), c.node());
    Ok(Worked::new(price.formula("F22 price", "price")))
}

/// Price by area: `p = price ÷ A`; `price ≥ 0`, `A > 0` the flat area.
///
/// Written per the area's own unit. Source: `cost`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::cost::per_area};
/// let p = per_area(&Worked::read("7296 USD").unwrap(), &Worked::read("217.22 ft2").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", p.in_unit("USD/ft2")), "33.59");
/// ```
pub fn per_area(price: &Worked<Money>, a: &Worked<Area>) -> Answer<PriceOfArea> {
    zero_or_more("F22 per area", "price", price)?;
    above_zero("F22 per area", "A", a)?;
    let unit = format!("{}/{}", currency(price.node()), a.node().unit().map_or("m2", |u| u.over.symbol));
    Ok(Worked::new((price.named("price") / a.named("A")).written_in(&unit).formula("F22 per area", "p")))
}

#[cfg(test)]
mod tests {
    use super::super::labour::{tests::wall, total_hours};
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, invented prices. It multiplies its printed 66.0 h and shows the product of the
    // unrounded hours: 66.04624 × 62.
    #[test]
    fn the_fireplace_wall() {
        let hours = total_hours(&wall()).unwrap();
        let labour = labour_cost(&hours, &q("62 USD/h")).unwrap();
        let costs = [
            load_cost(&q("28.5 loads"), &q("42.70 USD")).unwrap(),
            load_cost(&q("16.0 loads"), &q("29.90 USD")).unwrap(),
            area_cost(&q("217.22 ft2"), &q("1.12 USD/ft2")).unwrap(),
            area_cost(&q("282.386 ft2"), &q("0.53 USD/ft2")).unwrap(),
            labour,
        ];
        for (cost, printed) in costs.iter().zip(["1217", "478", "243", "150", "4095"]) {
            holds(cost, "USD", printed);
        }
        let sum = subtotal(&costs).unwrap();
        holds(&sum, "USD", "6183");
        let price = marked_up(&sum, &q("18 %")).unwrap();
        holds(&price, "USD", "7296");
        holds(&per_area(&price, &q("217.22 ft2")).unwrap(), "USD/ft2", "33.59");
        // Material is 27 %.
        assert_eq!(format!("{:.0}", 100.0 * costs[..2].iter().map(|c| c.in_unit("USD")).sum::<f64>() / sum.in_unit("USD")), "27");
        // Exact to the end: nothing was rounded on the way.
        assert!(price.value().si.exact().is_some());
        assert_eq!(line(&price).0, "price = C × (1 + markup)");
        assert_eq!(line(&costs[0]).1, "28.5 × 42.7 = 1216.95 USD");
    }

    #[test]
    fn a_coin_does_not_change_into_another() {
        let refused = subtotal(&[q("10 USD"), q("2 CAD")]).unwrap_err();
        assert_eq!(refused.to_string(), "F22 subtotal: c is 2 CAD, wants an amount in USD: rates of exchange are the author's");
        assert_eq!(subtotal(&[]).unwrap_err().wants, "1 cost or more");
        let euros = area_cost(&q("300 ft2"), &q("12 EUR/m2")).unwrap();
        holds(&euros, "EUR", "334.45");
        assert_eq!(line(&euros).1, "300 × 12 × 0.09290304 = 334.450944 EUR");
        assert!(load_cost(&q("-1 loads"), &q("1 USD")).is_err());
        assert!(area_cost(&q("-1 ft2"), &q("1 USD/ft2")).is_err());
        assert!(labour_cost(&q("-1 h"), &q("1 USD/h")).is_err());
        assert!(marked_up(&q("1 USD"), &q("-1 %")).is_err());
        assert!(per_area(&q("1 USD"), &q("0 ft2")).is_err());
    }
}
