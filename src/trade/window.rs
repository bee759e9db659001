//! F16: how much wall a crew can carve before it closes.

use crate::quantity::expr::{Area, CarveTime, Clock, Duration, Node, Pace, Plain, Share, Worked};
use crate::quantity::num::Direction;
use crate::quantity::units::find_expr;
use crate::quantity::{Dim, Kind, Num, Quantity};

use super::{Answer, OutOfRange, above_zero, below_one, refuse, shown, zero_or_more};

fn window(key: &'static str, opens: &Worked<CarveTime>, closes: &Worked<CarveTime>, breaks: &Worked<Duration>) -> Result<Node, OutOfRange> {
    zero_or_more(key, "w_o", opens)?;
    zero_or_more(key, "b", breaks)?;
    let spent = opens.node().clone() + breaks.node().clone();
    if closes.value().si.compare(&spent.value().si).is_le() {
        return Err(refuse(key, "w_c", closes, format!("more than opening and breaks, {}", shown(&spent))));
    }
    Ok(closes.named("w_c") - opens.named("w_o") - breaks.named("b"))
}

/// Most wall that a split crew, carvers beside placers, can place in one go: `A = P × C × (w_c − w_o − b) ÷ (P − C)`;
/// `P` and `C` paces of placing and carving, `w_o` and `w_c` opening and closing of the window after placing, `b`
/// breaks inside it.
///
/// Nothing where `P ≤ C`: the carvers keep up and the window never binds. `P`, `C` above 0, `w_o`, `b` 0 or more,
/// `w_c > w_o + b`. Assumes that carving follows placing in the same order without a pause. Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::window::split_limit};
/// let (p, c) = (Worked::read("42 ft2/h").unwrap(), Worked::read("36 ft2/h").unwrap());
/// let (opens, closes) = (Worked::read("75 min").unwrap(), Worked::read("210 min").unwrap());
/// let a = split_limit(&p, &c, (&opens, &closes), &Worked::read("0 min").unwrap()).unwrap();
/// assert_eq!(a.unwrap().in_unit("ft2"), 567.0);
/// ```
pub fn split_limit(
    p: &Worked<Pace>,
    c: &Worked<Pace>,
    (opens, closes): (&Worked<CarveTime>, &Worked<CarveTime>),
    breaks: &Worked<Duration>,
) -> Result<Option<Worked<Area>>, OutOfRange> {
    let key = "F16 split crew";
    above_zero(key, "P", p)?;
    above_zero(key, "C", c)?;
    let w = window(key, opens, closes, breaks)?;
    if p.value().si.compare(&c.value().si).is_le() {
        return Ok(None);
    }
    let ratio = p.named("P") / (p.named("P") - c.named("C"));
    Ok(Some(Worked::new((c.named("C") * w * ratio).formula(key, "A_split"))))
}

/// Most wall that can be carved in a shift: `A = C × (H − w_o − clean_up − b)`; `H` the shift from first water in,
/// `w_o` opening of the window after placing, `b` breaks.
///
/// `C > 0`, the others 0 or more, `H > w_o + clean_up + b`. Assumes that carving begins when the first mud opens; the
/// first batch's mixing and moving are left out. Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::window::shift_limit};
/// let (c, opens) = (Worked::read("36 ft2/h").unwrap(), Worked::read("75 min").unwrap());
/// let t = |t| Worked::read(t).unwrap();
/// assert_eq!(shift_limit(&c, &t("8 h"), &opens, &t("45 min"), &t("0 min")).unwrap().in_unit("ft2"), 216.0);
/// ```
pub fn shift_limit(
    c: &Worked<Pace>,
    shift: &Worked<Duration>,
    opens: &Worked<CarveTime>,
    clean_up: &Worked<Duration>,
    breaks: &Worked<Duration>,
) -> Answer<Area> {
    let key = "F16 shift";
    above_zero(key, "C", c)?;
    zero_or_more(key, "w_o", opens)?;
    zero_or_more(key, "clean_up", clean_up)?;
    zero_or_more(key, "b", breaks)?;
    let spent = (opens.node().clone() + clean_up.node().clone() + breaks.node().clone()).written_in("min");
    if shift.value().si.compare(&spent.value().si).is_le() {
        return Err(refuse(key, "H", shift, format!("more than opening, clean-up and breaks, {}", shown(&spent))));
    }
    let time = shift.named("H") - opens.named("w_o") - clean_up.named("clean_up") - breaks.named("b");
    Ok(Worked::new((c.named("C") * time).formula(key, "A_shift")))
}

