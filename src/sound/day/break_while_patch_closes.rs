//! S3: a break falls while a patch closes.

use crate::finding::{Finding, Severity};
use crate::quantity::{Num, Quantity};
use crate::sound::told::at_value;
use crate::sound::{Check, Ground};

use super::plans::{Planned, planned};

/// The check.
pub const CHECK: Check = Check {
    name: "break-while-patch-closes",
    ids: &["S3"],
    severities: &[Severity::Warn],
    title: "a break falls while a patch closes",
    manual: include_str!("break_while_patch_closes.md"),
    twins: &[("es", include_str!("break_while_patch_closes.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    planned(ground).iter().filter_map(|day| one(ground, day)).collect()
}

/// The first patch that is carved in time without the breaks and not with them, and the last break before it is carved.
fn one(ground: &Ground<'_>, day: &Planned<'_>) -> Option<Finding> {
    let outlook = day.outlook;
    let (n, patch) = outlook.patches.iter().enumerate().find(|(n, p)| {
        let without = outlook.without_breaks.get(*n).copied().flatten();
        p.kept.as_ref().is_some_and(|k| p.closed() && without.is_some_and(|end| end <= k.closes))
    })?;
    let kept = patch.kept.as_ref()?;
    let mut breaks = day.plan.breaks.iter().zip(&outlook.crew.breaks);
    let ((from, _), (begins, ends)) = breaks.rfind(|(_, (from, _))| *from < kept.carve.1)?;
    let length = ends - begins;
    let lost = Quantity { si: outlook.crew.carve.mul(&Num::int(length.saturating_mul(60))), ..outlook.limit.clone() };
    let title = format!(
        "the break {} to {} is too long for batch {} of {}: it closes {}, it is carved until {}",
        day.clock(ground, *begins),
        day.clock(ground, *ends),
        n + 1,
        day.name(),
        day.clock(ground, kept.closes),
        day.clock(ground, kept.carve.1)
    );
    let cut = day.area_typed(ground, &lost);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{length} min × {} = {} that nobody carves in the break", day.pace(), day.area(ground, &lost).1))
        .source("mix sheet: carve window; carving in the order of placing is common practice, no source")
        .help(format!("take this break by turns and leave it out of `breaks`, or plan {cut} less"))
        .about(day.about());
    let finding = at_value(finding, ground, from.node(), "the crew stops here");
    Some(finding.related(day.goal.day.at, "this day"))
}
