//! L11: water that something lives in, or that people drink, against fresh cement.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "water-contact-unsafe",
    ids: &["L11"],
    severities: &[Severity::Hold],
    title: "fish or drinking water touches the work, and nobody says that it may",
    manual: include_str!("water_contact_unsafe.md"),
    twins: &[("es", include_str!("water_contact_unsafe.es.md"))],
    run,
};

/// Water that is more than water in a pool, and what it does there.
const GRAVE: &[(&str, &str)] = &[("fish", "fish die of the lime that fresh cement lets go"), ("drinking", "what leaves the mix is drunk")];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(one).collect()
}

fn one(site: &Site) -> Option<Finding> {
    let details = site.details.as_ref()?;
    let water = details.water.as_ref()?;
    let (_, why) = GRAVE.iter().find(|(word, _)| *word == water.text)?;
    if details.water_by.is_some() {
        return None;
    }
    let title = format!("`{}` water touches the work of {} and nobody is named who says that it may: {why}", water.text, site.code.text);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .at(water.at, "touches the work")
        .source("common practice, no source: fresh cement holds water at a pH over 12; the makers of mix and sealer say what it may touch")
        .help("have mix and sealer cleared for it in writing and write `water_by:` with the role that did, or keep the water off");
    Some(site.surfaces.iter().fold(finding, |f, s| f.figure(format!("{}/{}.net_area", site.id, s.code.text))))
}
