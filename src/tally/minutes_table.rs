//! How the batches of a day follow one another, in whole minutes: the batch table without its derivations.

use crate::quantity::Num;
use crate::quantity::num::Direction;

use super::minutes::minutes;

/// Those who work, and how.
#[derive(Clone, Debug)]
pub struct Crew {
    /// True if other hands carve than place.
    pub split: bool,
    /// Pace of all who place.
    pub place: Num,
    /// Pace of all who carve.
    pub carve: Num,
    /// From water in to the end of mixing.
    pub mixing: i64,
    /// From the mixer to the wall.
    pub moving: i64,
    /// First water in.
    pub starts: i64,
    /// Breaks: from, to.
    pub breaks: Vec<(i64, i64)>,
}

impl Crew {
    /// Minutes in which all who place put some wall on.
    pub fn placing(&self, area: &Num) -> i64 {
        area.div(&self.place).map_or(i64::MAX / 4, |time| minutes(&time, Direction::Up))
    }

    fn carving(&self, area: &Num) -> i64 {
        area.div(&self.carve).map_or(i64::MAX / 4, |time| minutes(&time, Direction::Up))
    }
}

/// An hour: its begin; open time, opening and closing of the carve window, or nothing where none is stated.
#[derive(Clone, Debug)]
pub(super) struct Met {
    pub(super) from: i64,
    pub(super) times: Option<(i64, i64, i64)>,
}

/// A batch and its patch of wall.
#[derive(Clone, Debug)]
pub struct Patch {
    /// Loads.
    pub loads: Num,
    /// Wall, in SI.
    pub area: Num,
    /// Water in.
    pub water_in: i64,
    /// Last mud on the wall.
    pub placed: i64,
    /// What follows from the weather; nothing where the row is black.
    pub kept: Option<Kept>,
}

/// Times of a patch.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// Minutes that the batch stays open.
    pub open: i64,
    /// When it is dead.
    pub discard: i64,
    /// When its first mud closes.
    pub closes: i64,
    /// Carving begins and ends.
    pub carve: (i64, i64),
}

impl Patch {
    /// True if it is too old when its last mud is placed.
    pub fn stale(&self) -> bool {
        self.kept.as_ref().is_some_and(|k| self.placed >= k.discard)
    }

    /// True if its first mud closes before the patch is carved.
    pub fn closed(&self) -> bool {
        self.kept.as_ref().is_some_and(|k| k.carve.1 > k.closes)
    }
}

/// Midnight.
const MIDNIGHT: i64 = 24 * 60;

struct Placed {
    water_in: i64,
    on_wall: i64,
    placed: i64,
    times: Option<(i64, i64, i64)>,
}

/// The table; the ends of carving if nobody stopped for a break; how many batches from the first on are carved before
/// they close if those after them are not mixed.
pub(super) fn table(crew: &Crew, batches: &[(Num, Num)], hours: &[Met]) -> (Vec<Patch>, Vec<Option<i64>>, usize) {
    let placed = place(crew, batches, hours);
    let kept = carve(crew, batches, &placed, &crew.breaks);
    let without = carve(crew, batches, &placed, &[]);
    let carved = |kept: &[Option<Kept>]| kept.iter().flatten().all(|k| k.carve.1 <= k.closes);
    let first = |n: usize| carve(crew, batches, placed.get(..n).unwrap_or(&placed), &crew.breaks);
    let good = if carved(&kept) { batches.len() } else { (0..batches.len()).rev().find(|n| carved(&first(*n))).unwrap_or(0) };
    let rows = batches.iter().zip(&placed).zip(kept).map(|(((loads, area), p), kept)| Patch {
        loads: loads.clone(),
        area: area.clone(),
        water_in: p.water_in,
        placed: p.placed,
        kept,
    });
    (rows.collect(), without.into_iter().map(|k| k.map(|k| k.carve.1)).collect(), good)
}

fn place(crew: &Crew, batches: &[(Num, Num)], hours: &[Met]) -> Vec<Placed> {
    let mut all: Vec<Placed> = Vec::new();
    let ready = crew.mixing + crew.moving;
    for (_, area) in batches {
        let takes = crew.placing(area);
        let mut water_in = match all.last() {
            Some(before) => (before.on_wall - crew.moving).max(before.placed - ready),
            None => crew.starts,
        };
        for (from, to) in &crew.breaks {
            if *from < water_in + ready + takes && water_in < *to {
                water_in = *to;
            }
        }
        let (on_wall, placed) = (water_in + ready, water_in + ready + takes);
        all.push(Placed { water_in, on_wall, placed, times: worst(water_in, placed, hours) });
    }
    all
}

/// The worst of the hours from water in until it is placed; nothing if one of them has no times.
fn worst(water_in: i64, placed: i64, hours: &[Met]) -> Option<(i64, i64, i64)> {
    if placed >= MIDNIGHT {
        return None;
    }
    let first = hours.iter().rposition(|h| h.from <= water_in)?;
    let met = hours.iter().skip(first).enumerate().filter(|(i, h)| *i == 0 || h.from < placed);
    let mut worst: Option<(i64, i64, i64)> = None;
    for (_, hour) in met {
        let (open, opens, closes) = hour.times?;
        worst = Some(worst.map_or((open, opens, closes), |(a, b, c)| (a.min(open), b.max(opens), c.min(closes))));
    }
    worst
}

fn carve(crew: &Crew, batches: &[(Num, Num)], placed: &[Placed], breaks: &[(i64, i64)]) -> Vec<Option<Kept>> {
    let mut with_times = placed.iter().filter(|p| p.times.is_some());
    // Carvers of their own are free from the first batch on; the same hands when the last is on the wall.
    let mut free = if crew.split { with_times.next().map(|p| p.on_wall) } else { with_times.next_back().map(|p| p.placed) };
    let rows = batches.iter().zip(placed).map(|((_, area), p)| {
        let (open, opens, closes) = p.times?;
        let start = after_break(free.unwrap_or(p.placed).max(p.on_wall + opens), breaks);
        let mut end = start + crew.carving(area);
        for (from, to) in breaks {
            if *from >= start && *from < end {
                end += to - from;
            }
        }
        let end = after_break(end.max(p.placed + opens), breaks);
        free = Some(end);
        Some(Kept { open, discard: p.water_in + open, closes: p.on_wall + closes, carve: (start, end) })
    });
    rows.collect()
}

fn after_break(time: i64, breaks: &[(i64, i64)]) -> i64 {
    breaks.iter().find(|(from, to)| *from <= time && time < *to).map_or(time, |(_, to)| *to)
}
