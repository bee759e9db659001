//! What the checks of thickness share: textures as a site's surfaces wear them, and thicknesses as a site writes them.

use crate::finding::Finding;
use crate::job::{Mean, Mix, Site, Surface, Texture};
use crate::quantity::expr::Length;
use crate::quantity::num::Direction;
use crate::quantity::units::find_expr;
use crate::quantity::{Node, Num, Quantity, Worked};
use crate::sound::Ground;
use crate::sound::limits::Limit;
use crate::sound::told::length;
use crate::tally::mix_of;

/// A texture and the surfaces of one site that wear it.
pub(super) struct Use<'a> {
    /// The site.
    pub site: &'a Site,
    /// Its texture.
    pub texture: &'a Texture,
    /// Surfaces in it, one or more.
    pub surfaces: Vec<&'a Surface>,
}

/// Textures that a surface wears, in the order of the files.
pub(super) fn uses<'a>(ground: &Ground<'a>) -> Vec<Use<'a>> {
    let mut all = Vec::new();
    for site in &ground.job.sites {
        for texture in &site.textures {
            let surfaces: Vec<&Surface> = site.surfaces.iter().filter(|s| s.texture.text == texture.name.text).collect();
            if !surfaces.is_empty() {
                all.push(Use { site, texture, surfaces });
            }
        }
    }
    all
}

impl Use<'_> {
    /// Names figures of every surface in the texture, and says which texture it is about.
    pub fn of(&self, finding: Finding, names: &[&str]) -> Finding {
        let ids = self.surfaces.iter().flat_map(|s| names.iter().map(move |name| figure(self.site, s, name)));
        ids.fold(finding.about(&self.texture.name.text), Finding::figure)
    }

    /// The mean as the author gave it: stated, or the fill it follows from.
    pub fn given(&self) -> &Node {
        match &self.texture.mean {
            Mean::Fill(_, fill) => fill.node(),
            Mean::Stated(mean) => mean.node(),
        }
    }

    /// Share of the relief that stays mud: stated, or what a stated mean comes to. `None` without a relief.
    pub fn fill(&self) -> Option<Node> {
        let (least, most) = (self.texture.least.as_ref()?, &self.texture.most);
        if !less(least, most.value()) {
            return None;
        }
        Some(match &self.texture.mean {
            Mean::Fill(_, fill) => fill.node().clone(),
            Mean::Stated(mean) => {
                let cut = mean.node().clone() - least.node().clone();
                (cut / (most.node().clone() - least.node().clone())).written_in("%")
            }
        })
    }
}

/// Mean thickness of a texture, as the tally has it.
pub(super) fn mean(texture: &Texture) -> Option<Worked<Length>> {
    match &texture.mean {
        Mean::Stated(mean) => Some(mean.clone()),
        Mean::Fill(least, fill) => crate::trade::relief::mean_thickness(least, &texture.most, fill).ok(),
    }
}

/// Id of a surface's figure.
pub(super) fn figure(site: &Site, surface: &Surface, name: &str) -> String {
    format!("{}/{}.{name}", site.id, surface.code.text)
}

/// The carve mix of a site.
pub(super) fn carve<'a>(ground: &Ground<'a>, site: &Site) -> Option<&'a Mix> {
    mix_of(ground.job, &site.carve_mix.text)
}

/// The scratch mix of a site.
pub(super) fn scratch<'a>(ground: &Ground<'a>, site: &Site) -> Option<&'a Mix> {
    site.scratch_mix.as_ref().and_then(|m| mix_of(ground.job, &m.text))
}

/// True if the one is less than the other; both are what authors wrote, so this is exact.
pub(super) fn less(a: &Worked<Length>, b: &Quantity) -> bool {
    a.value().si.compare(&b.si).is_lt()
}

/// A thickness as the site's tape shows it.
pub(super) fn tape(site: &Site, node: &Node) -> String {
    length(node, if site.metric { "mm" } else { "in" })
}

