//! F14: how much wall a batch covers, how long that takes, how old the mud is by then.

use crate::quantity::expr::{Area, Duration, Length, Loads, Node, OpenTime, Pace, Sort, Volume, Worked};
use crate::quantity::num::Direction;

use super::loads::Step;
use super::{Answer, OutOfRange, above_zero, refuse, shown, zero_or_more};

/// A time in whole minutes: what a watch on a wall can keep.
pub(super) fn minutes(node: Node, direction: Direction) -> Node {
    node.written_in("min").rounded(direction, 1, 1)
}

fn up<S: Sort>(time: &Worked<S>, symbol: &'static str) -> Node {
    minutes(time.named(symbol), Direction::Up)
}

/// Wall that a batch covers: `a = n × y ÷ t`; `n` loads, `y` yield of a load, `t` the applied thickness, wastes
/// in it.
///
/// `n ≥ 0`, `y` and `t` above 0. Assumes the batch goes on at one thickness. Source: `placing`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::placing::batch_area};
/// let (n, y, t) = (Worked::read("2 loads").unwrap(), Worked::read("1 ft3").unwrap(), Worked::read("1 1/2 in").unwrap());
/// assert_eq!(batch_area(&n, &y, &t).unwrap().in_unit("ft2"), 16.0);
/// ```
pub fn batch_area(n: &Worked<Loads>, y: &Worked<Volume>, t: &Worked<Length>) -> Answer<Area> {
    zero_or_more("F14 batch area", "n", n)?;
    above_zero("F14 batch area", "y", y)?;
    above_zero("F14 batch area", "t", t)?;
    let volume = super::like(n.named("n") * y.named("y"), y.node());
    Ok(Worked::new((volume / t.named("t")).formula("F14 batch area", "a")))
}

/// Thickness that the mud of a wall is applied at: `t_app = V ÷ A`; `V` the mud to mix, waste in it, `A` the flat area.
///
/// Both above 0. Right for round work too, where thickness by itself would be short. Source: `placing`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::placing::applied};
/// let t = applied(&Worked::read("12 ft3").unwrap(), &Worked::read("100 ft2").unwrap()).unwrap();
/// assert_eq!(format!("{:.2}", t.in_unit("in")), "1.44");
/// ```
pub fn applied(v: &Worked<Volume>, a: &Worked<Area>) -> Answer<Length> {
    above_zero("F14 applied", "V", v)?;
    above_zero("F14 applied", "A", a)?;
    let t = v.named("V") / a.named("A");
    let inches = !a.node().unit().is_some_and(crate::quantity::expr::is_metric);
    Ok(Worked::new(t.written_in(if inches { "in" } else { "mm" }).formula("F14 applied", "t_app")))
}

/// Pace of a crew: `P = people × p`; `p` the area one pair of hands covers in an hour.
///
/// Both above 0. Assumes that nobody waits for anybody. Source: `placing`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::placing::crew_pace};
/// let p = crew_pace(&Worked::read("3").unwrap(), &Worked::read("14 ft2/h").unwrap()).unwrap();
/// assert_eq!(p.in_unit("ft2/h"), 42.0);
/// ```
pub fn crew_pace(people: &Worked<crate::quantity::expr::Plain>, pace: &Worked<Pace>) -> Answer<Pace> {
    above_zero("F14 crew pace", "people", people)?;
    above_zero("F14 crew pace", "p", pace)?;
    let crew = super::like(people.named("people") * pace.named("p"), pace.node());
    Ok(Worked::new(crew.formula("F14 crew pace", "P")))
}

/// Whole minutes that placing takes: `place = up(a ÷ P, 1)`; `a` area, `P` the crew's pace.
///
/// `a ≥ 0`, `P > 0`. Rounded up, so that sums of printed times are on the safe side. Source: `placing`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::placing::placing_time};
/// let t = placing_time(&Worked::read("15.26 ft2").unwrap(), &Worked::read("42 ft2/h").unwrap()).unwrap();
/// assert_eq!(t.in_unit("min"), 22.0);
/// ```
pub fn placing_time(a: &Worked<Area>, p: &Worked<Pace>) -> Answer<Duration> {
    zero_or_more("F14 placing", "a", a)?;
    above_zero("F14 placing", "P", p)?;
    let time = minutes(a.named("a") / p.named("P"), Direction::Up);
    Ok(Worked::new(time.formula("F14 placing", "place")))
}

