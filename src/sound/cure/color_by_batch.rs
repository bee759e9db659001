//! C6: pigment in the mix, or color, that is measured for each batch and not for a whole wall.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::{Mix, Site};
use crate::quantity::{Num, Quantity};
use crate::sound::phrase::{Ask, NOT, each_clause};
use crate::sound::told::{at_value, number, related_value};
use crate::sound::{Check, Ground};
use crate::tally::mixes_of;

/// The check.
pub const CHECK: Check = Check {
    name: "color-by-batch",
    ids: &["C6"],
    severities: &[Severity::Note],
    title: "color is mixed for each batch and not for a wall at once",
    manual: include_str!("color_by_batch.md"),
    twins: &[("es", include_str!("color_by_batch.es.md"))],
    run,
};

const COLOR: &[&str] = &["color", "colour", "pigment", "tint", "stain", "pigmento", "tinte"];
const BATCH: &[&str] = &["batch", "batches", "load", "tanda", "tandas", "juego"];
const EACH: &[&str] = &["each", "every", "per", "fresh", "anew", "by", "cada", "por"];
const MAKE: &[&str] = &["mix", "make", "measure", "prepare", "weigh", "blend", "mezcle", "haga", "mida", "prepare", "pese"];
/// Words of one lot that is shared out.
const LOT: &[&str] = &["lot", "same", "one", "wall", "box", "lote", "mismo", "misma", "pared"];

const ASK: Ask<'static> = Ask { all: &[COLOR, BATCH, EACH, MAKE], unless: LOT, not: NOT };
const SOURCE: &str = "common practice, no source: small measures differ, and the eye sees a band where two batches meet";
const HELP: &str = "weigh and blend the color of a whole wall at once, then share it out by weight";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for site in &ground.job.sites {
        found.extend(mixes_of(ground.job, site).into_iter().filter_map(|mix| one(ground, site, mix)));
    }
    found.extend(each_clause(ground, &ASK, |_, word, at| {
        Finding::new(CHECK.name, Severity::Note, format!("the text makes `{word}` for each batch, bands show between batches"))
            .at(at, "batch by batch")
            .source(SOURCE)
            .help(HELP)
    }));
    found
}

/// A mix with pigment on a site that does not say that a wall gets one lot.
fn one(ground: &Ground<'_>, site: &Site, mix: &Mix) -> Option<Finding> {
    let pigment = mix
        .pigment
        .as_ref()
        .filter(|p| p.value().compare(&Quantity::plain(Num::int(0)).as_kind(p.value().kind)) == Some(Ordering::Greater))?;
    let lot = site.gate.as_ref().and_then(|g| g.lot.as_ref());
    let share = number(pigment.node(), "%");
    let finding = match lot {
        Some(lot) if lot.text == "wall" => return None,
        Some(lot) => {
            let title = format!(
                "{} holds {share} of pigment and its color is mixed for each batch of {}, not for a wall",
                mix.name.text, site.code.text
            );
            related_value(Finding::new(CHECK.name, Severity::Note, title), ground, pigment.node(), "pigment").at(lot.at, "batch by batch")
        }
        None => {
            let title = format!("{} holds {share} of pigment and {} says nothing of one lot for a wall", mix.name.text, site.code.text);
            at_value(Finding::new(CHECK.name, Severity::Note, title), ground, pigment.node(), "pigment, as a share of the cement")
        }
    };
    Some(finding.source(SOURCE).help(format!("{HELP}: `color_gate: {{lot: wall}}`")).about(format!("{}/{}", site.code.text, mix.name.text)))
}
