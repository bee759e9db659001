//! W11: water that nobody would drink goes into the mixer without a test.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "water-source-untested",
    ids: &["W11"],
    severities: &[Severity::Hold],
    title: "the mixing water is not drinking water and has no test",
    manual: include_str!("water_source_untested.md"),
    twins: &[("es", include_str!("water_source_untested.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().filter_map(one).collect()
}

/// A site that says nothing of its water is not accused of a pond.
fn one(site: &Site) -> Option<Finding> {
    let water = site.mixing_water.as_ref()?;
    if water.kind.text == "drinking" || water.test.is_some() {
        return None;
    }
    let what = if water.kind.text == "softened" { "softened water" } else { "not drinking water" };
    let finding = Finding::new(
        CHECK.name,
        Severity::Hold,
        format!("the mixing water of {}, `{}`, is {what} and has no test", site.name.text, water.source.text),
    )
    .at(water.kind.at, "stated here")
    .related(water.source.at, "the source")
    .source("ASTM C270: clean water, free of what harms mortar; ASTM C1602 for a source in doubt (neither verified against a copy)")
    .help("mix with drinking water, or have the source tested and name the report in `mixing_water.test`");
    Some(finding.about(site.id.as_str()))
}
