//! F2: how thick a carved face is on average, and how much mud must be mixed for it.

use crate::quantity::expr::{Area, Length, Node, Plain, Share, Volume, Worked};
use crate::quantity::num::Direction;

use super::{Answer, OutOfRange, above_zero, at_most, below_one, like, mud, refuse, rest, zero_or_more};

fn band(formula: &'static str, t_min: &Worked<Length>, t_max: &Worked<Length>) -> Result<(), OutOfRange> {
    zero_or_more(formula, "t_min", t_min)?;
    at_most(formula, "t_min", t_min, t_max, "the greatest thickness")
}

/// Mean thickness: `t_mean = t_min + k × (t_max − t_min)`; `t_min` and `t_max` the thinnest and thickest
/// places left after carving, `k` the fill, the share of the relief band that is still mud.
///
/// `0 ≤ t_min ≤ t_max`, `0 % ≤ k ≤ 100 %`. Assumes the fill is the mock-up's. Source: `relief-fill`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::relief::mean_thickness};
/// let t = mean_thickness(&Worked::read("3/8 in").unwrap(), &Worked::read("1 3/4 in").unwrap(), &Worked::read("62 %").unwrap()).unwrap();
/// assert_eq!(t.in_unit("in"), 1.2275);
/// ```
pub fn mean_thickness(t_min: &Worked<Length>, t_max: &Worked<Length>, k: &Worked<Share>) -> Answer<Length> {
    band("F2 mean", t_min, t_max)?;
    zero_or_more("F2 mean", "k", k)?;
    if k.value().si.to_f64() > 1.0 {
        return Err(refuse("F2 mean", "k", k, "0 % to 100 %, such as `62 %`"));
    }
    let cut = like(k.named("k") * (t_max.named("t_max") - t_min.named("t_min")), t_min.node());
    Ok(Worked::new((t_min.named("t_min") + cut).formula("F2 mean", "t_mean")))
}

fn kept(formula: &'static str, w_carve: &Worked<Share>, w_drop: &Worked<Share>) -> Result<Node, OutOfRange> {
    below_one(formula, "w_carve", w_carve)?;
    below_one(formula, "w_drop", w_drop)?;
    Ok(rest(&w_carve.named("w_carve")) * rest(&w_drop.named("w_drop")))
}

/// Thickness to mix for: `t_applied = t_mean ÷ ((1 − w_carve) × (1 − w_drop))`; `w_carve` the share carved off,
/// `w_drop` the share lost as droppings and in tubs.
///
/// Both wastes `0 % ≤ w < 100 %`. The wastes are shares of what is mixed, so they divide: 12 % and 5 % add
/// 19.6 %, not 17 %. Source: `waste-divided`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::relief::applied_thickness};
/// let t = applied_thickness(&Worked::read("1.2275 in").unwrap(), &Worked::read("12 %").unwrap(), &Worked::read("5 %").unwrap()).unwrap();
/// assert_eq!(format!("{:.4}", t.in_unit("in")), "1.4683");
/// ```
pub fn applied_thickness(t_mean: &Worked<Length>, w_carve: &Worked<Share>, w_drop: &Worked<Share>) -> Answer<Length> {
    zero_or_more("F2 applied", "t_mean", t_mean)?;
    let t = like(t_mean.named("t_mean") / kept("F2 applied", w_carve, w_drop)?, t_mean.node());
    Ok(Worked::new(t.formula("F2 applied", "t_applied")))
}

/// Mud to mix for a flat face: `V = A × t ÷ ((1 − w_carve) × (1 − w_drop))`; `A` area, `t` mean thickness.
///
/// `A > 0`, `t ≥ 0`, wastes `0 % ≤ w < 100 %`. Assumes a flat face: round work needs
/// [`annulus`](super::coats::annulus) and [`with_waste`]. Source: `waste-divided`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::relief::mixed_volume};
/// let v = mixed_volume(
///     &Worked::read("100 ft2").unwrap(),
///     &Worked::read("1 1/4 in").unwrap(),
///     &Worked::read("0 %").unwrap(),
///     &Worked::read("0 %").unwrap(),
/// );
/// assert_eq!(format!("{:.4}", v.unwrap().in_unit("ft3")), "10.4167");
/// ```
pub fn mixed_volume(a: &Worked<Area>, t: &Worked<Length>, w_carve: &Worked<Share>, w_drop: &Worked<Share>) -> Answer<Volume> {
    above_zero("F2 mixed volume", "A", a)?;
    zero_or_more("F2 mixed volume", "t", t)?;
    let on_wall = mud(a.named("A") * t.named("t_mean"));
    let v = mud(on_wall / kept("F2 mixed volume", w_carve, w_drop)?);
    Ok(Worked::new(v.formula("F2 mixed volume", "V")))
}

