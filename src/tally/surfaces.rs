//! Figures of one surface: faces, openings, returns and soffits, and what is left to cover.

use crate::job::{Edge, Job, Opening, OpeningRule, Shape, Site, Surface};
use crate::quantity::expr::{Area, Length, Plain};
use crate::quantity::{Dim, Kind, Node, Num, Quantity, Worked};
use crate::trade;
use crate::trade::opening_rule::Reveal;
use crate::trade::takeoff::Around;

use super::{Basis, Res, Role, Tally, coats, outline, res};

/// Works the figures of a surface.
pub(super) fn work(t: &mut Tally, job: &Job, site: &Site, surface: &Surface) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    measures(t, site, surface);
    let gross = faces(surface).and_then(|g| res(trade::net::total(&g)));
    t.put(id("gross"), "figure.gross", Role::Area, Basis::Geometry, counted(gross, surface.count.as_ref()));
    let mut off: Parts = Ok(Vec::new());
    let mut reveals: Parts = Ok(Vec::new());
    for opening in &surface.openings {
        let at = |name: &str| format!("{}/{}.{}.{name}", site.id, surface.code.text, opening.code.text);
        let hole = Hole::of(opening, site.opening_rule);
        t.put(at("area"), "figure.openings_area", Role::Area, Basis::Geometry, hole.area);
        let taken = if site.opening_rule == OpeningRule::DeductAll {
            t.get(&at("area"))
        } else {
            t.put(at("deducted"), "figure.deducted", Role::Area, Basis::Practice, hole.deducted);
            t.get(&at("deducted"))
        };
        gather(&mut off, taken);
        if let Some(reveal) = hole.reveal {
            t.put(at("reveal"), "figure.reveals", Role::Area, Basis::Geometry, reveal);
            gather(&mut reveals, t.get(&at("reveal")));
        }
    }
    t.put(id("openings_area"), "figure.openings_area", Role::Area, Basis::Geometry, sum(site, off, surface));
    t.put(id("reveals"), "figure.reveals", Role::Area, Basis::Geometry, sum(site, reveals, surface));
    let mut added = vec!["reveals"];
    for (name, label, edges) in [("returns", "figure.returns", &surface.returns), ("soffits", "figure.soffits", &surface.soffits)] {
        if edges.is_empty() {
            continue;
        }
        let mut parts: Parts = Ok(Vec::new());
        for edge in edges {
            let at = format!("{}/{}.{}.area", site.id, surface.code.text, edge.code.text);
            let one = if name == "returns" {
                trade::takeoff::reveal(&edge.length, &edge.depth)
            } else {
                trade::edges::soffit(&edge.length, &edge.depth)
            };
            t.put(at.clone(), label, Role::Area, Basis::Geometry, counted(res(one), edge.count.as_ref()));
            gather(&mut parts, t.get(&at));
        }
        t.put(id(name), label, Role::Area, Basis::Geometry, sum(site, parts, surface));
        added.push(name);
    }
    let net = (|| {
        let added = added.iter().map(|name| t.get(&id(name))).collect::<Result<Vec<_>, _>>()?;
        res(trade::net::net(&[t.get(&id("gross"))?], &[t.get(&id("openings_area"))?], &added))
    })();
    t.put(id("net_area"), "figure.net_area", Role::Area, Basis::Geometry, net);
    if let Some(texture) = site.textures.iter().find(|x| x.name.text == surface.texture.text) {
        coats::work(t, job, site, surface, texture);
    }
}

type Parts = Result<Vec<Worked<Area>>, String>;

/// Keeps the first cause: a sum that lacks a part is no sum.
fn gather(parts: &mut Parts, part: Res<Area>) {
    match (parts.as_mut(), part) {
        (Ok(list), Ok(part)) => list.push(part),
        (Ok(_), Err(why)) => *parts = Err(why),
        (Err(_), _) => {}
    }
}

/// The parts of one, for all that stand.
fn sum(site: &Site, parts: Parts, surface: &Surface) -> Res<Area> {
    let parts = parts?;
    if parts.is_empty() {
        return Ok(no_area(site));
    }
    counted(res(trade::net::total(&parts)), surface.count.as_ref())
}

/// So many equal ones; one if no count is stated.
fn counted(one: Res<Area>, count: Option<&Worked<Plain>>) -> Res<Area> {
    match count {
        Some(n) => res(trade::net::times(&one?, n)),
        None => one,
    }
}

/// What one entry of an opening comes to, all its equal ones together.
struct Hole {
    area: Res<Area>,
    deducted: Res<Area>,
    reveal: Option<Res<Area>>,
}

