//! E5 (stop): a fresh face dries so fast that it cracks before it sets.

use crate::finding::{Finding, Severity};
use crate::sound::weather::sky::{Grade, drying, skies};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "drying-too-fast",
    ids: &["E5"],
    severities: &[Severity::Stop],
    title: "a fresh face dries so fast that it cracks before it sets",
    manual: include_str!("drying_too_fast.md"),
    twins: &[("es", include_str!("drying_too_fast.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let of = |title: String| {
        let help = "stand screens and fog ready and write `protection: {wind: screens and fog}`, shade the bags, or place in the hours that dry less";
        Finding::new(CHECK.name, Severity::Stop, title).help(help)
    };
    let all = skies(ground);
    let days = all.iter().flat_map(|sky| sky.days.iter().map(move |shift| (sky, shift)));
    days.filter_map(|(sky, shift)| drying(ground, sky, shift, Grade::Stop, limits::DRYING_MOST, of)).collect()
}
