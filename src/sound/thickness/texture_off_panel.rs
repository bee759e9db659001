//! T12: a surface is to get another texture than the panel that was signed for it shows.

use crate::finding::{Finding, Severity};
use crate::job::{Panel, Site, Surface};
use crate::sound::{Check, Ground};

use super::of;

/// The check.
pub const CHECK: Check = Check {
    name: "texture-off-panel",
    ids: &["T12"],
    severities: &[Severity::Hold],
    title: "a surface gets another texture than its signed panel shows",
    manual: include_str!("texture_off_panel.md"),
    twins: &[("es", include_str!("texture_off_panel.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    surfaces.filter_map(|(site, surface)| one(ground, site, surface)).collect()
}

/// One of the panels that name the surface has to show its texture.
fn one(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let names = |p: &&Panel| p.site.text == site.code.text && p.surfaces.iter().any(|s| s.text == surface.code.text);
    let panels: Vec<&Panel> = ground.job.panels.iter().filter(names).collect();
    let first = panels.first().filter(|_| panels.iter().all(|p| p.texture.text != surface.texture.text))?;
    let (code, texture) = (&surface.code.text, &surface.texture.text);
    let title = format!("{code} is to be `{texture}`, the panel signed for it shows `{}`", first.texture.text);
    let finding = Finding::new(CHECK.name, Severity::Hold, title)
        .at(surface.texture.at, "the surface")
        .source(format!(
            "panel record `{}`, signed by {}; common practice: the approved panel decides the look",
            first.id, first.signed_by.text
        ))
        .help(format!("carve `{}`, or have a panel of `{texture}` signed for {code}", first.texture.text))
        .related(first.texture.at, "the panel");
    let finding = match first.surfaces.iter().find(|s| s.text == *code) {
        Some(named) => finding.related(named.at, "signed for this surface"),
        None => finding,
    };
    let finding = finding.about(code);
    Some(["most", "mean", "loads"].iter().fold(finding, |f, name| f.figure(of::figure(site, surface, name))))
}
