//! Figures of a mix that only an estimator and a trainer read: water against powder, colour, density at the limit.

use crate::job::Mix;
use crate::quantity::expr::{Mass, Share, Volume};
use crate::trade::{pigment, rules, water, yields};

use super::{Basis, Role, Tally, res};

/// Works them, once yield and weights are known.
pub(super) fn work(t: &mut Tally, mix: &Mix) {
    let id = |name: &str| format!("{}.{name}", mix.id);
    let dry = |t: &Tally| t.get::<Mass>(&id("dry_weight"));
    let ratio = (|| res(water::water_to_dry(&t.get(&id("limit_weight"))?, &dry(t)?)))();
    t.put(id("water_to_dry_at_limit"), "figure.water_to_dry_at_limit", Role::Ratio, Basis::MixSheet, ratio);
    for (name, of, label) in
        [("water_index", "start_water", "figure.water_index"), ("water_index_at_limit", "limit", "figure.water_index_at_limit")]
    {
        let index = (|| res(water::water_index(&t.get::<Volume>(&id(of))?, &t.get(&id("start_water"))?)))();
        t.put(id(name), label, Role::WaterIndex, Basis::Practice, index);
    }
    let density = (|| res(yields::wet_density(&t.get(&id("wet_weight_at_limit"))?, &t.get(&id("yield_at_limit"))?)))();
    t.put(id("wet_density_at_limit"), "figure.wet_density_at_limit", Role::Density, Basis::Standard, density);
    if let Some(credit) = &mix.cure.credit {
        t.own(id("cure_credit"), "figure.cure_credit", Role::WetCure, Basis::MixSheet, credit);
    }
    if let (Some(cement), Some(dose)) = (&mix.cement, &mix.pigment) {
        color(t, mix, cement, dose);
    }
}

type Percent = crate::quantity::Worked<Share>;

/// Pigment for a load, and the most of each sort: no sheet says yet which sort it is.
fn color(t: &mut Tally, mix: &Mix, share: &Percent, dose: &Percent) {
    let id = |name: &str| format!("{}.{name}", mix.id);
    let cement = (|| res(pigment::cement(&t.get(&id("mortar_weight"))?, share)))();
    t.put(id("cement_weight"), "figure.cement_weight", Role::BagMass, Basis::MixSheet, cement);
    let most = |key: &str| -> Result<Percent, String> {
        rules::find(key).and_then(|r| r.most()).ok_or_else(|| format!("no rule is called {key}"))
    };
    let oxide = most("oxide pigment");
    let load = (|| res(pigment::pigment(&t.get(&id("cement_weight"))?, dose, &oxide.clone()?)))();
    t.put(id("pigment"), "figure.pigment", Role::Pigment, Basis::MixSheet, load);
    for (name, label, limit) in
        [("pigment_most", "figure.pigment_most", oxide), ("pigment_most_black", "figure.pigment_most_black", most("carbon black"))]
    {
        let most = (|| res(pigment::most_pigment(&t.get(&id("cement_weight"))?, &limit?)))();
        t.put(id(name), label, Role::PigmentAllowed, Basis::Neighbour, most);
    }
}
