//! L9 and polymer mix at a firebox: an opening with fire in it whose manual, clearance and heat nobody has on record.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::{Appliance, Opening, Site, Surface};
use crate::sound::phrase::named;
use crate::sound::told::{at_value, length, number, related_value};
use crate::sound::{Check, Ground};
use crate::source::Span;

/// The check.
pub const CHECK: Check = Check {
    name: "firebox-uncleared",
    ids: &["L9"],
    severities: &[Severity::Stop],
    title: "a firebox in the wall has no clearance on file",
    manual: include_str!("firebox_uncleared.md"),
    twins: &[("es", include_str!("firebox_uncleared.es.md"))],
    run,
};

/// Openings that get hot, in the words of a surface.
const FIRE: &[&str] = &[
    "firebox",
    "fireplace",
    "fire",
    "stove",
    "oven",
    "heater",
    "kiln",
    "grill",
    "hogar",
    "chimenea",
    "estufa",
    "horno",
    "fogón",
    "calentador",
    "parrilla",
];
const SOURCE: &str =
    "the appliance's listing and manual and the local code decide clearance, the mix sheet the heat that its polymer bears";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    let all = surfaces.flat_map(|(site, surface)| surface.openings.iter().map(move |o| (site, surface, o)));
    all.filter_map(|(site, surface, opening)| one(ground, site, surface, opening)).collect()
}

/// What says that fire burns in an opening: its key, or without one its words.
fn hot(opening: &Opening) -> Option<(String, Span)> {
    match opening.fire {
        Some(true) => Some(("fire: yes".to_owned(), opening.code.at)),
        Some(false) => None,
        None => opening.what.iter().find_map(|(_, text)| named(text, FIRE)),
    }
}

fn one(ground: &Ground<'_>, site: &Site, surface: &Surface, opening: &Opening) -> Option<Finding> {
    let (word, at) = hot(opening)?;
    let place = format!("{}/{}", surface.code.text, opening.code.text);
    let here = |a: &&Appliance| a.site.text == site.code.text && a.surface.text == surface.code.text && a.opening.text == opening.code.text;
    let finding = match ground.job.appliances.iter().find(here) {
        None => Finding::new(CHECK.name, Severity::Stop, format!("{place} is a firebox (`{word}`) and no record gives its clearance"))
            .at(at, "fire burns here")
            .help(format!(
                "file a record of kind `appliance` for {place}: manual, clearance, service temperature, who compared them; till then no mix near it"
            )),
        Some(record) => judged(ground, site, &place, record)?.related(at, "fire burns here"),
    };
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    Some(finding.source(SOURCE).about(place).figure(id("net_area")).figure(id("loads")))
}

/// A record with something left out, or one whose heat is more than the mix bears.
fn judged(ground: &Ground<'_>, site: &Site, place: &str, record: &Appliance) -> Option<Finding> {
    let lacks = [
        ("manual", record.manual.is_none()),
        ("clearance", record.clearance.is_none()),
        ("service", record.service.is_none()),
        ("checked_by", record.checked_by.is_none()),
        ("date", record.date.is_none()),
    ];
    let missing: Vec<&str> = lacks.iter().filter(|(_, lacks)| *lacks).map(|(key, _)| *key).collect();
    if !missing.is_empty() {
        let title = format!("the record of the firebox {place} does not state {}", missing.join(", "));
        return Some(
            Finding::new(CHECK.name, Severity::Stop, title)
                .at(record.opening.at, "this firebox")
                .help("have the installer read the manual and the mix sheet, and write down what they say; nobody guesses a clearance"),
        );
    }
    let (edge, service) = (record.edge.as_ref()?, record.service.as_ref()?);
    if edge.value().compare(service.value()) != Some(Ordering::Greater) {
        return None;
    }
    let unit = if site.metric { "°C" } else { "°F" };
    let (hot, bears) = (number(edge.node(), unit), number(service.node(), unit));
    let mut finding =
        Finding::new(CHECK.name, Severity::Stop, format!("the mix at {place} gets {hot}, its sheet allows {bears} in service"))
            .help("keep the mix farther off, until the manual gives a heat that the sheet allows; another facing goes between");
    if let Some(clearance) = &record.clearance {
        let small = if site.metric { "mm" } else { "in" };
        finding = finding.derived(format!("at a clearance of {}", length(clearance.node(), small)));
    }
    let finding = at_value(finding, ground, edge.node(), "heat at the edge of the mix");
    Some(related_value(finding, ground, service.node(), "the mix bears this"))
}
