//! Figures of the coats on one surface: thickness, mud, lifts, loads, weight.

use crate::job::{Job, Mean, Mix, Shape, Site, Surface, Texture};
use crate::quantity::expr::{Areal, Length, Loads, Share, Volume};
use crate::quantity::{Dim, Kind, Node, Num, Quantity, Worked};
use crate::trade;
use crate::trade::loads::Step;
use crate::trade::takeoff::Around;

use super::{Basis, Res, Role, Tally, mix_of, res};

/// No carve waste stated means none: the scratch coat has only droppings.
fn no_waste() -> Worked<Share> {
    let none = Quantity { kind: Kind::Share, ..Quantity::plain(Num::int(0)) };
    Worked::new(Node::constant(none, crate::quantity::units::find_expr("%"), "w_carve", "the job states no carve waste here"))
}

/// Works them.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site, surface: &Surface, texture: &Texture) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    if let Some(least) = &texture.least {
        t.own(id("least"), "figure.least", Role::LeastThickness, Basis::Author, least);
    }
    t.own(id("carve_most"), "figure.most", Role::MostThickness, Basis::Author, &texture.most);
    match &texture.mean {
        Mean::Fill(least, fill) => {
            let mean = res(trade::relief::mean_thickness(least, &texture.most, fill));
            t.put(id("mean"), "figure.mean", Role::MeanThickness, Basis::Practice, mean);
        }
        Mean::Stated(mean) => t.own(id("mean"), "figure.mean", Role::MeanThickness, Basis::Author, mean),
    }
    let most = match &surface.scratch {
        Some(scratch) => res(trade::sums::whole_thickness(&texture.most, &scratch.thickness)),
        None => Ok(texture.most.clone()),
    };
    t.put(id("most"), "figure.most", Role::MostThickness, Basis::Author, most);
    let carve_mix = mix_of(job, &site.carve_mix.text);
    let scratch_mix = site.scratch_mix.as_ref().and_then(|m| mix_of(job, &m.text)).filter(|_| surface.scratch.is_some());
    if let Some(mix) = carve_mix {
        // Max governs: lifts come from the face, never from the mean.
        let lifts = (|| {
            let under = surface.scratch.as_ref().map_or_else(|| no_scratch(site), |s| s.thickness.clone());
            res(trade::coats::lifts(&t.get(&id("most"))?, &under, &mix.lift))
        })();
        t.put(id("lifts"), "figure.lifts", Role::Count, Basis::MixSheet, lifts);
    }
    let carve_waste = texture.waste.carve.clone().unwrap_or_else(no_waste);
    let mixed = carve_volume(t, site, surface, (&carve_waste, &texture.waste.drop));
    t.put(id("volume"), "figure.carve_volume", Role::Volume, Basis::Practice, mixed);
    if let Some(volume) = scratch_volume(t, surface, &id("net_area")) {
        t.put(id("scratch_volume"), "figure.scratch_volume", Role::Volume, Basis::Practice, volume);
    }
    if let Some(mix) = carve_mix {
        loads(t, &id("volume"), mix, id("loads"), "figure.carve_loads");
    }
    if let Some(mix) = scratch_mix {
        loads(t, &id("scratch_volume"), mix, id("scratch_loads"), "figure.scratch_loads");
    }
    // A scratch coat whose mix is not known weighs something all the same: no weight then.
    if let (Some(carve), true) = (carve_mix, surface.scratch.is_none() || scratch_mix.is_some()) {
        weights(t, site, surface, (scratch_mix, carve), texture);
    }
}

/// Radii of a tapered round at foot and head.
fn radii(foot: &Worked<Length>, head: &Worked<Length>) -> Result<(Worked<Length>, Worked<Length>), String> {
    Ok((res(trade::sums::radius(foot))?, res(trade::sums::radius(head))?))
}

fn all_of(one: Worked<Volume>, surface: &Surface) -> Res<Volume> {
    match &surface.count {
        Some(n) => res(trade::sums::times(&one, n)),
        None => Ok(one),
    }
}

