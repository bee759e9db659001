//! Q9: an own haul whose trips are each over the payload.

use crate::finding::{Finding, Severity};
use crate::job::{Delivery, Site};
use crate::quantity::Num;
use crate::sound::told::{at_value, limit, printed, related_value, text, typed};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "own-haul-over-payload",
    ids: &["Q9"],
    severities: &[Severity::Stop],
    title: "a trip with the own trailer is over its payload",
    manual: include_str!("own_haul_over_payload.md"),
    twins: &[("es", include_str!("own_haul_over_payload.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let own = |site: &Site| site.delivery.as_ref().is_some_and(|d| d.by.text == "own trailer");
    ground.job.sites.iter().filter(|s| own(s)).filter_map(|site| one(ground, site, site.delivery.as_ref()?)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, delivery: &Delivery) -> Option<Finding> {
    let transport = ground.job.company.as_ref()?.transport.as_ref()?;
    let order = format!("{}.order_weight", site.id);
    let weight = printed(ground, &order, site.metric)?;
    let unit = weight.unit?;
    let (most, carries) = limit(transport.payload.value(), unit, (1, 1))?;
    let trips = delivery.trips.as_ref().map_or(Num::int(1), |t| t.value().si.clone());
    let whole = Num::Exact(weight.number?);
    let allowed = Num::Exact(most).mul(&trips);
    if whole.compare(&allowed).is_le() {
        return None;
    }
    let needs = text(ground, &format!("{}.trips", site.id), site.metric)?;
    let times = if trips.compare(&Num::int(1)).is_gt() { format!("{} trips", trips.plain()) } else { "1 trip".to_owned() };
    let said = typed(&weight.text);
    let title = format!("{said} for {} in {times} is over the payload {carries}, it takes {needs}", site.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .derived(format!("{times} × {carries} = {} {} at most", allowed.plain(), unit.symbol()))
        .source("company file: payload of the trailer; axles, brakes and tickets: common practice, no source")
        .help(format!("plan `trips: {needs}`, or have it delivered: `by: yard`"))
        .about(site.id.as_str())
        .figure(order);
    let finding = match &delivery.trips {
        Some(trips) => at_value(finding, ground, trips.node(), "trips planned"),
        None => finding.at(delivery.by.at, "in one trip"),
    };
    Some(related_value(finding, ground, transport.payload.node(), "the trailer"))
}
