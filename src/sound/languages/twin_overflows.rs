//! B6: the face of a twin holds more lines than fit.

use crate::finding::{Finding, Severity};
use crate::sound::paper::fitted;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "twin-overflows",
    ids: &["B6"],
    severities: &[Severity::Stop],
    title: "the face of a twin holds more lines than fit",
    manual: include_str!("twin_overflows.md"),
    twins: &[("es", include_str!("twin_overflows.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let faces = ground.fits.iter().filter_map(|fit| fitted::card(ground, fit).map(|(card, twin)| (card, twin, fit)));
    let help = "shorten the sentences of the twin, or choose a larger paper for both; type never shrinks";
    faces.filter(|(_, twin, _)| *twin).filter_map(|(card, _, fit)| fitted::overflow(card, fit, CHECK.name, help)).collect()
}
