//! `takeoff`: surfaces and order, and after them all that a site needs, weighs and costs.

use crate::job::{Site, Surface};
use crate::tally::{Ask, Tally, mix_of, scopes};
use crate::words::EN;

use super::load::Loaded;
use super::screen::{chosen, measured, said, with_findings};
use super::seam::{Align, Exit, Options, Outcome, Product, Table};
use super::{cure_tables, filed_tables, hands_tables, site_tables, wall_tables};

/// Areas, volumes, loads, bags and weights of one site or all.
pub fn takeoff(options: &Options, site: Option<&str>) -> Outcome {
    let loaded = match Loaded::open(options) {
        Ok(loaded) => loaded,
        Err(outcome) => return outcome,
    };
    let sites = match chosen(&loaded, site) {
        Ok(sites) => sites,
        Err(outcome) => return with_findings(&loaded, options, outcome),
    };
    let tables = sites.iter().flat_map(|s| site_tables(&loaded, s)).collect();
    // An order that lacks a surface is not one to send.
    let lacks = sites.iter().any(|site| site.surfaces.iter().any(|s| unworked(&loaded.tally, site, s).is_some()));
    let exit = if lacks { Exit::Stop } else { Exit::default() };
    with_findings(&loaded, options, Outcome { product: Product::Tables(tables), exit, ..Outcome::default() })
}

/// A column of the takeoff: its head, and the figure it shows; one that no surface has is left out.
const COLUMNS: &[(&str, &str, bool)] = &[
    ("Gross", "gross", true),
    ("Openings", "openings_area", true),
    ("Reveals", "reveals", true),
    ("Returns", "returns", false),
    ("Overhead", "soffits", false),
    ("To cover", "net_area", true),
    ("Mean", "mean", true),
    ("Most", "most", true),
    ("Lifts", "lifts", true),
    ("Mix", "volume", true),
    ("Loads", "loads", true),
    ("Weight, mean", "weight_mean", true),
    ("At faces", "weight_faces", true),
];

fn site_tables(loaded: &Loaded, site: &Site) -> Vec<Table> {
    let (t, us) = (&loaded.tally, site.metric);
    let id = |surface: &Surface, name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let some = |name: &str| site.surfaces.iter().any(|s| t.figure(&id(s, name)).is_some());
    let columns: Vec<_> = COLUMNS.iter().filter(|(_, name, always)| *always || some(name)).collect();
    let mut surfaces = Table { title: format!("{}, takeoff", site.name.text), ..Table::default() };
    surfaces.columns = [("Surface", Align::Left), ("What", Align::Left)]
        .into_iter()
        .chain(columns.iter().map(|(head, ..)| (*head, Align::Right)))
        .map(|(head, align)| (head.to_owned(), align))
        .collect();
    for surface in &site.surfaces {
        let mut row = vec![surface.code.text.clone(), scopes::named(&surface.what, EN).to_owned()];
        row.extend(columns.iter().map(|(_, name, _)| measured(t, &id(surface, name), us)));
        surfaces.rows.push(row);
    }
    let mut total = vec!["Total".to_owned(), String::new()];
    total.extend(columns.iter().map(|(_, name, _)| match *name {
        "net_area" => measured(t, &format!("{}.area", site.id), us),
        _ => String::new(),
    }));
    surfaces.totals.push(total);
    if let Some(rule) = super::tables::opening_rule(site) {
        surfaces.notes.push(format!("{}.", EN.text(rule)));
    }
    surfaces.notes.extend(site.surfaces.iter().filter_map(|s| unworked(t, site, s)));
    surfaces.notes.push(format!("{}.", super::tables::capital(EN.text("planning.note"))));
    let letter = said(t, &format!("{}.weight_allowed", site.id), Ask::Both, us);
    if !letter.is_empty() {
        surfaces.notes.push(format!("Engineer's letter on file allows {letter}; law, engineer and makers' sheets come first."));
    }
    let mut tables = vec![surfaces];
    tables.extend(edges(t, site));
    tables.push(order(loaded, site));
    tables.extend(wall_tables::of(loaded, site));
    tables.extend(site_tables::of(loaded, site));
    tables.extend(hands_tables::of(loaded, site));
    tables.extend(wall_tables::errors(loaded, site));
    tables.extend(cure_tables::of(loaded, site));
    tables.extend(filed_tables::of(loaded, site));
    tables
}

/// Why a surface has no area: an empty cell alone says nothing.
fn unworked(t: &Tally, site: &Site, surface: &Surface) -> Option<String> {
    let area = t.figure(&format!("{}/{}.net_area", site.id, surface.code.text))?;
    let why = area.worked.as_ref().err()?;
    Some(format!("{} cannot be worked: {why}.", surface.code.text))
}

/// Returns and undersides, each a row of its own; no table where there are none.
fn edges(t: &Tally, site: &Site) -> Option<Table> {
    let mut table = Table { title: format!("{}, returns and undersides", site.name.text), ..Table::default() };
    let heads = [("Surface", Align::Left), ("Part", Align::Left), ("What", Align::Left), ("Area", Align::Right), ("", Align::Left)];
    table.columns = heads.iter().map(|(h, a)| ((*h).to_owned(), *a)).collect();
    for surface in &site.surfaces {
        for (sort, edge) in crate::tally::edges(surface) {
            let area = measured(t, &format!("{}/{}.{}.area", site.id, surface.code.text, edge.code.text), site.metric);
            let where_worked = if sort == "soffits" { "overhead" } else { "" };
            let what = scopes::named(&edge.what, EN).to_owned();
            table.rows.push(vec![surface.code.text.clone(), edge.code.text.clone(), what, area, where_worked.to_owned()]);
        }
    }
    (!table.rows.is_empty()).then_some(table)
}

fn order(loaded: &Loaded, site: &Site) -> Table {
    let (t, us) = (&loaded.tally, site.metric);
    let mut order = Table { title: format!("{}, order", site.name.text), ..Table::default() };
    order.columns = [
        ("Mix", Align::Left),
        ("Volume", Align::Right),
        ("Loads", Align::Right),
        ("Batches", Align::Right),
        ("Additive", Align::Right),
        ("of", Align::Right),
        ("Mortar", Align::Right),
        ("of", Align::Right),
    ]
    .iter()
    .map(|(h, a)| ((*h).to_owned(), *a))
    .collect();
    for mix in site.mixes().filter_map(|n| mix_of(&loaded.job, &n.text)) {
        let id = |name: &str| format!("{}/{}.{name}", site.id, mix.id);
        let mut row = vec![mix.name.text.clone()];
        row.extend(["volume", "loads", "batches", "bags_additive"].map(|n| measured(t, &id(n), us)));
        row.push(said(t, &format!("{}.additive_bag", mix.id), Ask::Own, us));
        row.push(measured(t, &id("bags_mortar"), us));
        row.push(said(t, &format!("{}.mortar_bag", mix.id), Ask::Own, us));
        order.rows.push(row);
    }
    order.notes.push("Bags include the reserve; loads do not.".to_owned());
    order
}
