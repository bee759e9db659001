//! Tables of what is on file: of a site, below its takeoff; of the company, below the mixes.

use crate::job::{Mix, Site};
use crate::tally::{filed, stated};

use super::load::Loaded;
use super::screen::table;
use super::seam::{Align, Table};

/// Those of a site: dates, what was stated, bags, papers.
pub(super) fn of(loaded: &Loaded, site: &Site) -> Vec<Table> {
    filed::of(&loaded.tally, &loaded.job, site).into_iter().map(|sheet| made(&site.name.text, sheet)).collect()
}

/// Those of the company: measures, mixers, trailer, lifts.
pub(super) fn house(loaded: &Loaded) -> Vec<Table> {
    let name = loaded.job.company.as_ref().map_or("", |c| c.name.text.as_str());
    stated::house(&loaded.job).into_iter().map(|sheet| made(name, sheet)).collect()
}

/// What the sheet of a mix states.
pub(super) fn mix(mix: &Mix) -> Table {
    made(&mix.name.text, stated::mix(mix))
}

fn made(of: &str, sheet: filed::Sheet) -> Table {
    let heads: Vec<(&str, Align)> = sheet.heads.iter().map(|head| (*head, Align::Left)).collect();
    let mut made = table(format!("{of}, {}", sheet.about), &heads);
    made.rows = sheet.rows;
    made.notes.push(sheet.note.to_owned());
    made
}