/// Mud to mix for the carve coat: area × mean, or on round work the ring from the scratch face; waste divided.
fn carve_volume(t: &Tally, site: &Site, surface: &Surface, (carved, dropped): (&Worked<Share>, &Worked<Share>)) -> Res<Volume> {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let mean = t.get::<Length>(&id("mean"))?;
    let under = surface.scratch.as_ref().map(|s| &s.thickness);
    let one = match &surface.shape {
        Shape::Column { half, diameter, height } => {
            let around = if *half { Around::Half } else { Around::Whole };
            let core = res(trade::sums::radius(diameter))?;
            let face = match under {
                Some(under) => res(trade::coats::scratch_face(&core, under))?,
                None => core,
            };
            res(trade::coats::annulus(&face, &mean, height, around))?
        }
        Shape::Frustum { foot, head, height } => {
            let (r1, r2) = radii(foot, head)?;
            res(trade::cone::cone_annulus(&r1, &r2, under, &mean, height))?
        }
        Shape::Flat(_) | Shape::Hearth { .. } | Shape::Box(_) => {
            return res(trade::relief::mixed_volume(&t.get(&id("net_area"))?, &mean, carved, dropped));
        }
    };
    res(trade::relief::with_waste(&all_of(one, surface)?, carved, dropped))
}

/// `None` where the carve coat goes straight on the base.
fn scratch_volume(t: &Tally, surface: &Surface, net: &str) -> Option<Res<Volume>> {
    let scratch = surface.scratch.as_ref()?;
    let (thickness, key, drop) = (&scratch.thickness, &scratch.key, &scratch.waste.drop);
    Some((|| match &surface.shape {
        Shape::Column { half, diameter, height } => {
            let around = if *half { Around::Half } else { Around::Whole };
            let core = res(trade::sums::radius(diameter))?;
            all_of(res(trade::coats::scratch_annulus(&core, thickness, key, height, drop, around))?, surface)
        }
        Shape::Frustum { foot, head, height } => {
            let (r1, r2) = radii(foot, head)?;
            all_of(res(trade::cone::scratch_cone(&r1, &r2, thickness, key, height, drop))?, surface)
        }
        Shape::Flat(_) | Shape::Hearth { .. } | Shape::Box(_) => res(trade::coats::scratch(&t.get(net)?, thickness, key, drop)),
    })())
}

/// A scratch of nothing, where the carve coat goes straight on the base.
fn no_scratch(site: &Site) -> Worked<Length> {
    let unit = crate::quantity::units::find_expr(if site.metric { "mm" } else { "in" });
    let none = Quantity { si: Num::int(0), dim: Dim::LENGTH, kind: Kind::Plain };
    Worked::new(Node::constant(none, unit, "t_scratch", "the carve coat goes straight on the base here"))
}

/// Lath and paper where the base states none.
fn no_weight(site: &Site) -> Worked<Areal> {
    let unit = crate::quantity::units::find_expr(if site.metric { "kg/m2" } else { "lb/ft2" });
    let none = Quantity { si: Num::int(0), dim: Dim::AREAL, kind: Kind::Plain };
    Worked::new(Node::constant(none, unit, "none", "the job states no weight of lath and paper"))
}

/// Loads of a volume: up to a half load where the mix allows half loads on a scale, else to a whole one.
pub(super) fn loads(t: &mut Tally, volume: &str, mix: &Mix, id: String, label: &'static str) {
    let answer: Res<Loads> = (|| {
        let (volume, one) = (t.get::<Volume>(volume)?, t.get::<Volume>(&format!("{}.yield", mix.id))?);
        let step = if mix.half_load { Step::Half } else { Step::Whole };
        trade::loads::loads(&volume, &one, step).map(|n| n.loads).map_err(String::from)
    })();
    t.put(id, label, Role::Loads, Basis::Practice, answer);
}

fn weights(t: &mut Tally, site: &Site, surface: &Surface, (scratch, carve): (Option<&Mix>, &Mix), texture: &Texture) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let lath = site.base.lath_and_paper.clone().unwrap_or_else(|| no_weight(site));
    let thicknesses = [
        (t.get::<Length>(&id("mean")), "weight_mean", "figure.weight_mean"),
        (Ok(texture.most.clone()), "weight_faces", "figure.weight_faces"),
    ];
    for (thickness, name, label) in thicknesses {
        let weight = (|| {
            let carved = t.get(&format!("{}.wet_density", carve.id))?;
            let under = match (&surface.scratch, scratch) {
                (Some(coat), Some(mix)) => Some(trade::weight::Scratch {
                    thickness: coat.thickness.clone(),
                    key: coat.key.clone(),
                    density: t.get(&format!("{}.wet_density", mix.id))?,
                }),
                _ => None,
            };
            res(trade::weight::dead_load(&thickness?, &carved, under.as_ref(), &lath))
        })();
        t.put(id(name), label, Role::WallWeight, Basis::Practice, weight);
    }
}
