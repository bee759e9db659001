//! F16: how the batches of a day follow one another. [`day`](super::day::day) is its door.

use crate::quantity::expr::{Area, Clock, Node, Sort, Worked};

use super::OutOfRange;
use super::clocks::{self, earlier};
use super::day::{Batch, Blank, Day, Fault, Hour, Kept, Plan, Row, Times};
use super::placing::placing_time;

/// A batch as far as those who place are concerned.
pub(super) struct Placed<'a> {
    batch: &'a Batch,
    water_in: Worked<Clock>,
    mixed: Worked<Clock>,
    on_wall: Worked<Clock>,
    placed: Worked<Clock>,
    times: Result<Times, Blank>,
}

pub(super) fn place<'a>(plan: &'a Plan, starts: &Worked<Clock>) -> Result<Vec<Placed<'a>>, OutOfRange> {
    let mut all: Vec<Placed<'a>> = Vec::new();
    for batch in &plan.batches {
        let water_in = match all.last() {
            Some(before) => clocks::next_water_in(&before.mixed, &before.placed, &plan.mixing, &plan.moving),
            None => starts.clone(),
        };
        let mut next = from_water_in(plan, batch, water_in)?;
        // Breaks stand in order, so one pass finds every break that the moved batch meets.
        for (from, to) in &plan.breaks {
            if earlier(from, &next.placed) && earlier(&next.water_in, to) {
                next = from_water_in(plan, batch, clocks::resumed(to))?;
            }
        }
        next.times = times_of(plan, &next);
        all.push(next);
    }
    Ok(all)
}

fn from_water_in<'a>(plan: &Plan, batch: &'a Batch, water_in: Worked<Clock>) -> Result<Placed<'a>, OutOfRange> {
    let mixed = clocks::mixed(&water_in, &plan.mixing);
    let on_wall = clocks::on_wall(&mixed, &plan.moving);
    let placed = clocks::placed(&on_wall, &placing_time(&batch.area, &plan.place)?);
    Ok(Placed { batch, water_in, mixed, on_wall, placed, times: Err(Blank::NoWeather) })
}

/// The worst of the hours that a batch lives through until it is placed.
fn times_of(plan: &Plan, batch: &Placed<'_>) -> Result<Times, Blank> {
    if !clocks::before_midnight(&batch.placed) {
        return Err(Blank::NextDay);
    }
    let first = plan.hours.iter().rposition(|h| !earlier(&batch.water_in, &h.from)).ok_or(Blank::NoWeather)?;
    let met = plan.hours.iter().skip(first).enumerate().filter(|(i, h)| *i == 0 || earlier(&h.from, &batch.placed));
    let mut worst: Option<Times> = None;
    for (_, Hour { times, .. }) in met {
        let times = times.as_ref().map_err(|why| Blank::NoTime(why.clone()))?;
        worst = Some(match worst {
            None => times.clone(),
            Some(w) => Times {
                open: smaller(w.open, &times.open),
                opens: if less(&w.opens, &times.opens) { times.opens.clone() } else { w.opens },
                closes: smaller(w.closes, &times.closes),
            },
        });
    }
    worst.ok_or(Blank::NoWeather)
}

fn less<S: Sort>(a: &Worked<S>, b: &Worked<S>) -> bool {
    a.value().si.compare(&b.value().si).is_lt()
}

fn smaller<S: Sort>(a: Worked<S>, b: &Worked<S>) -> Worked<S> {
    if less(b, &a) { b.clone() } else { a }
}

/// The day of all batches, and how many from the first on would make a day without a fault.
pub(super) fn carve(plan: &Plan, placed: &[Placed<'_>]) -> Day {
    let rows = rows(plan, placed);
    let good = good(plan, placed, &rows);
    let carved = rows.iter().rev().find_map(|r| r.times.as_ref().ok()).map(|k| k.carve.1.clone());
    Day {
        good,
        good_area: area(rows.iter().take(good)),
        area: area(rows.iter().filter(|r| r.times.is_ok())),
        done: carved.as_ref().map(|end| clocks::done(end, &plan.clean_up)),
        carved,
        rows,
    }
}

fn area<'a>(rows: impl Iterator<Item = &'a Row>) -> Option<Worked<Area>> {
    let sum = rows.map(|r| r.batch.area.named("a")).reduce(|a: Node, b| a + b)?;
    Some(Worked::new(sum.formula("F16 area of the day", "A_day")))
}

fn rows(plan: &Plan, placed: &[Placed<'_>]) -> Vec<Row> {
    let kept = |p: &&Placed<'_>| p.times.is_ok();
    // Carvers of their own are free from the first batch on; the same hands when the last is on the wall.
    let free = if plan.split { placed.iter().find(kept).map(|p| &p.on_wall) } else { placed.iter().rfind(kept).map(|p| &p.placed) };
    let mut free = free.cloned();
    let mut rows = Vec::new();
    for p in placed {
        let times = p.times.as_ref().map_err(Clone::clone).map(|times| {
            let kept = kept_of(plan, p, times, free.as_ref().unwrap_or(&p.placed));
            free = Some(kept.carve.1.clone());
            kept
        });
        rows.push(Row {
            batch: p.batch.clone(),
            water_in: p.water_in.clone(),
            mixed: p.mixed.clone(),
            on_wall: p.on_wall.clone(),
            placed: p.placed.clone(),
            times,
        });
    }
    rows
}

fn kept_of(plan: &Plan, p: &Placed<'_>, times: &Times, free: &Worked<Clock>) -> Kept {
    let discard = clocks::discard(&p.water_in, &times.open);
    let slack = clocks::slack(&discard, &p.placed);
    let opens = (clocks::opens(&p.on_wall, &times.opens), clocks::opens(&p.placed, &times.opens));
    let closes = clocks::closes(&p.on_wall, &times.closes);
    let start = clocks::carve_start(free, &opens.0, &plan.breaks);
    let end = clocks::carve_end(&start, &clocks::carving(&p.batch.area, &plan.carve), &opens.1, &plan.breaks);
    let late = |limit: &Worked<Clock>| earlier(limit, &end);
    let faults = [
        // Open time must be left, not just reached.
        (!earlier(&p.placed, &discard), Fault::Stale),
        (late(&closes), Fault::Closed),
        (plan.sunset.as_ref().is_some_and(late), Fault::Dark),
        (earlier(&plan.ends, &clocks::done(&end, &plan.clean_up)), Fault::Overtime),
    ];
    let faults = faults.into_iter().filter_map(|(is, fault)| is.then_some(fault)).collect();
    Kept { discard, slack, opens, closes, carve: (start, end), faults }
}

fn faultless(rows: &[Row]) -> usize {
    rows.iter().position(|r| !r.times.as_ref().is_ok_and(|k| k.faults.is_empty())).unwrap_or(rows.len())
}

/// With fewer batches the same crew is free to carve sooner and nothing ends later, so the days without a fault are
/// those up to some number of batches, and halving finds it.
fn good(plan: &Plan, placed: &[Placed<'_>], all: &[Row]) -> usize {
    if plan.split || faultless(all) == all.len() {
        return faultless(all);
    }
    let (mut good, mut bad) = (0, placed.len());
    while bad - good > 1 {
        let some = good.midpoint(bad);
        if faultless(&rows(plan, placed.get(..some).unwrap_or(placed))) == some { good = some } else { bad = some }
    }
    good
}
