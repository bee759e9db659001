//! M13: the wet density is none of a mortar.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::Quantity;
use crate::quantity::num::{self, Direction};
use crate::quantity::units::find_expr;
use crate::sound::limits;
use crate::sound::told::{at_value, limit, printed, related_value, typed};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "wet-density-unlikely",
    ids: &["M13"],
    severities: &[Severity::Warn],
    title: "the wet density is none of a mortar",
    manual: include_str!("wet_density_unlikely.md"),
    twins: &[("es", include_str!("wet_density_unlikely.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let id = |name: &str| format!("{}.{name}", mix.id);
    let density = printed(ground, &id("wet_density"), mix.metric)?;
    let (number, unit) = (density.number.clone()?, density.unit?);
    let row = |key: &str| -> Option<(Quantity, &'static str)> { limits::find(key).and_then(|r| Some((r.quantity()?, r.source))) };
    let ((least, source), (most, _)) = (row(limits::DENSITY_LEAST)?, row(limits::DENSITY_MOST)?);
    if number >= least.exact_in(unit)? && number <= most.exact_in(unit)? {
        return None;
    }
    let (_, low) = limit(&least, unit, (1, 10))?;
    let (_, high) = limit(&most, unit, (1, 10))?;
    let said = typed(&density.text);
    let title = format!("{} weighs {said} wet, a mortar weighs {low} to {high}", mix.name.text);
    // The printed weight and yield are rounded to safe sides of their own: the quotient needs more digits.
    let (mass, volume) = if mix.metric { (("kg", 2), ("m3", 5)) } else { (("lb", 2), ("ft3", 4)) };
    let (wet, volume) = (digits(ground, &id("wet_weight"), mass)?, digits(ground, &id("yield"), volume)?);
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{wet} of load and start water ÷ {volume} = {said}"))
        .source(source)
        .help("look for a slipped unit: kg for lb, L for gal, the air, a relative density; then weigh a full pail")
        .value(said.clone());
    let finding = at_value(finding, ground, mix.mortar.relative_density.node(), "the mortar's grains");
    let finding = related_value(finding, ground, mix.additive.relative_density.node(), "the additive's");
    let finding = related_value(finding, ground, mix.air.node(), "and this much air");
    Some(finding.figure(id("wet_density")).figure(id("yield")))
}

/// A figure in a unit with some digits behind the point.
fn digits(ground: &Ground<'_>, id: &str, (unit, places): (&str, usize)) -> Option<String> {
    let value = ground.tally.figure(id)?.worked.as_ref().ok()?.value().in_unit(find_expr(unit)?)?;
    let measure = num_rational::BigRational::new(1.into(), num_bigint::BigInt::from(10).pow(u32::try_from(places).ok()?));
    Some(format!("{} {}", num::decimal(&value.round(Direction::Nearest, &measure), places), unit.replace('3', "³")))
}
