//! F27: how far off the loads may be, and which measurement is worth making better.

use std::cmp::Ordering;

use crate::quantity::expr::{Node, Plain, Share, Sort, Worked};
use crate::quantity::num::Direction;

use super::{Answer, OutOfRange, above_zero, below_one, refuse, zero_or_more};

fn share(node: Node, key: &'static str, symbol: &'static str) -> Worked<Share> {
    Worked::new(node.written_in("%").formula(key, symbol))
}

/// Relative error: `e = d ÷ x`; `d` the error of a measured `x`, both of one sort.
///
/// `d ≥ 0`, `x > 0`. Source: `error-sum`.
/// ```
/// use hodbook::{quantity::expr::{Length, Worked}, trade::error_budget::relative};
/// let read = |t| Worked::<Length>::read(t).unwrap();
/// assert_eq!(format!("{:.1}", relative(&read("1/8 in"), &read("1.228 in")).unwrap().in_unit("%")), "10.2");
/// ```
pub fn relative<S: Sort>(d: &Worked<S>, x: &Worked<S>) -> Answer<Share> {
    zero_or_more("F27 relative", "d", d)?;
    above_zero("F27 relative", "x", x)?;
    Ok(share(d.named("d") / x.named("x"), "F27 relative", "e"))
}

/// What an error of the air does to the yield: `e = d ÷ (1 − air)`; `d` the error in points, `2 %` for two points.
///
/// `d ≥ 0`, `0 % ≤ air < 100 %`: mud is what is not air. Source: `error-sum`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::error_budget::of_air};
/// let e = of_air(&Worked::read("2 %").unwrap(), &Worked::read("9 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.1}", e.in_unit("%")), "2.2");
/// ```
pub fn of_air(d: &Worked<Share>, air: &Worked<Share>) -> Answer<Share> {
    zero_or_more("F27 air", "d", d)?;
    below_one("F27 air", "air", air)?;
    Ok(share(d.named("d") / super::rest(&air.named("air")), "F27 air", "e"))
}

/// One source of error.
#[derive(Clone, Debug)]
pub struct Part {
    /// What is measured, as the print names it.
    pub name: String,
    /// Its relative error.
    pub error: Worked<Share>,
}

/// All errors together.
#[derive(Clone, Debug)]
pub struct Budget {
    /// Relative error of the result.
    pub total: Worked<Share>,
    /// Name of the largest part.
    pub largest: String,
    /// Its share of the squared sum: what measuring it perfectly would take away.
    pub largest_share: Worked<Share>,
}

fn squares(parts: &[Part]) -> Option<Node> {
    let square = |(i, p): (usize, &Part)| {
        let e = || p.error.named(format!("e{}", i + 1));
        e() * e()
    };
    parts.iter().enumerate().map(square).reduce(|a, b| a + b)
}

/// Errors of independent parts: `e = sqrt(e1 × e1 + e2 × e2 + …)`, `share = e_max × e_max ÷ (e × e)`.
///
/// At least one part, each 0 or more, one above 0. Parts that err together (one scale for both bags) add plainly and belong in
/// one part. Source: `error-sum`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::error_budget::{Part, budget}};
/// let part = |name: &str, e| Part { name: name.to_owned(), error: Worked::read(e).unwrap() };
/// let all = budget(&[part("thickness", "3 %"), part("waste", "4 %")]).unwrap();
/// assert_eq!((all.total.in_unit("%"), all.largest.as_str()), (5.0, "waste"));
/// ```
pub fn budget(parts: &[Part]) -> Result<Budget, OutOfRange> {
    const KEY: &str = "F27 total";
    for part in parts {
        zero_or_more(KEY, "e", &part.error)?;
    }
    let by_error = |a: &&Part, b: &&Part| a.error.value().si.compare(&b.error.value().si);
    // Of equals the first is named.
    let largest = parts.iter().reduce(|a, b| if by_error(&a, &b) == Ordering::Less { b } else { a });
    let (Some(sum), Some(largest)) = (squares(parts), largest) else {
        return Err(OutOfRange { formula: KEY, symbol: "parts", value: "0".to_owned(), wants: "1 part or more".to_owned() });
    };
    above_zero(KEY, "e_max", &largest.error)?;
    let total = share(sum.sqrt(), KEY, "e");
    let e = || largest.error.named("e_max");
    let largest_share = share(e() * e() / (total.named("e") * total.named("e")), "F27 share", "share");
    Ok(Budget { total, largest: largest.name.clone(), largest_share })
}

