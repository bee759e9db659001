//! D5: a face holds more lines than fit.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

use super::fitted;

/// The check.
pub const CHECK: Check = Check {
    name: "face-overflows",
    ids: &["D5"],
    severities: &[Severity::Stop],
    title: "a face holds more lines than fit",
    manual: include_str!("face_overflows.md"),
    twins: &[("es", include_str!("face_overflows.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let faces = ground.fits.iter().filter_map(|fit| fitted::card(ground, fit).map(|(card, twin)| (card, twin, fit)));
    let help = "cut words or steps, or choose a larger paper; type never shrinks";
    faces.filter(|(_, twin, _)| !twin).filter_map(|(card, _, fit)| fitted::overflow(card, fit, CHECK.name, help)).collect()
}
