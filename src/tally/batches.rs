//! Figures of one batch: what goes into the mixer at once.

use crate::job::{BatchPlan, Job, Site};
use crate::quantity::expr::{Mass, Volume};
use crate::trade;

use super::mixes::per_load;
use super::{Basis, Role, Tally, batch_id, mix_of, res};

/// Works the figures of a batch.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site, plan: &BatchPlan) {
    let Some(mix) = mix_of(job, &plan.mix.text) else { return };
    let batch = batch_id(job, site, plan);
    let id = |name: &str| format!("{batch}.{name}");
    let of = |name: &str| format!("{}.{name}", mix.id);
    t.own(id("loads"), "figure.loads", Role::Loads, Basis::Author, &plan.loads);
    for (name, role, label) in [
        ("start_water", Role::StartWater, "figure.start_water"),
        ("step", Role::Step, "figure.step"),
        ("limit", Role::Limit, "figure.limit"),
    ] {
        let water = (|| res(trade::batch::batch_water(&plan.loads, &t.get::<Volume>(&of(name))?)))();
        t.put(id(name), label, role, Basis::MixSheet, water);
    }
    let weight = (|| res(trade::yields::water_mass(&t.get::<Volume>(&id("start_water"))?, &mix.water.constant)))();
    t.put(id("start_water_weight"), "figure.start_water_weight", Role::WaterMass, Basis::MixSheet, weight);
    let additive = res(trade::sums::batch_bags(&plan.loads, &per_load(&mix.additive_bags)));
    t.put(id("additive"), "figure.additive", Role::Bags, Basis::MixSheet, additive);
    let mortar = res(trade::sums::batch_bags(&plan.loads, &per_load(&mix.mortar_bags)));
    t.put(id("mortar"), "figure.mortar", Role::Bags, Basis::MixSheet, mortar);
    let charge = t.get(&id("mortar")).and_then(|b| trade::batch::charge(&b).map_err(String::from));
    let (first, rest) = match charge {
        Ok(charge) => (Ok(charge.first), Ok(charge.rest)),
        Err(why) => (Err(why.clone()), Err(why)),
    };
    t.put(id("mortar_first"), "figure.mortar_first", Role::BagsInSteps, Basis::MixSheet, first);
    t.put(id("mortar_rest"), "figure.mortar_rest", Role::BagsInSteps, Basis::MixSheet, rest);
    // Capacity is a question of the fullest batch, so it is asked at the limit, not at the start water.
    let volume = (|| res(trade::sums::batch_volume(&plan.loads, &t.get::<Volume>(&of("yield_at_limit"))?)))();
    t.put(id("volume"), "figure.batch_volume", Role::BatchVolume, Basis::Standard, volume);
    let wet = (|| res(trade::batch::part_load(&plan.loads, &t.get::<Mass>(&of("wet_weight_at_limit"))?)))();
    t.put(id("wet_weight"), "figure.wet_weight_at_limit", Role::Weight, Basis::MixSheet, wet);
    let open = t.get::<crate::quantity::expr::OpenTime>(&format!("{}/{}.place_by", site.id, mix.id));
    t.put(id("place_by"), "figure.place_by", Role::PlaceBy, Basis::Practice, open);
}
