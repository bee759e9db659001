//! M14: a weighed pail does not show the density that was worked.

use num_rational::BigRational;
use num_traits::Signed;

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::num::{self, Direction, Num};
use crate::sound::limits;
use crate::sound::told::{at_value, number, printed, related_value, typed};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "weighed-density-off",
    ids: &["M14"],
    severities: &[Severity::Warn],
    title: "a weighed pail does not show the density that was worked",
    manual: include_str!("weighed_density_off.md"),
    twins: &[("es", include_str!("weighed_density_off.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.mixes.iter().filter_map(|mix| one(ground, mix)).collect()
}

fn one(ground: &Ground<'_>, mix: &Mix) -> Option<Finding> {
    let weighed = mix.mixing.weighed.as_ref()?;
    let id = format!("{}.wet_density", mix.id);
    let worked = printed(ground, &id, mix.metric)?;
    let (expected, unit) = (worked.number.clone()?, worked.unit?);
    let row = limits::find(limits::WEIGHED)?;
    let shown = weighed.density.value().exact_in(unit)?;
    let off = Num::Exact((shown.clone() - expected.clone()).abs()).div(&Num::Exact(expected.clone()))?;
    let percent = off.mul(&Num::int(100)).round(Direction::Nearest, &BigRational::new(1.into(), 10.into()));
    if Num::Exact(percent.clone()).compare(&row.quantity()?.si.mul(&Num::int(100))).is_le() {
        return None;
    }
    let (said, should) = (number(weighed.density.node(), &unit.symbol()), typed(&worked.text));
    let heavy = shown > expected;
    let title = format!(
        "a pail of {} showed {said}, the sheet gives {should}: {} % off, at most {}",
        mix.name.text,
        num::decimal(&percent, 1),
        row.value
    );
    let finding = Finding::new(CHECK.name, Severity::Warn, title).source(row.source).help(format!(
        "{}: weigh another pail, then set right `air` or the relative densities, or the bags are ordered {}",
        if heavy { "the mix holds less air than the sheet says" } else { "the mix holds more air than the sheet says" },
        if heavy { "short" } else { "over" }
    ));
    let finding = at_value(finding, ground, weighed.density.node(), "what the pail showed");
    let finding = related_value(finding, ground, mix.air.node(), "the sheet's air");
    Some(finding.figure(id).figure(format!("{}.yield", mix.id)))
}
