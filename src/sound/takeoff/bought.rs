//! What is ordered of each bag of each mix, and what it is needed for.

use crate::job::{Mix, Ordered, Site};
use crate::quantity::expr::{Bags, How};
use crate::quantity::{Node, Num, Worked};
use crate::sound::Ground;
use crate::tally::mixes_of;

/// Bags of one material of a mix for a site.
pub(super) struct Bought<'a> {
    /// The site.
    pub site: &'a Site,
    /// The mix.
    pub mix: &'a Mix,
    /// `additive` or `mortar`.
    pub material: &'static str,
    /// Loads before they are rounded up.
    pub need: Num,
    /// Loads as planned.
    pub loads: Num,
    /// Bags of it in a load.
    pub per_load: Num,
    /// Bags that are ordered: as the yard was told, else as computed; nothing where neither is known.
    pub bags: Option<Num>,
    /// What the yard was told, if that is stated.
    pub told: Option<&'a Worked<Bags>>,
}

impl Bought<'_> {
    /// Id of a figure of its mix on its site.
    pub fn id(&self, name: &str) -> String {
        format!("{}/{}.{name}", self.site.id, self.mix.id)
    }

    /// Loads that the ordered bags make.
    pub fn makes(&self) -> Option<Num> {
        self.bags.as_ref()?.div(&self.per_load)
    }
}

/// Every one of a job that is needed at all.
pub(super) fn all<'a>(ground: &Ground<'a>) -> Vec<Bought<'a>> {
    let mut out = Vec::new();
    for site in &ground.job.sites {
        for mix in mixes_of(ground.job, site) {
            let of = |name: &str| ground.tally.figure(&format!("{}/{}.{name}", site.id, mix.id)).and_then(|f| f.worked.as_ref().ok());
            let Some((loads, need)) = of("loads").and_then(rounded) else { continue };
            if loads.is_zero() {
                continue;
            }
            let told: Option<&Ordered> = site.delivery.iter().flat_map(|d| &d.ordered).find(|o| o.mix.text == mix.name.text);
            for (material, figure, per_load, told) in [
                ("additive", "bags_additive", &mix.additive_bags, told.map(|o| &o.additive)),
                ("mortar", "bags_mortar", &mix.mortar_bags, told.map(|o| &o.mortar)),
            ] {
                let bags = told.map(|w| w.value().si.clone()).or_else(|| of(figure).map(|n| n.value().si.clone()));
                let (need, loads, per_load) = (need.clone(), loads.clone(), per_load.value().si.clone());
                out.push(Bought { site, mix, material, need, loads, per_load, bags, told });
            }
        }
    }
    out
}

/// The rounded value in a derivation that is nearest to its result, and what it was before.
pub(super) fn rounded(node: &Node) -> Option<(Num, Num)> {
    match node.how() {
        How::Rounded { of, .. } => Some((node.value().si.clone(), of.value().si.clone())),
        How::Formula { body: of, .. } | How::Named { of, .. } | How::Figure { of, .. } => rounded(of),
        How::Op(_, parts) => parts.iter().find_map(rounded),
        _ => None,
    }
}

/// A number as a line of a finding shows it: to a thousandth, cut in the direction that is not kind.
pub(super) fn shown(number: &Num) -> String {
    let cut = number.round(crate::quantity::num::Direction::Down, &num_rational::BigRational::new(1.into(), 1000.into()));
    crate::quantity::num::exact_text(&cut)
}
