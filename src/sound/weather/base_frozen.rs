//! E8: the base is frozen.

use crate::finding::{Finding, Severity};
use crate::job::{Reading, Site};
use crate::sound::told::at_value;
use crate::sound::{Check, Ground, limits};
use crate::tally::nights::degrees;

/// The check.
pub const CHECK: Check = Check {
    name: "base-frozen",
    ids: &["E8"],
    severities: &[Severity::Stop],
    title: "the base is frozen",
    manual: include_str!("base_frozen.md"),
    twins: &[("es", include_str!("base_frozen.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let readings = ground.job.sites.iter().flat_map(|site| site.base.readings.iter().map(move |r| (site, r)));
    readings.filter_map(|(site, reading)| one(ground, site, reading)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, reading: &Reading) -> Option<Finding> {
    let row = limits::find(limits::BASE_FROZEN)?;
    let read = reading.temperature.as_ref()?;
    if read.value().si.compare(&row.quantity()?.si).is_gt() {
        return None;
    }
    let what = reading.surface.as_ref().map_or("the base", |s| s.text.as_str());
    let (limit, date) = (if site.metric { "0 °C" } else { row.value }, reading.day.date().iso());
    let title = format!("{what} is at {} on {date}, frozen at {limit} and below", degrees(read.node(), site.metric));
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(row.source)
        .help("thaw and warm the base all the way through, let it drain, read it again and write the new reading")
        .about(date);
    Some(at_value(finding, ground, read.node(), "read on the base"))
}
