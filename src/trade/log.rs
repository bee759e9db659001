//! F23: what a row of batches says: its trend, its scatter, and the line above which a batch is not scatter.

use crate::quantity::expr::{Node, Plain, Share, Sort, Worked};
use crate::quantity::num::Num;
use crate::quantity::value::Quantity;

use super::{Answer, OutOfRange, above_zero, like, zero_or_more};

fn count<S>(formula: &'static str, values: &[Worked<S>], least: usize) -> Result<i64, OutOfRange> {
    if values.len() < least {
        let wants = format!("{least} batches or more");
        return Err(OutOfRange { formula, symbol: "n", value: values.len().to_string(), wants });
    }
    Ok(i64::try_from(values.len()).unwrap_or(i64::MAX))
}

fn sum(nodes: impl Iterator<Item = Node>) -> Option<Node> {
    nodes.reduce(|a, b| a + b)
}

fn too_few(formula: &'static str) -> OutOfRange {
    OutOfRange { formula, symbol: "n", value: "0".to_owned(), wants: "2 batches or more".to_owned() }
}

/// Least-squares slope of `x1 … xn` over their numbers, per batch: `b = ((1 − i_mean) × x1 + …) ÷ (n × (n² − 1) ÷ 12)`.
///
/// Two batches or more, in order, none left out. A slope is a drift of weather or bags, not a fault. Source: `log-trend`.
/// ```
/// use hodbook::{quantity::expr::{Volume, Worked}, trade::log::slope};
/// let totals: Vec<Worked<Volume>> = ["52 cups", "54 cups", "56 cups"].iter().map(|t| Worked::read(t).unwrap()).collect();
/// assert_eq!(slope(&totals).unwrap().in_unit("cup"), 2.0);
/// ```
pub fn slope<S: Sort>(x: &[Worked<S>]) -> Answer<S> {
    let n = count("F23 slope", x, 2)?;
    let first = x.first().ok_or_else(|| too_few("F23 slope"))?;
    let term = |(i, x): (i64, &Worked<S>)| like(Node::given(2 * i - n - 1, 2) * x.named(format!("x{i}")), x.node());
    let weighed = sum((1..).zip(x).map(term)).ok_or_else(|| too_few("F23 slope"))?;
    let spread = Node::given(n.saturating_mul(n.saturating_mul(n) - 1), 12);
    Ok(Worked::new(like(weighed / spread, first.node()).formula("F23 slope", "b")))
}

/// Moving range: `MR = abs(x2 − x1)`, of one batch and the one before it.
///
/// Source: `individuals-chart`.
/// ```
/// use hodbook::{quantity::expr::{Plain, Worked}, trade::log::moving_range};
/// let read = |t| Worked::<Plain>::read(t).unwrap();
/// assert_eq!(format!("{:.1}", moving_range(&read("3.4"), &read("3.7")).value().si.to_f64()), "0.3");
/// ```
pub fn moving_range<S: Sort>(before: &Worked<S>, now: &Worked<S>) -> Worked<S> {
    Worked::new((now.named("x2") - before.named("x1")).abs().formula("F23 moving range", "MR"))
}

/// Width of the band in mean moving ranges: `E2 = 3 ÷ d2`, `d2` 1.128 as books round it.
///
/// `d2 > 0`. Books also print 2.66 itself; the three differ in the fourth digit. Source: `individuals-chart`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::log::width};
/// assert_eq!(format!("{:.4}", width(&Worked::read("1.128").unwrap()).unwrap().value().si.to_f64()), "2.6596");
/// ```
pub fn width(d2: &Worked<Plain>) -> Answer<Plain> {
    above_zero("F23 width", "d2", d2)?;
    Ok(Worked::new((Node::given(3, 1) / d2.named("d2")).formula("F23 width", "E2")))
}

/// Mean range of two, in standard deviations: `d2 = 2 ÷ sqrt(pi)`, 1.128379.
///
/// Source: `individuals-chart`.
/// ```
/// use hodbook::trade::log::mean_range_of_two;
/// assert_eq!(format!("{:.3}", mean_range_of_two().value().si.to_f64()), "1.128");
/// ```
pub fn mean_range_of_two() -> Worked<Plain> {
    Worked::new((Node::given(2, 1) / Node::pi().sqrt()).formula("F23 d2", "d2"))
}

