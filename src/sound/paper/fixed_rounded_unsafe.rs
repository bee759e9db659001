//! D12: a fixed number is rounded to the unsafe side of the figure that it speaks of.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::prose::{PHRASES, Typed, differs};
use crate::quantity::num::Direction;
use crate::sound::told::{once_a_place, typed};
use crate::sound::{Check, Ground, Seen};

/// The check.
pub const CHECK: Check = Check {
    name: "fixed-rounded-unsafe",
    ids: &["D12"],
    severities: &[Severity::Stop],
    title: "a fixed number lies on the unsafe side of the figure that it speaks of",
    manual: include_str!("fixed_rounded_unsafe.md"),
    twins: &[("es", include_str!("fixed_rounded_unsafe.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.seen {
        found.extend(seen.fixed().iter().filter_map(|typed| one(ground, seen, typed)));
    }
    once_a_place(found)
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>, said: &Typed) -> Option<Finding> {
    // The words around it name the figure, as they do for a number that is typed.
    let (id, printed) = differs(said, &seen.scope, ground.tally, seen.voice, PHRASES)?;
    let figure = ground.tally.figure(&id)?;
    let exact = figure.worked.as_ref().ok()?.value();
    let quantity = said.quantity.as_ref()?;
    let direction = ground.tally.rule(figure.role, exact, seen.voice.metric).direction;
    let over = quantity.compare(exact)?;
    let side = match (direction, over) {
        (Direction::Down, Ordering::Greater) => "over",
        (Direction::Up, Ordering::Less) => "under",
        _ => return None,
    };
    let printed = typed(&printed);
    let title = format!("`{}` is fixed, {side} the {printed} that it speaks of", said.text.replace('\u{a0}', " "));
    let way = if direction == Direction::Down { "down" } else { "up" };
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(said.span, "rounded to the unsafe side")
        .derived(format!("{id} = {printed}, rounded {way}"))
        .source("house rule: limits, starts and times round down, minimums and weights round up");
    Some(finding.help(format!("print the figure by its slot, or fix `{printed}`")).figure(&id))
}
