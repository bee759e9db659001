//! S4: a day works only if nothing goes wrong.

use crate::finding::{Finding, Severity};
use crate::sound::limits;
use crate::sound::told::{authored, typed, voice};
use crate::sound::{Check, Ground};
use crate::tally::Role;

use super::plans::{Planned, planned};

/// The check.
pub const CHECK: Check = Check {
    name: "day-without-slack",
    ids: &["S4"],
    severities: &[Severity::Warn],
    title: "a day leaves too little of what could be carved free",
    manual: include_str!("day_without_slack.md"),
    twins: &[("es", include_str!("day_without_slack.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    planned(ground).iter().filter_map(|day| one(ground, day)).collect()
}

/// A day over the limit has no slack to speak of: that is another finding.
fn one(ground: &Ground<'_>, day: &Planned<'_>) -> Option<Finding> {
    let row = limits::find(limits::SPARE)?;
    let (least, own) = (row.quantity()?, day.plan.spare.value());
    let by_table = own.si.compare(&least.si).is_lt();
    let spare = if by_table { &least } else { own };
    let fits = day.part_of_limit(&spare.si);
    let outlook = day.outlook;
    let (area, says) = day.area(ground, &outlook.area);
    let ((limit, most), (free, room)) = (day.area(ground, &outlook.limit), day.area(ground, &fits));
    if area <= free || area > limit {
        return None;
    }
    let share = typed(&ground.tally.text_of(Role::Share, spare, voice(day.site.metric)));
    let title = format!("{} plans {says} of the {most} that can be carved; with {share} left free it is {room}", day.name());
    let left = outlook.patches.iter().filter_map(|p| p.kept.as_ref()).map(|k| k.closes - k.carve.1).min();
    let mut finding = Finding::new(CHECK.name, Severity::Warn, title);
    if let Some(minutes) = left.filter(|m| *m >= 0) {
        finding = finding.derived(format!("{minutes} min between the end of carving a patch and its closing, at the tightest one"));
    }
    let source = if by_table { row.source.to_owned() } else { "the plan's own spare".to_owned() };
    let finding = finding
        .derived(format!("{most} × (1 − {share}) = {room}, rounded down"))
        .source(source)
        .help(format!("plan `area: {}` or less, or write `spare: {share}` and leave `area` out", day.area_typed(ground, &fits)))
        .about(day.about());
    let finding = day.at_area(ground, finding, "planned here");
    Some(match authored(ground, day.plan.spare.node()) {
        Some((_, span)) => finding.related(span, "left free by the plan"),
        None => finding,
    })
}
