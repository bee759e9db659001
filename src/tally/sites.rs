//! Figures of a whole site: area, mud, loads, bags and reserve per mix.

use crate::job::{Job, Mix, Site};
use crate::quantity::expr::{Area, Bags, Loads, Volume, Worked};
use crate::trade;

use super::{Basis, Res, Role, Tally, coats, mix_of, mixes, order, res};

/// Figures that need no surface: the planned temperature band, the engineer's figure.
pub(super) fn open(t: &mut Tally, site: &Site) {
    t.own(format!("{}.band_low", site.id), "figure.band_low", Role::Reading, Basis::Author, &site.climate.band.0);
    t.own(format!("{}.band_high", site.id), "figure.band_high", Role::Reading, Basis::Author, &site.climate.band.1);
    if let Some(scratch) = &site.scratch {
        t.own(format!("{}.scratch_thickness", site.id), "figure.thickness_least", Role::LeastThickness, Basis::Author, &scratch.thickness);
    }
}

/// Totals over the surfaces, once they are worked.
pub(super) fn close(t: &mut Tally, job: &Job, site: &Site) {
    let area = gather::<Area>(t, site, "net_area").and_then(|a| res(trade::net::total(&a)));
    t.put(format!("{}.area", site.id), "figure.net_area", Role::Area, Basis::Geometry, area);
    for letter in job.letters.iter().filter(|l| site.base.letter.as_ref().is_some_and(|n| n.text == l.id)) {
        t.own(format!("{}.weight_allowed", site.id), "figure.weight_allowed", Role::WallAllowance, Basis::Author, &letter.allows);
    }
    for mix in site.mixes().filter_map(|name| mix_of(job, &name.text)) {
        let scratch = site.carve_mix.text != mix.name.text;
        let (of, label) = if scratch { ("scratch_volume", "figure.scratch_volume") } else { ("volume", "figure.carve_volume") };
        let id = |name: &str| format!("{}/{}.{name}", site.id, mix.id);
        let volume = gather::<Volume>(t, site, of).and_then(|v| res(trade::sums::volumes(&v)));
        t.put(id("volume"), label, Role::Volume, Basis::Practice, volume);
        coats::loads(t, &id("volume"), mix, id("loads"), "figure.loads");
        purchase(t, job, site, mix);
        order::pallets(t, job, site, mix);
    }
    order::whole(t, job, site);
}

/// The figures of this name of every surface that has one to work.
fn gather<S: crate::quantity::expr::Sort>(t: &Tally, site: &Site, name: &str) -> Result<Vec<Worked<S>>, String> {
    let has = |s: &&crate::job::Surface| name != "scratch_volume" || s.scratch.is_some();
    site.surfaces.iter().filter(has).map(|s| t.get(&format!("{}/{}.{name}", site.id, s.code.text))).collect()
}

/// Bags to buy, with the reserve; batches by the largest planned batch; weight of the order.
fn purchase(t: &mut Tally, job: &Job, site: &Site, mix: &Mix) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, mix.id);
    let reserve = job.company.as_ref().and_then(|c| c.reserve.as_ref());
    for (name, label, per_load, bag) in [
        ("bags_additive", "figure.additive", &mix.additive_bags, &mix.additive.bag),
        ("bags_mortar", "figure.mortar", &mix.mortar_bags, &mix.mortar.bag),
    ] {
        let count: Res<Bags> = (|| {
            let reserve = reserve.ok_or("the company file states no reserve")?;
            let need = t.get::<Loads>(&id("loads"))?;
            let bought = trade::purchase::purchase(&need, &mixes::per_load(per_load), &reserve.share, &reserve.least);
            bought.map(|p| p.bags).map_err(String::from)
        })();
        t.put(id(name), label, Role::Bags, Basis::Author, count);
        let weight = (|| res(trade::purchase::weight(&t.get::<Bags>(&id(name))?, bag)))();
        t.put(id(&format!("{name}_weight")), "figure.order", Role::Weight, Basis::MixSheet, weight);
    }
    let largest =
        site.batches.iter().filter(|b| b.mix.text == mix.name.text).max_by(|a, b| a.loads.value().si.compare(&b.loads.value().si));
    if let Some(plan) = largest {
        let batches = t.get(&id("loads")).and_then(|n| trade::batch::batches(&n, &plan.loads).map(|b| b.count).map_err(String::from));
        t.put(id("batches"), "figure.batches", Role::Count, Basis::Author, batches);
    }
}
