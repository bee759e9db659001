//! Figures of a mix design, and of a mix on a site.

use crate::job::{Job, Mix, Site};
use crate::quantity::expr::{Bags, Loads, Mass, Node, Plain, Volume, Worked};
use crate::quantity::{Kind, Num, Quantity};
use crate::trade;
use crate::trade::loads::Step;
use crate::trade::yields::Solid;

use super::{Basis, Role, Tally, ladder_id, res, size_name};

/// Works the figures of a mix.
pub(super) fn work(t: &mut Tally, mix: &Mix) {
    authored(t, mix);
    let id = |name: &str| format!("{}.{name}", mix.id);
    let additive = res(trade::sums::load_mass(&per_load(&mix.additive_bags), &mix.additive.bag));
    t.put(id("additive_weight"), "figure.additive", Role::BagMass, Basis::MixSheet, additive);
    let mortar = res(trade::sums::load_mass(&per_load(&mix.mortar_bags), &mix.mortar.bag));
    t.put(id("mortar_weight"), "figure.mortar", Role::BagMass, Basis::MixSheet, mortar);
    let dry = solids(t, mix).and_then(|s| res(trade::yields::dry_load(&s)));
    t.put(id("dry_weight"), "figure.dry_weight", Role::BagMass, Basis::MixSheet, dry);
    for (water, weight, volume, wet, names) in [
        ("start_water", "start_water_weight", "yield", "wet_weight", ("figure.start_water_weight", "figure.yield", "figure.wet_weight")),
        (
            "limit",
            "limit_weight",
            "yield_at_limit",
            "wet_weight_at_limit",
            ("figure.limit", "figure.yield_at_limit", "figure.wet_weight_at_limit"),
        ),
    ] {
        let mass = (|| res(trade::yields::water_mass(&t.get::<Volume>(&id(water))?, &mix.water.constant)))();
        t.put(id(weight), names.0, Role::WaterMass, Basis::MixSheet, mass);
        let made = (|| {
            let volume = res(trade::yields::solids_volume(&solids(t, mix)?, &mix.water.absolute))?;
            res(trade::yields::load_yield(&volume, &t.get(&id(weight))?, &mix.water.absolute, &mix.air))
        })();
        t.put(id(volume), names.1, Role::Yield, Basis::Standard, made);
        let mass = (|| res(trade::yields::wet_load(&t.get::<Mass>(&id("dry_weight"))?, &t.get::<Mass>(&id(weight))?)))();
        t.put(id(wet), names.2, Role::Weight, Basis::MixSheet, mass);
    }
    let density = (|| res(trade::yields::wet_density(&t.get(&id("wet_weight"))?, &t.get(&id("yield"))?)))();
    t.put(id("wet_density"), "figure.wet_density", Role::Density, Basis::Standard, density);
    let ratio = (|| res(trade::water::water_to_dry(&t.get(&id("start_water_weight"))?, &t.get(&id("dry_weight"))?)))();
    t.put(id("water_to_dry"), "figure.water_to_dry", Role::Ratio, Basis::MixSheet, ratio);
    if mix.half_load {
        half(t, mix);
    }
}

/// Bags in a load, as bags.
pub(super) fn per_load(count: &Worked<Plain>) -> Worked<Bags> {
    Worked::new(count.node().clone())
}

fn solids(t: &Tally, mix: &Mix) -> Result<Vec<Solid>, String> {
    let part = |name, weight: &str, relative_density: &Worked<Plain>| -> Result<Solid, String> {
        Ok(Solid { name, mass: t.get(&format!("{}.{weight}", mix.id))?, relative_density: relative_density.clone() })
    };
    Ok(vec![part("add", "additive_weight", &mix.additive.relative_density)?, part("mor", "mortar_weight", &mix.mortar.relative_density)?])
}

