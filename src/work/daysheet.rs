//! `daysheet`: the batch table of a planned day, its hours, its late starts.

use jiff::civil::Date;

use crate::job::Site;
use crate::tally::day::{Row, Sheet};
use crate::tally::hours::Sky;
use crate::tally::{Ask, scopes};
use crate::words::EN;

use super::load::Loaded;
use super::screen::{chosen, said, with_findings};
use super::seam::{Align, Exit, Options, Outcome, Product, Table};

/// The day sheet of a site for a date of its plan.
pub fn daysheet(options: &Options, site: &str, date: Date) -> Outcome {
    let mut loaded = match Loaded::open(options) {
        Ok(loaded) => loaded,
        Err(outcome) => return outcome,
    };
    loaded.tally.days(&loaded.job);
    let site = match chosen(&loaded, Some(site)) {
        Ok(sites) => sites.into_iter().next(),
        Err(outcome) => return with_findings(&loaded, options, outcome),
    };
    let Some(site) = site else { return Outcome::could_not("the job folder has no site that could be read") };
    if site.plan.is_none() {
        return with_findings(
            &loaded,
            options,
            Outcome::could_not(format!("sites/{}.md has no `plan`: say there how a day is worked", site.id)),
        );
    }
    let day = date.to_string();
    let sheets: Vec<&Sheet> = loaded.tally.sheets().iter().filter(|s| s.site == site.id).collect();
    let Some(sheet) = sheets.iter().find(|s| s.day == day) else {
        let known: Vec<String> = sheets.iter().map(|s| s.day.clone()).collect();
        return with_findings(&loaded, options, Outcome::nothing("planned day", &day, known));
    };
    let tables = tables(&loaded, site, sheet);
    let mut outcome = Outcome { product: Product::Tables(tables), ..Outcome::default() };
    outcome.summary = verdict(&loaded, site, sheet);
    if sheet.rows.is_err() {
        outcome.exit = Exit::Stop;
    }
    with_findings(&loaded, options, outcome)
}

fn heads(table: &mut Table, heads: &[(&str, Align)]) {
    table.columns = heads.iter().map(|(h, a)| ((*h).to_owned(), *a)).collect();
}

fn tables(loaded: &Loaded, site: &Site, sheet: &Sheet) -> Vec<Table> {
    let mut all = vec![head(loaded, site, sheet)];
    if sheet.sky != Sky::Band {
        all.push(hours(loaded, site, sheet));
    }
    match &sheet.rows {
        Ok(rows) => all.push(batches(loaded, site, sheet, rows)),
        Err(why) => all.push(Table { title: "No batch table".to_owned(), notes: vec![format!("{why}.")], ..Table::default() }),
    }
    if !sheet.late.is_empty() {
        all.push(late(loaded, site, sheet));
    }
    all
}

/// What the day is for, and its limits.
fn head(loaded: &Loaded, site: &Site, sheet: &Sheet) -> Table {
    let (t, us) = (&loaded.tally, site.metric);
    let of_day = |name: &str| said(t, &format!("{}.{name}", sheet.prefix), Ask::Own, us);
    let surface = site.surfaces.iter().find(|s| s.code.text == sheet.surface);
    let what = surface.map_or("", |s| scopes::named(&s.what, EN));
    let mut table = Table { title: format!("{}, {}: {} {what}", site.name.text, sheet.day, sheet.surface), ..Table::default() };
    heads(&mut table, &[("", Align::Left), ("", Align::Right)]);
    let split = site.plan.as_ref().is_some_and(|p| p.split);
    for (label, name) in [
        ("Wall today", "area"),
        ("Left of this wall after today", "left"),
        ("Most wall the crew can carve", "limit"),
        ("with the spare left free", "allowed"),
        ("Applied thickness", "applied"),
        ("Placing, all hands", "place_pace"),
        ("Carving, all hands", "carve_pace"),
        ("Last water in that can still be carved", "last_batch"),
        ("Carving ends", "carved"),
        ("Clean-up ends", "done"),
        ("Shift ends", "ends"),
        ("Sunset", "sunset"),
    ] {
        let value = of_day(name);
        if !value.is_empty() {
            table.rows.push(vec![label.to_owned(), value]);
        }
    }
    table.notes.push(format!("{} crew; crew on site: {}.", if split { "Split" } else { "Same" }, crew(site)));
    if let Some(cure) = &site.cure {
        table.notes.push(format!("Cure keeper tonight: {}.", cure.keeper.text));
    }
    table.notes.push(match sheet.sky {
        Sky::Hours => format!("Hours from weather/{}.csv.", site.id),
        Sky::Typical => format!("Hours of a typical year from weather/{}.csv: no forecast. Work it again with the day's own.", site.id),
        Sky::Band => "No weather on file for this day: everything is worked at the ends of the planned temperature band.".to_owned(),
    });
    table
}

fn crew(site: &Site) -> String {
    site.crew.iter().map(|t| t.text.as_str()).collect::<Vec<_>>().join(", ")
}

fn hours(loaded: &Loaded, site: &Site, sheet: &Sheet) -> Table {
    let (t, us) = (&loaded.tally, site.metric);
    let mut table = Table { title: "Hours".to_owned(), ..Table::default() };
    let columns = [
        ("From", "from"),
        ("Air", "air"),
        ("Humidity", "humidity"),
        ("Wind", "wind"),
        ("Mix", "mix"),
        ("Evaporation", "drying"),
        ("Open time", "open"),
        ("Carving opens after", "opens"),
        ("closes after", "closes"),
    ];
    heads(&mut table, &columns.map(|(h, _)| (h, Align::Right)));
    table.columns.push(("".to_owned(), Align::Left));
    for prefix in &sheet.hours {
        let mut row: Vec<String> = columns.iter().map(|(_, name)| said(t, &format!("{prefix}.{name}"), Ask::Own, us)).collect();
        let why = t.figure(&format!("{prefix}.open")).and_then(|f| f.worked.as_ref().err());
        row.push(why.cloned().unwrap_or_default());
        table.rows.push(row);
    }
    table.notes.push("Evaporation is that of a wet slab laid flat: an index only on walls, good to some 40 %.".to_owned());
    table
}

