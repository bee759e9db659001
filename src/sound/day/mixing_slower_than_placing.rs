//! S9: the mixer needs longer for a batch than the crew for placing it.

use crate::finding::{Finding, Severity};
use crate::sound::told::{at_value, related_value};
use crate::sound::{Check, Ground};

use super::plans::{Planned, planned};

/// The check.
pub const CHECK: Check = Check {
    name: "mixing-slower-than-placing",
    ids: &["S9"],
    severities: &[Severity::Warn],
    title: "mixing a batch takes longer than placing one",
    manual: include_str!("mixing_slower_than_placing.md"),
    twins: &[("es", include_str!("mixing_slower_than_placing.es.md"))],
    run,
};

/// Once for a site and texture: every day of it waits alike.
fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let days = planned(ground);
    let mut found: Vec<(usize, &str, Finding)> = Vec::new();
    for day in &days {
        let surface = day.site.surfaces.iter().find(|s| s.code.text == day.goal.surface.text);
        let Some(texture) = surface.map(|s| s.texture.text.as_str()) else { continue };
        // Sites come in order: the last site's textures are the only ones that can be met again.
        let known = found.iter().rev().take_while(|(site, ..)| *site == day.outlook.site).any(|(_, t, _)| *t == texture);
        if let Some(finding) = one(ground, day, texture).filter(|_| !known) {
            found.push((day.outlook.site, texture, finding));
        }
    }
    found.into_iter().map(|(.., finding)| finding).collect()
}

fn one(ground: &Ground<'_>, day: &Planned<'_>, texture: &str) -> Option<Finding> {
    let crew = &day.outlook.crew;
    // A day of one batch waits for nothing.
    let full = day.outlook.patches.first().filter(|_| day.outlook.patches.len() > 1)?;
    let placing = crew.placing(&full.area);
    if crew.mixing <= placing {
        return None;
    }
    let waits = crew.mixing - placing;
    let title =
        format!("mixing takes {} min, placing a batch of {texture} {placing} min: the crew waits {waits} min each batch", crew.mixing);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{} min from water in to the end of mixing − {placing} min placing = {waits} min", crew.mixing))
        .derived(format!("{} batches on {}", day.outlook.patches.len(), day.goal.iso()))
        .source("one mixer, the next batch mixed while the last is placed: common practice, no source")
        .help("mix larger batches if the open time allows, run a second mixer, or take fewer placers".to_owned())
        .value(format!("{} min", crew.mixing))
        .about(format!("{}-{texture}", day.site.code.text));
    let finding = at_value(finding, ground, day.plan.mixing.node(), "from water in to the end of mixing");
    Some(related_value(finding, ground, day.plan.batch.node(), "loads in a batch"))
}
