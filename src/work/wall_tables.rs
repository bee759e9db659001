//! Tables of the takeoff that speak of the walls: control joints, weights, error budget.

use crate::job::{Site, Surface};
use crate::quantity::Worked;
use crate::quantity::expr::Areal;
use crate::tally::{Ask, Role, Voice, scopes};
use crate::trade::limits::{Limit, OLD_VENEER, VENEER_WEIGHT, margin};
use crate::trade::sources::Basis;
use crate::words::EN;

use super::load::Loaded;
use super::screen::{measured, other, said, table, why};
use super::seam::{Align, Table};

fn id(site: &Site, surface: &Surface, name: &str) -> String {
    format!("{}/{}.{name}", site.id, surface.code.text)
}

/// Control joints and weights.
pub(super) fn of(loaded: &Loaded, site: &Site) -> Vec<Table> {
    joints(loaded, site).into_iter().chain(weights(loaded, site)).collect()
}

/// The first two cells of a surface's row.
fn head(surface: &Surface) -> Vec<String> {
    vec![surface.code.text.clone(), scopes::named(&surface.what, EN).to_owned()]
}

fn joints(loaded: &Loaded, site: &Site) -> Option<Table> {
    let (t, us) = (&loaded.tally, site.metric);
    let heads = [
        ("Surface", Align::Left),
        ("What", Align::Left),
        ("Panels", Align::Right),
        ("Joints", Align::Right),
        ("Panel length", Align::Right),
        ("other unit", Align::Right),
        ("Panel height", Align::Right),
        ("other unit", Align::Right),
    ];
    let mut made = table(format!("{}, control joints", site.name.text), &heads);
    let mut ids = Vec::new();
    for surface in site.surfaces.iter().filter(|s| t.figure(&id(site, s, "panels")).is_some()) {
        let mut row = head(surface);
        row.extend(["panels", "joints"].map(|n| measured(t, &id(site, surface, n), us)));
        for side in ["panel_length", "panel_height"] {
            row.extend([measured(t, &id(site, surface, side), us), other(t, &id(site, surface, side), us)]);
        }
        made.rows.push(row);
        ids.push(id(site, surface, "panels"));
    }
    made.notes = why(t, ids.iter());
    let counted = site.surfaces.iter().any(|s| s.count.is_some() && ids.contains(&id(site, s, "panels")));
    if counted {
        made.notes.push("Where several equal walls stand, these are the panels of one.".to_owned());
    }
    made.notes
        .push("Fewest panels of the wall's whole rectangle, by a joint maker's rules: sides to 18 ft, 144 ft², 2 1/2 to 1.".to_owned());
    made.notes.push("Lath is cut at a joint. Put joints where the picture has a line; the engineer's joints come first.".to_owned());
    (!made.rows.is_empty()).then_some(made)
}

fn weights(loaded: &Loaded, site: &Site) -> Option<Table> {
    let (t, us) = (&loaded.tally, site.metric);
    let heads = [
        ("Surface", Align::Left),
        ("What", Align::Left),
        ("Mean", Align::Right),
        ("other unit", Align::Right),
        ("At faces", Align::Right),
        ("other unit", Align::Right),
    ];
    let mut made = table(format!("{}, weights on the wall", site.name.text), &heads);
    let mut ids = Vec::new();
    for surface in site.surfaces.iter().filter(|s| t.figure(&id(site, s, "weight_faces")).is_some()) {
        let mut row = head(surface);
        for name in ["weight_mean", "weight_faces"] {
            row.extend([measured(t, &id(site, surface, name), us), other(t, &id(site, surface, name), us)]);
            ids.push(id(site, surface, name));
        }
        made.rows.push(row);
    }
    for name in ["heaviest_patch", "weight_allowed"] {
        let own = format!("{}.{name}", site.id);
        if t.figure(&own).is_some() {
            let mut row = vec![super::screen::label(t, &own)];
            row.resize(4, String::new());
            row.extend([measured(t, &own, us), other(t, &own, us)]);
            made.totals.push(row);
            ids.push(own);
        }
    }
    made.notes = why(t, ids.iter());
    made.notes.extend([&VENEER_WEIGHT, &OLD_VENEER].into_iter().filter_map(|limit| published(loaded, site, limit)));
    made.notes.push("Wet densities stand for dry. Law, the engineer and the makers' sheets decide what a wall carries.".to_owned());
    (!made.rows.is_empty()).then_some(made)
}

/// A published limit beside the heaviest part: another trade's rule, never a verdict of ours.
fn published(loaded: &Loaded, site: &Site, limit: &Limit) -> Option<String> {
    let t = &loaded.tally;
    let figure = t.figure(&format!("{}.heaviest_patch", site.id))?;
    let heaviest: Worked<Areal> = Worked::new(figure.worked.as_ref().ok()?.clone());
    let bound = limit.constant::<Areal>("limit").ok()?;
    let voice = Voice { lang: EN, metric: site.metric };
    let shown = t.text_of(Role::WallAllowance, bound.value(), voice);
    let who = limit.source.split_once(": ").map_or(limit.source, |(_, who)| who);
    let verdict = if margin(limit, &heaviest).is_ok() { "within" } else { "over" };
    let patch = said(t, &figure.id, Ask::Own, site.metric);
    Some(format!(
        "Published, {} ({}): at most {shown} ({who}); {patch} is {verdict} it.",
        limit.what,
        EN.text(basis(limit.basis)),
        shown = shown.replace(crate::quantity::show::JOIN, " ")
    ))
}

/// Key of the words for a source's basis.
fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Standard => "basis.standard",
        Basis::NeighbourStandard => "basis.neighbour",
        Basis::MixSheet => "basis.mix_sheet",
        Basis::CommonPractice => "basis.practice",
        Basis::Geometry => "basis.geometry",
    }
}

/// How far off the loads may be, and what to measure better.
pub(super) fn errors(loaded: &Loaded, site: &Site) -> Option<Table> {
    let (t, us) = (&loaded.tally, site.metric);
    let heads = [
        ("Surface", Align::Left),
        ("What", Align::Left),
        ("Loads, plus or minus", Align::Right),
        ("Largest part", Align::Left),
        ("Its share", Align::Right),
    ];
    let mut made = table(format!("{}, error budget", site.name.text), &heads);
    let mut ids = Vec::new();
    for surface in &site.surfaces {
        let (error, largest) = (id(site, surface, "error"), id(site, surface, "error_largest"));
        let Some(part) = t.figure(&largest) else { continue };
        let mut row = head(surface);
        row.extend([measured(t, &error, us), EN.text(part.label).to_owned(), measured(t, &largest, us)]);
        made.rows.push(row);
        ids.push(error);
    }
    made.notes = why(t, ids.iter());
    made.notes.push(
        "Stated uncertainties, independent of each other. Making the largest part smaller is worth more than all the others.".to_owned(),
    );
    (!made.rows.is_empty()).then_some(made)
}
