//! Lath, fasteners, paper, colour and sealer, water: what a site needs beside mud.

use crate::job::{Finish, Job, Lath, Site, SiteWater, WaterPlan};
use crate::quantity::Worked;
use crate::quantity::expr::{Area, Loads, Node, Plain, Volume};
use crate::quantity::{Num, Quantity};
use crate::trade::finish::{self, Textured};
use crate::trade::lath;
use crate::trade::site_water::{self, Mixed};

use super::{Basis, Role, Tally, labor, mixes_of, res};

/// Works them.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site) {
    if let Some(plan) = &site.lath {
        laths(t, site, plan);
    }
    if let Some(plan) = &site.finish {
        color(t, site, plan);
    }
    let company = job.company.as_ref().and_then(|c| c.site_water.as_ref());
    if let (Some(plan), Some(rates)) = (&site.water, company) {
        water(t, job, site, plan, rates);
    }
}

/// Fasteners are counted in tens, as they are carried.
fn ten() -> Worked<Plain> {
    Worked::new(Node::constant(Quantity::plain(Num::int(10)), None, "pack", "fasteners counted in tens: common practice, no source"))
}

fn laths(t: &mut Tally, site: &Site, plan: &Lath) {
    let id = |name: &str| format!("{}.{name}", site.id);
    let areas = labor::under_scratch(t, site);
    if areas.is_empty() {
        return;
    }
    t.put(id("lath_area"), "figure.lath_area", Role::Area, Basis::Geometry, labor::lathed(t, &areas));
    let sheets = (|| {
        let net = res(lath::sheet_net(&plan.sheet.0, &plan.sheet.1, &plan.side_lap, &plan.end_lap))?;
        res(lath::sheets(&t.get::<Area>(&id("lath_area"))?, &net, &plan.spare))
    })();
    t.put(id("lath_sheets"), "figure.lath_sheets", Role::Count, Basis::Practice, sheets);
    let fasteners =
        (|| res(lath::fasteners(&t.get::<Area>(&id("lath_area"))?, &plan.framing, &plan.fasteners, &plan.fastener_spare, &ten())))();
    t.put(id("lath_fasteners"), "figure.lath_fasteners", Role::Count, Basis::Practice, fasteners);
    if let Some(layers) = &site.base.wrb_layers {
        let rolls = (|| res(lath::paper_rolls(&t.get::<Area>(&id("lath_area"))?, layers, &plan.paper_spare, &plan.roll)))();
        t.put(id("paper_rolls"), "figure.paper_rolls", Role::Count, Basis::Practice, rolls);
    }
}

fn color(t: &mut Tally, site: &Site, plan: &Finish) {
    let id = |name: &str| format!("{}.{name}", site.id);
    let parts: Result<Vec<Textured>, String> = site
        .surfaces
        .iter()
        .map(|surface| {
            let texture = site.textures.iter().find(|x| x.name.text == surface.texture.text);
            let factor = texture.and_then(|x| x.developed.clone());
            let factor = factor.ok_or_else(|| format!("texture {} states no `developed`", surface.texture.text))?;
            Ok(Textured { area: t.get(&format!("{}/{}.net_area", site.id, surface.code.text))?, factor })
        })
        .collect();
    let developed = parts.and_then(|p| res(finish::developed(&p)));
    t.put(id("developed"), "figure.developed", Role::Area, Basis::Practice, developed);
    let volume = (|| res(finish::sealer(&t.get::<Area>(&id("developed"))?, &plan.coats, &plan.coverage, &plan.spare)))();
    t.put(id("finish_volume"), "figure.finish_volume", Role::FinishVolume, Basis::Practice, volume);
    let cans = (|| res(finish::cans(&t.get::<Volume>(&id("finish_volume"))?, &plan.can)))();
    t.put(id("finish_cans"), "figure.finish_cans", Role::Count, Basis::Practice, cans);
}

fn water(t: &mut Tally, job: &Job, site: &Site, plan: &WaterPlan, rates: &SiteWater) {
    let id = |name: &str| format!("{}.{name}", site.id);
    let mixed: Result<Vec<Mixed>, String> = mixes_of(job, site)
        .iter()
        .map(|mix| {
            let loads = t.get::<Loads>(&format!("{}/{}.loads", site.id, mix.id))?;
            Ok(Mixed { loads, water: t.get(&format!("{}.limit", mix.id))? })
        })
        .collect();
    let mix = mixed.and_then(|m| res(site_water::mix_water(&m)));
    let wash = res(site_water::wash_out(&plan.washes, &rates.wash));
    let mist = (|| res(site_water::misting(&t.get::<Area>(&id("area"))?, &rates.mist, &plan.mistings)))();
    let people = res(site_water::people_water(&plan.people, &plan.days, &rates.person));
    for (name, label, part) in [
        ("water_mix", "figure.water_mix", mix),
        ("water_wash", "figure.water_wash", wash),
        ("water_mist", "figure.water_mist", mist),
        ("water_people", "figure.water_people", people),
    ] {
        t.put(id(name), label, Role::SiteWater, Basis::Practice, part);
    }
    let sum = (|| {
        let part = |name: &str| t.get::<Volume>(&id(name));
        res(site_water::site_water(&part("water_mix")?, &part("water_wash")?, &part("water_mist")?, &part("water_people")?))
    })();
    t.put(id("water"), "figure.water", Role::SiteWater, Basis::Practice, sum);
}
