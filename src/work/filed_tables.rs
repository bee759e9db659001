//! Tables of the takeoff that speak of what is on file: dates, agreements, bags, papers.

use crate::job::Site;
use crate::tally::filed;

use super::load::Loaded;
use super::screen::table;
use super::seam::{Align, Table};

/// Those of a site.
pub(super) fn of(loaded: &Loaded, site: &Site) -> Vec<Table> {
    let made = |sheet: filed::Sheet| {
        let heads: Vec<(&str, Align)> = sheet.heads.iter().map(|head| (*head, Align::Left)).collect();
        let mut made = table(format!("{}, {}", site.name.text, sheet.about), &heads);
        made.rows = sheet.rows;
        made.notes.push(sheet.note.to_owned());
        made
    };
    filed::of(&loaded.tally, &loaded.job, site).into_iter().map(made).collect()
}
