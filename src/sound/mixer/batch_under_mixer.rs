//! M8: a batch does not cover the blades of its mixer.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Mixer, Site};
use crate::sound::told::{at_value, related_value, text};
use crate::sound::{Check, Ground};
use crate::tally::{batch_id, mix_of};

/// The check.
pub const CHECK: Check = Check {
    name: "batch-under-mixer",
    ids: &["M8"],
    severities: &[Severity::Warn],
    title: "a batch does not cover the blades of its mixer",
    manual: include_str!("batch_under_mixer.md"),
    twins: &[("es", include_str!("batch_under_mixer.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    super::plans(ground.job).filter_map(|(site, plan, mixer)| one(ground, site, plan, mixer)).collect()
}

/// Loads are printed as they are authored, so both sides are exact.
fn one(ground: &Ground<'_>, site: &Site, plan: &BatchPlan, mixer: &Mixer) -> Option<Finding> {
    let under = |m: &Mixer, plan: &BatchPlan| plan.loads.value().si.compare(&m.least.value().si) == Ordering::Less;
    if !under(mixer, plan) {
        return None;
    }
    let mix = mix_of(ground.job, &plan.mix.text)?;
    let id = format!("{}.loads", batch_id(ground.job, site, plan));
    let loads = text(ground, &id, site.metric)?;
    let least = super::loads(mixer.least.node());
    let name = super::named(mixer);
    let smaller = ground.job.company.iter().flat_map(|c| &c.mixers).find(|m| !under(m, plan));
    let help = match smaller {
        Some(other) => format!("mix it in the {}: `mixer: {}`; or plan at least {least}", super::named(other), other.code.text),
        None => format!("plan at least {least}: `loads: {least}`"),
    };
    let finding = Finding::new(
        CHECK.name,
        Severity::Warn,
        format!("{loads} of {} {} planned in the {name}, which needs at least {least}", mix.name.text, super::is(plan.loads.value())),
    )
    .source("common practice, no source: blades that are not covered push the mix around and leave it dry in the corners; the least batch is the company's own figure")
    .help(help);
    let finding = at_value(finding, ground, plan.loads.node(), "this batch");
    Some(related_value(finding, ground, mixer.least.node(), "covers the blades").about(site.code.text.clone()).figure(id))
}
