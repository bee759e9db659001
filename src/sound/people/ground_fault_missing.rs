//! H5: a mixer hangs on a 120 V outlet that is not said to be a ground-fault one.

use crate::finding::{Finding, Severity};
use crate::job::{BatchPlan, Mixer, Site};
use crate::sound::{Check, Ground};

use super::unsaid;

/// The check.
pub const CHECK: Check = Check {
    name: "ground-fault-missing",
    ids: &["H5"],
    severities: &[Severity::Stop],
    title: "a 120 V mixer hangs on an outlet without ground-fault protection",
    manual: include_str!("ground_fault_missing.md"),
    twins: &[("es", include_str!("ground_fault_missing.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter(|s| s.safety.as_ref().is_none_or(|p| !p.ground_fault)).filter_map(|s| one(ground, s)).collect()
}

/// A mixer that does not say what drives it is taken to be plugged in: that is the usual one.
fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let mixers = || ground.job.company.iter().flat_map(|c| &c.mixers);
    let plugged = |m: &&Mixer| m.drive.as_ref().is_none_or(|d| d.text == "120 V");
    let used = |b: &BatchPlan| mixers().find(|m| m.code.text == b.mixer.text).filter(plugged);
    let mixer = site.batches.iter().find_map(used)?;
    let name = mixer.names.first().map_or(mixer.code.text.as_str(), |(_, t)| t.text.as_str());
    let what = if mixer.drive.is_some() { "runs on 120 V" } else { "does not say what drives it, which is taken as 120 V" };
    let title = format!("the {name} {what}, no ground-fault outlet is named at {}", site.code.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source("ground-fault protection of 120 V, 15 and 20 A outlets on construction sites: OSHA 29 CFR 1926.404(b)(1), recalled")
        .help("plug it into a ground-fault outlet or a portable protector, press its test button, and write `ground_fault: yes`");
    Some(unsaid(finding, site, "ground_fault").related(mixer.drive.as_ref().map_or(mixer.code.at, |d| d.at), "this mixer"))
}