fn authored(t: &mut Tally, mix: &Mix) {
    let id = |name: &str| format!("{}.{name}", mix.id);
    let sheet = Basis::MixSheet;
    t.own(id("start_water"), "figure.start_water", Role::StartWater, sheet, &mix.water.start);
    t.own(id("least_water"), "figure.least_water", Role::LeastWater, sheet, &mix.water.least);
    t.own(id("step"), "figure.step", Role::Step, sheet, &mix.water.step);
    t.own(id("limit"), "figure.limit", Role::Limit, sheet, &mix.water.limit);
    t.own(id("mixing"), "figure.mixing", Role::MixMinutes, sheet, &mix.mixing.least);
    t.own(id("after_step"), "figure.after_step", Role::MixMinutes, sheet, &mix.mixing.after_step);
    t.own(id("open_time"), "figure.open_time", Role::OpenTime, sheet, &mix.open_time.0);
    t.own(id("open_time_at"), "figure.open_time_at", Role::Reading, sheet, &mix.open_time.1);
    t.own(id("additive_bag"), "figure.additive_bag", Role::BagMass, sheet, &mix.additive.bag);
    t.own(id("mortar_bag"), "figure.mortar_bag", Role::BagMass, sheet, &mix.mortar.bag);
    t.own(id("thickness_least"), "figure.thickness_least", Role::LeastThickness, sheet, &mix.thickness.0);
    t.own(id("thickness_most"), "figure.thickness_most", Role::MostThickness, sheet, &mix.thickness.1);
    t.own(id("lift"), "figure.lift", Role::MostThickness, sheet, &mix.lift);
    t.own(id("air"), "figure.air", Role::Share, sheet, &mix.air);
    t.own(id("wet_cure"), "figure.wet_cure", Role::WetCure, sheet, &mix.cure.wet);
    if let Some(recoat) = &mix.recoat {
        t.own(id("recoat"), "figure.recoat", Role::Recoat, sheet, recoat);
    }
    if let Some(class) = &mix.strength_class {
        t.own(id("strength_class"), "figure.strength_class", Role::StrengthClass, sheet, class);
    }
}

/// The half load: both bags halved, on a scale, and half the water.
fn half(t: &mut Tally, mix: &Mix) {
    let id = |name: &str| format!("{}.{name}", mix.id);
    let one_half = half_a_load();
    for (of, name, role, label) in [
        ("start_water", "half_start_water", Role::StartWater, "figure.half_start_water"),
        ("limit", "half_limit", Role::Limit, "figure.half_limit"),
        ("step", "half_step", Role::Step, "figure.step"),
    ] {
        let part = (|| res(trade::batch::batch_water(&one_half, &t.get::<Volume>(&id(of))?)))();
        t.put(id(name), label, role, Basis::MixSheet, part);
    }
    for (of, name, label) in
        [("mortar_weight", "half_mortar", "figure.half_mortar"), ("additive_weight", "half_additive", "figure.half_additive")]
    {
        let part = (|| res(trade::batch::part_load(&one_half, &t.get::<Mass>(&id(of))?)))();
        t.put(id(name), label, Role::BagMass, Basis::MixSheet, part);
    }
}

/// Half a load, as the half-load card and the ladder's first column mean it.
fn half_a_load() -> Worked<Loads> {
    let unit = crate::quantity::units::find_expr("load");
    let value = Quantity { kind: Kind::Loads, ..Quantity::plain(Num::frac(1, 2)) };
    Worked::new(Node::constant(value, unit, "half", "definition of a half load: both bags halved, on a scale"))
}

/// Loads of a batch size: as a site's list of batches states it, else half a load.
fn size(site: &Site, mix: &Mix, loads: &Num) -> Worked<Loads> {
    let planned = site.batches.iter().find(|b| b.mix.text == mix.name.text && b.loads.value().si == *loads);
    planned.map_or_else(half_a_load, |b| b.loads.clone())
}