/// Mud to mix for a volume that stays on the wall: `V = V_wall ÷ ((1 − w_carve) × (1 − w_drop))`.
///
/// `V_wall ≥ 0`, wastes `0 % ≤ w < 100 %`. Source: `waste-divided`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::relief::with_waste};
/// let v = with_waste(&Worked::read("8.36 ft3").unwrap(), &Worked::read("12 %").unwrap(), &Worked::read("5 %").unwrap()).unwrap();
/// assert_eq!(v.in_unit("ft3"), 10.0);
/// ```
pub fn with_waste(wall: &Worked<Volume>, w_carve: &Worked<Share>, w_drop: &Worked<Share>) -> Answer<Volume> {
    zero_or_more("F2 mixed", "V_wall", wall)?;
    let v = like(wall.named("V_wall") / kept("F2 mixed", w_carve, w_drop)?, wall.node());
    Ok(Worked::new(v.formula("F2 mixed", "V")))
}

/// What a grid of depths on a mock-up says.
#[derive(Clone, Debug)]
pub struct Grid {
    /// Mean of the depths.
    pub mean: Worked<Length>,
    /// Their standard deviation, as of a sample.
    pub deviation: Worked<Length>,
    /// Standard error of the mean.
    pub error: Worked<Length>,
    /// Fill: `(mean − t_min) ÷ (t_max − t_min)`.
    pub fill: Worked<Share>,
    /// Standard error of the fill.
    pub fill_error: Worked<Share>,
    /// Points that would bring the standard error to one in twenty of the mean, rounded up.
    pub points: Worked<Plain>,
}

