//! H8: a solvent is used in a room, or near a flame, and nothing is said of air or of flames.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::{Check, Ground};
use crate::source::Span;

use super::called::{Paper, papers};
use super::conditions::{CALLS, SOLVENT};
use super::facts::is_firebox;
use super::phrases::{Line, row, says};

/// The check.
pub const CHECK: Check = Check {
    name: "solvent-without-air",
    ids: &["H8"],
    severities: &[Severity::Stop],
    title: "a solvent in a room or near a flame, and nothing said of air or flames",
    manual: include_str!("solvent_without_air.md"),
    twins: &[("es", include_str!("solvent_without_air.es.md"))],
    run,
};

const SOURCE: &str = "ventilation and ignition sources where flammable liquids are used: OSHA 29 CFR 1926.57 and 1926.152, recalled; the product's safety data sheet decides";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(planned).collect();
    found.extend(papers(ground).iter().filter_map(|paper| written(ground, paper)));
    found
}

/// Why vapour is a danger on a site: the room, or a flame in it.
fn close(site: &Site) -> Option<(String, Span)> {
    if site.climate.place.text == "indoors" {
        return Some(("indoors".to_owned(), site.climate.place.at));
    }
    let openings = site.surfaces.iter().flat_map(|s| &s.openings);
    let fire = openings.into_iter().find(|o| o.what.iter().any(|(_, t)| is_firebox(&t.text)))?;
    Some((format!("beside {}, a firebox", fire.code.text), fire.code.at))
}

fn planned(site: &Site) -> Option<Finding> {
    let finish = site.finish.as_ref().filter(|f| f.solvent == Some(true))?;
    let (how, at) = close(site)?;
    let lacks = list(finish.ventilation.is_none(), finish.flames_out.is_none())?;
    let said = finish.ventilation.as_ref().or(finish.flames_out.as_ref()).map_or(site.name.at, |t| t.at);
    let title = format!("{} puts a solvent on {how} and says nothing of {lacks}", site.code.text);
    let help =
        "say both in `finish`: `ventilation: fan out of the window, doors open` and `flames_out: gas pilot shut at its valve by LEAD`";
    let label = if said == site.name.at { "says neither" } else { "says only this" };
    Some(Finding::new(CHECK.name, Severity::Stop, title).at(said, label).related(at, how).source(SOURCE).help(help))
}

/// What is said of neither air nor flames.
fn list(air: bool, flames: bool) -> Option<&'static str> {
    match (air, flames) {
        (true, true) => Some("air or flames"),
        (true, false) => Some("air"),
        (false, true) => Some("flames"),
        (false, false) => None,
    }
}

/// Words that put a product on.
const APPLIES: &[&str] = &[
    "roll", "spray", "brush", "apply", "wipe", "clean", "seal", "coat", "thin", "pour", "use", "put", "ruede", "rocíe", "aplique",
    "limpie", "selle", "ponga", "use", "pase", "dé", "diluya",
];
const AIR: &[&str] = &[
    "air moving",
    "ventilate",
    "ventilated",
    "ventilation",
    "fan",
    "fans",
    "open windows",
    "windows open",
    "mueva el aire",
    "ventile",
    "ventilación",
    "ventilador",
    "ventanas abiertas",
];
const FLAMES: &[&str] =
    &["flame", "flames", "pilot", "pilots", "pilot light", "pilot lights", "ignition", "llama", "llamas", "piloto", "pilotos", "ignición"];

fn written<'a>(ground: &'a Ground<'a>, paper: &Paper<'a>) -> Option<Finding> {
    let solvents = CALLS.iter().find(|(name, _)| *name == SOLVENT)?.1;
    let carried = paper.carries(ground);
    for seen in &paper.texts {
        let puts = |s| {
            let line = Line::of(s);
            let verb = line.meant(APPLIES)?;
            let at = line.find_from(verb, solvents)?;
            let product = line.phrase(at, solvents);
            Some((product.to_owned(), line.places(at, product.split(' ').count())?))
        };
        let Some((product, at)) = seen.sentences().iter().find_map(puts) else { continue };
        let cautions: Vec<String> = carried
            .iter()
            .filter_map(|c| c.editions.iter().find(|e| e.lang == seen.edition.lang).or(c.editions.first()))
            .map(|e| row(&e.body.text))
            .collect();
        let said = |words: &[&str]| cautions.iter().any(|c| says(c, words)) || seen.sentences().iter().any(|s| Line::of(s).has(words));
        let Some(lacks) = list(!said(AIR), !said(FLAMES)) else { continue };
        let Some((how, place)) = paper.sites.iter().find_map(|site| close(site)) else { continue };
        let title = format!("{} uses `{product}` {how} and says nothing of {lacks}", paper.name);
        return Some(
            Finding::new(CHECK.name, Severity::Stop, title)
                .at(at, "a solvent")
                .related(place, how)
                .source(SOURCE)
                .help("list the caution for solvents, or say in a step who puts the flames out and how the air is moved"),
        );
    }
    None
}
