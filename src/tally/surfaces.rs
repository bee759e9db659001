//! Figures of one surface: areas, thickness, mud, lifts, weight.

use crate::job::{Job, Mix, Opening, OpeningShape, Shape, Site, Surface, Texture};
use crate::quantity::expr::{Area, Areal, Length, Loads, Share, Volume};
use crate::quantity::{Dim, Kind, Node, Num, Quantity, Worked};
use crate::trade;
use crate::trade::arches::Sides;
use crate::trade::loads::Step;
use crate::trade::takeoff::Around;

use super::{Basis, Res, Role, Tally, mix_of, res};

/// Works the figures of a surface.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site, surface: &Surface) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    measures(t, site, surface);
    let gross = faces(surface);
    t.put(id("gross"), "figure.gross", Role::Area, Basis::Geometry, gross.clone().and_then(|g| res(trade::net::total(&g))));
    let mut areas: Vec<Worked<Area>> = Vec::new();
    let mut reveals: Vec<Worked<Area>> = Vec::new();
    let mut cause: Option<String> = None;
    for opening in &surface.openings {
        let at = |name: &str| format!("{}/{}.{}.{name}", site.id, surface.code.text, opening.code.text);
        t.put(at("area"), "figure.openings_area", Role::Area, Basis::Geometry, opening_area(opening));
        match t.get(&at("area")) {
            Ok(a) => areas.push(a),
            Err(why) => cause = cause.or(Some(why)),
        }
        if let Some(depth) = &opening.depth {
            let reveal = perimeter(opening).and_then(|p| res(trade::takeoff::reveal(&p, depth)));
            t.put(at("reveal"), "figure.reveals", Role::Area, Basis::Geometry, reveal);
            match t.get(&at("reveal")) {
                Ok(r) => reveals.push(r),
                Err(why) => cause = cause.or(Some(why)),
            }
        }
    }
    let sum = |parts: &[Worked<Area>]| -> Res<Area> {
        match &cause {
            Some(why) => Err(why.clone()),
            None if parts.is_empty() => Ok(no_area(site)),
            None => res(trade::net::total(parts)),
        }
    };
    t.put(id("openings_area"), "figure.openings_area", Role::Area, Basis::Geometry, sum(&areas));
    t.put(id("reveals"), "figure.reveals", Role::Area, Basis::Geometry, sum(&reveals));
    let net = (|| res(trade::net::net(&[t.get(&id("gross"))?], &[t.get(&id("openings_area"))?], &[t.get(&id("reveals"))?])))();
    t.put(id("net_area"), "figure.net_area", Role::Area, Basis::Geometry, net);
    if let Some(texture) = site.textures.iter().find(|x| x.name.text == surface.texture.text) {
        mud(t, job, site, surface, texture);
    }
}

/// The authored lengths that a drawing or a table prints.
fn measures(t: &mut Tally, site: &Site, surface: &Surface) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let mut own = |name: &str, label, length: &Worked<Length>| t.own(id(name), label, Role::WallLength, Basis::Author, length);
    match &surface.shape {
        Shape::Rectangle { width, height } => {
            own("width", "figure.width", width);
            own("height", "figure.height", height);
        }
        Shape::Gable { width, eave, rise } => {
            own("width", "figure.width", width);
            own("eave", "figure.height", eave);
            own("rise", "figure.rise", rise);
        }
        Shape::Hearth { front, .. } => {
            own("width", "figure.width", &front.0);
            own("height", "figure.height", &front.1);
        }
        Shape::Column { diameter, height, .. } => {
            own("diameter", "figure.diameter", diameter);
            own("height", "figure.height", height);
        }
    }
    for opening in &surface.openings {
        let (OpeningShape::Rectangle { width, .. } | OpeningShape::Semicircular { width, .. } | OpeningShape::Segmental { width, .. }) =
            &opening.shape;
        own(&format!("{}.width", opening.code.text), "figure.width", width);
    }
}

/// The parts of a surface's gross face.
fn faces(surface: &Surface) -> Result<Vec<Worked<Area>>, String> {
    Ok(match &surface.shape {
        Shape::Rectangle { width, height } => vec![res(trade::takeoff::rectangle(width, height))?],
        Shape::Gable { width, eave, rise } => {
            vec![res(trade::takeoff::rectangle(width, eave))?, res(trade::takeoff::gable(width, rise))?]
        }
        Shape::Hearth { front, ends, ends_count } => {
            let end = res(trade::takeoff::rectangle(&ends.0, &ends.1))?;
            vec![res(trade::takeoff::rectangle(&front.0, &front.1))?, res(trade::net::times(&end, ends_count))?]
        }
        Shape::Column { half, diameter, height, count } => {
            let around = if *half { Around::Half } else { Around::Whole };
            vec![res(trade::net::times(&res(trade::takeoff::column(diameter, height, around))?, count))?]
        }
    })
}

fn opening_area(opening: &Opening) -> Res<Area> {
    res(match &opening.shape {
        OpeningShape::Rectangle { width, height, .. } => trade::takeoff::rectangle(width, height),
        OpeningShape::Semicircular { width, spring } => trade::arches::semicircular_opening(width, spring),
        OpeningShape::Segmental { width, spring, rise } => trade::arches::segmental_opening(width, spring, rise),
    })
}

fn perimeter(opening: &Opening) -> Res<Length> {
    res(match &opening.shape {
        OpeningShape::Rectangle { width, height, sides } => {
            let sides = if sides.value().si == crate::quantity::Num::int(4) { Sides::Four } else { Sides::Three };
            trade::arches::rectangular_perimeter(width, height, sides)
        }
        OpeningShape::Semicircular { width, spring } => trade::arches::semicircular_perimeter(width, spring),
        OpeningShape::Segmental { width, spring, rise } => trade::arches::segmental_perimeter(width, spring, rise),
    })
}