/// Age of a batch when its last mud is on the wall: `age = up(mixing, 1) + up(moving, 1) + up(place, 1)`, counted
/// from water in.
///
/// None below 0. The three times follow one another. Whole minutes first, then the sum. Source: `placing`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::placing::age};
/// let m = |t| Worked::read(t).unwrap();
/// assert_eq!(age(&m("6 min"), &m("4 min"), &m("21.8 min")).unwrap().in_unit("min"), 32.0);
/// ```
pub fn age(mixing: &Worked<Duration>, moving: &Worked<Duration>, place: &Worked<Duration>) -> Answer<OpenTime> {
    for (symbol, time) in [("mixing", mixing), ("moving", moving), ("place", place)] {
        zero_or_more("F14 age", symbol, time)?;
    }
    let sum = up(mixing, "mixing") + up(moving, "moving") + up(place, "place");
    Ok(Worked::new(sum.formula("F14 age", "age")))
}

/// Minutes left when the last mud is on the wall: `slack = down(t_open, 1) − age`; below 0 the batch is stale.
///
/// `t_open > 0`, `age ≥ 0`. A minus is an answer, not an error. Source: `placing`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::placing::slack};
/// let s = slack(&Worked::read("23.3 min").unwrap(), &Worked::read("32 min").unwrap()).unwrap();
/// assert_eq!(s.in_unit("min"), -9.0);
/// ```
pub fn slack(open: &Worked<OpenTime>, age: &Worked<OpenTime>) -> Answer<Duration> {
    above_zero("F14 slack", "t_open", open)?;
    zero_or_more("F14 slack", "age", age)?;
    let left = minutes(open.named("t_open"), Direction::Down) - age.named("age");
    Ok(Worked::new(left.formula("F14 slack", "slack")))
}

/// Loads a crew can place in time.
#[derive(Clone, Debug)]
pub struct InTime {
    /// Unrounded.
    pub exact: Worked<Loads>,
    /// Rounded down to the step.
    pub loads: Worked<Loads>,
}

