//! T3: fewer lifts are planned than the deepest place needs.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::{Site, Surface};
use crate::quantity::num::Direction;
use crate::sound::told::{at_value, length, printed, related_value, typed};
use crate::sound::{Check, Ground};
use crate::tally::mix_of;

/// The check.
pub const CHECK: Check = Check {
    name: "lift-too-thick",
    ids: &["T3"],
    severities: &[Severity::Stop],
    title: "fewer lifts are planned than the deepest place needs",
    manual: include_str!("lift_too_thick.md"),
    twins: &[("es", include_str!("lift_too_thick.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    surfaces.filter_map(|(site, surface)| one(ground, site, surface)).collect()
}

/// Judged on the printed number of lifts, which the greatest thickness decides and never the mean.
fn one(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let planned = surface.lifts.as_ref()?;
    let mix = mix_of(ground.job, &site.carve_mix.text)?;
    let texture = site.textures.iter().find(|t| t.name.text == surface.texture.text)?;
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let needs = printed(ground, &id("lifts"), site.metric)?;
    let whole = BigRational::from_integer(1.into());
    let stated = planned.value().si.round(Direction::Down, &whole);
    if stated >= *needs.number.as_ref()? {
        return None;
    }
    let unit = if site.metric { "mm" } else { "in" };
    let lift = length(mix.lift.node(), unit);
    let most = length(texture.most.node(), unit);
    let needs = typed(&needs.text);
    let count = |n: &str| if n == "1" { "1 lift".to_owned() } else { format!("{n} lifts") };
    let stated = stated.numer().to_string();
    let finding = if stated == "0" {
        Finding::new(CHECK.name, Severity::Stop, format!("{} is planned in no lift, it needs {needs} of at most {lift}", surface.code.text))
    } else {
        let each = texture.most.node().clone() / planned.node().clone();
        let each = length(&each, unit);
        let title = format!("{} is planned in {} of {each}, one lift is at most {lift}", surface.code.text, count(&stated));
        Finding::new(CHECK.name, Severity::Stop, title).derived(format!("{most} of carve coat ÷ {} = {each} in one lift", count(&stated)))
    };
    let finding = finding
        .derived(format!("{most} ÷ {lift}, rounded up = {needs}"))
        .source("mix sheet: most in a lift; a thicker one sags or sheets off")
        .help(format!("use {}: `lifts: {needs}`", count(&needs)));
    let finding = at_value(finding, ground, planned.node(), "planned lifts");
    let finding = related_value(finding, ground, texture.most.node(), "carve coat at the faces");
    let finding = related_value(finding, ground, mix.lift.node(), "most in one lift");
    Some(finding.figure(id("lifts")).figure(id("most")))
}