fn batches(loaded: &Loaded, site: &Site, sheet: &Sheet, rows: &[Row]) -> Table {
    let (t, us) = (&loaded.tally, site.metric);
    let mut table = Table { title: "Batches, clocked from water in".to_owned(), ..Table::default() };
    let columns = [
        ("Loads", "loads"),
        ("Start water", "start_water"),
        ("Water in", "water_in"),
        ("Mixed", "mixed"),
        ("Placed by", "placed"),
        ("Discard by", "discard"),
        ("To spare", "slack"),
        ("Wall", "area"),
        ("Carving opens", "opens"),
        ("last of it", "opens_last"),
        ("Carve from", "carve_start"),
        ("to", "carve_end"),
        ("Closes", "closes"),
    ];
    heads(&mut table, &[("No", Align::Right)]);
    table.columns.extend(columns.map(|(h, _)| (h.to_owned(), Align::Right)));
    table.columns.push((String::new(), Align::Left));
    for (n, row) in rows.iter().enumerate() {
        let mut cells = vec![(n + 1).to_string()];
        // A black row shows when it would have been mixed, and nothing that anybody could act on.
        let shown = |name: &str| row.black.is_none() || ["loads", "water_in"].contains(&name);
        cells.extend(
            columns
                .iter()
                .map(|(_, name)| if shown(name) { said(t, &format!("{}.{name}", row.prefix), Ask::Own, us) } else { "■".to_owned() }),
        );
        cells.push(remark(row));
        table.rows.push(cells);
    }
    let total = said(t, &format!("{}.area", sheet.prefix), Ask::Own, us);
    let mut sum = vec!["All".to_owned()];
    sum.resize(8, String::new());
    sum.push(total);
    sum.resize(table.columns.len(), String::new());
    table.totals.push(sum);
    table.notes.push("Place-by and discard-by are the latest, in whole minutes. A batch past them is waste: never wet it up.".to_owned());
    table
}

fn remark(row: &Row) -> String {
    match &row.black {
        Some(why) => format!("do not mix: {why}"),
        None => row.faults.iter().map(|key| EN.text(key)).collect::<Vec<_>>().join(", "),
    }
}

/// Late starts side by side, each worked again on the day's hours.
fn late(loaded: &Loaded, site: &Site, sheet: &Sheet) -> Table {
    let (t, us) = (&loaded.tally, site.metric);
    let mut table = Table { title: "If the first water goes in later".to_owned(), ..Table::default() };
    heads(&mut table, &[("No", Align::Right), ("Water in", Align::Right), ("Discard by", Align::Right), ("Closes", Align::Right)]);
    let on_time: &[Row] = sheet.rows.as_deref().unwrap_or_default();
    let columns = std::iter::once((String::new(), on_time)).chain(sheet.late.iter().map(|(prefix, rows)| {
        let by = prefix.rsplit_once('+').map_or("", |(_, m)| m);
        (format!("+{by} min: "), rows.as_deref().unwrap_or_default())
    }));
    let columns: Vec<(String, &[Row])> = columns.collect();
    for (by, _) in columns.iter().skip(1) {
        for head in ["water in", "discard by", "closes"] {
            table.columns.push((format!("{by}{head}"), Align::Right));
        }
    }
    let longest = columns.iter().map(|(_, rows)| rows.len()).max().unwrap_or(0);
    for n in 0..longest {
        let mut cells = vec![(n + 1).to_string()];
        for (_, rows) in &columns {
            for name in ["water_in", "discard", "closes"] {
                let row = rows.get(n);
                let black = row.is_some_and(|r| r.black.is_some());
                let text = row.map_or_else(String::new, |r| said(t, &format!("{}.{name}", r.prefix), Ask::Own, us));
                cells.push(match (black, name, row.is_some_and(|r| !r.faults.is_empty())) {
                    (true, "water_in", _) => text,
                    (true, ..) => "■".to_owned(),
                    (false, "closes", true) => format!("{text} ✗"),
                    _ => text,
                });
            }
        }
        table.rows.push(cells);
    }
    let mut last = vec!["Last".to_owned()];
    for prefix in std::iter::once(sheet.prefix.as_str()).chain(sheet.late.iter().map(|(p, _)| p.as_str())) {
        last.push(said(t, &format!("{prefix}.last_batch"), Ask::Own, us));
        last.extend([String::new(), String::new()]);
    }
    table.totals.push(last);
    table.notes.push("Worked again on the hours of the day, not shifted. ✗ cannot be carved in time; ■ must not be mixed.".to_owned());
    table
}

/// The last line, for people.
fn verdict(loaded: &Loaded, site: &Site, sheet: &Sheet) -> String {
    let Ok(rows) = &sheet.rows else { return "no batch can be planned; the reason is above".to_owned() };
    let bad = rows.iter().filter(|r| r.black.is_some() || !r.faults.is_empty()).count();
    if bad == 0 {
        return format!("{} batches, all can be placed and carved in time", rows.len());
    }
    let good = said(&loaded.tally, &format!("{}.good_area", sheet.prefix), Ask::Own, site.metric);
    format!("{bad} of {} batches cannot be placed and carved in time; wall that can: {good}", rows.len())
}
