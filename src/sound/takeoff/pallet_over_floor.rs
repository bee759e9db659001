//! Q10: a pallet on a suspended floor that carries less.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::told::{at_value, limit, related_value, typed};
use crate::sound::{Check, Ground};

use super::pallets::heaviest;

/// The check.
pub const CHECK: Check = Check {
    name: "pallet-over-floor",
    ids: &["Q10"],
    severities: &[Severity::Stop],
    title: "a pallet is heavier than the floor under it carries",
    manual: include_str!("pallet_over_floor.md"),
    twins: &[("es", include_str!("pallet_over_floor.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(|site| one(ground, site)).collect()
}

fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let delivery = site.delivery.as_ref().filter(|d| d.floor.text == "suspended")?;
    let capacity = delivery.capacity.as_ref()?;
    let (of, load) = heaviest(ground, site)?;
    let unit = load.unit?;
    if load.number.clone()? <= capacity.value().exact_in(unit)? {
        return None;
    }
    let (_, carries) = limit(capacity.value(), unit, (1, 1))?;
    let title = format!("a full pallet of {} puts {} on a floor that carries {carries}", of.words, typed(&load.text));
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title).source(
        "stated capacity of the floor; weight of bags and pallet over its footprint, spread evenly: runners and wheels press harder",
    );
    if let Some(bags) = of.allowed(ground, capacity.value()) {
        finding = finding.help(match bags.as_str() {
            "0" => "set pallets on the ground: not even an empty stack may stand here".to_owned(),
            bags => format!("set pallets on the ground, or stack {bags} bags on one at most"),
        });
    } else {
        finding = finding.help("set pallets on the ground");
    }
    finding = at_value(finding, ground, capacity.node(), "what it carries").figure(of.id.clone()).about(site.id.as_str());
    Some(related_value(finding, ground, of.per_pallet, "bags on a pallet"))
}
