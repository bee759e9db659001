//! C7: a cure that ends before the least days of the mix sheet, or a text that lets warmth shorten it.

use super::days::{least, mud, number, said};
use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::phrase::{Ask, NOT, each_clause};
use crate::sound::told::related_value;
use crate::sound::{Check, Ground};
use crate::tally::mix_of;

/// The check.
pub const CHECK: Check = Check {
    name: "cure-shortened",
    ids: &["C7"],
    severities: &[Severity::Stop],
    title: "warm days are used to make the cure shorter than the mix sheet",
    manual: include_str!("cure_shortened.md"),
    twins: &[("es", include_str!("cure_shortened.es.md"))],
    run,
};

const WARM: &[&str] =
    &["warm", "warmth", "hot", "heat", "heater", "sun", "credit", "calor", "cálido", "cálida", "caliente", "sol", "crédito", "calentador"];
const SHORTENS: &[&str] = &[
    "shorten",
    "shortens",
    "shortened",
    "shorter",
    "sooner",
    "early",
    "earlier",
    "acorta",
    "acorte",
    "acortan",
    "acortar",
    "acortado",
    "menos",
    "adelanta",
    "adelante",
    "adelantar",
];
const CURE: &[&str] =
    &["cure", "curing", "cured", "cover", "covers", "days", "day", "curado", "curar", "cubierta", "cubiertas", "días", "día"];
/// Words of another matter: people work early in heat, and mix goes off sooner.
const OTHER: &[&str] =
    &["start", "starts", "water", "open", "mix", "lunch", "begin", "empiece", "agua", "mezcla", "lengthen", "longer", "people"];

const ASK: Ask<'static> = Ask { all: &[SHORTENS, WARM, CURE], unless: OTHER, not: NOT };
const SOURCE: &str =
    "mix sheet; credit by temperature is a house method that may lengthen a cure and proves no strength (idea of ASTM C1074, recalled)";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(|site| one(ground, site)).collect();
    found.extend(each_clause(ground, &ASK, |_, word, at| {
        Finding::new(
            CHECK.name,
            Severity::Stop,
            format!("the text lets warmth make the cure shorter (`{word}`), it can only make it longer"),
        )
        .at(at, "shortens the cure")
        .source(SOURCE)
        .help("take it out: the days of the mix sheet are the least, whatever the weather")
    }));
    found
}

fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let done = site.cure.as_ref()?.done.as_ref()?;
    let mix = mix_of(ground.job, &site.carve_mix.text)?;
    let (_, last) = mud(site)?;
    let counted = number(done)? - number(last)?;
    let least = least(mix)?;
    if counted >= least {
        return None;
    }
    let title =
        format!("the cure is taken as over {} after the last mud, the sheet of {} asks {}", said(&counted), mix.name.text, said(&least));
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(done.at, "counted as over")
        .related(last.at, "last mud on the wall")
        .derived(format!("{} to {} = {}", last.iso(), done.iso(), said(&counted)))
        .source(SOURCE)
        .help("leave `done` out and use the date of the takeoff, or write a later day")
        .figure(format!("{}.cure_over", site.id));
    Some(match &mix.cure.credit {
        Some(credit) => related_value(finding, ground, credit.node(), "least days of the sheet"),
        None => related_value(finding, ground, mix.cure.wet.node(), "wet time of the sheet"),
    })
}
