//! F16: the batch table of a day: when each batch is mixed, placed, dead, and carved.

use crate::quantity::expr::{Area, CarveTime, Clock, Duration, Length, Loads, Node, OpenTime, Pace, Volume, Worked};

use super::clocks::{self, Break, earlier};
use super::loads::{Step, loads};
use super::placing::batch_area;
use super::{OutOfRange, above_zero, batch, like, refuse, table, zero_or_more};

/// More batches than any crew places between two midnights.
pub const MOST_BATCHES: usize = 200;
const KEY: &str = "F16 water in";

/// The mix's times at the temperature of an hour.
#[derive(Clone, Debug)]
pub struct Times {
    /// From water in.
    pub open: Worked<OpenTime>,
    /// Opening of the window, from the wall.
    pub opens: Worked<CarveTime>,
    /// Closing of the window, from the wall.
    pub closes: Worked<CarveTime>,
}

/// The weather of an hour, as far as the mud feels it. It stands until the next one begins.
#[derive(Clone, Debug)]
pub struct Hour {
    /// From when.
    pub from: Worked<Clock>,
    /// The mix's times, or why there are none.
    pub times: Result<Times, String>,
}

/// One batch.
#[derive(Clone, Debug)]
pub struct Batch {
    /// Loads in it.
    pub loads: Worked<Loads>,
    /// Wall it covers.
    pub area: Worked<Area>,
}

/// A day's plan.
#[derive(Clone, Debug)]
pub struct Plan {
    /// First water in, a whole minute.
    pub starts: Worked<Clock>,
    /// Batches in order.
    pub batches: Vec<Batch>,
    /// From water in to the end of mixing.
    pub mixing: Worked<Duration>,
    /// From the mixer to the wall.
    pub moving: Worked<Duration>,
    /// Pace of all who place together.
    pub place: Worked<Pace>,
    /// Pace of all who carve together.
    pub carve: Worked<Pace>,
    /// True if other hands carve than place.
    pub split: bool,
    /// Hours in order.
    pub hours: Vec<Hour>,
    /// Breaks in order, apart.
    pub breaks: Vec<Break>,
    /// End of the shift.
    pub ends: Worked<Clock>,
    /// Clean-up and covering before it.
    pub clean_up: Worked<Duration>,
    /// When it is dark; nothing where there are lights.
    pub sunset: Option<Worked<Clock>>,
}

/// What is wrong with a batch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Its last mud is older than the open time when it is placed.
    Stale,
    /// Its first mud closes before the patch is carved.
    Closed,
    /// Its carving ends after sunset.
    Dark,
    /// Carving and clean-up end after the shift.
    Overtime,
}

/// Why a batch has no times.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Blank {
    /// The weather begins later.
    NoWeather,
    /// No time is stated at this temperature, for this reason.
    NoTime(String),
    /// It would be placed after midnight.
    NextDay,
}

/// Times of a batch that follow from the weather and the crew.
#[derive(Clone, Debug)]
pub struct Kept {
    /// Dead then.
    pub discard: Worked<Clock>,
    /// Left when the last mud is on the wall; below 0 if it is stale.
    pub slack: Worked<Duration>,
    /// When the first and the last mud of the patch can be carved.
    pub opens: (Worked<Clock>, Worked<Clock>),
    /// When the first mud closes.
    pub closes: Worked<Clock>,
    /// Carving of the patch begins and ends.
    pub carve: (Worked<Clock>, Worked<Clock>),
    /// What is wrong, empty if nothing.
    pub faults: Vec<Fault>,
}

/// A line of the batch table.
#[derive(Clone, Debug)]
pub struct Row {
    /// Loads and wall.
    pub batch: Batch,
    /// Water in.
    pub water_in: Worked<Clock>,
    /// End of mixing.
    pub mixed: Worked<Clock>,
    /// First mud on the wall.
    pub on_wall: Worked<Clock>,
    /// Last mud on the wall.
    pub placed: Worked<Clock>,
    /// The rest, or why the row is black.
    pub times: Result<Kept, Blank>,
}

