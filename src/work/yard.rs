//! The yard list: what to order, bag by bag, as a table, as CSV and as the paper of that name.

use crate::job::{Mix, Site};
use crate::quantity::num::exact_text;
use crate::tally::{Ask, Voice, mixes_of, scopes};
use crate::words::EN;

use super::load::Loaded;
use super::screen::{chosen, said, with_findings};
use super::seam::{Align, Narrator, Options, Outcome, Product, Table};

/// What form the list takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Yard {
    /// A table for reading.
    Text,
    /// Comma-separated values.
    Csv,
    /// The paper, not entered in the register.
    Pdf,
}

/// The kind of card that the paper is.
const CARD: &str = "yard-list";

struct Row {
    bag: String,
    of: String,
    mix: String,
    ids: [String; 4],
}

/// The yard list of one site or all.
pub fn yard_list(options: &Options, site: Option<&str>, yard: Yard, narrator: &dyn Narrator) -> Outcome {
    let loaded = match Loaded::open(options) {
        Ok(loaded) => loaded,
        Err(outcome) => return outcome,
    };
    let sites = match chosen(&loaded, site) {
        Ok(sites) => sites,
        Err(outcome) => return with_findings(&loaded, options, outcome),
    };
    match yard {
        Yard::Text => {
            let tables = sites.iter().map(|s| table(&loaded, s)).collect();
            with_findings(&loaded, options, Outcome { product: Product::Tables(tables), ..Outcome::default() })
        }
        Yard::Csv => match csv(&loaded, &sites) {
            Ok(text) => with_findings(&loaded, options, Outcome { product: Product::Text(text), ..Outcome::default() }),
            Err(why) => Outcome::could_not(format!("the list could not be written as CSV: {why}")),
        },
        Yard::Pdf => {
            if !loaded.job.cards.iter().any(|c| c.id == CARD) {
                let why = format!("the job folder has no `cards/{CARD}.md`, which is what the paper says");
                return Outcome::could_not(format!("{why}; `hodbook setout DIR` lays one out"));
            }
            let ids: Vec<String> = sites.iter().map(|s| format!("{CARD} {}", s.id)).collect();
            super::issue::paper_only(options, &ids, narrator)
        }
    }
}

fn rows(loaded: &Loaded, site: &Site) -> Vec<Row> {
    let mut rows = Vec::new();
    for mix in mixes_of(&loaded.job, site) {
        for name in ["mortar", "additive"] {
            let figure = |of: &str| format!("{}/{}.{of}_{name}", site.id, mix.id);
            rows.push(Row {
                bag: described(mix, name),
                of: format!("{}.{name}_bag", mix.id),
                mix: mix.name.text.clone(),
                ids: [figure("bags"), figure("pallets"), figure("loose"), format!("{}/{}.bags_{name}_weight", site.id, mix.id)],
            });
        }
    }
    rows
}

/// The words on the bag, as the yard must read them.
fn described(mix: &Mix, name: &str) -> String {
    let bagged = if name == "mortar" { &mix.mortar } else { &mix.additive };
    match (&bagged.class, name) {
        (Some(class), _) => class.text.clone(),
        (None, "mortar") => "mortar".to_owned(),
        (None, _) => format!("{} of {}", scopes::named(&bagged.names, EN), mix.name.text),
    }
}

fn table(loaded: &Loaded, site: &Site) -> Table {
    let (t, us) = (&loaded.tally, site.metric);
    let mut table = Table { title: format!("{}, yard list", site.name.text), ..Table::default() };
    let heads = [
        ("Bag", Align::Right),
        ("Exactly", Align::Left),
        ("For", Align::Left),
        ("To order", Align::Right),
        ("Full pallets", Align::Right),
        ("Loose", Align::Right),
        ("Weight", Align::Right),
    ];
    table.columns = heads.iter().map(|(h, a)| ((*h).to_owned(), *a)).collect();
    for row in rows(loaded, site) {
        let mut cells = vec![said(t, &row.of, Ask::Own, us), row.bag, row.mix];
        cells.extend(row.ids.iter().map(|id| said(t, id, Ask::Own, us)));
        table.rows.push(cells);
    }
    let id = |name: &str| format!("{}.{name}", site.id);
    let mut total = vec!["Whole order".to_owned()];
    total.resize(heads.len() - 1, String::new());
    total.push(said(t, &id("order_weight"), Ask::Own, us));
    table.totals.push(total);
    let trips = said(t, &id("trips"), Ask::Own, us);
    if !trips.is_empty() {
        table.notes.push(format!("Our own trailer would go {trips} times."));
    }
    table.notes.push("Bags include the reserve. Substitutes: none. One lot of each where the color matters.".to_owned());
    table
}

/// One line a bag; numbers without units, their units in a column beside them, so that a spreadsheet can add.
fn csv(loaded: &Loaded, sites: &[&Site]) -> Result<String, String> {
    let mut out = csv::Writer::from_writer(Vec::new());
    let head = ["site", "mix", "bag", "bag_unit", "exactly", "bags", "full_pallets", "loose_bags", "weight", "weight_unit", "substitutes"];
    out.write_record(head).map_err(|e| e.to_string())?;
    for site in sites {
        let number = |id: &str| {
            let said = loaded.tally.say(id, Ask::Own, Voice { lang: EN, metric: site.metric })?;
            Some((exact_text(&said.number?), said.unit.map_or_else(String::new, |u| u.symbol())))
        };
        let plain = |id: &str| number(id).unwrap_or_default();
        for row in rows(loaded, site) {
            let [bags, pallets, loose, weight] = &row.ids;
            let (bag, bag_unit) = plain(&row.of);
            let (mass, mass_unit) = plain(weight);
            let (bags, pallets, loose) = (plain(bags).0, plain(pallets).0, plain(loose).0);
            let record = [&site.name.text, &row.mix, &bag, &bag_unit, &row.bag, &bags, &pallets, &loose, &mass, &mass_unit, "none"];
            out.write_record(record).map_err(|e| e.to_string())?;
        }
    }
    let bytes = out.into_inner().map_err(|e| e.to_string())?;
    String::from_utf8(bytes).map_err(|e| e.to_string())
}