/// Highest moving range in mean moving ranges: `D4 = 1 + 3 × sqrt(2 − d2 × d2) ÷ d2`; 3.267 with `d2` of two.
///
/// `0 < d2`, `d2 × d2 ≤ 2`. The lowest, `1 − …`, is below nothing, so it is none. Source: `individuals-chart`.
/// ```
/// use hodbook::trade::log::{mean_range_of_two, range_width};
/// assert_eq!(format!("{:.3}", range_width(&mean_range_of_two()).unwrap().value().si.to_f64()), "3.267");
/// ```
pub fn range_width(d2: &Worked<Plain>) -> Answer<Plain> {
    above_zero("F23 range width", "d2", d2)?;
    let d = || d2.named("d2");
    let left = Node::given(2, 1) - d() * d();
    if left.value().si.is_negative() {
        return Err(super::refuse("F23 range width", "d2", d2, "at most the root of 2, such as `1.128`"));
    }
    Ok(Worked::new((Node::given(1, 1) + Node::given(3, 1) * left.sqrt() / d()).formula("F23 range width", "D4")))
}

/// Width of the band as books print it: 2.66 mean moving ranges.
///
/// Source: `individuals-chart`.
/// ```
/// use hodbook::trade::log::book_width;
/// assert_eq!(book_width().value().si.to_f64(), 2.66);
/// ```
pub fn book_width() -> Worked<Plain> {
    Worked::new(Node::constant(Quantity::plain(Num::frac(133, 50)), None, "E2", "IMC-02: texts on individuals charts print 2.66"))
}

/// A chart of single batches.
#[derive(Clone, Debug)]
pub struct Chart<S> {
    /// Mean.
    pub mean: Worked<S>,
    /// Mean moving range.
    pub range: Worked<S>,
    /// Line above which a batch is not scatter.
    pub upper: Worked<S>,
    /// Line below which it is not.
    pub lower: Worked<S>,
}

/// Chart of single batches: `mean = (x1 + … + xn) ÷ n`, `MR = (abs(x2 − x1) + …) ÷ (n − 1)`, `upper = mean + E2 × MR`,
/// `lower = mean − E2 × MR`; `E2` 2.66 by the book, see [`width`].
///
/// Two batches or more, in order; `E2 ≥ 0`. The lines are of this row of batches only, and know nothing of a mix's limit: that
/// stands by itself. Source: `individuals-chart`.
/// ```
/// use hodbook::{quantity::expr::{Volume, Worked}, trade::log::{book_width, chart}};
/// let totals: Vec<Worked<Volume>> = ["52 cups", "54 cups", "53 cups"].iter().map(|t| Worked::read(t).unwrap()).collect();
/// assert_eq!(format!("{:.2}", chart(&totals, &book_width()).unwrap().upper.in_unit("cup")), "56.99");
/// ```
pub fn chart<S: Sort>(x: &[Worked<S>], e2: &Worked<Plain>) -> Result<Chart<S>, OutOfRange> {
    let n = count("F23 mean", x, 2)?;
    zero_or_more("F23 upper", "E2", e2)?;
    let first = x.first().ok_or_else(|| too_few("F23 mean"))?;
    let named: Vec<Node> = (1..).zip(x).map(|(i, x): (i64, &Worked<S>)| x.named(format!("x{i}"))).collect();
    let total = sum(named.iter().cloned()).ok_or_else(|| too_few("F23 mean"))?;
    let mean: Worked<S> = Worked::new(like(total / Node::given(n, 1), first.node()).formula("F23 mean", "mean"));
    let moves = named.windows(2).filter_map(|pair| match pair {
        [a, b] => Some((b.clone() - a.clone()).abs()),
        _ => None,
    });
    let moves = sum(moves).ok_or_else(|| too_few("F23 mean range"))?;
    let range = like(moves / Node::given(n - 1, 1), first.node()).formula("F23 mean range", "MR");
    let range: Worked<S> = Worked::new(range);
    let band = || like(e2.named("E2") * range.named("MR"), first.node());
    let upper = Worked::new((mean.named("mean") + band()).formula("F23 upper", "upper"));
    let lower = Worked::new((mean.named("mean") - band()).formula("F23 lower", "lower"));
    Ok(Chart { mean, range, upper, lower })
}

