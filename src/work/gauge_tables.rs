//! Tables of a mix beside its batches: pallets, water and powder, color, times by temperature, evaporation.

use crate::job::{Mix, Site};
use crate::quantity::Worked;
use crate::quantity::expr::{Share, Sort, Speed, Temperature};
use crate::quantity::num::decimal;
use crate::tally::hours::at_temperature;
use crate::tally::{Ask, Role, Voice};
use crate::trade::drying_limits;
use crate::words::EN;

use super::load::Loaded;
use super::screen::{label, list, measured, other, said, table, why};
use super::seam::{Align, Table};

/// What the yard brings for a mix.
pub(super) fn pallets(loaded: &Loaded, site: &Site, mix: &Mix) -> Option<Table> {
    let (t, us) = (&loaded.tally, site.metric);
    let heads = [
        ("Bag", Align::Left),
        ("of", Align::Right),
        ("To order", Align::Right),
        ("On a pallet", Align::Right),
        ("Full pallets", Align::Right),
        ("Loose", Align::Right),
        ("Full pallet weighs", Align::Right),
        ("other unit", Align::Right),
    ];
    let mut made = table(format!("{}, pallets at {}", mix.name.text, site.name.text), &heads);
    let mut ids = Vec::new();
    for (name, bagged) in [("additive", &mix.additive), ("mortar", &mix.mortar)] {
        let id = |figure: &str| format!("{}/{}.{figure}_{name}", site.id, mix.id);
        let bag = format!("{}.{name}_bag", mix.id);
        let stack = bagged.per_pallet.as_ref().map_or_else(String::new, |n| {
            let text = t.text_of(Role::Bags, n.value(), Voice { lang: EN, metric: us });
            text.replace(crate::quantity::show::JOIN, " ")
        });
        let mut row = vec![label(t, &bag), said(t, &bag, Ask::Own, us), measured(t, &id("bags"), us), stack];
        row.extend([measured(t, &id("pallets"), us), measured(t, &id("loose"), us)]);
        row.extend([said(t, &id("pallet_weight"), Ask::Own, us), other(t, &id("pallet_weight"), us)]);
        made.rows.push(row);
        ids.extend([id("bags"), id("pallets")]);
    }
    made.notes = why(t, ids.iter());
    Some(made)
}

/// A load with its start water, and with all the water it may ever have.
pub(super) fn waters(loaded: &Loaded, mix: &Mix) -> Table {
    let t = &loaded.tally;
    let heads = [
        ("Per load", Align::Left),
        ("At the start", Align::Right),
        ("other unit", Align::Right),
        ("At the limit", Align::Right),
        ("other unit", Align::Right),
    ];
    let mut made = table(format!("{} rev {}, start and limit", mix.name.text, mix.rev.text), &heads);
    let mut ids = Vec::new();
    for (head, start, limit) in [
        ("Water", "start_water", "limit"),
        ("Water by weight", "start_water_weight", "limit_weight"),
        ("Water to dry weight", "water_to_dry", "water_to_dry_at_limit"),
        ("Water index", "water_index", "water_index_at_limit"),
        ("Yield", "yield", "yield_at_limit"),
        ("Wet weight", "wet_weight", "wet_weight_at_limit"),
        ("Wet density", "wet_density", "wet_density_at_limit"),
    ] {
        let mut row = vec![head.to_owned()];
        for name in [start, limit] {
            let id = format!("{}.{name}", mix.id);
            row.extend([measured(t, &id, mix.metric), other(t, &id, mix.metric)]);
            ids.push(id);
        }
        made.rows.push(row);
    }
    made.notes = why(t, ids.iter());
    made.notes.push(
        "The index is water against the sheet's start, which is 100: common practice, no source; no strength follows from it.".to_owned(),
    );
    made
}

/// Powder color for a load.
pub(super) fn color(loaded: &Loaded, mix: &Mix) -> Option<Table> {
    let ids: Vec<String> =
        ["cement_weight", "pigment", "pigment_most", "pigment_most_black"].iter().map(|n| format!("{}.{n}", mix.id)).collect();
    let mut made = list(&loaded.tally, format!("{}, color in a load", mix.name.text), mix.metric, &ids, &[])?;
    let dose = mix.pigment.as_ref().map_or_else(String::new, |d| super::screen::plain(d.node()));
    made.notes.push(format!("Dose by the mix sheet: {dose} of the cement. Where the maker of the color allows less, that stands."));
    Some(made)
}