/// Most wall that one crew can place and then carve itself: `A = min(C × (w_c − b), P × w_c)`; letters as in
/// [`split_limit`].
///
/// `P`, `C` above 0, `b` 0 or more, `w_c > b`. Assumes first-in first-out carving that starts when the last mud is on the
/// wall: the last mud closes `w_c` later, and all of the wall is carved in between. Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::window::same_limit};
/// let (p, c) = (Worked::read("56 ft2/h").unwrap(), Worked::read("36 ft2/h").unwrap());
/// let a = same_limit(&p, &c, &Worked::read("210 min").unwrap(), &Worked::read("30 min").unwrap()).unwrap();
/// assert_eq!(a.in_unit("ft2"), 108.0);
/// ```
pub fn same_limit(p: &Worked<Pace>, c: &Worked<Pace>, closes: &Worked<CarveTime>, breaks: &Worked<Duration>) -> Answer<Area> {
    let key = "F16 same crew";
    above_zero(key, "P", p)?;
    above_zero(key, "C", c)?;
    zero_or_more(key, "b", breaks)?;
    if closes.value().si.compare(&breaks.value().si).is_le() {
        return Err(refuse(key, "w_c", closes, format!("more than the breaks, {}", shown(breaks.node()))));
    }
    let carve = c.named("C") * (closes.named("w_c") - breaks.named("b"));
    let place = p.named("P") * closes.named("w_c");
    Ok(Worked::new(carve.min(place).formula(key, "A_same")))
}

/// Area to plan, with room for a slip: `A_plan = A × (1 − spare)`; `A` a limit, `spare` the share left free.
///
/// `A > 0`, `0 % ≤ spare < 100 %`. Rounding down is the print's. Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::window::with_spare};
/// let a = with_spare(&Worked::read("108 ft2").unwrap(), &Worked::read("10 %").unwrap()).unwrap();
/// assert_eq!(a.in_unit("ft2"), 97.2);
/// ```
pub fn with_spare(limit: &Worked<Area>, spare: &Worked<Share>) -> Answer<Area> {
    above_zero("F16 planned area", "A", limit)?;
    below_one("F16 planned area", "spare", spare)?;
    let a = super::like(limit.named("A") * super::rest(&spare.named("spare")), limit.node());
    Ok(Worked::new(a.formula("F16 planned area", "A_plan")))
}

/// Area for today: `A_today = min(A − (A1 + A2 + …), A_plan)`; `A` the wall, `A1 …` what earlier days took of it,
/// `A_plan` what a day may take.
///
/// `A`, `A_plan` above 0, the others 0 or more. Out of range when nothing is left. Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::window::today};
/// let read = |t| Worked::read(t).unwrap();
/// let a = today(&read("217.2 ft2"), &[read("97.2 ft2"), read("97.2 ft2")], &read("97.2 ft2")).unwrap();
/// assert_eq!(format!("{:.1}", a.in_unit("ft2")), "22.8");
/// assert!(today(&read("97.2 ft2"), &[read("97.2 ft2")], &read("97.2 ft2")).is_err());
/// ```
pub fn today(wall: &Worked<Area>, before: &[Worked<Area>], plan: &Worked<Area>) -> Answer<Area> {
    const KEY: &str = "F16 today";
    above_zero(KEY, "A", wall)?;
    above_zero(KEY, "A_plan", plan)?;
    let mut left = wall.named("A");
    for (i, area) in before.iter().enumerate() {
        zero_or_more(KEY, "A1", area)?;
        left = left - area.named(format!("A{}", i + 1));
    }
    let left: Worked<Area> = Worked::new(left.formula("F16 left of the wall", "A_left"));
    // What float noise leaves of a finished wall is no day's work.
    if left.value().si.to_f64() <= 1e-9 * wall.value().si.to_f64() {
        return Err(refuse(KEY, "A_left", &left, "more than 0: the days before have taken the whole wall"));
    }
    Ok(Worked::new(left.named("A_left").min(plan.named("A_plan")).formula(KEY, "A_today")))
}

