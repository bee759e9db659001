//! W4: a panel was mixed with water that its mix sheet does not allow, so nothing on site can be mixed like it.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::{Mix, Panel};
use crate::sound::told::{at_value, authored, number, related_value};
use crate::sound::{Check, Ground};
use crate::tally::mix_of;

/// The check.
pub const CHECK: Check = Check {
    name: "panel-water-off-mix",
    ids: &["W4"],
    severities: &[Severity::Warn],
    title: "a panel was mixed with less than the start water or more than the limit",
    manual: include_str!("panel_water_off_mix.md"),
    twins: &[("es", include_str!("panel_water_off_mix.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let judged = |panel: &Panel| mix_of(ground.job, &panel.mix.text).and_then(|mix| one(ground, panel, mix));
    ground.job.panels.iter().filter_map(judged).collect()
}

/// The start of an older revision is not known; the limit and the least of the sheet bind it all the same.
fn one(ground: &Ground<'_>, panel: &Panel, mix: &Mix) -> Option<Finding> {
    let same = panel.rev.text == mix.rev.text;
    let (low, name) = if same { (&mix.water.start, "start") } else { (&mix.water.least, "least start") };
    let (water, low, limit) = (panel.water.node(), low.node(), mix.water.limit.node());
    // A start over the limit is stopped by itself, and says nothing of the panel.
    if mix.water.start.value().compare(limit.value()) == Some(Ordering::Greater) {
        return None;
    }
    let (bound, words) = if water.value().compare(low.value()) == Some(Ordering::Less) {
        (low, format!("under the {name} water"))
    } else if water.value().compare(limit.value()) == Some(Ordering::Greater) {
        (limit, "over the limit".to_owned())
    } else {
        return None;
    };
    let ((said, _), (most, _)) = (authored(ground, water)?, authored(ground, bound)?);
    let unit = if mix.metric { "L" } else { "gal" };
    let title = format!("the panel of `{}` was mixed with {said} for a load, {words} {most} of {}", panel.texture.text, mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{} against {}", number(water, unit), number(bound, unit)))
        .source("mix sheet; a panel decides looks and paces, never water")
        .help("read the water again in the notes of that day, start and additions together; if it was so, carve another panel")
        .about(panel.id.as_str());
    Some(related_value(at_value(finding, ground, water, "start and added, for a load"), ground, bound, "the mix sheet"))
}
