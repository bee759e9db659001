//! M13: the yield is none of a mortar.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::num::{self, Direction};
use crate::quantity::units::find_expr;
use crate::sound::limits;
use crate::sound::told::{at_value, related_value, text};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "yield-unlikely",
    ids: &["M13"],
    severities: &[Severity::Warn],
    title: "the yield is none of a mortar",
    manual: include_str!("yield_unlikely.md"),
    twins: &[("es", include_str!("yield_unlikely.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

/// Taken on the exact yield: the one that is printed rounds down, by a hundredth of a cubic foot in a load.
fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let id = |name: &str| format!("{}.{name}", mix.id);
    let row = |key: &str| limits::find(key).and_then(|r| Some((r.quantity()?, r)));
    let ((of, of_row), (least, least_row), (most, most_row)) =
        (row(limits::YIELD_OF)?, row(limits::YIELD_LEAST)?, row(limits::YIELD_MOST)?);
    let (volume, dry) = (node(ground, &id("yield"))?, node(ground, &id("dry_weight"))?);
    let made = volume.si.mul(&of.si).div(&dry.si)?;
    let unit = find_expr("ft3")?;
    let hundredth = BigRational::new(1.into(), 100.into());
    let of_volume = crate::quantity::Quantity { si: made, dim: least.dim, kind: least.kind };
    let shown = of_volume.in_unit(unit)?.round(Direction::Nearest, &hundredth);
    if shown >= least.exact_in(unit)? && shown <= most.exact_in(unit)? {
        return None;
    }
    let dry_said = |text: &str| text.replace("ft3", "ft³");
    let said = format!("{} ft³", num::decimal(&shown, 2));
    let (volume, dry) = (text(ground, &id("yield"), mix.metric)?, text(ground, &id("dry_weight"), mix.metric)?);
    let title = format!(
        "{of} of {} yield {said}, {of} of a mortar yield {} to {}",
        mix.name.text,
        dry_said(least_row.value),
        dry_said(most_row.value),
        of = of_row.value,
    );
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{volume} of a load × {} ÷ {dry} dry = {said}", of_row.value))
        .source(least_row.source)
        .help("look for a slipped unit: kg for lb, L for gal, the air, a relative density; then weigh a full pail")
        .value(said.clone());
    let finding = at_value(finding, ground, mix.air.node(), "this much air");
    let finding = related_value(finding, ground, mix.mortar.relative_density.node(), "the mortar's grains");
    let finding = related_value(finding, ground, mix.additive.relative_density.node(), "the additive's");
    Some(finding.figure(id("yield")))
}

fn node(ground: &Ground<'_>, id: &str) -> Option<crate::quantity::Quantity> {
    Some(ground.tally.figure(id)?.worked.as_ref().ok()?.value().clone())
}
