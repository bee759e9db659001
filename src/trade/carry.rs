//! F8: the ladder of late water, and where the next batch starts.

use num_rational::BigRational;
use num_traits::ToPrimitive;

use crate::quantity::expr::{Loads, Node, Plain, Volume, Worked};
use crate::quantity::num::Direction;

use super::{Answer, OutOfRange, above_zero, at_most, like, refuse, zero_or_more};

/// More rungs than a card can hold; a step that small is a slip of the unit.
const MOST_RUNGS: i64 = 60;

/// A batch's water rounded down to a measure, both in the unit of the water.
fn down_to(water: Node, measure: &Worked<Volume>, formula: &'static str) -> Result<Node, OutOfRange> {
    above_zero(formula, "measure", measure)?;
    let exact = water.unit().and_then(|unit| measure.value().exact_in(unit));
    let parts = exact.and_then(|r| Some((r.numer().to_i64()?, r.denom().to_i64()?)));
    match parts {
        Some((n, d)) => Ok(water.rounded(Direction::Down, n, d)),
        None => Err(refuse(formula, "measure", measure, "an exact measure, such as `1 cup` or `50 mL`")),
    }
}

/// Steps in an addition: `steps = a ÷ (step × n)`; `a` water added to a batch of `n` loads, `step` the mix's step per
/// load.
///
/// `a ≥ 0`, `step` and `n` above 0. Anything but whole steps on every load is refused: it sits on no rung, and
/// belongs into the log as a finding. Source: `carry-over`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::carry::steps_added};
/// let (n, step) = (Worked::read("2 loads").unwrap(), Worked::read("1 cup").unwrap());
/// assert_eq!(steps_added(&Worked::read("1 qt 1 pt").unwrap(), &step, &n).unwrap().value().si.to_f64(), 3.0);
/// assert!(steps_added(&Worked::read("1 cup").unwrap(), &step, &n).is_err());
/// ```
pub fn steps_added(a: &Worked<Volume>, step: &Worked<Volume>, n: &Worked<Loads>) -> Answer<Plain> {
    zero_or_more("F8 steps", "a", a)?;
    above_zero("F8 steps", "step", step)?;
    above_zero("F8 steps", "n", n)?;
    let one = like(step.named("step") * n.named("n"), step.node());
    let steps = a.named("a") / one.clone();
    if !steps.value().si.exact().is_some_and(BigRational::is_integer) {
        return Err(refuse("F8 steps", "a", a, format!("whole steps of {} (the step times the loads)", super::shown(&one))));
    }
    Ok(Worked::new(steps.formula("F8 steps", "steps")))
}

/// Water per load with which the next batch starts: `s_next = min(s_now + a ÷ n, limit)`; `s_now` water per load at the
/// start, `a` water added to the batch of `n` loads, `limit` the mix's limit per load.
///
/// `s_now ≥ 0`, `a ≥ 0`, `n > 0`, `s_now ≤ limit`. Holds for the same day, lot, mixer and weather; a reset is the
/// caller's. Never above the limit, whatever was poured. Source: `carry-over`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::carry::next_start};
/// let gal = |t| Worked::read(t).unwrap();
/// let s = next_start(&gal("1.5 gal"), &gal("1 qt 1 pt"), &Worked::read("2 loads").unwrap(), &gal("1.875 gal")).unwrap();
/// assert_eq!(s.in_unit("gal"), 1.6875);
/// ```
pub fn next_start(s_now: &Worked<Volume>, a: &Worked<Volume>, n: &Worked<Loads>, limit: &Worked<Volume>) -> Answer<Volume> {
    zero_or_more("F8 next start", "s_now", s_now)?;
    zero_or_more("F8 next start", "a", a)?;
    above_zero("F8 next start", "n", n)?;
    at_most("F8 next start", "s_now", s_now, limit, "the limit")?;
    let each = like(a.named("a") / n.named("n"), s_now.node());
    let next = like((s_now.named("s_now") + each).min(limit.named("limit")), s_now.node());
    Ok(Worked::new(next.formula("F8 next start", "s_next")))
}

