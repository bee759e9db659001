//! Control joints of flat surfaces on lath, and the heaviest 4 × 8 ft of the flat work.

use crate::job::{Shape, Site, Surface};
use crate::quantity::expr::{Area, Areal, Node};
use crate::quantity::units::find_expr;
use crate::quantity::{Num, Quantity, Worked};
use crate::trade::joints::{self, Panels};
use crate::trade::weight::{self, Part};

use super::{Basis, Res, Role, Tally, outline, res};

/// Works them, once the weights of the surfaces are known.
pub(super) fn work(t: &mut Tally, site: &Site) {
    for surface in site.surfaces.iter().filter(|s| site.lath.is_some() && s.scratch.is_some()) {
        if let Shape::Flat(face) = &surface.shape {
            let cut = outline::bounds(face).and_then(|(length, height)| {
                let limits = joints::panel_limits(false).map_err(String::from)?;
                joints::panels(&length, &height, &limits).map_err(String::from)
            });
            put(t, site, surface, &cut);
        }
    }
    let flat: Vec<&Surface> = site.surfaces.iter().filter(|s| !matches!(s.shape, Shape::Column { .. } | Shape::Frustum { .. })).collect();
    if !flat.is_empty() {
        let patch = heaviest(t, site, &flat);
        t.put(format!("{}.heaviest_patch", site.id), "figure.heaviest_patch", Role::WallWeight, Basis::Practice, patch);
    }
}

fn put(t: &mut Tally, site: &Site, surface: &Surface, cut: &Result<Panels, String>) {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let part = |of: fn(&Panels) -> Worked<_>| cut.as_ref().map(of).map_err(Clone::clone);
    t.put(id("panels"), "figure.panels", Role::Count, Basis::Neighbour, part(|p| p.count.clone()));
    t.put(id("joints"), "figure.joints", Role::Count, Basis::Neighbour, part(|p| p.joints.clone()));
    let side = |of: fn(&Panels) -> Worked<_>| cut.as_ref().map(of).map_err(Clone::clone);
    t.put(id("panel_length"), "figure.panel_length", Role::PanelLength, Basis::Neighbour, side(|p| p.length.clone()));
    t.put(id("panel_height"), "figure.panel_height", Role::PanelLength, Basis::Neighbour, side(|p| p.height.clone()));
}

/// A sheet of 4 × 8 ft, written as the site measures.
fn sheet(site: &Site) -> Worked<Area> {
    let value = find_expr("ft2").map_or_else(|| Quantity::plain(Num::int(32)), |u| Quantity::of(&Num::int(32), u));
    let unit = find_expr(if site.metric { "m2" } else { "ft2" });
    Worked::new(Node::constant(value, unit, "A_patch", "4 × 8 ft: common practice, no source"))
}

fn heaviest(t: &Tally, site: &Site, flat: &[&Surface]) -> Res<Areal> {
    let parts: Result<Vec<Part>, String> = flat
        .iter()
        .map(|surface| {
            let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
            Ok(Part { area: t.get(&id("net_area"))?, weight: t.get(&id("weight_faces"))? })
        })
        .collect();
    res(weight::heaviest_patch(&parts?, &sheet(site)))
}
