//! W12: mixing water hot enough to set cement as it goes in.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::quantity::Node;
use crate::sound::limits::{self, HOT_WATER};
use crate::sound::told::{at_value, authored, number};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "mix-water-too-hot",
    ids: &["W12"],
    severities: &[Severity::Stop],
    title: "the mixing water is hot enough to flash-set cement",
    manual: include_str!("mix_water_too_hot.md"),
    twins: &[("es", include_str!("mix_water_too_hot.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    ground.job.sites.iter().flat_map(|site| of_site(ground, site)).collect()
}

/// What the site plans, and what a thermometer in the water showed; of the readings the hottest.
fn of_site(ground: &Ground<'_>, site: &Site) -> Vec<Finding> {
    let planned = site.mixing_water.iter().filter_map(|w| w.warmest.as_ref()).map(|t| (t.node(), "planned"));
    let hours = ground.job.weather.iter().filter(|w| w.site == site.id).flat_map(|w| &w.hours);
    let measured = hours.filter_map(|(_, hour)| hour.water.as_ref()).max_by(|a, b| a.value().si.compare(&b.value().si));
    planned.chain(measured.map(|t| (t.node(), "measured"))).filter_map(|(node, how)| one(ground, site, node, how)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, water: &Node, how: &str) -> Option<Finding> {
    let row = limits::find(HOT_WATER)?;
    if water.value().compare(&row.quantity()?) != Some(Ordering::Greater) {
        return None;
    }
    let (said, _) = authored(ground, water)?;
    // A cell of a table has its unit in the head.
    let unit = if water.unit().is_some_and(crate::quantity::expr::is_metric) { "°C" } else { "°F" };
    let said = if said.contains('°') { said } else { number(water, unit) };
    let most = if unit == "°C" { " (60 °C)" } else { "" };
    let finding = Finding::new(
        CHECK.name,
        Severity::Stop,
        format!("mixing water of {} is {how} at {said}, over {}{most}", site.name.text, row.value),
    )
    .source(row.source)
    .help(format!("cool it to {}{most} or less before any powder; warm the bags or the room instead of the water", row.value))
    .about(how);
    Some(at_value(finding, ground, water, "as hot as this"))
}