impl Hole {
    /// A rule goes by the size of one opening, never of several together.
    fn of(opening: &Opening, rule: OpeningRule) -> Hole {
        let one = outline::faces(&opening.outline).and_then(|f| res(trade::net::total(&f)));
        let count = |area: Res<Area>| counted(area, opening.count.as_ref());
        let ready = |a: &Worked<Area>| match rule {
            OpeningRule::DeductAll => Ok(a.clone()),
            OpeningRule::Is1200 => res(trade::opening_rule::deducted_is1200(a, reveal_of(opening)?)),
            OpeningRule::Reed1878 => res(trade::opening_rule::deducted_reed(a)),
        };
        let reveal = opening.depth.as_ref().map(|depth| {
            let area = outline::perimeter(opening).and_then(|p| res(trade::takeoff::reveal(&p, depth)))?;
            match rule {
                OpeningRule::Is1200 => count(res(trade::opening_rule::reveals_is1200(&area, &one.clone()?))),
                OpeningRule::DeductAll | OpeningRule::Reed1878 => count(Ok(area)),
            }
        });
        Hole { deducted: count(one.clone().and_then(|a| ready(&a))), area: count(one), reveal }
    }
}

fn reveal_of(opening: &Opening) -> Result<Reveal, String> {
    match opening.reveal.as_ref().map(|t| t.text.as_str()) {
        Some("narrower") => Ok(Reveal::Narrower),
        Some("equal") => Ok(Reveal::Equal),
        Some("wider") => Ok(Reveal::Wider),
        _ => Err(format!("{} does not say which face has the narrower reveal", opening.code.text)),
    }
}

/// The authored lengths that a drawing or a table prints.
fn measures(t: &mut Tally, site: &Site, surface: &Surface) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let mut own = |name: &str, label, length: &Worked<Length>| t.own(id(name), label, Role::WallLength, Basis::Author, length);
    match &surface.shape {
        Shape::Flat(flat) => outline::measures(flat).iter().for_each(|(name, label, length)| own(name, label, length)),
        Shape::Hearth { front, .. } => {
            own("width", "figure.width", &front.0);
            own("height", "figure.height", &front.1);
        }
        Shape::Box(faces) => {
            for face in faces {
                own(&format!("{}.width", face.code.text), "figure.width", &face.width);
                own(&format!("{}.height", face.code.text), "figure.height", &face.height);
            }
        }
        Shape::Column { diameter, height, .. } => {
            own("diameter", "figure.diameter", diameter);
            own("height", "figure.height", height);
        }
        Shape::Frustum { foot, head, height } => {
            own("foot", "figure.foot", foot);
            own("head", "figure.head", head);
            own("height", "figure.height", height);
        }
    }
    for opening in &surface.openings {
        for (name, label, length) in outline::measures(&opening.outline).iter().filter(|m| ["width", "diameter"].contains(&m.0)) {
            own(&format!("{}.{name}", opening.code.text), label, length);
        }
    }
}

/// The parts of a surface's gross face, of one where several stand.
fn faces(surface: &Surface) -> Result<Vec<Worked<Area>>, String> {
    Ok(match &surface.shape {
        Shape::Flat(flat) => outline::faces(flat)?,
        Shape::Hearth { front, ends, ends_count } => {
            let end = res(trade::takeoff::rectangle(&ends.0, &ends.1))?;
            vec![res(trade::takeoff::rectangle(&front.0, &front.1))?, res(trade::net::times(&end, ends_count))?]
        }
        Shape::Box(faces) => {
            let face = |f: &crate::job::Face| counted(res(trade::takeoff::rectangle(&f.width, &f.height)), f.count.as_ref());
            faces.iter().map(face).collect::<Result<_, _>>()?
        }
        Shape::Column { half, diameter, height } => {
            let around = if *half { Around::Half } else { Around::Whole };
            vec![res(trade::takeoff::column(diameter, height, around))?]
        }
        Shape::Frustum { foot, head, height } => {
            vec![res(trade::takeoff::frustum(&res(trade::sums::radius(foot))?, &res(trade::sums::radius(head))?, height))?]
        }
    })
}

/// An area of nothing: a surface without openings deducts none.
fn no_area(site: &Site) -> Worked<Area> {
    let unit = crate::quantity::units::find_expr(if site.metric { "m2" } else { "ft2" });
    let none = Quantity { si: Num::int(0), dim: Dim::AREA, kind: Kind::Plain };
    Worked::new(Node::constant(none, unit, "none", "the job lists no opening here"))
}

/// Codes of a surface's returns and soffits, each with its sort.
pub fn edges(surface: &Surface) -> impl Iterator<Item = (&'static str, &Edge)> {
    let named = |sort: &'static str| move |e| (sort, e);
    surface.returns.iter().map(named("returns")).chain(surface.soffits.iter().map(named("soffits")))
}