/// Largest batch a crew can place: `n_time = P × (down(t_open, 1) − up(mixing, 1) − up(moving, 1)) × t ÷ y`, and
/// `n = down(n_time, 1)` or to halves; `P` the crew's pace, `t` applied thickness, `y` yield of a load.
///
/// `P`, `t`, `y` above 0; the open time longer than mixing and moving, else no mud reaches the wall alive. A crew
/// too slow for one step places 0 loads; that is an answer, not an error. Source: `placing`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{loads::Step, placing::loads_in_time}};
/// let (t, y) = (Worked::read("1 in").unwrap(), Worked::read("1 ft3").unwrap());
/// let m = |t| Worked::read(t).unwrap();
/// let open = Worked::read("50 min").unwrap();
/// let n = loads_in_time(&Worked::read("42 ft2/h").unwrap(), &open, (&m("6 min"), &m("4 min")), &t, &y, Step::Whole);
/// assert_eq!(n.unwrap().loads.value().si.to_f64(), 2.0);
/// ```
pub fn loads_in_time(
    p: &Worked<Pace>,
    open: &Worked<OpenTime>,
    (mixing, moving): (&Worked<Duration>, &Worked<Duration>),
    t: &Worked<Length>,
    y: &Worked<Volume>,
    step: Step,
) -> Result<InTime, OutOfRange> {
    let key = "F14 loads in time";
    above_zero(key, "P", p)?;
    above_zero(key, "t", t)?;
    above_zero(key, "y", y)?;
    zero_or_more(key, "mixing", mixing)?;
    zero_or_more(key, "moving", moving)?;
    let spent = up(mixing, "mixing") + up(moving, "moving");
    let open_minutes = minutes(open.named("t_open"), Direction::Down);
    if open_minutes.value().si.compare(&spent.value().si).is_le() {
        return Err(refuse(key, "t_open", open, format!("at least 1 min more than mixing and moving, {}", shown(&spent))));
    }
    let left = open_minutes - up(mixing, "mixing") - up(moving, "moving");
    let volume = super::like(p.named("P") * left * t.named("t"), y.node());
    let exact: Worked<Loads> = Worked::new((volume / y.named("y")).written_in("load").formula(key, "n_time"));
    let loads = exact.named("n_time").rounded(Direction::Down, 1, step.parts()).formula("F14 whole loads in time", "n");
    Ok(InTime { loads: Worked::new(loads), exact })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source: 1.4683 in of rubble, 0.9338 ft3 a load.
    #[test]
    fn two_loads_on_the_rubble_wall() {
        let a = batch_area(&q("2 loads"), &q("0.93385 ft3"), &q("1.4683 in")).unwrap();
        holds(&a, "ft2", "15.26");
        let p = crew_pace(&q("3"), &q("14 ft2/h")).unwrap();
        let free: Worked<Duration> = Worked::new(a.node().clone() / p.node().clone());
        holds(&free, "min", "21.8");
        let place = placing_time(&a, &p).unwrap();
        holds(&place, "min", "22");
        // The design adds the unrounded 21.8 to 31.8.
        let old = age(&q("6 min"), &q("4 min"), &place).unwrap();
        holds(&old, "min", "32");
        holds(&slack(&q("50 min"), &old).unwrap(), "min", "18");
        assert_eq!(line(&old).1, "up(6, 1) + up(4, 1) + up(22, 1) = 32 min");
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn the_batch_that_can_be_placed_in_time() {
        let n = |open: &str, step| {
            let times = (&q("6 min"), &q("4 min"));
            loads_in_time(&q("42 ft2/h"), &q(open), times, &q("1.4683 in"), &q("0.93385 ft3"), step).unwrap()
        };
        holds(&n("50 min", Step::Whole).exact, "", "3.67");
        holds(&n("50 min", Step::Whole).loads, "", "3");
        holds(&n("50 min", Step::Half).loads, "", "3.5");
        // The design prints 1.22 from 23.3 min; in whole minutes 23 are left, and that gives 1.19.
        holds(&n("23.326 min", Step::Whole).exact, "", "1.19");
        holds(&n("23.326 min", Step::Whole).loads, "", "1");
        let slow = loads_in_time(&q("1 ft2/h"), &q("50 min"), (&q("6 min"), &q("4 min")), &q("1 in"), &q("1 ft3"), Step::Whole);
        holds(&slow.unwrap().loads, "", "0");
    }

    #[test]
    fn out_of_range() {
        let refused = batch_area(&q("2 loads"), &q("1 ft3"), &q("0 in")).unwrap_err();
        assert_eq!((refused.symbol, refused.wants.as_str()), ("t", "more than 0, such as `1 in`"));
        assert_eq!(crew_pace(&q("0"), &q("14 ft2/h")).unwrap_err().symbol, "people");
        assert_eq!(placing_time(&q("15 ft2"), &q("0 ft2/h")).unwrap_err().wants, "more than 0, such as `1 ft2/h`");
        assert_eq!(age(&q("-1 min"), &q("2 min"), &q("3 min")).unwrap_err().symbol, "mixing");
        assert_eq!(slack(&q("0 min"), &q("32 min")).unwrap_err().symbol, "t_open");
        let dead = loads_in_time(&q("42 ft2/h"), &q("10.9 min"), (&q("6 min"), &q("4 min")), &q("1 in"), &q("1 ft3"), Step::Whole);
        assert_eq!(dead.unwrap_err().wants, "at least 1 min more than mixing and moving, 10 min");
        assert!(loads_in_time(&q("42 ft2/h"), &q("11 min"), (&q("6 min"), &q("4 min")), &q("1 in"), &q("1 ft3"), Step::Whole).is_ok());
    }
}