/// Length of a shift: `H = ends − starts`, both times of one day, `ends` the later.
///
/// Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::{Clock, Duration, Worked}, trade::window::shift_length};
/// let clock = |t| Worked::<Clock>::new(Worked::<Duration>::read(t).unwrap().node().clone());
/// assert_eq!(shift_length(&clock("450 min"), &clock("930 min")).unwrap().in_unit("h"), 8.0);
/// assert!(shift_length(&clock("930 min"), &clock("450 min")).is_err());
/// ```
pub fn shift_length(starts: &Worked<Clock>, ends: &Worked<Clock>) -> Answer<Duration> {
    if !starts.value().si.compare(&ends.value().si).is_lt() {
        return Err(refuse("F16 shift length", "ends", ends, format!("later than {}", shown(starts.node()))));
    }
    Ok(Worked::new((ends.named("ends") - starts.named("starts")).formula("F16 shift length", "H")))
}

/// All breaks of a day together: `b = (to1 − from1) + (to2 − from2) + …`; none gives 0.
///
/// Each ends after it begins. On the safe side all of them fall into the window. Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::{Clock, Duration, Worked}, trade::window::rests};
/// let clock = |t| Worked::<Clock>::new(Worked::<Duration>::read(t).unwrap().node().clone());
/// assert_eq!(rests(&[(clock("720 min"), clock("750 min"))]).unwrap().in_unit("min"), 30.0);
/// assert!(rests(&[(clock("750 min"), clock("720 min"))]).is_err());
/// ```
pub fn rests(breaks: &[(Worked<Clock>, Worked<Clock>)]) -> Answer<Duration> {
    const KEY: &str = "F16 breaks";
    let mut sum: Option<Node> = None;
    for (i, (from, to)) in breaks.iter().enumerate() {
        if !from.value().si.compare(&to.value().si).is_lt() {
            return Err(refuse(KEY, "to", to, format!("later than the break's begin, {}", shown(from.node()))));
        }
        let one = to.named(format!("to{}", i + 1)) - from.named(format!("from{}", i + 1));
        sum = Some(match sum {
            Some(before) => before + one,
            None => one,
        });
    }
    let none = || {
        let value = Quantity { si: Num::int(0), dim: Dim::TIME, kind: Kind::Plain };
        Node::constant(value, find_expr("min"), "none", "no breaks are planned")
    };
    Ok(Worked::new(sum.unwrap_or_else(none).formula(KEY, "b")))
}

/// Area that the days so far leave of a wall: `A_left = max(A − (A1 + A2 + …), 0)`; letters as in [`today`].
///
/// `A` above 0, the others 0 or more. Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::window::left_after};
/// let read = |t| Worked::read(t).unwrap();
/// assert_eq!(left_after(&read("100 ft2"), &[read("60 ft2"), read("30 ft2")]).unwrap().in_unit("ft2"), 10.0);
/// ```
pub fn left_after(wall: &Worked<Area>, taken: &[Worked<Area>]) -> Answer<Area> {
    const KEY: &str = "F16 left after";
    above_zero(KEY, "A", wall)?;
    let mut left = wall.named("A");
    for (i, area) in taken.iter().enumerate() {
        zero_or_more(KEY, "A1", area)?;
        left = left - area.named(format!("A{}", i + 1));
    }
    let nothing = wall.node().clone() - wall.node().clone();
    Ok(Worked::new(left.max(nothing).formula(KEY, "A_left")))
}

/// Days that a wall takes.
#[derive(Clone, Debug)]
pub struct Days {
    /// Unrounded: 2.01 days are a third morning for one square foot.
    pub need: Worked<Plain>,
    /// Rounded up.
    pub days: Worked<Plain>,
}