/// A worked thickness, to a hundredth of an inch or a tenth of a millimetre.
pub(super) fn tape_to(site: &Site, node: &Node) -> String {
    let (unit, step) = if site.metric { ("mm", (1, 10)) } else { ("in", (1, 100)) };
    let step = num_rational::BigRational::new(step.0.into(), step.1.into());
    let number = find_expr(unit).and_then(|u| node.value().in_unit(u)).map(|n| n.round(Direction::Nearest, &step));
    number.map_or_else(|| tape(site, node), |n| format!("{} {unit}", Num::Exact(n).plain()))
}

/// A limit of the table, in the site's own unit first.
pub(super) fn row(site: &Site, limit: &Limit) -> String {
    let metric = limit.quantity().zip(find_expr("mm")).and_then(|(q, unit)| q.in_unit(unit));
    match metric.filter(|_| site.metric) {
        Some(number) => format!("{} mm ({})", number.plain(), limit.value),
        None => limit.value.to_owned(),
    }
}

/// A thickness that somebody plans, with the mix that must stand it.
pub(super) struct Planned<'a> {
    /// Site.
    pub site: &'a Site,
    /// What is so thick, to begin a sentence with.
    pub what: String,
    /// How thick.
    pub thickness: &'a Worked<Length>,
    /// The mix.
    pub mix: &'a Mix,
    /// What an acceptance calls it.
    pub about: String,
    /// Figures that rest on it.
    pub figures: Vec<String>,
}

impl Planned<'_> {
    /// Says what a finding is about, and what rests on it.
    pub fn of(&self, finding: Finding) -> Finding {
        self.figures.iter().fold(finding.about(&self.about), |f, id| f.figure(id))
    }
}

/// Where coats are thinnest: groove bottoms or the mean of a texture that states no least, undersides, scratch coats.
pub(super) fn thinnest<'a>(ground: &Ground<'a>) -> Vec<Planned<'a>> {
    let mut all = Vec::new();
    for one in uses(ground) {
        let (site, texture) = (one.site, one.texture);
        let Some(mix) = carve(ground, site) else { continue };
        let name = &texture.name.text;
        let ids = |name: &str| one.surfaces.iter().map(|s| figure(site, s, name)).collect::<Vec<_>>();
        let thin = match (&texture.least, &texture.mean) {
            (Some(least), _) => Some((format!("`{name}` at its thinnest"), least, ids("least"))),
            (None, Mean::Stated(mean)) => Some((format!("`{name}` in the mean"), mean, ids("mean"))),
            (None, Mean::Fill(..)) => None,
        };
        if let Some((what, thickness, figures)) = thin {
            all.push(Planned { site, what, thickness, mix, about: name.clone(), figures });
        }
    }
    for (site, surface) in ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s))) {
        if let (Some(coat), Some(mix)) = (&surface.scratch, scratch(ground, site)) {
            let figures = vec![figure(site, surface, "scratch_volume"), figure(site, surface, "most")];
            all.push(Planned {
                site,
                what: "the scratch coat".to_owned(),
                thickness: &coat.thickness,
                mix,
                about: surface.code.text.clone(),
                figures,
            });
        }
        let Some(mix) = carve(ground, site) else { continue };
        for under in undersides(surface) {
            if let Some(thickness) = under.planned {
                let what = format!("{} overhead", under.code);
                all.push(Planned { site, what, thickness, mix, about: under.code, figures: vec![figure(site, surface, "most")] });
            }
        }
    }
    all
}

/// The head of an opening or a soffit: work that hangs.
pub(super) struct Underside<'a> {
    /// Code of the surface and of the part, as `LF-1.D1`.
    pub code: String,
    /// Place of the part's code.
    pub at: crate::source::Span,
    /// Carve coat that is planned there.
    pub planned: Option<&'a Worked<Length>>,
}

/// Coated undersides of a surface: heads of openings whose reveal gets a coat, and soffits.
pub(super) fn undersides(surface: &Surface) -> Vec<Underside<'_>> {
    let code = |part: &str| format!("{}.{part}", surface.code.text);
    let heads = surface.openings.iter().filter(|o| o.depth.is_some()).map(|o| (&o.code, o.overhead.as_ref()));
    let soffits = surface.soffits.iter().map(|s| (&s.code, s.overhead.as_ref()));
    heads.chain(soffits).map(|(part, planned)| Underside { code: code(&part.text), at: part.at, planned }).collect()
}
