//! F24: what a finished wall teaches about waste.

use crate::quantity::expr::{Area, Length, Loads, Node, Share, Volume, Worked};

use super::{Answer, OutOfRange, above_zero, at_most, below_one, like, mud, refuse, zero_or_more};

/// Mud that stayed on the wall, per load: `v = A × t ÷ N`; `A` area, `t` its measured mean thickness, `N` loads mixed for it.
///
/// `A` and `N` above 0, `t ≥ 0`. Loads that were thrown away count: that is the point. Source: `learned-waste`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::learning::net_per_load};
/// let v = net_per_load(&Worked::read("126 ft2").unwrap(), &Worked::read("1.2275 in").unwrap(), &Worked::read("17.5 loads").unwrap()).unwrap();
/// assert_eq!(format!("{:.4}", v.in_unit("ft3")), "0.7365");
/// ```
pub fn net_per_load(a: &Worked<Area>, t: &Worked<Length>, n: &Worked<Loads>) -> Answer<Volume> {
    above_zero("F24 net", "A", a)?;
    zero_or_more("F24 net", "t", t)?;
    above_zero("F24 net", "N", n)?;
    Ok(Worked::new(mud(mud(a.named("A") * t.named("t")) / n.named("N")).formula("F24 net", "v")))
}

/// Mud that a load was planned to leave on the wall: `v = y × (1 − w_carve) × (1 − w_drop)`; `y` yield of a load.
///
/// `y > 0`, wastes `0 % ≤ w < 100 %`. Source: `learned-waste`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::learning::planned_per_load};
/// let share = |t| Worked::read(t).unwrap();
/// let v = planned_per_load(&Worked::read("0.9338 ft3").unwrap(), &share("12 %"), &share("5 %")).unwrap();
/// assert_eq!(format!("{:.4}", v.in_unit("ft3")), "0.7807");
/// ```
pub fn planned_per_load(y: &Worked<Volume>, w_carve: &Worked<Share>, w_drop: &Worked<Share>) -> Answer<Volume> {
    above_zero("F24 planned", "y", y)?;
    below_one("F24 planned", "w_carve", w_carve)?;
    below_one("F24 planned", "w_drop", w_drop)?;
    let kept = super::rest(&w_carve.named("w_carve")) * super::rest(&w_drop.named("w_drop"));
    Ok(Worked::new(like(y.named("y") * kept, y.node()).formula("F24 planned", "v")))
}

/// Waste of a wall: `w = 1 − v ÷ y`; `v` what stayed on the wall per load, `y` yield.
///
/// `0 ≤ v ≤ y`: more than a load yields cannot stay on the wall, so then an area, a thickness or a count is wrong. `y > 0`.
/// Source: `learned-waste`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::learning::waste};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(format!("{:.1}", waste(&read("0.7365 ft3"), &read("0.9338 ft3")).unwrap().in_unit("%")), "21.1");
/// ```
pub fn waste(v: &Worked<Volume>, y: &Worked<Volume>) -> Answer<Share> {
    zero_or_more("F24 waste", "v", v)?;
    above_zero("F24 waste", "y", y)?;
    at_most("F24 waste", "v", v, y, "the yield of a load: check area, thickness and loads")?;
    Ok(Worked::new((Node::given(1, 1) - v.named("v") / y.named("y")).written_in("%").formula("F24 waste", "w")))
}

/// Planning waste for the next wall: `w = (N0 × w0 + N × w1) ÷ (N0 + N)`; `w0` the waste planned with until now and the `N0`
/// loads it is worth, `w1` the waste of this wall and its `N` loads.
///
/// Wastes `0 % ≤ w < 100 %`, loads 0 or more, not both 0. Source: `learned-waste`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::learning::blend};
/// let (w0, w1) = (Worked::read("16.4 %").unwrap(), Worked::read("21.1 %").unwrap());
/// let w = blend(&w0, &Worked::read("20 loads").unwrap(), &w1, &Worked::read("17.5 loads").unwrap()).unwrap();
/// assert_eq!(format!("{:.1}", w.in_unit("%")), "18.6");
/// ```
pub fn blend(w0: &Worked<Share>, n0: &Worked<Loads>, w1: &Worked<Share>, n: &Worked<Loads>) -> Answer<Share> {
    const KEY: &str = "F24 blend";
    below_one(KEY, "w0", w0)?;
    below_one(KEY, "w1", w1)?;
    zero_or_more(KEY, "N0", n0)?;
    zero_or_more(KEY, "N", n)?;
    let loads = n0.named("N0") + n.named("N");
    if loads.value().si.is_zero() {
        return Err::<_, OutOfRange>(refuse(KEY, "N", n, "more than 0 where there is nothing before, such as `1 load`"));
    }
    let weighed = n0.named("N0") * w0.named("w0") + n.named("N") * w1.named("w1");
    Ok(Worked::new((weighed / loads).written_in("%").formula(KEY, "w")))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::super::yields::tests::load;
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn a_wall_that_took_more() {
        let (y, ..) = load(("24 lb", "2.30"), ("80 lb", "2.66"), "1.5 gal", true, "9 %");
        let net = net_per_load(&q("126 ft2"), &q("1.2275 in"), &q("17.5 loads")).unwrap();
        holds(&net, "ft3", "0.7365");
        let planned = planned_per_load(&y, &q("12 %"), &q("5 %")).unwrap();
        holds(&planned, "ft3", "0.7807");
        let (now, before) = (waste(&net, &y).unwrap(), waste(&planned, &y).unwrap());
        holds(&now, "%", "21.1");
        holds(&before, "%", "16.4");
        let next = blend(&before, &q("20 loads"), &now, &q("17.5 loads")).unwrap();
        holds(&next, "%", "18.6");
        assert_eq!(line(&next).0, "w = (N0 × w0 + N × w1) ÷ (N0 + N)");
        let metric = net_per_load(&q("27.9 m2"), &q("37.44 mm"), &q("52 loads")).unwrap();
        holds(&metric, "L", "20.1");
    }

    #[test]
    fn more_than_the_yield_is_a_wrong_count() {
        let refused = waste(&q("1 ft3"), &q("0.9338 ft3")).unwrap_err();
        assert_eq!(refused.wants, "at most 0.9338 ft3 (the yield of a load: check area, thickness and loads)");
        assert!(net_per_load(&q("1 ft2"), &q("1 in"), &q("0 loads")).is_err());
        assert!(planned_per_load(&q("1 ft3"), &q("100 %"), &q("5 %")).is_err());
        assert!(blend(&q("1 %"), &q("0 loads"), &q("1 %"), &q("0 loads")).unwrap_err().wants.contains("`1 load`"));
    }
}
