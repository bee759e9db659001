//! T10: nobody has said how thick the work overhead may be, and the wall's thickness is not meant for it.

use crate::finding::{Finding, Severity};
use crate::job::{Mix, Site, Surface, Texture};
use crate::sound::told::{once_a_place, related_value};
use crate::sound::{Check, Ground};

use super::of::{self, Underside};

/// The check.
pub const CHECK: Check = Check {
    name: "overhead-unplanned",
    ids: &["T10"],
    severities: &[Severity::Hold],
    title: "nobody has said how thick the work overhead may be",
    manual: include_str!("overhead_unplanned.md"),
    twins: &[("es", include_str!("overhead_unplanned.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (site, surface) in ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s))) {
        let texture = site.textures.iter().find(|t| t.name.text == surface.texture.text);
        let (Some(mix), Some(texture)) = (of::carve(ground, site), texture) else { continue };
        let under = of::undersides(surface);
        match (&mix.overhead, under.first()) {
            (None, Some(first)) => found.push(no_limit(mix, site, surface, first)),
            _ => found.extend(under.iter().filter_map(|u| no_plan(ground, mix, (site, surface, texture), u))),
        }
    }
    once_a_place(found)
}

/// The sheet is silent: told once for the mix, with the first underside as the reason.
fn no_limit(mix: &Mix, site: &Site, surface: &Surface, first: &Underside<'_>) -> Finding {
    Finding::new(CHECK.name, Severity::Hold, format!("{} states no most for work overhead, and {} is overhead", mix.name.text, first.code))
        .at(mix.name.at, "states no `overhead`")
        .related(first.at, "worked overhead")
        .source("common practice, no source: the wall's thickness never holds overhead")
        .help("ask the maker and write it into the sheet, such as `overhead: 3/4 in`")
        .absent()
        .about(&mix.name.text)
        .figure(of::figure(site, surface, "most"))
        .figure(of::figure(site, surface, "lifts"))
}

/// Nothing is planned for this place, and what the wall gets is more than may hang.
fn no_plan(
    ground: &Ground<'_>,
    mix: &Mix,
    (site, surface, texture): (&Site, &Surface, &Texture),
    under: &Underside<'_>,
) -> Option<Finding> {
    let most = mix.overhead.as_ref()?;
    if under.planned.is_some() || !of::less(most, texture.most.value()) {
        return None;
    }
    let (wall, allowed) = (of::tape(site, texture.most.node()), of::tape(site, most.node()));
    let title = format!("{} is overhead and would get the wall's {wall}, {} takes at most {allowed} there", under.code, mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .at(under.at, "states no `overhead`")
        .source(format!("mix sheet of {}: most thickness overhead; common practice: walls' rules do not apply to it", mix.name.text))
        .help(format!("say what is planned there, such as `overhead: {allowed}`"))
        .absent()
        .about(&under.code);
    let finding = related_value(finding, ground, texture.most.node(), "the wall's");
    let finding = related_value(finding, ground, most.node(), "the most overhead");
    Some(finding.figure(of::figure(site, surface, "most")).figure(of::figure(site, surface, "lifts")))
}
