//! W7: one late addition is larger than a small step.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::Quantity;
use crate::sound::limits::{self, LATE_SHARE, LATE_WATER, Limit};
use crate::sound::told::{at_value, authored, number, related_value};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "step-too-large",
    ids: &["W7"],
    severities: &[Severity::Hold],
    title: "one late addition of water is too large",
    manual: include_str!("step_too_large.md"),
    twins: &[("es", include_str!("step_too_large.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

/// Each bound by itself: a cup is much for a small load, and 5 % is much for a large one.
fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let (start, step) = (mix.water.start.node(), mix.water.step.node());
    let (cup, share) = (limits::find(LATE_WATER)?, limits::find(LATE_SHARE)?);
    let of_start = Quantity { si: start.value().si.mul(&share.quantity()?.si), ..start.value().clone() };
    let over = |most: &Quantity| step.value().compare(most) == Some(Ordering::Greater);
    let unit = if mix.metric { "L" } else { "cup" };
    let (row, most): (&Limit, String) = match (over(&cup.quantity()?), over(&of_start)) {
        (false, false) => return None,
        (true, _) => (cup, format!("{} for a load", cup.value)),
        (false, true) => (share, format!("{} of the start water", share.value)),
    };
    let (said, _) = authored(ground, step)?;
    let in_unit =
        |q: &Quantity| crate::quantity::units::find_expr(unit).and_then(|u| q.in_unit(u)).map(|n| format!("{} {unit}", n.plain()));
    let (a, b) = (in_unit(&cup.quantity()?)?, in_unit(&of_start)?);
    let finding = Finding::new(
        CHECK.name,
        Severity::Hold,
        format!("one late addition of {} is {said}, at most {most} goes in at once", mix.name.text),
    )
    .derived(if mix.metric { format!("{} is {a}", cup.value) } else { format!("most for a load: {a}") })
    .derived(format!("{} × {} = {b}", share.value, number(start, unit)))
    .derived(format!("one step is {}", number(step, unit)))
    .source(row.source)
    .help("take a smaller step: add, mix, look again, and add once more if it is still dry");
    let finding = at_value(finding, ground, step, "in one go");
    let finding = if row.key == LATE_SHARE { related_value(finding, ground, start, "of this start") } else { finding };
    Some(finding.figure(format!("{}.step", mix.id)))
}