fn read<S: Sort>(texts: &[&str]) -> Option<Vec<Worked<S>>> {
    texts.iter().map(|t| Worked::read(t).ok()).collect()
}

/// Temperatures of the mix that a table of times asks for: steps of 5 degrees, from where work may begin.
fn steps(metric: bool) -> Vec<Worked<Temperature>> {
    let (from, to, unit) = if metric { (5, 45, "°C") } else { (45, 115, "°F") };
    (from..=to).step_by(5).filter_map(|n| Worked::read(&format!("{n} {unit}")).ok()).collect()
}

/// How long it stays open, and when it can be carved, by the warmth of the mix.
pub(super) fn times(loaded: &Loaded, mix: &Mix) -> Table {
    let t = &loaded.tally;
    let voice = Voice { lang: EN, metric: mix.metric };
    let carved = mix.carve_window.is_some();
    let mut heads = vec![("Mix", Align::Right), ("Open time", Align::Right)];
    if carved {
        heads.extend([("Carving opens after", Align::Right), ("Carving closes after", Align::Right)]);
    }
    let mut made = table(format!("{}, times by temperature", mix.name.text), &heads);
    let missing = EN.text("value.missing");
    for at in steps(mix.metric) {
        let cell = |role: Role, value: Option<&crate::quantity::Quantity>| {
            value.map_or_else(|| missing.to_owned(), |v| t.text_of(role, v, voice).replace(crate::quantity::show::JOIN, " "))
        };
        let said = at_temperature(mix, &at);
        let mut row = vec![
            t.text_of(Role::Reading, at.value(), voice).replace(crate::quantity::show::JOIN, " "),
            cell(Role::OpenTime, said.open.as_ref().ok().map(Worked::value)),
        ];
        if let Some([opens, closes]) = &said.carve {
            row.push(cell(Role::Takes, opens.as_ref().ok().map(Worked::value)));
            row.push(cell(Role::OpenTime, closes.as_ref().ok().map(Worked::value)));
        }
        let last = row.iter().skip(1).all(|c| c == missing);
        made.rows.push(row);
        // Nothing hotter says more.
        if last {
            break;
        }
    }
    made.notes.push(if mix.times.is_empty() {
        "Times halve every 20 °F and grow by half at most: common practice, no source. Under 0.35 of the stated time: ask the maker."
            .to_owned()
    } else {
        "By the mix sheet's own table; between two of its rows the safer one stands.".to_owned()
    });
    made.notes.push("Open time runs from water in, the carve window from mud on the wall.".to_owned());
    made
}

/// The grid that a lead reads before the work: how fast a fresh face dries.
pub(super) fn drying(metric: bool) -> Option<Table> {
    let (warm, winds, unit): (&[&str], &[&str], _) = if metric {
        (&["20 °C", "26 °C", "32 °C", "38 °C"], &["3 km/h", "8 km/h", "16 km/h", "24 km/h"], "kg/m²·h")
    } else {
        (&["70 °F", "80 °F", "90 °F", "100 °F"], &["2 mph", "5 mph", "10 mph", "15 mph"], "lb/ft²·h")
    };
    let pairs: Vec<_> = read::<Temperature>(warm)?.into_iter().map(|t| (t.clone(), t)).collect();
    let grid = drying_limits::grid(&pairs, &read::<Share>(&["25 %", "50 %", "75 %"])?, &read::<Speed>(winds)?).ok()?;
    let mut heads = vec![("Humidity", Align::Right), ("Air and mix", Align::Right)];
    heads.extend(winds.iter().map(|w| (*w, Align::Right)));
    let mut made = table(format!("Evaporation, {unit}, by wind"), &heads);
    for row in grid {
        let mut cells = vec![super::screen::plain(row.humidity.node()), super::screen::plain(row.air.node())];
        cells.extend(row.rates.iter().map(|e| e.node().number().exact().map_or_else(String::new, |n| decimal(n, 2))));
        made.rows.push(cells);
    }
    made.notes.push("The form is for wet concrete laid flat: an index only on walls, ±40 %. Rounded up.".to_owned());
    made.notes.push("As 0.20 lb/ft²·h (0.97 kg/m²·h) comes near: screen the wind, shade, mist, or wait.".to_owned());
    Some(made)
}