/// Fill and its standard error from depths `d1 … dn` on a mock-up, between `t_min` and `t_max` of the design.
///
/// Two depths or more, none below 0, their mean above 0; `t_min < t_max`. Assumes the points were set blind,
/// on a grid. Outside the relief band the fill comes out below 0 % or above 100 %: that is the caller's to
/// judge. Source: `sample-statistics`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::relief::depth_grid};
/// let depths = ["1/2 in", "1 in", "1 1/2 in"].map(|t| Worked::read(t).unwrap());
/// let grid = depth_grid(&depths, &Worked::read("1/2 in").unwrap(), &Worked::read("1 3/4 in").unwrap()).unwrap();
/// assert_eq!(grid.fill.in_unit("%"), 40.0);
/// assert_eq!(grid.deviation.in_unit("in"), 0.5);
/// ```
pub fn depth_grid(depths: &[Worked<Length>], t_min: &Worked<Length>, t_max: &Worked<Length>) -> Result<Grid, OutOfRange> {
    band("F2 fill", t_min, t_max)?;
    let width = t_max.named("t_max") - t_min.named("t_min");
    if width.value().si.is_zero() {
        return Err(refuse("F2 fill", "t_max", t_max, "more than the least thickness"));
    }
    for d in depths {
        zero_or_more("F2 grid mean", "d", d)?;
    }
    let named: Vec<Node> = depths.iter().enumerate().map(|(i, d)| d.named(format!("d{}", i + 1))).collect();
    let n = i64::try_from(named.len()).unwrap_or(i64::MAX);
    let (Some(sum), 2..) = (named.iter().cloned().reduce(|a, b| a + b), n) else {
        let value = n.to_string();
        return Err(OutOfRange { formula: "F2 grid mean", symbol: "n", value, wants: "2 depths or more, such as 12".to_owned() });
    };
    let count = || Node::given(n, 1);
    let mean = like(sum / count(), t_min.node()).formula("F2 grid mean", "t_grid");
    let mean = Worked::<Length>::new(mean);
    above_zero("F2 grid mean", "t_grid", &mean)?;

    let square = |d: &Node| (d.clone() - mean.named("t_grid")) * (d.clone() - mean.named("t_grid"));
    // Square inches for inches; a unit whose square has no name of its own keeps the usual one.
    let in_own_unit = |node: Node| match t_min.node().unit() {
        Some(unit) => node.written_in(&format!("{}2", unit.symbol())),
        None => node,
    };
    let squares = named.iter().map(|d| in_own_unit(square(d)));
    let squares = squares.reduce(|a, b| a + b).unwrap_or_else(|| mean.named("t_grid") * mean.named("t_grid"));
    let deviation =
        Worked::<Length>::new(like(in_own_unit(squares / Node::given(n - 1, 1)).sqrt(), t_min.node()).formula("F2 deviation", "s"));
    let error = like(deviation.named("s") / count().sqrt(), t_min.node()).formula("F2 standard error", "e");
    let error = Worked::<Length>::new(error);
    let share = |node: Node, key, symbol| Worked::<Share>::new(node.written_in("%").formula(key, symbol));
    let fill = share((mean.named("t_grid") - t_min.named("t_min")) / width.clone(), "F2 fill", "k");
    let fill_error = share(error.named("e") / width, "F2 fill error", "e_k");
    let ratio = || deviation.named("s") / (Node::given(1, 20) * mean.named("t_grid"));
    let points = Worked::new((ratio() * ratio()).rounded(Direction::Up, 1, 1).formula("F2 points", "n"));
    Ok(Grid { mean, deviation, error, fill, fill_error, points })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn rubble_and_its_waste() {
        let t = mean_thickness(&q("3/8 in"), &q("1 3/4 in"), &q("62 %")).unwrap();
        holds(&t, "in", "1.2275");
        holds(&t, "mm", "31.2");
        let (symbols, numbers) = line(&t);
        assert_eq!(symbols, "t_mean = t_min + k × (t_max − t_min)");
        assert_eq!(numbers, "0.375 + 62 × (1.75 − 0.375) ÷ 100 = 1.2275 in");
        let applied = applied_thickness(&t, &q("12 %"), &q("5 %")).unwrap();
        holds(&applied, "in", "1.4683");
        assert_eq!(line(&applied).1, "1.2275 ÷ ((1 − 12 ÷ 100) × (1 − 5 ÷ 100)) = 1.468301 in");
        // Divided, not added on: 19.6 %, not 17 %.
        holds(&with_waste(&q("1 ft3"), &q("12 %"), &q("5 %")).unwrap(), "ft3", "1.196");
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn a_grid_of_twelve() {
        let texts = [
            "1/2 in", "1 1/2 in", "1 1/4 in", "3/8 in", "1 5/8 in", "1 3/4 in", "1 1/4 in", "3/4 in", "1 1/2 in", "1 1/8 in", "1 3/8 in",
            "1 1/2 in",
        ];
        let depths: Vec<_> = texts.iter().map(|t| q(t)).collect();
        let grid = depth_grid(&depths, &q("3/8 in"), &q("1 3/4 in")).unwrap();
        holds(&grid.mean, "in", "1.2083");
        holds(&grid.deviation, "in", "0.444");
        holds(&grid.error, "in", "0.128");
        holds(&grid.fill, "", "0.606");
        holds(&grid.fill_error, "", "0.09");
        // The design says "about 54 points": 53.9 of them, and whole ones go up.
        holds(&grid.points, "", "54");
    }

    // Worked example of the design, common practice, no source; metric.
    #[test]
    fn metric_volumes_come_in_litres() {
        let v = mixed_volume(&q("5.6 m2"), &q("22 mm"), &q("15 %"), &q("6 %")).unwrap();
        assert_eq!(v.node().unit().unwrap().symbol(), "L");
        holds(&v, "L", "154.2");
        assert_eq!(line(&v).1, "5.6 × 22 ÷ ((1 − 15 ÷ 100) × (1 − 6 ÷ 100)) = 123200/799 L");
    }

    #[test]
    fn impossible_relief_is_refused() {
        assert_eq!(mean_thickness(&q("1 in"), &q("3/4 in"), &q("62 %")).unwrap_err().symbol, "t_min");
        assert_eq!(mean_thickness(&q("1/4 in"), &q("3/4 in"), &q("120 %")).unwrap_err().value, "120 %");
        assert_eq!(with_waste(&q("1 ft3"), &q("100 %"), &q("5 %")).unwrap_err().symbol, "w_carve");
        assert_eq!(depth_grid(&[q("1 in")], &q("1/4 in"), &q("2 in")).unwrap_err().value, "1");
        assert!(depth_grid(&[q("1 in"), q("1 in")], &q("1/4 in"), &q("1/4 in")).is_err());
    }
}
