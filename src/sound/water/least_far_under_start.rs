//! W4: the least start water of a mix is so far under its start that it guards nothing.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::Quantity;
use crate::sound::limits::{self, LEAST_OF_START};
use crate::sound::told::{at_value, authored, number, related_value};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "least-far-under-start",
    ids: &["W4"],
    severities: &[Severity::Warn],
    title: "the least start water of a mix is far under its start",
    manual: include_str!("least_far_under_start.md"),
    twins: &[("es", include_str!("least_far_under_start.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let (start, least) = (mix.water.start.node(), mix.water.least.node());
    let row = limits::find(LEAST_OF_START)?;
    let low = Quantity { si: start.value().si.mul(&row.quantity()?.si), ..start.value().clone() };
    if least.value().compare(&low) != Some(Ordering::Less) {
        return None;
    }
    let unit = if mix.metric { "L" } else { "gal" };
    let shown = crate::quantity::units::find_expr(unit).and_then(|u| low.in_unit(u)).map(|n| format!("{} {unit}", n.plain()))?;
    let (said, _) = authored(ground, least)?;
    let title = format!("the least start water of {} is {said}, usual is {} of its start, {shown}, and more", mix.name.text, row.value);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{} × {} = {shown}", row.value, number(start, unit)))
        .derived(format!("{said} is {}", number(least, unit)))
        .source(row.source)
        .help("look at its unit: the least is the sheet's driest start that still wets all of the powder");
    let finding = related_value(at_value(finding, ground, least, "this little"), ground, start, "the start");
    Some(finding.figure(format!("{}.least_water", mix.id)))
}
