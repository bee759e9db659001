//! What is ordered for a site: bags on pallets, weight on wheels.

use crate::job::{Bagged, Job, Mix, Site};
use crate::quantity::Worked;
use crate::quantity::expr::{Bags, Mass, Plain};
use crate::trade;

use super::{Basis, Res, Role, Tally, res};

/// Pallets of one material, and what a full one weighs and does to a floor.
pub(super) fn pallets(t: &mut Tally, job: &Job, site: &Site, mix: &Mix) {
    let transport = job.company.as_ref().and_then(|c| c.transport.as_ref());
    for (name, bagged) in [("additive", &mix.additive), ("mortar", &mix.mortar)] {
        let id = |figure: &str| format!("{}/{}.{figure}_{name}", site.id, mix.id);
        let split = (|| {
            let per_pallet = bagged.per_pallet.as_ref().ok_or_else(|| format!("{} states no bags on a pallet", mix.name.text))?;
            trade::purchase::pallets(&t.get::<Bags>(&id("bags"))?, per_pallet).map_err(String::from)
        })();
        let (full, loose): (Res<Plain>, Res<Bags>) = match split {
            Ok(p) => (Ok(p.full), Ok(p.loose)),
            Err(why) => (Err(why.clone()), Err(why)),
        };
        t.put(id("pallets"), "figure.pallets", Role::Count, Basis::Author, full);
        t.put(id("loose"), "figure.loose", Role::Bags, Basis::Author, loose);
        if let (Some(transport), Some(per_pallet)) = (transport, &bagged.per_pallet) {
            t.put(
                id("pallet_weight"),
                "figure.pallet_weight",
                Role::Weight,
                Basis::Author,
                pallet(bagged, per_pallet, &transport.pallet_mass),
            );
        }
    }
}

fn pallet(bagged: &Bagged, per_pallet: &Worked<Bags>, empty: &Worked<Mass>) -> Res<Mass> {
    let bags = res(trade::purchase::weight(per_pallet, &bagged.bag))?;
    res(trade::sums::masses(&[bags, empty.clone()]))
}

/// Weight of the whole order, and the trips of the company's own trailer.
pub(super) fn whole(t: &mut Tally, job: &Job, site: &Site) {
    let mixes: Vec<&str> = super::mixes_of(job, site).iter().map(|m| m.id.as_str()).collect();
    let weights: Result<Vec<Worked<Mass>>, String> = mixes
        .iter()
        .flat_map(|mix| ["additive", "mortar"].map(|name| format!("{}/{mix}.bags_{name}_weight", site.id)))
        .map(|id| t.get(&id))
        .collect();
    let order = weights.and_then(|w| res(trade::sums::masses(&w)));
    t.put(format!("{}.order_weight", site.id), "figure.order_weight", Role::Weight, Basis::MixSheet, order);
    let trips = (|| {
        let transport = job.company.as_ref().and_then(|c| c.transport.as_ref()).ok_or("the company file states no trailer")?;
        res(trade::purchase::trips(&t.get::<Mass>(&format!("{}.order_weight", site.id))?, &transport.payload))
    })();
    t.put(format!("{}.trips", site.id), "figure.trips", Role::Count, Basis::Author, trips);
}
