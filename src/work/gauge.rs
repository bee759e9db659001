//! `gauge`: what goes into the mixer, how long it lasts, how fast it dries.

use crate::job::{Mix, Site};
use crate::tally::{Ask, batch_id, ladder_id, ladder_sizes};

use super::load::Loaded;
use super::screen::{nothing, said, with_findings};
use super::seam::{Align, Options, Outcome, Product, Table};
use super::{filed_tables, gauge_tables};

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
        for mix in mixes.iter().filter(|mix| site.mixes().any(|name| name.text == mix.name.text)) {
            tables.push(batches(&loaded, site, mix));
            tables.push(ladder(&loaded, site, mix));
            tables.extend(gauge_tables::pallets(&loaded, site, mix));
        }
    }
    for mix in &mixes {
        tables.push(gauge_tables::waters(&loaded, mix));
        tables.extend(gauge_tables::color(&loaded, mix));
        tables.push(gauge_tables::times(&loaded, mix));
        tables.push(filed_tables::mix(mix));
    }
    for metric in [false, true].into_iter().filter(|metric| mixes.iter().any(|m| m.metric == *metric)) {
        tables.extend(gauge_tables::drying(metric));
    }
    tables.extend(filed_tables::house(&loaded));
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