/// A day worked out.
#[derive(Clone, Debug)]
pub struct Day {
    /// One for each batch.
    pub rows: Vec<Row>,
    /// How many batches from the first on make a day without a fault: the last of them is the last that can be carved.
    pub good: usize,
    /// Wall that these cover; nothing if there are none.
    pub good_area: Option<Worked<Area>>,
    /// Wall of all rows that are not black.
    pub area: Option<Worked<Area>>,
    /// End of carving, if anything is carved.
    pub carved: Option<Worked<Clock>>,
    /// End of clean-up.
    pub done: Option<Worked<Clock>>,
}

/// Batches for a wall: `N` loads of its mud ([`loads`]), `count = up(N ÷ n, 1)`, each of `n` loads over
/// `a = n × y ÷ t`, the last of `N − (count − 1) × n` over `A − (count − 1) × a`.
///
/// `A`, `y`, `t`, `n` above 0, `n` in whole steps, at most 200 batches. Source: `batch-table`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::{day::cut, loads::Step}};
/// let (y, t) = (Worked::read("1 ft3").unwrap(), Worked::read("1 1/2 in").unwrap());
/// let all = cut(&Worked::read("36 ft2").unwrap(), &Worked::read("2 loads").unwrap(), &y, &t, Step::Half).unwrap();
/// assert_eq!((all.len(), all[2].loads.value().si.to_f64(), all[2].area.in_unit("ft2")), (3, 0.5, 4.0));
/// ```
pub fn cut(area: &Worked<Area>, n: &Worked<Loads>, y: &Worked<Volume>, t: &Worked<Length>, step: Step) -> Result<Vec<Batch>, OutOfRange> {
    above_zero("F16 last area", "A", area)?;
    above_zero("F16 last loads", "n", n)?;
    if !step.divides(n) {
        return Err(refuse("F16 last loads", "n", n, "whole or half loads as the mix allows, such as `2 loads`"));
    }
    let full = Batch { loads: n.clone(), area: batch_area(n, y, t)? };
    let volume = Worked::new(like(area.named("A") * t.named("t"), y.node()).formula("F16 mud of the day", "V"));
    let total = loads(&volume, y, step)?.loads;
    let count = batch::batches(&total, n)?.count;
    let whole = count.value().si.to_f64();
    if whole > MOST_BATCHES as f64 {
        return Err(refuse("F16 last loads", "n", n, format!("more, for at most {MOST_BATCHES} batches a day; these would be {whole}")));
    }
    let before = || count.named("count") - Node::given(1, 1);
    let left = total.named("N") - like(before() * n.named("n"), n.node());
    let bare = area.named("A") - like(before() * full.area.named("a"), area.node());
    let last =
        Batch { loads: Worked::new(left.formula("F16 last loads", "n_last")), area: Worked::new(bare.formula("F16 last area", "a_last")) };
    let mut all = vec![full; (whole as usize).saturating_sub(1)];
    all.push(last);
    Ok(all)
}

