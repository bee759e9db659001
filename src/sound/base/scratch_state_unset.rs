//! L12: a scratch coat whose age or dampness before the carve coat nobody states.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::{Check, Ground};
use crate::tally::mix_of;

/// The check.
pub const CHECK: Check = Check {
    name: "scratch-state-unset",
    ids: &["L12"],
    severities: &[Severity::Warn],
    title: "nothing says how old or how damp the scratch coat must be",
    manual: include_str!("scratch_state_unset.md"),
    twins: &[("es", include_str!("scratch_state_unset.es.md"))],
    run,
};

const SOURCE: &str = "UFGS 09 24 23 asks an even dampness of the base coat (recalled); the mix sheet decides age and look";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().flat_map(|site| one(ground, site)).collect()
}

fn one(ground: &Ground<'_>, site: &Site) -> Vec<Finding> {
    // No scratch mix, no scratch coat: it is left out where every surface is carved straight on the base.
    let Some(name) = &site.scratch_mix else { return Vec::new() };
    let mut found = Vec::new();
    if site.details.as_ref().is_none_or(|d| d.scratch_state.is_none()) {
        found.push(
            Finding::new(
                CHECK.name,
                Severity::Warn,
                format!("{} has a scratch coat and nothing says how damp it is carved on", site.code.text),
            )
            .at(name.at, "damp, wet or dry")
            .absent()
            .source(SOURCE)
            .help("say what the hand can see: `details: {scratch_state: \"damp, dark, no shine\"}`")
            .about("state".to_owned()),
        );
    }
    if let Some(mix) = mix_of(ground.job, &name.text).filter(|m| m.recoat.is_none()) {
        found.push(
            Finding::new(CHECK.name, Severity::Warn, format!("{} says nothing of the wait before the carve coat", mix.name.text))
                .at(mix.name.at, "states no `recoat`")
                .absent()
                .related(name.at, "the scratch coat of this site")
                .source(SOURCE)
                .help("copy the wait from the mix sheet, such as `recoat: 48 h`")
                .about("age".to_owned()),
        );
    }
    found
}
