//! Q1, Q2: a surface's measures give no area, or no mud.

use crate::finding::{Finding, Severity};
use crate::job::{Site, Surface};
use crate::sound::{Check, Ground};
use crate::source::Span;

/// The check.
pub const CHECK: Check = Check {
    name: "surface-unworked",
    ids: &["Q1", "Q2"],
    severities: &[Severity::Stop],
    title: "the measures of a surface give no area",
    manual: include_str!("surface_unworked.md"),
    twins: &[("es", include_str!("surface_unworked.es.md"))],
    run,
};

/// What must be there before anything of a surface is bought.
const FIGURES: [&str; 3] = ["net_area", "volume", "scratch_volume"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    surfaces.filter_map(|(site, surface)| one(ground, site, surface)).collect()
}

/// The first cause, told once, at the opening or the edge that it is about if it is about one.
fn one(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let why = |id: &str| ground.tally.figure(id).and_then(|f| f.worked.as_ref().err());
    let cause = FIGURES.iter().find_map(|name| why(&id(name)))?;
    let (place, name) = part(surface, &|part| why(&id(part)).is_some());
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("{name} cannot be worked: {cause}"))
        .at(place, "measured here")
        .source("plane geometry: the formula holds in its range only")
        .help("measure again what is named here; a shape that is none of those offered is measured in parts, or by its corners");
    let lost = FIGURES.iter().chain(&["loads", "scratch_loads"]).map(|name| id(name));
    Some(lost.fold(finding, Finding::figure))
}

/// Place and name of the part that fails; of the surface if it is the whole.
fn part(surface: &Surface, fails: &dyn Fn(&str) -> bool) -> (Span, String) {
    let openings = surface.openings.iter().map(|o| &o.code);
    let edges = surface.returns.iter().chain(&surface.soffits).map(|e| &e.code);
    let fails = |code: &str| ["area", "deducted", "reveal"].iter().any(|name| fails(&format!("{code}.{name}")));
    let failing = openings.chain(edges).find(|code| fails(&code.text));
    failing
        .map_or_else(|| (surface.code.at, surface.code.text.clone()), |code| (code.at, format!("{} of {}", code.text, surface.code.text)))
}
