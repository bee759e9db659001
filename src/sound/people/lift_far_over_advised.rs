//! H1: a lift by hand is far over what the lifting equation advises, and no measure is named.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::{Lift, Site};
use crate::quantity::Direction;
use crate::sound::limits::{self, Limit};
use crate::sound::told::{at_value, once_a_place, printed, related_value, text, typed};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "lift-far-over-advised",
    ids: &["H1"],
    severities: &[Severity::Hold],
    title: "a lift is far heavier than advised, and no measure is named",
    manual: include_str!("lift_far_over_advised.md"),
    twins: &[("es", include_str!("lift_far_over_advised.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    limits::find(limits::LIFT_FAR).map_or_else(Vec::new, |far| over(ground, CHECK.name, Severity::Hold, far, None))
}

/// Lifts without a measure whose printed index is over one limit, and not over the other.
pub(super) fn over(ground: &Ground<'_>, name: &'static str, severity: Severity, limit: &Limit, most: Option<&Limit>) -> Vec<Finding> {
    let lifts = || ground.job.company.iter().flat_map(|c| &c.lifts);
    let bare = |l: &&Lift| l.measure.as_ref().is_none_or(|m| m.text.trim().is_empty());
    let sites = ground.job.sites.iter().flat_map(|site| lifts().filter(bare).map(move |lift| (site, lift)));
    once_a_place(sites.filter_map(|(site, lift)| one(ground, name, severity, (limit, most), site, lift)).collect())
}

fn one(
    ground: &Ground<'_>,
    name: &'static str,
    severity: Severity,
    (limit, most): (&Limit, Option<&Limit>),
    site: &Site,
    lift: &Lift,
) -> Option<Finding> {
    let id = |figure: &str| format!("{}/{}.{figure}", site.id, lift.code.text);
    let index = printed(ground, &id("index"), site.metric)?;
    let number = index.number.as_ref()?;
    let exact = |row: &Limit| Some(row.quantity()?.si.round(Direction::Down, &BigRational::new(1.into(), 100.into())));
    if *number <= exact(limit)? || most.is_some_and(|row| exact(row).is_some_and(|m| *number > m)) {
        return None;
    }
    let what = lift.what.first().map_or(lift.code.text.as_str(), |(_, t)| t.text.as_str());
    let said = typed(&index.text);
    let load = text(ground, &id("load"), site.metric)?;
    let advised = text(ground, &id("advised"), site.metric)?;
    let title = format!("{what}: lifting index {said}, over {} a measure is named", limit.value);
    let finding = Finding::new(name, severity, title)
        .derived(format!("{load} in the hands; the equation advises at most {advised}: the worse of where it starts and where it ends"))
        .source(limit.source)
        .help("name what makes it lighter: `measure: two people at the bag`; or lift less of the bag, or from nearer its end height")
        .value(said)
        .about(lift.code.text.clone());
    let finding = at_value(finding, ground, lift.part.node(), "share of a bag in the hands");
    let finding = related_value(finding, ground, lift.height.0.node(), "lifted from this height");
    let finding = related_value(finding, ground, lift.height.1.node(), "to this height");
    Some(finding.figure(id("index")).figure(id("advised")))
}