/// Start water of a batch: `W = down(m × s, measure)`; `m` loads, `s` water per load, `measure` the smallest listed measure.
///
/// `m` and `measure` above 0, `s ≥ 0`. Down, because more can be added and none taken out. Source: `water-by-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::carry::batch_start};
/// let water = |t| Worked::read(t).unwrap();
/// let w = batch_start(&Worked::read("3 loads").unwrap(), &water("1.6875 gal"), &water("1 cup")).unwrap();
/// assert_eq!(w.in_unit("gal"), 5.0625);
/// ```
pub fn batch_start(m: &Worked<Loads>, s: &Worked<Volume>, measure: &Worked<Volume>) -> Answer<Volume> {
    above_zero("F8 batch start", "m", m)?;
    zero_or_more("F8 batch start", "s", s)?;
    let water = like(m.named("m") * s.named("s"), s.node());
    Ok(Worked::new(down_to(water, measure, "F8 batch start")?.formula("F8 batch start", "W")))
}

/// Water per load that may still be added: `left = limit − s`, `0 ≤ s ≤ limit`.
///
/// Source: `water-by-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::carry::left_to_limit};
/// let gal = |t| Worked::read(t).unwrap();
/// assert_eq!(left_to_limit(&gal("1.6875 gal"), &gal("1.875 gal")).unwrap().in_unit("cup"), 3.0);
/// ```
pub fn left_to_limit(s: &Worked<Volume>, limit: &Worked<Volume>) -> Answer<Volume> {
    zero_or_more("F8 left to limit", "s", s)?;
    at_most("F8 left to limit", "s", s, limit, "the limit")?;
    Ok(Worked::new(like(limit.named("limit") - s.named("s"), s.node()).formula("F8 left to limit", "left")))
}

/// One rung of a ladder.
#[derive(Clone, Debug)]
pub struct Rung {
    /// Steps above the start: 0, 1, 2 …
    pub number: i64,
    /// Water per load.
    pub per_load: Worked<Volume>,
    /// Water of the batch, rounded down to the measure.
    pub batch: Worked<Volume>,
}

