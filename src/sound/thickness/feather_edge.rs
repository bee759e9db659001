//! T1: a coat is planned thinner than practice allows, though its mix sheet would.

use crate::finding::{Finding, Severity};
use crate::sound::limits::{self, LEAST_COAT};
use crate::sound::told::{at_value, once_a_place, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Planned};

/// The check.
pub const CHECK: Check = Check {
    name: "feather-edge",
    ids: &["T1"],
    severities: &[Severity::Hold],
    title: "a coat runs out to a feather edge",
    manual: include_str!("feather_edge.md"),
    twins: &[("es", include_str!("feather_edge.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(of::thinnest(ground).iter().filter_map(|planned| one(ground, planned)).collect())
}

/// Under the mix's own least it is another check's, and a stop.
fn one(ground: &Ground<'_>, planned: &Planned<'_>) -> Option<Finding> {
    let limit = limits::find(LEAST_COAT)?;
    let least = &planned.mix.thickness.0;
    if of::less(planned.thickness, least.value()) || !of::less(planned.thickness, &limit.quantity()?) {
        return None;
    }
    let (thick, wants) = (of::tape(planned.site, planned.thickness.node()), of::row(planned.site, limit));
    let title = format!("{} is {thick} thick, a feather edge: {wants} is the least that lasts", planned.what);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .source(limit.source)
        .help(format!("plan {wants} or more there, or let a role accept it that has seen such an edge last"));
    let finding = at_value(finding, ground, planned.thickness.node(), "planned so thin");
    Some(planned.of(related_value(finding, ground, least.node(), "the mix sheet would allow it")))
}