/// Depth pins to set beside the `n` there are: `more = max(up(n × e_t × e_t ÷ (target × target − rest × rest), 1) − n, 0)`;
/// `e_t` the error of the thickness as `n` pins give it, `rest` the error of all other parts together, `target` the error
/// wanted of the whole.
///
/// `n` 2 or more, `e_t ≥ 0`, `rest ≥ 0`, `target` above `rest`: no pins mend what the other parts spoil. Assumes pins set blind, so
/// that their error falls with the root of their number. Source: `error-sum`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::error_budget::more_pins};
/// let read = |t| Worked::read(t).unwrap();
/// let n = more_pins(&Worked::read("12").unwrap(), &read("10 %"), &read("3 %"), &read("5 %")).unwrap();
/// assert_eq!(n.value().si.to_f64(), 63.0);
/// ```
pub fn more_pins(n: &Worked<Plain>, thickness: &Worked<Share>, rest: &Worked<Share>, target: &Worked<Share>) -> Answer<Plain> {
    const KEY: &str = "F27 more pins";
    if n.value().si.to_f64() < 2.0 {
        return Err(refuse(KEY, "n", n, "2 pins or more, such as `12`"));
    }
    zero_or_more(KEY, "e_t", thickness)?;
    zero_or_more(KEY, "rest", rest)?;
    if target.value().si.compare(&rest.value().si).is_le() {
        return Err(refuse(KEY, "target", target, format!("more than the {} of the other parts", super::shown(rest.node()))));
    }
    let square = |x: &Worked<Share>, symbol: &'static str| x.named(symbol) * x.named(symbol);
    let need = n.named("n") * square(thickness, "e_t") / (square(target, "target") - square(rest, "rest"));
    let more = need.rounded(Direction::Up, 1, 1) - n.named("n");
    Ok(Worked::new(more.max(Node::given(0, 1)).formula(KEY, "more")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;
    use crate::quantity::expr::Length;

    fn part(name: &str, error: Worked<Share>) -> Part {
        Part { name: name.to_owned(), error }
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn thickness_is_most_of_it() {
        let thickness = relative::<Length>(&q("1/8 in"), &q("1.228 in")).unwrap();
        holds(&thickness, "%", "10.2");
        let air = of_air(&q("2 %"), &q("9 %")).unwrap();
        holds(&air, "%", "2.2");
        let parts = [part("thickness", thickness), part("waste", q("4 %")), part("air", air), part("bags", q("1.6 %"))];
        let all = budget(&parts).unwrap();
        holds(&all.total, "%", "11.3");
        holds(&all.largest_share, "%", "82");
        assert_eq!(all.largest, "thickness");
        assert_eq!(line(&all.total).0, "e = sqrt(e1 × e1 + e2 × e2 + e3 × e3 + e4 × e4)");
        let rest = budget(&parts[1..]).unwrap();
        assert_eq!(rest.largest, "waste");
        let more = more_pins(&q("12"), &parts[0].error, &rest.total, &q("8 %")).unwrap();
        // 12 × 103.6 ÷ (64 − 23.4) = 30.6 pins.
        holds(&more, "", "19");
        // A target that is met already asks for none.
        holds(&more_pins(&q("12"), &parts[0].error, &rest.total, &q("12 %")).unwrap(), "", "0");
    }

    #[test]
    fn what_is_out_of_range_says_what_would_pass() {
        assert_eq!(budget(&[]).unwrap_err().wants, "1 part or more");
        assert_eq!(budget(&[part("air", q("0 %"))]).unwrap_err().symbol, "e_max");
        assert_eq!(budget(&[part("a", q("1 %")), part("b", q("1 %"))]).unwrap().largest, "a");
        let refused = more_pins(&q("12"), &q("10 %"), &q("5 %"), &q("5 %")).unwrap_err();
        assert_eq!(refused.wants, "more than the 5 % of the other parts");
        assert!(more_pins(&q("1"), &q("10 %"), &q("5 %"), &q("6 %")).is_err());
        assert!(relative::<Length>(&q("1 in"), &q("0 in")).is_err());
        assert!(of_air(&q("2 %"), &q("100 %")).is_err());
    }
}