/// Highest moving range that is scatter: `MR_upper = D4 × MR`; both 0 or more, `D4` 3.267 by the book, see [`range_width`].
///
/// Source: `individuals-chart`.
/// ```
/// use hodbook::{quantity::expr::{Volume, Worked}, trade::log::upper_range};
/// let up = upper_range(&Worked::<Volume>::read("2 cups").unwrap(), &Worked::read("3.267").unwrap()).unwrap();
/// assert_eq!(format!("{:.3}", up.in_unit("cup")), "6.534");
/// ```
pub fn upper_range<S: Sort>(range: &Worked<S>, d4: &Worked<Plain>) -> Answer<S> {
    zero_or_more("F23 upper range", "MR", range)?;
    zero_or_more("F23 upper range", "D4", d4)?;
    let up = like(d4.named("D4") * range.named("MR"), range.node());
    Ok(Worked::new(up.formula("F23 upper range", "MR_upper")))
}

/// How far a batch is off its target: `off = abs(x − target) ÷ target`; `target > 0`.
///
/// Source: `log-trend`.
/// ```
/// use hodbook::{quantity::expr::{Volume, Worked}, trade::log::off_target};
/// let read = |t| Worked::<Volume>::read(t).unwrap();
/// assert_eq!(off_target(&read("49 cups"), &read("50 cups")).unwrap().in_unit("%"), 2.0);
/// ```
pub fn off_target<S: Sort>(x: &Worked<S>, target: &Worked<S>) -> Answer<Share> {
    above_zero("F23 off target", "target", target)?;
    let off = (x.named("x") - target.named("target")).abs() / target.named("target");
    Ok(Worked::new(off.written_in("%").formula("F23 off target", "off")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;
    use crate::quantity::expr::Volume;

    fn totals(more: i64) -> Vec<Worked<Volume>> {
        [52, 54, 54, 56, 56, 58, 59, 59, 61].map(|n| q(&format!("{} cups", n + more))).to_vec()
    }

    // Worked example of the design, common practice, no source; and four cups up, as its correction has the log.
    #[test]
    fn nine_batches_of_a_hot_day() {
        let all = chart(&totals(0), &book_width()).unwrap();
        holds(&slope(&totals(0)).unwrap(), "cup", "1.05");
        holds(&all.mean, "cup", "56.56");
        holds(&all.range, "cup", "1.125");
        holds(&all.upper, "cup", "59.5");
        holds(&all.lower, "cup", "53.6");
        let up = chart(&totals(4), &book_width()).unwrap();
        holds(&slope(&totals(4)).unwrap(), "cup", "1.05");
        holds(&up.mean, "cup", "60.56");
        holds(&up.upper, "cup", "63.5");
        assert!(up.upper.value().si.exact().is_some());
        let three = slope(&totals(0)[..3]).unwrap();
        assert_eq!(
            line(&three),
            ("b = ((-1) × x1 + 0 × x2 + 1 × x3) ÷ 2".to_owned(), "((-1) × 52 + 0 × 54 + 1 × 54) ÷ 2 = 1 cup".to_owned())
        );
    }

    #[test]
    fn one_batch_has_no_trend() {
        assert_eq!(slope(&totals(0)[..1]).unwrap_err().to_string(), "F23 slope: n is 1, wants 2 batches or more");
        assert!(chart(&totals(0)[..1], &book_width()).is_err());
        assert!(chart(&totals(0), &q("-1")).is_err());
        assert_eq!(width(&q("0")).unwrap_err().wants, "more than 0, such as `1`");
        assert!(range_width(&q("1.5")).unwrap_err().wants.starts_with("at most the root of 2"));
        assert!(upper_range(&q::<Volume>("-1 cup"), &q("3.267")).is_err());
        assert!(off_target(&q::<Volume>("1 cup"), &q("0 cup")).is_err());
    }
}
