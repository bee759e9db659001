//! H6: more stands on the platform than its tag allows.

use crate::finding::{Finding, Severity};
use crate::job::{Platform, Site};
use crate::sound::told::{at_value, number, once_a_place, printed, related_value, typed};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "platform-overloaded",
    ids: &["H6"],
    severities: &[Severity::Stop],
    title: "more stands on the platform than its tag allows",
    manual: include_str!("platform_overloaded.md"),
    twins: &[("es", include_str!("platform_overloaded.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let Some(deck) = ground.job.company.as_ref().and_then(|c| c.platform.as_ref()) else { return Vec::new() };
    once_a_place(ground.job.sites.iter().filter_map(|site| one(ground, site, deck)).collect())
}

/// Judged on the printed values: the load rounded up, what the tag allows rounded down.
fn one(ground: &Ground<'_>, site: &Site, deck: &Platform) -> Option<Finding> {
    let id = |name: &str| format!("{}/platform.{name}", site.id);
    let load = printed(ground, &id("load"), site.metric)?;
    let capacity = printed(ground, &id("capacity"), site.metric)?;
    if load.number.as_ref()? <= capacity.number.as_ref()? {
        return None;
    }
    let rating = deck.rating.as_ref()?;
    let mass = if site.metric { "kg" } else { "lb" };
    let bags = deck.bags.as_ref().map_or(String::new(), |b| format!(" and {} of each bag", b.node().number().plain()));
    let count = |node: &crate::quantity::Node| node.number().plain();
    let on = format!("{} people, {} loads in a tub{bags}", count(deck.people.node()), count(deck.tub_loads.node()));
    let (load, most) = (typed(&load.text), typed(&capacity.text));
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("{on} weigh {load}, the platform's tag allows {most}"))
        .derived(format!(
            "people at {} each, mix at its limit water, the empty tub {}",
            number(deck.person.node(), mass),
            number(deck.tub.node(), mass)
        ))
        .source("the scaffold's tag; no platform is loaded past what it was designed for: OSHA 29 CFR 1926.451(f)(1), recalled")
        .help("take people, mix or bags off it until the printed load is within the tag; only the tag and the competent person raise it");
    let finding = at_value(finding, ground, rating.node(), "the tag's rating");
    let finding = related_value(finding, ground, deck.people.node(), "people on it");
    let finding = related_value(finding, ground, deck.tub_loads.node(), "loads on it");
    let finding = match &deck.bags {
        Some(bags) => related_value(finding, ground, bags.node(), "bags of each sort on it"),
        None => finding,
    };
    Some(finding.figure(id("load")).figure(id("capacity")).figure(id("left")).figure(id("bags")))
}