/// The ladder for batches of `n` loads: rung `i` holds `start + i × step` per load, for as long as that is at most `limit`;
/// its batch holds `n` times as much, rounded down to `measure`.
///
/// `0 ≤ start ≤ limit`, `step`, `n` and `measure` above 0, at most 61 rungs. `n` may be half a load; with a measure too
/// coarse for it two rungs can print alike. Source: `water-by-loads`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::carry::ladder};
/// let water = |t| Worked::read(t).unwrap();
/// let n = Worked::read("2 loads").unwrap();
/// let rungs = ladder(&water("1.5 gal"), &water("1 cup"), &water("1.875 gal"), &n, &water("1 cup")).unwrap();
/// assert_eq!(rungs.len(), 7);
/// assert_eq!(rungs.last().unwrap().batch.in_unit("gal"), 3.75);
/// ```
pub fn ladder(
    start: &Worked<Volume>,
    step: &Worked<Volume>,
    limit: &Worked<Volume>,
    n: &Worked<Loads>,
    measure: &Worked<Volume>,
) -> Result<Vec<Rung>, OutOfRange> {
    zero_or_more("F8 ladder", "start", start)?;
    above_zero("F8 ladder", "step", step)?;
    at_most("F8 ladder", "start", start, limit, "the limit")?;
    let mut rungs = Vec::new();
    for number in 0.. {
        let climbed = || like(Node::given(number, 1) * step.named("step"), start.node());
        let water = if number == 0 { start.named("start") } else { start.named("start") + climbed() };
        let per_load: Worked<Volume> = Worked::new(water.formula("F8 ladder", "s"));
        if per_load.value().si.compare(&limit.value().si).is_gt() {
            break;
        }
        if number > MOST_RUNGS {
            return Err(refuse("F8 ladder", "step", step, format!("a step that reaches the limit within {MOST_RUNGS} rungs")));
        }
        let batch = batch_start(n, &per_load, measure)?;
        rungs.push(Rung { number, per_load, batch });
    }
    Ok(rungs)
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, line, q};
    use super::*;

    // Worked example of the design, common practice, no source.
    #[test]
    fn the_next_batch_starts_where_the_last_ended() {
        let s = next_start(&q("1 gal 2 qt"), &q("1 qt 1 pt"), &q("2 loads"), &q("1.875 gal")).unwrap();
        holds(&s, "gal", "1.6875");
        let (symbols, numbers) = line(&s);
        assert_eq!(symbols, "s_next = min(s_now + a ÷ n, limit)");
        assert_eq!(numbers, "min(1.5 + 1.5 ÷ 2 ÷ 4, 1.875) = 1.6875 gal");
        let w = batch_start(&q("3 loads"), &s, &q("1 cup")).unwrap();
        holds(&w, "gal", "5.0625");
        holds(&w, "L", "19.16");
        assert!(w.value().si.exact().is_some(), "water stays exact");
        assert_eq!(line(&w).1, "down(3 × 1.6875, 0.0625) = 5.0625 gal");
        holds(&left_to_limit(&s, &q("1.875 gal")).unwrap(), "cup", "3");
        // 1 gal 2 qt and a quart, the sum of small steps: 1 gal 3 qt.
        holds(&next_start(&q("1 gal 2 qt"), &q("1 qt"), &q("1 load"), &q("1.875 gal")).unwrap(), "gal", "1.75");
    }

    #[test]
    fn additions_sit_on_rungs() {
        let step = q("1 cup");
        holds(&steps_added(&q("6 cups"), &step, &q("2 loads")).unwrap(), "", "3");
        let refused = steps_added(&q("3 cups"), &step, &q("2 loads")).unwrap_err();
        assert_eq!(refused.wants, "whole steps of 2 cup (the step times the loads)");
        holds(&steps_added(&q("1/2 cup"), &step, &q("1/2 load")).unwrap(), "", "1");
    }

    #[test]
    fn never_above_the_limit() {
        let s = next_start(&q("1.75 gal"), &q("2 gal"), &q("1 load"), &q("1.875 gal")).unwrap();
        holds(&s, "gal", "1.875");
        assert!(next_start(&q("2 gal"), &q("0 gal"), &q("1 load"), &q("1.875 gal")).is_err());
        assert!(next_start(&q("1 gal"), &q("0 gal"), &q("0 loads"), &q("1.875 gal")).is_err());
    }

    #[test]
    fn ladders_with_half_loads_and_in_litres() {
        let half = ladder(&q("1.5 gal"), &q("1 cup"), &q("1.875 gal"), &q("1/2 load"), &q("1/2 cup")).unwrap();
        let cups: Vec<f64> = half.iter().map(|r| r.batch.in_unit("cup")).collect();
        assert_eq!(cups, [12.0, 12.5, 13.0, 13.5, 14.0, 14.5, 15.0]);
        // Without the half cup a rung repeats, rounded down.
        let coarse = ladder(&q("1.5 gal"), &q("1 cup"), &q("1.875 gal"), &q("1/2 load"), &q("1 cup")).unwrap();
        assert_eq!(coarse[1].batch.in_unit("cup"), 12.0);
        let litres = ladder(&q("4.6 L"), &q("0.2 L"), &q("5.6 L"), &q("2 loads"), &q("50 mL")).unwrap();
        assert_eq!(litres.len(), 6);
        holds(&litres[5].batch, "L", "11.2");
        assert!(ladder(&q("1.5 gal"), &q("1 mL"), &q("1.875 gal"), &q("1 load"), &q("1 cup")).is_err());
    }
}