/// No carve waste stated means none: the scratch coat has only droppings.
fn no_waste() -> Worked<Share> {
    let none = Quantity { kind: Kind::Share, ..Quantity::plain(Num::int(0)) };
    Worked::new(Node::constant(none, crate::quantity::units::find_expr("%"), "w_carve", "the job states no carve waste here"))
}

fn mud(t: &mut Tally, job: &Job, site: &Site, surface: &Surface, texture: &Texture) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    t.own(id("least"), "figure.least", Role::LeastThickness, Basis::Author, &texture.least);
    t.own(id("carve_most"), "figure.most", Role::MostThickness, Basis::Author, &texture.most);
    t.put(
        id("mean"),
        "figure.mean",
        Role::MeanThickness,
        Basis::Practice,
        res(trade::relief::mean_thickness(&texture.least, &texture.most, &texture.fill)),
    );
    let most = res(trade::sums::whole_thickness(&texture.most, &site.scratch.thickness));
    t.put(id("most"), "figure.most", Role::MostThickness, Basis::Author, most);
    let (scratch_mix, carve_mix) = (mix_of(job, &site.scratch_mix.text), mix_of(job, &site.carve_mix.text));
    if let Some(mix) = carve_mix {
        // Max governs: lifts come from the face, never from the mean.
        let lifts = (|| res(trade::coats::lifts(&t.get(&id("most"))?, &site.scratch.thickness, &mix.lift)))();
        t.put(id("lifts"), "figure.lifts", Role::Count, Basis::MixSheet, lifts);
    }
    let carve_waste = texture.waste.carve.clone().unwrap_or_else(no_waste);
    let mixed = carve_volume(t, site, surface, (&carve_waste, &texture.waste.drop));
    t.put(id("volume"), "figure.carve_volume", Role::Volume, Basis::Practice, mixed);
    let scratch = scratch_volume(t, site, surface, &id("net_area"));
    t.put(id("scratch_volume"), "figure.scratch_volume", Role::Volume, Basis::Practice, scratch);
    if let Some(mix) = carve_mix {
        loads(t, &id("volume"), mix, id("loads"), "figure.carve_loads");
    }
    if let Some(mix) = scratch_mix {
        loads(t, &id("scratch_volume"), mix, id("scratch_loads"), "figure.scratch_loads");
    }
    if let (Some(scratch), Some(carve)) = (scratch_mix, carve_mix) {
        weights(t, site, surface, (scratch, carve), texture);
    }
}

/// Mud to mix for the carve coat: area × mean, or the annulus from the scratch face on round work; waste divided.
fn carve_volume(t: &Tally, site: &Site, surface: &Surface, (carved, dropped): (&Worked<Share>, &Worked<Share>)) -> Res<Volume> {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let mean = t.get::<Length>(&id("mean"))?;
    match &surface.shape {
        Shape::Column { half, diameter, height, count } => {
            let around = if *half { Around::Half } else { Around::Whole };
            let core = res(trade::sums::radius(diameter))?;
            let face = res(trade::coats::scratch_face(&core, &site.scratch.thickness))?;
            let one = res(trade::coats::annulus(&face, &mean, height, around))?;
            res(trade::relief::with_waste(&res(trade::sums::times(&one, count))?, carved, dropped))
        }
        _ => res(trade::relief::mixed_volume(&t.get(&id("net_area"))?, &mean, carved, dropped)),
    }
}

fn scratch_volume(t: &Tally, site: &Site, surface: &Surface, net: &str) -> Res<Volume> {
    let (thickness, key, drop) = (&site.scratch.thickness, &site.scratch.key, &site.scratch.waste.drop);
    match &surface.shape {
        Shape::Column { half, diameter, height, count } => {
            let around = if *half { Around::Half } else { Around::Whole };
            let core = res(trade::sums::radius(diameter))?;
            let one = res(trade::coats::scratch_annulus(&core, thickness, key, height, drop, around))?;
            res(trade::sums::times(&one, count))
        }
        _ => res(trade::coats::scratch(&t.get(net)?, thickness, key, drop)),
    }
}

/// An area of nothing: a surface without openings deducts none.
fn no_area(site: &Site) -> Worked<Area> {
    let unit = crate::quantity::units::find_expr(if site.metric { "m2" } else { "ft2" });
    let none = Quantity { si: Num::int(0), dim: Dim::AREA, kind: Kind::Plain };
    Worked::new(Node::constant(none, unit, "none", "the job lists no opening here"))
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

fn weights(t: &mut Tally, site: &Site, surface: &Surface, (scratch, carve): (&Mix, &Mix), texture: &Texture) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let lath = site.base.lath_and_paper.clone().unwrap_or_else(|| no_weight(site));
    let thicknesses = [
        (t.get::<Length>(&id("mean")), "weight_mean", "figure.weight_mean"),
        (Ok(texture.most.clone()), "weight_faces", "figure.weight_faces"),
    ];
    for (thickness, name, label) in thicknesses {
        let weight = (|| {
            let carved = t.get(&format!("{}.wet_density", carve.id))?;
            let under = trade::weight::Scratch {
                thickness: site.scratch.thickness.clone(),
                key: site.scratch.key.clone(),
                density: t.get(&format!("{}.wet_density", scratch.id))?,
            };
            res(trade::weight::dead_load(&thickness?, &carved, Some(&under), &lath))
        })();
        t.put(id(name), label, Role::WallWeight, Basis::Practice, weight);
    }
}
