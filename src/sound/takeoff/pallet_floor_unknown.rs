//! Q10: a pallet on a suspended floor of which nobody knows what it carries.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::told::typed;
use crate::sound::{Check, Ground};

use super::pallets::heaviest;

/// The check.
pub const CHECK: Check = Check {
    name: "pallet-floor-unknown",
    ids: &["Q10"],
    severities: &[Severity::Hold],
    title: "pallets stand on a suspended floor of unknown strength",
    manual: include_str!("pallet_floor_unknown.md"),
    twins: &[("es", include_str!("pallet_floor_unknown.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(|site| one(ground, site)).collect()
}

fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let delivery = site.delivery.as_ref().filter(|d| d.floor.text == "suspended" && d.capacity.is_none())?;
    let heaviest = heaviest(ground, site);
    let puts = heaviest
        .as_ref()
        .map_or("an unknown weight".to_owned(), |(of, load)| format!("a full one of {} puts {} on it", of.words, typed(&load.text)));
    let title = format!("pallets at {} stand on a suspended floor of unknown strength, {puts}", site.name.text);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .at(delivery.floor.at, "what does it carry?")
        .source(
            "building codes design many floors for 40 to 100 lb/ft2 (recalled; not verified against a copy); the owner's engineer decides",
        )
        .help("ask who may say what it carries and write `capacity`, or set pallets on the ground")
        .about(site.id.as_str());
    Some(heaviest.into_iter().fold(finding, |f, (of, _)| f.figure(of.id)))
}
