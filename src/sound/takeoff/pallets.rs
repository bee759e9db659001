//! The heaviest full pallet of a site, as printed.

use crate::job::{Bagged, Site};
use crate::quantity::num::Direction;
use crate::quantity::{Node, Num, Quantity};
use crate::sound::Ground;
use crate::sound::told::printed;
use crate::tally::{PrintedValue, mixes_of};

/// Which pallet it is.
pub(super) struct Pallet<'a> {
    /// Figure of its weight on the floor.
    pub id: String,
    /// `mortar of CARVE-24`.
    pub words: String,
    /// Bags on it, as authored.
    pub per_pallet: &'a Node,
    bagged: &'a Bagged,
}

/// The one that presses hardest, with what it prints.
pub(super) fn heaviest<'a>(ground: &Ground<'a>, site: &Site) -> Option<(Pallet<'a>, PrintedValue)> {
    let mut all = Vec::new();
    for mix in mixes_of(ground.job, site) {
        for (name, bagged) in [("additive", &mix.additive), ("mortar", &mix.mortar)] {
            let id = format!("{}/{}.floor_load_{name}", site.id, mix.id);
            if let (Some(load), Some(per_pallet)) = (printed(ground, &id, site.metric), &bagged.per_pallet) {
                let words = format!("{name} of {}", mix.name.text);
                all.push((Pallet { id, words, per_pallet: per_pallet.node(), bagged }, load));
            }
        }
    }
    // The first of equals: the order of the work.
    all.into_iter().rev().max_by(|(_, a), (_, b)| a.number.cmp(&b.number))
}

impl Pallet<'_> {
    /// Bags that may stand on one where a floor carries so much; nothing where the pallet is not stated.
    pub fn allowed(&self, ground: &Ground<'_>, capacity: &Quantity) -> Option<String> {
        let transport = ground.job.company.as_ref()?.transport.as_ref()?;
        let (width, depth) = (&transport.pallet.0.value().si, &transport.pallet.1.value().si);
        let bags = capacity.si.mul(width).mul(depth).sub(&transport.pallet_mass.value().si).div(&self.bagged.bag.value().si)?;
        let whole = bags.round(Direction::Down, &num_rational::BigRational::from_integer(1.into()));
        Some(if Num::Exact(whole.clone()).is_negative() { "0".to_owned() } else { whole.to_string() })
    }
}
