//! M7: a batch takes up more than its mixer mixes well.

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Mixer, Site};
use crate::sound::told::{at_value, printed, related_value, text, typed, verb};
use crate::sound::{Check, Ground};
use crate::tally::{batch_id, mix_of};

/// The check.
pub const CHECK: Check = Check {
    name: "batch-over-mixer",
    ids: &["M7"],
    severities: &[Severity::Stop],
    title: "a batch takes up more than its mixer mixes well",
    manual: include_str!("batch_over_mixer.md"),
    twins: &[("es", include_str!("batch_over_mixer.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    super::plans(ground.job).filter_map(|(site, plan, mixer)| one(ground, site, plan, mixer)).collect()
}

/// Both as printed: the batch at its limit water, rounded up, against a capacity rounded down.
fn one(ground: &Ground<'_>, site: &Site, plan: &BatchPlan, mixer: &Mixer) -> Option<Finding> {
    let mix = mix_of(ground.job, &plan.mix.text)?;
    let batch = batch_id(ground.job, site, plan);
    let mixed = format!("{}/{}/{}", site.id, mix.id, mixer.code.text);
    let (volume_id, capacity_id) = (format!("{batch}.volume"), format!("{mixed}.capacity"));
    let (volume, capacity) = (printed(ground, &volume_id, site.metric)?, printed(ground, &capacity_id, site.metric)?);
    if volume.number.as_ref()? <= capacity.number.as_ref()? {
        return None;
    }
    let loads = text(ground, &format!("{batch}.loads"), site.metric)?;
    let name = mixer.names.first().map_or(mixer.code.text.as_str(), |(_, n)| n.text.as_str());
    let (volume, capacity) = (typed(&volume.text), typed(&capacity.text));
    let one_load = text(ground, &format!("{}.yield_at_limit", mix.id), site.metric)?;
    let title = format!(
        "{loads} of {} {} {volume}, the {name} mixes {capacity} well",
        mix.name.text,
        verb(plan.loads.value(), "takes up", "take up")
    );
    let most = text(ground, &format!("{mixed}.most_loads"), site.metric);
    let unit = if site.metric { "L" } else { "ft3" };
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!("{loads} × {one_load} at the limit water = {volume}, rounded up"))
        .derived(format!(
            "{} × {} = {capacity}, rounded down",
            crate::sound::told::number(mixer.holds.node(), unit),
            crate::sound::told::number(mixer.fill.node(), "%")
        ))
        .source("common practice, no source: an overfull mixer leaves dry corners and throws mix out")
        .help(super::instead(most.as_deref(), name));
    let finding = at_value(finding, ground, plan.loads.node(), "this batch");
    let finding = related_value(finding, ground, mixer.fill.node(), "share of the vessel that mixes well");
    Some(finding.figure(volume_id).figure(capacity_id))
}