/// The batch table. One mixer; the next batch is mixed while the last one is placed, so that it reaches the wall
/// when the crew is free: `water_in = max(mixed, placed − mixing − moving)` of the batch before.
///
/// Whole minutes throughout: mixing, moving, placing, carving and opening up, open time and closing down. A batch's
/// times are the worst of the hours from its water in until it is placed; heat that comes later shortens the window
/// further, and no rule is known for that. No break falls between water in and the last mud on the wall: the batch
/// waits. Carvers stop in breaks and take patches in order; the same crew begins when all is placed. A patch must be
/// carved before its **first** mud closes, which is safe for the rest. A black row is not placed, and the batches
/// after it keep their clocks.
///
/// `late`, 0 or more, is how much later the first water goes in: the plan is worked again on the same hours, never
/// shifted. At most 200 batches, hours and breaks in order; paces, loads, areas, open and closing times above 0.
/// Source: `batch-table`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::day::{Batch, Hour, Plan, Times, day}};
/// let clock = |t| Worked::new(Worked::<hodbook::quantity::expr::Duration>::read(t).unwrap().node().clone());
/// let time = |t| Worked::read(t).unwrap();
/// let times = Times { open: Worked::read("50 min").unwrap(), opens: Worked::read("75 min").unwrap(), closes: Worked::read("210 min").unwrap() };
/// let batch = Batch { loads: Worked::read("2 loads").unwrap(), area: Worked::read("14 ft2").unwrap() };
/// let plan = Plan {
///     starts: clock("450 min"), batches: vec![batch; 2], mixing: time("6 min"), moving: time("2 min"),
///     place: Worked::read("56 ft2/h").unwrap(), carve: Worked::read("28 ft2/h").unwrap(), split: false,
///     hours: vec![Hour { from: clock("0 min"), times: Ok(times) }], breaks: vec![],
///     ends: clock("15.5 h"), clean_up: time("45 min"), sunset: None,
/// };
/// let (table, late) = (day(&plan, None).unwrap(), day(&plan, Some(&time("30 min"))).unwrap());
/// assert_eq!((table.good, table.rows[1].water_in.in_unit("min")), (2, 465.0));
/// assert_eq!(late.rows[1].water_in.in_unit("min"), 495.0);
/// ```
pub fn day(plan: &Plan, late: Option<&Worked<Duration>>) -> Result<Day, OutOfRange> {
    holds_together(plan)?;
    let starts = match late {
        Some(by) => {
            zero_or_more("F16 late start", "late", by)?;
            clocks::late_start(&plan.starts, by)
        }
        None => plan.starts.clone(),
    };
    let placed = table::place(plan, &starts)?;
    Ok(table::carve(plan, &placed))
}

fn count(symbol: &'static str, n: usize, wants: &str) -> OutOfRange {
    OutOfRange { formula: KEY, symbol, value: n.to_string(), wants: wants.to_owned() }
}

fn holds_together(plan: &Plan) -> Result<(), OutOfRange> {
    if plan.batches.is_empty() || plan.batches.len() > MOST_BATCHES {
        return Err(count("batches", plan.batches.len(), "1 to 200 batches a day"));
    }
    if plan.hours.is_empty() {
        return Err(count("hours", 0, "the weather of at least one hour, from first water in"));
    }
    above_zero("F14 placing", "P", &plan.place)?;
    above_zero("F16 carving", "C", &plan.carve)?;
    zero_or_more(KEY, "mixing", &plan.mixing)?;
    zero_or_more(KEY, "moving", &plan.moving)?;
    zero_or_more("F16 done", "clean_up", &plan.clean_up)?;
    for b in &plan.batches {
        above_zero(KEY, "n", &b.loads)?;
        above_zero("F14 placing", "a", &b.area)?;
    }
    for t in plan.hours.iter().filter_map(|h| h.times.as_ref().ok()) {
        above_zero("F16 discard", "t_open", &t.open)?;
        zero_or_more("F16 opens", "w_o", &t.opens)?;
        above_zero("F16 closes", "w_c", &t.closes)?;
    }
    zero_or_more(KEY, "start", &plan.starts)?;
    let minute = plan.starts.value().si.exact().is_some_and(|s| (s / num_bigint::BigInt::from(60)).is_integer());
    if !minute || !clocks::before_midnight(&plan.starts) {
        return Err(refuse(KEY, "start", &plan.starts, "a whole minute before midnight, such as 450 min after it, 7:30"));
    }
    let clash = plan.hours.windows(2).find(|w| matches!(w, [a, b] if !earlier(&a.from, &b.from)));
    if let Some([_, b]) = clash {
        return Err(refuse(KEY, "hour", &b.from, "a later hour than the one before it"));
    }
    let mut last: Option<&Worked<Clock>> = None;
    for (from, to) in &plan.breaks {
        if !earlier(from, to) {
            return Err(refuse("F16 after break", "break_end", to, "a later time than the break's begin"));
        }
        if last.is_some_and(|end| earlier(from, end)) {
            return Err(refuse("F16 after break", "break", from, "a time after the end of the break before it"));
        }
        last = Some(to);
    }
    Ok(())
}