/// Batch sizes of a mix on a site, half a load first where the mix allows it.
pub(super) fn sizes(site: &Site, mix: &Mix) -> Vec<Num> {
    let mut sizes: Vec<Num> = site.batches.iter().filter(|b| b.mix.text == mix.name.text).map(|b| b.loads.value().si.clone()).collect();
    if mix.half_load {
        sizes.push(Num::frac(1, 2));
    }
    sizes.sort_by(Num::compare);
    sizes.dedup();
    sizes
}

/// What a site adds to a mix: its place-by time, its ladder columns.
pub(super) fn at_site(t: &mut Tally, site: &Site, mix: &Mix, job: &Job) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, mix.id);
    let basis = if mix.times.is_empty() { Basis::Practice } else { Basis::MixSheet };
    t.put(id("place_by"), "figure.place_by", Role::PlaceBy, basis, super::hours::open_at(mix, &site.climate.band.1));
    ladder(t, site, mix, job);
    for mixer in job.company.iter().flat_map(|c| &c.mixers) {
        let at = |name: &str| format!("{}/{}/{}.{name}", site.id, mix.id, mixer.code.text);
        t.put(at("capacity"), "figure.capacity", Role::Capacity, Basis::Author, res(trade::sums::usable_volume(&mixer.holds, &mixer.fill)));
        let most = (|| {
            let (one, wet) = (t.get(&format!("{}.yield_at_limit", mix.id))?, t.get(&format!("{}.wet_weight_at_limit", mix.id))?);
            let step = if mix.half_load { Step::Half } else { Step::Whole };
            let capacity = trade::batch::capacity(&mixer.holds, &mixer.fill, &one, Some((&mixer.rating, &wet)), step);
            capacity.map(|c| c.loads).map_err(String::from)
        })();
        t.put(at("most_loads"), "figure.most_loads", Role::MostLoads, Basis::Author, most);
        t.own(at("rating"), "figure.rating", Role::Rating, Basis::Author, &mixer.rating);
    }
}

/// The ladder: per rung what was added per load, and the next start for each batch size.
fn ladder(t: &mut Tally, site: &Site, mix: &Mix, job: &Job) {
    let mark = mark(job, mix.metric);
    let mut rungs = 0;
    for column in sizes(site, mix) {
        let loads = size(site, mix, &column);
        let name = size_name(&column);
        t.own(format!("{}.ladder_size.{name}", mix.id), "figure.loads", Role::Loads, Basis::Author, &loads);
        let Ok(ladder) = trade::carry::ladder(&mix.water.start, &mix.water.step, &mix.water.limit, &loads, &mark) else { return };
        rungs = ladder.len();
        for (rung, step) in ladder.into_iter().enumerate() {
            t.put(ladder_id(mix, &name, rung), "figure.ladder_start", Role::StartWater, Basis::MixSheet, Ok(step.batch));
        }
    }
    for rung in 0..rungs {
        let count = Quantity::plain(Num::int(i64::try_from(rung).unwrap_or(0)));
        let number: Worked<Plain> = Worked::new(Node::constant(count, None, "i", "number of the rung on the ladder"));
        let added = res(trade::sums::steps(&number, &mix.water.step));
        t.put(ladder_id(mix, "added", rung), "figure.added", Role::Step, Basis::MixSheet, added);
    }
}

/// The smallest mark on site, of the mix sheet's unit system, to which a ladder's water is rounded down.
fn mark(job: &Job, metric: bool) -> Worked<Volume> {
    let own = |m: &&Worked<Volume>| m.node().unit().is_some_and(crate::quantity::expr::is_metric) == metric;
    let marks = job.company.iter().flat_map(|c| &c.measures).map(|m| &m.marked).filter(own);
    marks.min_by(|a, b| a.value().si.compare(&b.value().si)).cloned().unwrap_or_else(|| {
        let (number, unit) = if metric { (50, "mL") } else { (1, "cup") };
        let unit = crate::quantity::units::find_expr(unit);
        let value = unit.map_or_else(|| Quantity::plain(Num::int(1)), |u| Quantity::of(&Num::int(number), u));
        Worked::new(Node::constant(value, unit, "mark", "common practice, no source: a jug with small marks"))
    })
}
