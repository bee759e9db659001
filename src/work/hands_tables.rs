//! Tables of the takeoff that speak of hands, platforms and floors.

use crate::job::Site;
use crate::tally::{mixes_of, scopes};
use crate::words::EN;

use super::load::Loaded;
use super::screen::{label, list, measured, other, table, why};
use super::seam::{Align, Table};

/// All of them that have a figure.
pub(super) fn of(loaded: &Loaded, site: &Site) -> Vec<Table> {
    [lifts(loaded, site), platform(loaded, site), floors(loaded, site)].into_iter().flatten().collect()
}

fn lifts(loaded: &Loaded, site: &Site) -> Option<Table> {
    let (t, us) = (&loaded.tally, site.metric);
    let heads = [
        ("Lift", Align::Left),
        ("In the hands", Align::Right),
        ("other unit", Align::Right),
        ("Advised", Align::Right),
        ("other unit", Align::Right),
        ("Index", Align::Right),
        ("Measure stated", Align::Left),
    ];
    let mut made = table(format!("{}, lifts by hand", site.name.text), &heads);
    let mut ids = Vec::new();
    for lift in loaded.job.company.iter().flat_map(|c| &c.lifts) {
        let id = |name: &str| format!("{}/{}.{name}", site.id, lift.code.text);
        if t.figure(&id("index")).is_none() {
            continue;
        }
        let mut row = vec![scopes::named(&lift.what, EN).to_owned()];
        for name in ["load", "advised"] {
            row.extend([measured(t, &id(name), us), other(t, &id(name), us)]);
        }
        row.push(measured(t, &id("index"), us));
        row.push(lift.measure.as_ref().map_or_else(String::new, |m| m.text.clone()));
        made.rows.push(row);
        ids.push(id("index"));
    }
    made.notes = why(t, ids.iter());
    made.notes.push(
        "The index is what is in the hands over what is advised: over 1, lighter or nearer; over 3, not without a stated measure."
            .to_owned(),
    );
    (!made.rows.is_empty()).then_some(made)
}

fn platform(loaded: &Loaded, site: &Site) -> Option<Table> {
    let ids: Vec<String> = ["capacity", "load", "left", "bags"].iter().map(|n| format!("{}/platform.{n}", site.id)).collect();
    let mut made = list(&loaded.tally, format!("{}, scaffold platform", site.name.text), site.metric, &ids, &[])?;
    let deck = loaded.job.company.as_ref().and_then(|c| c.platform.as_ref());
    match deck.and_then(|d| d.tag.as_ref()) {
        Some(tag) => made.notes.push(format!("By its tag: {}. The tag and the competent person rule.", tag.text)),
        None => made.notes.push("No tag is stated: nothing goes up until the competent person has rated it.".to_owned()),
    }
    Some(made)
}

fn floors(loaded: &Loaded, site: &Site) -> Option<Table> {
    let (t, us) = (&loaded.tally, site.metric);
    let heads = [
        ("Full pallet of", Align::Left),
        ("Bag", Align::Left),
        ("Weighs", Align::Right),
        ("other unit", Align::Right),
        ("On its floor", Align::Right),
        ("other unit", Align::Right),
    ];
    let mut made = table(format!("{}, floor under pallets", site.name.text), &heads);
    let mut ids = Vec::new();
    for mix in mixes_of(&loaded.job, site) {
        for name in ["additive", "mortar"] {
            let id = |figure: &str| format!("{}/{}.{figure}_{name}", site.id, mix.id);
            if t.figure(&id("floor_load")).is_none() {
                continue;
            }
            let mut row = vec![mix.name.text.clone(), label(t, &format!("{}.{name}_bag", mix.id))];
            for figure in ["pallet_weight", "floor_load"] {
                row.extend([measured(t, &id(figure), us), other(t, &id(figure), us)]);
            }
            made.rows.push(row);
            ids.push(id("floor_load"));
        }
    }
    made.notes = why(t, ids.iter());
    made.notes.push("Ask what the floor is rated for, upstairs and on framed floors first; spread the bags where nobody knows.".to_owned());
    (!made.rows.is_empty()).then_some(made)
}
