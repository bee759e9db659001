//! M14: nobody has weighed a pail of a mix.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::told::{at_value, text};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "yield-not-weighed",
    ids: &["M14"],
    severities: &[Severity::Warn],
    title: "nobody has weighed a pail of a mix",
    manual: include_str!("yield_not_weighed.md"),
    twins: &[("es", include_str!("yield_not_weighed.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter(|mix| mix.mixing.weighed.is_none()).filter_map(|mix| one(ground, mix)).collect()
}

fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let id = |name: &str| format!("{}.{name}", mix.id);
    let (volume, density) = (text(ground, &id("yield"), mix.metric)?, text(ground, &id("wet_density"), mix.metric)?);
    let title = format!("the yield of {}, {volume}, is a guess: nobody has weighed a full pail of it", mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("worked from the air and the grains of the sheet; a pail of it should show {density}"))
        .source(
            "common practice, no source: ten per cent of air more or less moves the bags by ten per cent, and a weighed pail settles it",
        )
        .help(format!(
            "weigh a full pail at the panel and write `weighed: {{density: {}, date: 2026-02-19}}` under `mixing`, with what it showed",
            density.replace('³', "3")
        ))
        .absent();
    Some(at_value(finding, ground, mix.air.node(), "read from a sheet").figure(id("yield")))
}
