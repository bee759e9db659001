//! T2: a face, or a scratch coat, is planned thicker than its mix sheet allows in all.

use crate::finding::{Finding, Severity};
use crate::job::{Site, Surface};
use crate::sound::told::{at_value, once_a_place, related_value};
use crate::sound::{Check, Ground};
use crate::trade::sums::whole_thickness;

use super::of;

/// The check.
pub const CHECK: Check = Check {
    name: "face-over-mix",
    ids: &["T2"],
    severities: &[Severity::Stop],
    title: "a face is planned thicker than its mix sheet allows",
    manual: include_str!("face_over_mix.md"),
    twins: &[("es", include_str!("face_over_mix.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    once_a_place(surfaces.flat_map(|(site, surface)| face(ground, site, surface).into_iter().chain(coat(ground, site, surface))).collect())
}

/// Scratch and carve coat together, where the face stands out most.
fn face(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let mix = of::carve(ground, site)?;
    let texture = site.textures.iter().find(|t| t.name.text == surface.texture.text)?;
    let allowed = &mix.thickness.1;
    let whole = match &surface.scratch {
        Some(scratch) => whole_thickness(&texture.most, &scratch.thickness).ok()?,
        None => texture.most.clone(),
    };
    if !of::less(allowed, whole.value()) {
        return None;
    }
    let (stands, most) = (of::tape(site, whole.node()), of::tape(site, allowed.node()));
    let over = of::tape(site, &(whole.node().clone() - allowed.node().clone()));
    let title = format!("{} stands {stands} out in all, {} takes at most {most}", surface.code.text, mix.name.text);
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(format!("mix sheet of {}: most thickness, scratch and carve coat together; more sags, shrinks and weighs", mix.name.text))
        .help(format!("build the lath, the foam or the base out by {over} or more, and carve that much less over it"));
    if let Some(scratch) = &surface.scratch {
        let (carve, under) = (of::tape(site, texture.most.node()), of::tape(site, scratch.thickness.node()));
        finding = finding.derived(format!("{carve} of carve coat at the faces + {under} of scratch coat = {stands}"));
        finding = related_value(finding, ground, scratch.thickness.node(), "over this scratch coat");
    }
    let finding = at_value(finding, ground, texture.most.node(), "the faces stand so far out");
    let finding = related_value(finding, ground, allowed.node(), "the most of the mix sheet");
    Some(finding.about(&surface.code.text).figure(of::figure(site, surface, "most")).figure(of::figure(site, surface, "lifts")))
}

/// The scratch coat by its own sheet.
fn coat(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let (mix, scratch) = (of::scratch(ground, site)?, surface.scratch.as_ref()?);
    let allowed = &mix.thickness.1;
    if !of::less(allowed, scratch.thickness.value()) {
        return None;
    }
    let (thick, most) = (of::tape(site, scratch.thickness.node()), of::tape(site, allowed.node()));
    let title = format!("the scratch coat is planned {thick} thick, {} takes at most {most}", mix.name.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .source(format!("mix sheet of {}: most thickness", mix.name.text))
        .help(format!("plan {most} or less, and build the lath or the base out where the face needs more"));
    let finding = at_value(finding, ground, scratch.thickness.node(), "planned so thick");
    let finding = related_value(finding, ground, allowed.node(), "the most of the mix sheet");
    Some(finding.about(&surface.code.text).figure(of::figure(site, surface, "scratch_volume")).figure(of::figure(site, surface, "most")))
}
