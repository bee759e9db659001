//! F16: the steps of the batch table, each a clock in whole minutes. The table itself is [`day`](super::day).

use crate::quantity::expr::{Area, CarveTime, Clock, Duration, Node, OpenTime, Pace, Worked};
use crate::quantity::num::{Direction, Num};

use super::placing::minutes;

/// A break: from, to.
pub type Break = (Worked<Clock>, Worked<Clock>);

pub(super) fn earlier(a: &Worked<Clock>, b: &Worked<Clock>) -> bool {
    a.value().si.compare(&b.value().si).is_lt()
}

/// True if the time is on the day itself.
pub(super) fn before_midnight(time: &Worked<Clock>) -> bool {
    time.value().si.compare(&Num::int(24 * 60 * 60)).is_lt()
}

fn up(time: &Worked<Duration>, symbol: &'static str) -> Node {
    minutes(time.named(symbol), Direction::Up)
}

/// `start = start_0 + up(late, 1)`.
pub(super) fn late_start(start: &Worked<Clock>, by: &Worked<Duration>) -> Worked<Clock> {
    Worked::new((start.named("start_0") + up(by, "late")).formula("F16 late start", "start"))
}

/// The mixer is free when its mud is out; the crew is free when the last batch is on the wall, and by then the next
/// one must have come: `water_in = max(mixed, placed − up(mixing, 1) − up(moving, 1))` of the batch before.
pub(super) fn next_water_in(
    mixed: &Worked<Clock>,
    placed: &Worked<Clock>,
    mixing: &Worked<Duration>,
    moving: &Worked<Duration>,
) -> Worked<Clock> {
    let wanted = placed.named("placed_before") - up(mixing, "mixing") - up(moving, "moving");
    Worked::new(mixed.named("mixed_before").max(wanted).formula("F16 water in", "water_in"))
}

/// `mixed = water_in + up(mixing, 1)`.
pub(super) fn mixed(water_in: &Worked<Clock>, mixing: &Worked<Duration>) -> Worked<Clock> {
    Worked::new((water_in.named("water_in") + up(mixing, "mixing")).formula("F16 mixed", "mixed"))
}

/// `on_wall = mixed + up(moving, 1)`: the first mud of the batch, from which its window counts.
pub(super) fn on_wall(mixed: &Worked<Clock>, moving: &Worked<Duration>) -> Worked<Clock> {
    Worked::new((mixed.named("mixed") + up(moving, "moving")).formula("F16 on wall", "on_wall"))
}

/// `placed = on_wall + place`.
pub(super) fn placed(on_wall: &Worked<Clock>, place: &Worked<Duration>) -> Worked<Clock> {
    Worked::new((on_wall.named("on_wall") + place.named("place")).formula("F16 placed", "placed"))
}

/// `discard = water_in + down(t_open, 1)`.
pub(super) fn discard(water_in: &Worked<Clock>, open: &Worked<OpenTime>) -> Worked<Clock> {
    let open = minutes(open.named("t_open"), Direction::Down);
    Worked::new((water_in.named("water_in") + open).formula("F16 discard", "discard"))
}

/// `slack = discard − placed`; below 0 the last mud is stale.
pub(super) fn slack(discard: &Worked<Clock>, placed: &Worked<Clock>) -> Worked<Duration> {
    Worked::new((discard.named("discard") - placed.named("placed")).formula("F16 slack", "slack"))
}

/// `opens = put + up(w_o, 1)`; `put` the minute the mud met the wall.
pub(super) fn opens(put: &Worked<Clock>, after: &Worked<CarveTime>) -> Worked<Clock> {
    let after = minutes(after.named("w_o"), Direction::Up);
    Worked::new((put.named("put") + after).formula("F16 opens", "opens"))
}

/// `closes = on_wall + down(w_c, 1)`: when the first mud of the patch closes.
pub(super) fn closes(on_wall: &Worked<Clock>, after: &Worked<CarveTime>) -> Worked<Clock> {
    let after = minutes(after.named("w_c"), Direction::Down);
    Worked::new((on_wall.named("on_wall") + after).formula("F16 closes", "closes"))
}

/// `carve = up(a ÷ C, 1)`.
pub(super) fn carving(area: &Worked<Area>, pace: &Worked<Pace>) -> Worked<Duration> {
    let time = minutes(area.named("a") / pace.named("C"), Direction::Up);
    Worked::new(time.formula("F16 carving", "carve"))
}

/// `carve_start = max(free, opens)`, or the end of the break that this falls into.
pub(super) fn carve_start(free: &Worked<Clock>, opens: &Worked<Clock>, breaks: &[Break]) -> Worked<Clock> {
    let start = Worked::new(free.named("free").max(opens.named("opens")).formula("F16 carve start", "carve_start"));
    after_break(start, breaks)
}

/// `carve_end = max(carve_start + carve + breaks, opens_last)`: with every break that begins before the end.
///
/// A patch is not carved through before its last mud opens. Breaks stand in order and apart; the start is in none.
pub(super) fn carve_end(start: &Worked<Clock>, carve: &Worked<Duration>, opens_last: &Worked<Clock>, breaks: &[Break]) -> Worked<Clock> {
    let mut end = start.named("carve_start") + carve.named("carve");
    for (from, to) in breaks {
        let inside = !earlier(from, start) && from.value().si.compare(&end.value().si).is_lt();
        if inside {
            end = end + (to.named("break_end") - from.named("break"));
        }
    }
    let end = Worked::new(end.max(opens_last.named("opens_last")).formula("F16 carve end", "carve_end"));
    after_break(end, breaks)
}

/// The same time, or the end of the break it falls into.
fn after_break(time: Worked<Clock>, breaks: &[Break]) -> Worked<Clock> {
    match breaks.iter().find(|(from, to)| !earlier(&time, from) && earlier(&time, to)) {
        Some((_, to)) => resumed(to),
        None => time,
    }
}

/// `time = break_end`.
pub(super) fn resumed(to: &Worked<Clock>) -> Worked<Clock> {
    Worked::new(to.named("break_end").formula("F16 after break", "time"))
}

/// `done = carve_end + up(clean_up, 1)`.
pub(super) fn done(end: &Worked<Clock>, clean_up: &Worked<Duration>) -> Worked<Clock> {
    Worked::new((end.named("carve_end") + up(clean_up, "clean_up")).formula("F16 done", "done"))
}
