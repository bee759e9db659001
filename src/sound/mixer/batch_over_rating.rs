//! M10: a batch weighs more than its mixer may turn.

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Mixer, Site};
use crate::quantity::num::Direction;
use crate::sound::told::{at_value, limit, printed, related_value, text, typed, verb};
use crate::sound::{Check, Ground};
use crate::tally::{batch_id, mix_of};

/// The check.
pub const CHECK: Check = Check {
    name: "batch-over-rating",
    ids: &["M10"],
    severities: &[Severity::Stop],
    title: "a batch weighs more than its mixer may turn",
    manual: include_str!("batch_over_rating.md"),
    twins: &[("es", include_str!("batch_over_rating.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    super::plans(ground.job).filter_map(|(site, plan, mixer)| one(ground, site, plan, mixer)).collect()
}

/// The batch as printed, rounded up, against the rating as authored: printed, a rating could round up too.
fn one(ground: &Ground<'_>, site: &Site, plan: &BatchPlan, mixer: &Mixer) -> Option<Finding> {
    let mix = mix_of(ground.job, &plan.mix.text)?;
    let batch = batch_id(ground.job, site, plan);
    let weight_id = format!("{batch}.wet_weight");
    let weight = printed(ground, &weight_id, site.metric)?;
    let (number, unit) = (weight.number.as_ref()?, weight.unit?);
    let rating = mixer.rating.value().in_unit(unit)?.round(Direction::Down, &num_rational::BigRational::new(1.into(), 1_000.into()));
    if *number <= rating {
        return None;
    }
    let (_, most_weight) = limit(mixer.rating.value(), unit, (1, 10))?;
    let loads = text(ground, &format!("{batch}.loads"), site.metric)?;
    let one_load = text(ground, &format!("{}.wet_weight_at_limit", mix.id), site.metric)?;
    let name = mixer.names.first().map_or(mixer.code.text.as_str(), |(_, n)| n.text.as_str());
    let weight = typed(&weight.text);
    let title = format!(
        "{loads} of {} {} {weight} wet, the {name} is rated for {most_weight}",
        mix.name.text,
        verb(plan.loads.value(), "weighs", "weigh")
    );
    let most = text(ground, &format!("{}/{}/{}.most_loads", site.id, mix.id, mixer.code.text), site.metric);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!("{loads} × {one_load} at the limit water = {weight}, rounded up"))
        .source("the mixer's own plate, as the company file states it")
        .help(super::instead(most.as_deref(), name));
    let finding = at_value(finding, ground, plan.loads.node(), "this batch");
    Some(related_value(finding, ground, mixer.rating.node(), "rated for this").figure(weight_id))
}
