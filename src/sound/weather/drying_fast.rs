//! E5 (watch): a fresh face dries fast for a mix that does not bleed.

use crate::finding::{Finding, Severity};
use crate::sound::weather::sky::{Grade, drying, skies};
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "drying-fast",
    ids: &["E5"],
    severities: &[Severity::Warn],
    title: "a fresh face dries fast",
    manual: include_str!("drying_fast.md"),
    twins: &[("es", include_str!("drying_fast.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let of = |title: String| {
        let help = "stand screens or fog ready and name them in `protection.wind`, shade the bags, or read air, humidity and wind at the wall and write them in the columns `wall air`, `wall humidity`, `wall wind`";
        Finding::new(CHECK.name, Severity::Warn, title).help(help)
    };
    let all = skies(ground);
    let days = all.iter().flat_map(|sky| sky.days.iter().map(move |shift| (sky, shift)));
    days.filter_map(|(sky, shift)| drying(ground, sky, shift, Grade::Watch, limits::DRYING, of)).collect()
}
