//! T10: more is planned overhead than the mix sheet allows there.

use crate::finding::{Finding, Severity};
use crate::job::{Site, Surface};
use crate::sound::told::{at_value, once_a_place, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Underside};

/// The check.
pub const CHECK: Check = Check {
    name: "overhead-too-thick",
    ids: &["T10"],
    severities: &[Severity::Stop],
    title: "more is planned overhead than the mix sheet allows",
    manual: include_str!("overhead_too_thick.md"),
    twins: &[("es", include_str!("overhead_too_thick.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    let all = surfaces.flat_map(|(site, s)| of::undersides(s).into_iter().filter_map(move |u| one(ground, site, s, &u)));
    once_a_place(all.collect())
}

fn one(ground: &Ground<'_>, site: &Site, surface: &Surface, under: &Underside<'_>) -> Option<Finding> {
    let mix = of::carve(ground, site)?;
    let (planned, most) = (under.planned?, mix.overhead.as_ref()?);
    if !of::less(most, planned.value()) {
        return None;
    }
    let (thick, allowed) = (of::tape(site, planned.node()), of::tape(site, most.node()));
    let title = format!("{} is planned {thick} thick overhead, {} takes at most {allowed} there", under.code, mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(format!("mix sheet of {}: most thickness overhead; more lets go while people stand under it", mix.name.text))
        .help(format!("plan {allowed} or less there, and build the form above it down instead"));
    let finding = at_value(finding, ground, planned.node(), "planned overhead");
    let finding = related_value(finding, ground, most.node(), "the most overhead");
    Some(finding.about(&under.code).figure(of::figure(site, surface, "most")).figure(of::figure(site, surface, "lifts")))
}
