//! Q1: an opening stands where another one is, or reaches out of its wall.

use crate::finding::{Finding, Severity};
use crate::job::{Opening, Outline, Shape, Site, Surface};
use crate::quantity::num;
use crate::sound::told::{at_value, related_value};
use crate::sound::{Check, Ground};
use crate::tally::{elevation, overlap, points, reach};

/// The check.
pub const CHECK: Check = Check {
    name: "opening-misplaced",
    ids: &["Q1"],
    severities: &[Severity::Hold],
    title: "an opening stands in another one, or reaches out of its wall",
    manual: include_str!("opening_misplaced.md"),
    twins: &[("es", include_str!("opening_misplaced.es.md"))],
    run,
};

/// Millimetres that drawings and tapes may differ by.
const SLACK: f64 = 12.7;

const SOURCE: &str =
    "common practice, no source: what a tape and a drawing may differ by; two openings in one place take its area off twice";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    surfaces.flat_map(|(site, surface)| of_wall(ground, site, surface)).collect()
}

/// Openings whose place is stated, each against the wall and against those before it. Outlines by corners may be
/// hollow, and are left alone.
fn of_wall(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Vec<Finding> {
    let hollow = |outline: &Outline| matches!(outline, Outline::Polygon { .. });
    let Shape::Flat(outline) = &surface.shape else { return Vec::new() };
    let placed: Vec<(&Opening, Vec<[f64; 2]>)> =
        surface.openings.iter().filter(|o| !hollow(&o.outline)).filter_map(|o| Some((o, elevation::placed(o)?))).collect();
    let mut found = Vec::new();
    for (i, (opening, at)) in placed.iter().enumerate() {
        let beyond = if hollow(outline) { 0.0 } else { reach(&points(outline), at) };
        if beyond > SLACK {
            let title = format!("{} of {} reaches {} out of its wall", opening.code.text, surface.code.text, said(beyond, site));
            found.push(finding(ground, site, surface, opening, title).related(surface.code.at, "its wall"));
            continue;
        }
        let before = placed.iter().take(i).map(|(other, there)| (other, overlap(at, there)));
        for (other, depth) in before.filter(|(_, depth)| *depth > SLACK && depth.is_finite()) {
            let title = format!("{} of {} stands {} deep in {}", opening.code.text, surface.code.text, said(depth, site), other.code.text);
            let one = finding(ground, site, surface, opening, title);
            let node = other.left.as_ref().map(crate::quantity::Worked::node);
            found.push(node.into_iter().fold(one, |f, node| related_value(f, ground, node, "the other one")));
        }
    }
    found
}

fn finding(ground: &Ground<'_>, site: &Site, surface: &Surface, opening: &Opening, title: String) -> Finding {
    let slack = said(SLACK, site);
    let finding = Finding::new(CHECK.name, Severity::Hold, format!("{title}, {slack} is let pass"))
        .source(SOURCE)
        .help("measure `left` and `sill` again, from the wall's left edge and from the floor; the size of the opening too")
        .about(format!("{}.{}", surface.code.text, opening.code.text));
    let finding = match &opening.left {
        Some(left) => at_value(finding, ground, left.node(), "its left edge"),
        None => finding,
    };
    let finding = match &opening.sill {
        Some(sill) => related_value(finding, ground, sill.node(), "its foot"),
        None => finding,
    };
    finding.figure(format!("{}/{}.net_area", site.id, surface.code.text))
}

/// A distance in the site's own unit.
fn said(mm: f64, site: &Site) -> String {
    let (number, unit) = if site.metric { (mm, "mm") } else { (mm / 25.4, "in") };
    format!("{} {unit}", num::significant(number, 3))
}
