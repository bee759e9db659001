//! S10: carving goes on after sunset, without lights.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

use super::plans::{Planned, planned};

/// The check.
pub const CHECK: Check = Check {
    name: "carving-after-dark",
    ids: &["S10"],
    severities: &[Severity::Warn],
    title: "carving goes on after sunset without lights",
    manual: include_str!("carving_after_dark.md"),
    twins: &[("es", include_str!("carving_after_dark.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    planned(ground).iter().filter_map(|day| one(ground, day)).collect()
}

fn one(ground: &Ground<'_>, day: &Planned<'_>) -> Option<Finding> {
    let sunset = day.outlook.sunset?;
    let ends = day.outlook.patches.iter().filter_map(|p| p.kept.as_ref()).map(|k| k.carve.1);
    let end = ends.clone().max()?;
    if end <= sunset {
        return None;
    }
    let late = ends.filter(|e| *e > sunset).count();
    let title = format!("carving of {} ends {}, the sun sets {}", day.name(), day.clock(ground, end), day.clock(ground, sunset));
    let mut finding = Finding::new(CHECK.name, Severity::Warn, title)
        .at(day.goal.day.at, "this day")
        .derived(format!("{late} of {} patches are carved after sunset; the plan says no `lights`", day.outlook.patches.len()))
        .source("sunset from the sun's position over the site; that carving in the dark is carved again is common practice, no source")
        .help("start earlier, plan less wall, or set up lights and write `lights: yes`")
        .value(day.clock(ground, end))
        .about(day.about());
    if let Some((_, span)) = crate::sound::told::authored(ground, day.plan.starts.node()) {
        finding = finding.related(span, "first water in");
    }
    Some(finding)
}
