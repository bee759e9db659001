//! Q9: an order is heavier than the trailer carries, and nobody has said who brings it.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::told::{limit, printed, related_value, text, typed};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "order-over-payload",
    ids: &["Q9"],
    severities: &[Severity::Warn],
    title: "an order is heavier than the trailer carries",
    manual: include_str!("order_over_payload.md"),
    twins: &[("es", include_str!("order_over_payload.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    // Stated, it comes from the yard, or is an own haul with a check of its own.
    ground.job.sites.iter().filter(|s| s.delivery.is_none()).filter_map(|site| one(ground, site)).collect()
}

fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let transport = ground.job.company.as_ref()?.transport.as_ref()?;
    let (order, trips) = (format!("{}.order_weight", site.id), format!("{}.trips", site.id));
    let weight = printed(ground, &order, site.metric)?;
    let unit = weight.unit?;
    let (most, carries) = limit(transport.payload.value(), unit, (1, 1))?;
    if weight.number? <= most {
        return None;
    }
    let times = text(ground, &trips, site.metric)?;
    let title = format!("the order of {} weighs {}, the trailer carries {carries}", site.name.text, typed(&weight.text));
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!("{times} trips with the own trailer"))
        .at(site.name.at, "states no `delivery`")
        .source("company file: payload of the trailer; axles, brakes and tickets: common practice, no source")
        .help("have it delivered and write `delivery: {by: yard, floor: ground}`, or plan the trips: `by: own trailer, trips: N`")
        .absent()
        .about(site.id.as_str())
        .figure(order);
    Some(related_value(finding, ground, transport.payload.node(), "the trailer"))
}
