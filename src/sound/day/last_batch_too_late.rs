//! S11: the last batch leaves no time for covering and cleaning up.

use crate::finding::{Finding, Severity};
use crate::quantity::num::Direction;
use crate::sound::told::{authored, related_value};
use crate::sound::{Check, Ground};
use crate::tally::minutes::minutes;

use super::plans::{Planned, planned};

/// The check.
pub const CHECK: Check = Check {
    name: "last-batch-too-late",
    ids: &["S11"],
    severities: &[Severity::Warn],
    title: "the last batch leaves no time for covering and cleaning up",
    manual: include_str!("last_batch_too_late.md"),
    twins: &[("es", include_str!("last_batch_too_late.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    planned(ground).iter().filter_map(|day| one(ground, day)).collect()
}

fn one(ground: &Ground<'_>, day: &Planned<'_>) -> Option<Finding> {
    let carved = day.outlook.patches.iter().filter_map(|p| Some((p, p.kept.as_ref()?)));
    let (last, kept) = carved.max_by_key(|(_, k)| k.carve.1)?;
    let clean_up = minutes(&day.plan.clean_up.value().si, Direction::Up);
    let ends = minutes(&day.plan.ends.value().si, Direction::Down);
    let done = kept.carve.1 + clean_up;
    if done <= ends {
        return None;
    }
    let clock = |m: i64| day.clock(ground, m);
    let title = format!(
        "last water in {} on {}: carving, cover and wash need until {}, the shift ends {}",
        clock(last.water_in),
        day.goal.iso(),
        clock(done),
        clock(ends)
    );
    let mut finding = Finding::new(CHECK.name, Severity::Warn, title)
        .at(day.goal.day.at, "this day")
        .derived(format!("carved {} + {clean_up} min clean-up = {}, {} min over", clock(kept.carve.1), clock(done), done - ends))
        .source("the plan's own shift and clean-up; common practice, no source")
        .help("plan less wall, start earlier, or end the shift later")
        .value(clock(done))
        .about(day.about());
    if let Some((_, span)) = authored(ground, day.plan.ends.node()) {
        finding = finding.related(span, "the shift ends");
    }
    Some(related_value(finding, ground, day.plan.clean_up.node(), "clean-up and cover"))
}
