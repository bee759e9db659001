//! Q3: an opening without a depth: its jambs and head are in no order.

use crate::finding::{Finding, Severity};
use crate::job::{Opening, OpeningRule, Site, Surface};
use crate::sound::told::text;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "reveal-unstated",
    ids: &["Q3"],
    severities: &[Severity::Warn],
    title: "an opening states no reveal",
    manual: include_str!("reveal_unstated.md"),
    twins: &[("es", include_str!("reveal_unstated.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    // The rule of IS 1200 adds no reveal to most openings, whatever their depth.
    let sites = ground.job.sites.iter().filter(|s| s.opening_rule != OpeningRule::Is1200);
    let openings = sites.flat_map(|site| site.surfaces.iter().flat_map(move |s| s.openings.iter().map(move |o| (site, s, o))));
    openings.filter_map(|(site, surface, opening)| one(ground, site, surface, opening)).collect()
}

fn one(ground: &Ground<'_>, site: &Site, surface: &Surface, opening: &Opening) -> Option<Finding> {
    if opening.depth.is_some() || opening.reveal_by.is_some() {
        return None;
    }
    let (code, wall) = (&opening.code.text, &surface.code.text);
    let id = |name: &str| format!("{}/{wall}.{name}", site.id);
    let title = format!("{code} of {wall} states no depth, none of its reveal is ordered");
    let mut finding = Finding::new(CHECK.name, Severity::Warn, title);
    if let Some(area) = text(ground, &id(&format!("{code}.area")), site.metric) {
        finding = finding.derived(format!("the opening takes {area} off the face, its jambs and head give nothing back"));
    }
    let finding = finding
        .at(opening.code.at, "no depth")
        .related(surface.code.at, "in this wall")
        .source("common practice, no source: returns are what a takeoff forgets")
        .help("measure the reveal and write `depth: 4 in`; if it is not ours, say whose: `reveal_by: frame carpenter`, or `reveal_by: nobody`")
        .absent()
        .about(format!("{wall}.{code}"));
    Some(["net_area", "volume", "scratch_volume"].iter().fold(finding, |f, name| f.figure(id(name))))
}