/// Days for a wall: `need = A ÷ a_day`, `days = up(need, 1)`; `A` the wall, `a_day` what is carved in a day.
///
/// `A ≥ 0`, `a_day > 0`. Source: `carve-window`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::window::days};
/// let d = days(&Worked::read("217.2 ft2").unwrap(), &Worked::read("126 ft2").unwrap()).unwrap();
/// assert_eq!(d.days.value().si.to_f64(), 2.0);
/// ```
pub fn days(area: &Worked<Area>, per_day: &Worked<Area>) -> Result<Days, OutOfRange> {
    zero_or_more("F16 need of days", "A", area)?;
    above_zero("F16 need of days", "a_day", per_day)?;
    let need: Worked<Plain> = Worked::new((area.named("A") / per_day.named("a_day")).formula("F16 need of days", "need"));
    let days = Worked::new(need.named("need").rounded(Direction::Up, 1, 1).formula("F16 days", "days"));
    Ok(Days { need, days })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    fn split(p: &str, c: &str, breaks: &str) -> Result<Option<Worked<Area>>, OutOfRange> {
        split_limit(&q(p), &q(c), (&q("75 min"), &q("210 min")), &q(breaks))
    }

    // Worked example of the design, common practice, no source.
    #[test]
    fn how_much_rubble_today() {
        let a = split("42 ft2/h", "36 ft2/h", "0 min").unwrap().unwrap();
        holds(&a, "ft2", "567");
        assert_eq!(line(&a).0, "A_split = C × (w_c − w_o − b) × P ÷ (P − C)");
        assert!(split("36 ft2/h", "36 ft2/h", "0 min").unwrap().is_none());
        assert!(split("36.01 ft2/h", "36 ft2/h", "0 min").unwrap().is_some());
        holds(&shift_limit(&q("36 ft2/h"), &q("8 h"), &q("75 min"), &q("45 min"), &q("0 min")).unwrap(), "ft2", "216");
        let same = |b: &str| same_limit(&q("56 ft2/h"), &q("36 ft2/h"), &q("3.5 h"), &q(b)).unwrap();
        holds(&same("0 min"), "ft2", "126");
        holds(&same("30 min"), "ft2", "108");
        holds(&with_spare(&same("30 min"), &q("10 %")).unwrap(), "ft2", "97");
        // A third morning for one square foot; staggered lunch carves it in two.
        let lunch = days(&q("217.22 ft2"), &same("30 min")).unwrap();
        holds(&lunch.need, "", "2.01");
        holds(&lunch.days, "", "3");
        holds(&days(&q("217.22 ft2"), &same("0 min")).unwrap().days, "", "2");
    }

    #[test]
    fn slow_placers_bind_too() {
        holds(&same_limit(&q("10 ft2/h"), &q("36 ft2/h"), &q("3.5 h"), &q("30 min")).unwrap(), "ft2", "35");
    }

    #[test]
    fn out_of_range() {
        let refused = split("42 ft2/h", "36 ft2/h", "135 min").unwrap_err();
        assert_eq!((refused.symbol, refused.wants.as_str()), ("w_c", "more than opening and breaks, 210 min"));
        assert!(split("42 ft2/h", "36 ft2/h", "134 min").is_ok());
        assert_eq!(split("0 ft2/h", "36 ft2/h", "0 min").unwrap_err().symbol, "P");
        let short = shift_limit(&q("36 ft2/h"), &q("2 h"), &q("75 min"), &q("45 min"), &q("0 min")).unwrap_err();
        assert_eq!(short.wants, "more than opening, clean-up and breaks, 120 min");
        assert_eq!(same_limit(&q("56 ft2/h"), &q("36 ft2/h"), &q("30 min"), &q("30 min")).unwrap_err().symbol, "w_c");
        assert_eq!(with_spare(&q("108 ft2"), &q("100 %")).unwrap_err().symbol, "spare");
        assert_eq!(days(&q("108 ft2"), &q("0 ft2")).unwrap_err().symbol, "a_day");
    }
}
