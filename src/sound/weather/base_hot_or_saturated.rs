//! E8: the base is hot, or it is saturated with water.

use crate::finding::{Finding, Severity};
use crate::job::{Reading, Site};
use crate::quantity::num::Direction;
use crate::quantity::units::find_expr;
use crate::sound::told::at_value;
use crate::sound::{Check, Ground, limits};

/// The check.
pub const CHECK: Check = Check {
    name: "base-hot-or-saturated",
    ids: &["E8"],
    severities: &[Severity::Hold],
    title: "the base is hot, or water stands on it",
    manual: include_str!("base_hot_or_saturated.md"),
    twins: &[("es", include_str!("base_hot_or_saturated.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let readings = ground.job.sites.iter().flat_map(|site| site.base.readings.iter().map(move |r| (site, r)));
    readings.flat_map(|(site, r)| [hot(ground, site, r), saturated(r)]).flatten().collect()
}

fn named(reading: &Reading) -> (&str, String) {
    (reading.surface.as_ref().map_or("the base", |s| s.text.as_str()), reading.day.date().iso())
}

fn hot(ground: &Ground<'_>, site: &Site, reading: &Reading) -> Option<Finding> {
    let row = limits::find(limits::BASE_HOT)?;
    let read = reading.temperature.as_ref()?;
    if read.value().si.compare(&row.quantity()?.si).is_le() {
        return None;
    }
    let (what, date) = named(reading);
    let (symbol, limit) = if site.metric { ("°C", "37.7 °C") } else { ("°F", row.value) };
    // Up, so that a base just over the limit is not shown at it.
    let tenth = num_rational::BigRational::new(1.into(), 10.into());
    let number = read.value().in_unit(find_expr(symbol)?)?.round(Direction::Up, &tenth);
    let number = if number.is_integer() { crate::quantity::num::exact_text(&number) } else { crate::quantity::num::decimal(&number, 1) };
    let title = format!("{what} is at {number} {symbol} on {date}, over {limit} it takes the water out of the mix at once");
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(row.source)
        .help("shade the base, cool it with water and let the shine go, read it again and write the new reading")
        .about(date);
    Some(at_value(finding, ground, read.node(), "read on the base"))
}

fn saturated(reading: &Reading) -> Option<Finding> {
    let water = reading.water.as_ref().filter(|w| w.text == "saturated")?;
    let (what, date) = named(reading);
    let title = format!("{what} is saturated on {date}, at most damp without shine is right");
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source("common practice, no source: mud keys into pores, not into water")
        .help("let the shine go, read it again and write `water: damp`")
        .about(date);
    Some(finding.at(water.at, "read on the base"))
}
