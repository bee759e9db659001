//! `takeoff` and `gauge`: the tables on the terminal.

use crate::job::{Mix, Site, Surface};
use crate::tally::{Ask, Tally, Voice, batch_id, ladder_id, ladder_sizes, mix_of, scopes};
use crate::words::EN;

use super::load::Loaded;
use super::seam::{Align, Exit, Options, Outcome, Product, Table};

pub(super) fn said(tally: &Tally, id: &str, ask: Ask, metric: bool) -> String {
    let voice = Voice { lang: EN, metric };
    tally.say(id, ask, voice).map_or_else(String::new, |v| v.text.replace(crate::quantity::show::JOIN, " "))
}

/// A cell of the takeoff: a measure that gives no figure is no question for a maker.
fn measured(tally: &Tally, id: &str, metric: bool) -> String {
    let missing = tally.figure(id).is_some_and(|f| f.worked.is_err());
    if missing { "not worked".to_owned() } else { said(tally, id, Ask::Own, metric) }
}

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

/// The site of a name or code; all without one.
pub(super) fn chosen<'a>(loaded: &'a Loaded, site: Option<&str>) -> Result<Vec<&'a Site>, Outcome> {
    let sites: Vec<&Site> = loaded.job.sites.iter().filter(|s| site.is_none_or(|asked| s.id == asked || s.code.text == asked)).collect();
    if sites.is_empty() {
        let known = loaded.job.sites.iter().map(|s| s.id.clone());
        return Err(nothing("site", site, known));
    }
    Ok(sites)
}

/// Nothing of the name asked for; or, with no name asked for, nothing at all.
fn nothing(kind: &'static str, asked: Option<&str>, known: impl Iterator<Item = String>) -> Outcome {
    match asked {
        Some(name) => Outcome::nothing(kind, name, known),
        None => Outcome { summary: format!("the job folder has no {kind} that could be read"), exit: Exit::Nothing, ..Outcome::default() },
    }
}

/// The findings of reading go with every product: a table that lacks a surface must say why.
pub(super) fn with_findings(loaded: &Loaded, options: &Options, mut outcome: Outcome) -> Outcome {
    if !loaded.findings.is_empty() {
        let (findings, summary) = loaded.draw(options, &loaded.findings);
        outcome.findings = findings;
        outcome.summary = summary;
        if super::load::stops(&loaded.findings) {
            outcome.exit = Exit::Stop;
        }
    }
    outcome
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

/// Powder and water per batch, and the ladder, of one mix or all.
pub fn gauge(options: &Options, mix: Option<&str>) -> Outcome {
    let loaded = match Loaded::open(options) {
        Ok(loaded) => loaded,
        Err(outcome) => return outcome,
    };
    let mixes: Vec<&Mix> = loaded.job.mixes.iter().filter(|m| mix.is_none_or(|asked| m.id == asked || m.name.text == asked)).collect();
    if mixes.is_empty() {
        let known = loaded.job.mixes.iter().map(|m| m.id.clone());
        return with_findings(&loaded, options, nothing("mix", mix, known));
    }
    let mut tables = Vec::new();
    for site in &loaded.job.sites {
        for mix in &mixes {
            if site.mixes().any(|name| name.text == mix.name.text) {
                tables.push(batches(&loaded, site, mix));
                tables.push(ladder(&loaded, site, mix));
            }
        }
    }
    with_findings(&loaded, options, Outcome { product: Product::Tables(tables), ..Outcome::default() })
}

fn batches(loaded: &Loaded, site: &Site, mix: &Mix) -> Table {
    let (t, us) = (&loaded.tally, site.metric);
    let mut table = Table { title: format!("{} rev {}, batches at {}", mix.name.text, mix.rev.text, site.name.text), ..Table::default() };
    table.columns = [
        ("Batch", Align::Left),
        ("Mixer", Align::Left),
        ("Start water", Align::Right),
        ("other unit", Align::Right),
        ("Step", Align::Right),
        ("Limit", Align::Right),
        ("Mortar first", Align::Right),
        ("Additive", Align::Right),
        ("Mortar rest", Align::Right),
        ("Volume at limit", Align::Right),
        ("Mixer takes", Align::Right),
        ("On the wall by", Align::Right),
    ]
    .iter()
    .map(|(h, a)| ((*h).to_owned(), *a))
    .collect();
    for plan in site.batches.iter().filter(|b| b.mix.text == mix.name.text) {
        let batch = batch_id(&loaded.job, site, plan);
        let id = |name: &str| format!("{batch}.{name}");
        let own = |name: &str| said(t, &id(name), Ask::Own, us);
        let capacity = said(t, &format!("{}/{}/{}.capacity", site.id, mix.id, plan.mixer.text), Ask::Own, us);
        table.rows.push(vec![
            own("loads"),
            plan.mixer.text.clone(),
            own("start_water"),
            said(t, &id("start_water"), Ask::Second, us),
            own("step"),
            own("limit"),
            own("mortar_first"),
            own("additive"),
            own("mortar_rest"),
            own("volume"),
            capacity,
            own("place_by"),
        ]);
    }
    if mix.half_load {
        let half = |name: &str| said(t, &format!("{}.half_{name}", mix.id), Ask::Own, us);
        table.notes.push(format!(
            "Half load, on the scale: {} water, {} mortar, {} additive; limit {}.",
            half("start_water"),
            half("mortar"),
            half("additive"),
            half("limit")
        ));
    }
    table
        .notes
        .push(format!("Mix at least {} by the timer before anyone judges it.", said(t, &format!("{}.mixing", mix.id), Ask::Long, us)));
    table
}

fn ladder(loaded: &Loaded, site: &Site, mix: &Mix) -> Table {
    let (t, us) = (&loaded.tally, site.metric);
    let sizes = ladder_sizes(site, mix);
    let mut table = Table { title: format!("{}, water ladder", mix.name.text), ..Table::default() };
    table.columns.push(("Rung".to_owned(), Align::Right));
    table.columns.push(("Added so far, per load".to_owned(), Align::Right));
    table.columns.extend(sizes.iter().map(|s| (said(t, &format!("{}.ladder_size.{s}", mix.id), Ask::Own, us), Align::Right)));
    let mut rung = 0;
    while t.figure(&ladder_id(mix, "added", rung)).is_some() {
        let mut row = vec![rung.to_string(), said(t, &ladder_id(mix, "added", rung), Ask::Own, us)];
        row.extend(sizes.iter().map(|s| said(t, &ladder_id(mix, s, rung), Ask::Own, us)));
        table.rows.push(row);
        rung += 1;
    }
    table.notes.push("The last rung is the limit: start may stand on it, nothing may be added above it.".to_owned());
    table
}
