//! S2: a day plans more wall than its crew can carve before it closes.

use crate::finding::{Finding, Severity};
use crate::sound::told::related_value;
use crate::sound::{Check, Ground};

use super::plans::{Planned, planned};

/// The check.
pub const CHECK: Check = Check {
    name: "day-over-carve-limit",
    ids: &["S2"],
    severities: &[Severity::Stop],
    title: "a day plans more wall than can be carved before it closes",
    manual: include_str!("day_over_carve_limit.md"),
    twins: &[("es", include_str!("day_over_carve_limit.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    planned(ground).iter().filter_map(|day| by_area(ground, day).or_else(|| by_table(ground, day))).collect()
}

/// The planned area against the carve limit, both as the day sheet prints them.
fn by_area(ground: &Ground<'_>, day: &Planned<'_>) -> Option<Finding> {
    let outlook = day.outlook;
    let ((area, says), (limit, most)) = (day.area(ground, &outlook.area), day.area(ground, &outlook.limit));
    if area <= limit {
        return None;
    }
    let title = format!("{} plans {says}, its crew can carve {most} before the wall closes", day.name());
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title);
    let (_, without) = day.area(ground, &outlook.limit_without_breaks);
    if without != most {
        finding = finding.derived(format!("{without} if nobody stopped for a break"));
    }
    let kind = if day.plan.split { "split crew" } else { "same crew" };
    let finding = finding.derived(format!("{kind}, all who carve {}; the shortest carve window of the shift's hours", day.pace()));
    Some(end(ground, day, finding))
}

/// A patch that the batch table finds closed before it is carved, and breaks are not the cause.
fn by_table(ground: &Ground<'_>, day: &Planned<'_>) -> Option<Finding> {
    let outlook = day.outlook;
    let late = |(patch, end): (&crate::tally::minutes_table::Patch, &Option<i64>)| {
        let kept = patch.kept.as_ref()?;
        (patch.closed() && (*end)? > kept.closes).then_some((kept.closes, kept.carve.1))
    };
    let (n, (closes, carved)) =
        outlook.patches.iter().zip(&outlook.without_breaks).enumerate().find_map(|(n, pair)| Some((n, late(pair)?)))?;
    let title = format!(
        "{} plans {}: batch {} closes {}, it is carved until {}",
        day.name(),
        day.area(ground, &outlook.area).1,
        n + 1,
        day.clock(ground, closes),
        day.clock(ground, carved)
    );
    Some(end(ground, day, Finding::new(CHECK.name, Severity::Stop, title)))
}

fn end(ground: &Ground<'_>, day: &Planned<'_>, finding: Finding) -> Finding {
    let (spared, good) = (day.part_of_limit(&day.plan.spare.value().si), &day.outlook.good);
    let fits = if good.si.compare(&spared.si).is_lt() { good } else { &spared };
    let help = if fits.si.is_zero() {
        "not one batch is carved before it closes: make the batches smaller, or bring more carvers".to_owned()
    } else {
        format!("plan `area: {}` or less for this crew, take breaks by turns, or bring more carvers", day.area_typed(ground, fits))
    };
    let finding = finding
        .source("mix sheet: carve window; paces of the company; the rule that the first mud must be carved before it closes is common practice, no source")
        .help(help)
        .about(day.about());
    let finding = day.at_area(ground, finding, "planned here");
    related_value(finding, ground, day.plan.carvers.node(), "people who carve")
}
