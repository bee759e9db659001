//! T1: a coat is planned thinner than its mix sheet allows.

use crate::finding::{Finding, Severity};
use crate::sound::told::{at_value, once_a_place, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Planned};

/// The check.
pub const CHECK: Check = Check {
    name: "thinner-than-mix",
    ids: &["T1"],
    severities: &[Severity::Stop],
    title: "a coat is planned thinner than its mix sheet allows",
    manual: include_str!("thinner_than_mix.md"),
    twins: &[("es", include_str!("thinner_than_mix.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(of::thinnest(ground).iter().filter_map(|planned| one(ground, planned)).collect())
}

fn one(ground: &Ground<'_>, planned: &Planned<'_>) -> Option<Finding> {
    let least = &planned.mix.thickness.0;
    if !of::less(planned.thickness, least.value()) {
        return None;
    }
    let (thick, wants) = (of::tape(planned.site, planned.thickness.node()), of::tape(planned.site, least.node()));
    let title = format!("{} is {thick} thick, {} wants {wants} or more", planned.what, planned.mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(format!("mix sheet of {}: least thickness; a thinner edge dries before it cures, and flakes", planned.mix.name.text))
        .help(format!("plan {wants} or more there, or a mix whose sheet allows less"));
    let finding = at_value(finding, ground, planned.thickness.node(), "planned so thin");
    Some(planned.of(related_value(finding, ground, least.node(), "the least of the mix sheet")))
}
