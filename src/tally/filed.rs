//! What is on file for a site and is no figure: the dates of the job, the papers in the records, the bags that came, what
//! was stated of its walls. Each as a table for the screen, in the words and amounts of whoever wrote it down.

use crate::job::{Day, Hands, Job, Site, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{How, Sort};
use crate::words::EN;

use super::{Tally, papers};

/// A table: what it is about, heads, rows of as many cells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// What it is about, for a title.
    pub about: &'static str,
    /// Heads of its columns.
    pub heads: &'static [&'static str],
    /// Its rows.
    pub rows: Vec<Vec<String>>,
    /// What is said below.
    pub note: &'static str,
}

/// All of a site that have a row.
pub fn of(tally: &Tally, job: &Job, site: &Site) -> Vec<Sheet> {
    let all = [dates(site), stated(site), bags(site), papers::of(tally, job, site)];
    all.into_iter().filter(|sheet| !sheet.rows.is_empty()).collect()
}

/// A day as English paper writes it.
pub(super) fn day(day: &Day) -> String {
    EN.date(day.year, day.month, day.day)
}

/// An amount as it was typed.
pub(super) fn typed<S: Sort>(value: &Worked<S>) -> String {
    let node = value.node();
    match node.how() {
        How::Authored { text, .. } => text.to_string(),
        _ => node.unit().map_or_else(|| node.number().plain(), |unit| format!("{} {}", node.number().plain(), unit.symbol())),
    }
}

fn dates(site: &Site) -> Sheet {
    let calendar = &site.calendar;
    let one = |head: &str, day_of: Option<&Day>| day_of.map(|d| vec![head.to_owned(), day(d)]);
    let mut rows: Vec<Vec<String>> = [("Panel", &calendar.panel), ("Lath", &calendar.lath), ("Scratch coat", &calendar.scratch)]
        .into_iter()
        .filter_map(|(head, d)| one(head, d.as_ref()))
        .collect();
    if !calendar.carve.is_empty() {
        rows.push(vec!["Carving".to_owned(), calendar.carve.iter().map(day).collect::<Vec<_>>().join(", ")]);
    }
    rows.extend(one("Color or sealer starts", site.gate.as_ref().and_then(|g| g.starts.as_ref())));
    rows.extend(one("Next trade asks for", site.cure.as_ref().and_then(|c| c.asks.as_ref())));
    rows.extend(one("Cards are good until", Some(&site.good_until)));
    Sheet { about: "dates", heads: &["", "Day"], rows, note: "As planned. The weather and the wall decide." }
}

/// What was said of the site and of its walls, and no figure shows.
fn stated(site: &Site) -> Sheet {
    let mut rows: Vec<Vec<String>> = Vec::new();
    let mut row = |head: &str, said: Option<String>| rows.extend(said.map(|said| vec![head.to_owned(), said]));
    row("Base", Some(site.base.what.text.clone()));
    row("Humidity", site.climate.humidity.as_ref().map(typed));
    row("Stands at", site.position.as_ref().map(|p| format!("latitude {}, longitude {}", typed(&p.latitude), typed(&p.longitude))));
    for surface in &site.surfaces {
        let code = &surface.code.text;
        row(&format!("Lifts of {code}"), surface.lifts.as_ref().map(typed));
        row(&format!("{code} looks toward"), surface.toward.as_ref().map(typed));
        let edges = surface.soffits.iter().map(|s| (&s.code, &s.overhead));
        for (part, coat) in surface.openings.iter().map(|o| (&o.code, &o.overhead)).chain(edges) {
            row(&format!("Overhead at {} in {code}", part.text), coat.as_ref().map(typed));
        }
    }
    for joint in &site.joints {
        let lath = if joint.lath.text == "cut" { "lath cut" } else { "lath goes through" };
        let said = format!("{} upright, {} level, {lath}", typed(&joint.upright), typed(&joint.level));
        row(&format!("Joints of {}", joint.surface.text), Some(said));
    }
    if let Some(lath) = &site.lath {
        let (wide, long) = (typed(&lath.sheet.0), typed(&lath.sheet.1));
        row("Lath", Some(format!("{wide} by {long}, laps {} and {}", typed(&lath.side_lap), typed(&lath.end_lap))));
        row("Fasteners", Some(format!("{} apart on framing {} apart", typed(&lath.fasteners), typed(&lath.framing))));
        row("Paper", Some(format!("rolls of {}, {} more for laps", typed(&lath.roll), typed(&lath.paper_spare))));
    }
    if let Some(details) = &site.details {
        row("Framing bends at most", details.deflection.as_ref().map(|d| format!("L/{}", typed(d))));
        row("Foot above earth", details.weep_earth.as_ref().map(typed));
        row("Foot above paving", details.weep_paving.as_ref().map(typed));
        row("Scratch coat before carving", details.scratch_state.as_ref().map(text));
        row("Waterproofing", details.waterproofing.as_ref().map(text));
    }
    if let Some(plan) = &site.plan {
        row("Electric light after sunset", Some(if plan.lights { "yes" } else { "no" }.to_owned()));
        let all = |hands: &[Text]| hands.iter().map(|t| t.text.as_str()).collect::<Vec<_>>().join(", ");
        let said = |h: &Hands| format!("mix: {}; place: {}; carve: {}", all(&h.mix), all(&h.place), all(&h.carve));
        row("Hands", plan.hands.as_ref().map(said));
    }
    if let Some(delivery) = &site.delivery {
        row("Bags come by", Some(text(&delivery.by)));
        let floor = if delivery.floor.text == "ground" { "the ground" } else { "a floor over a space" };
        let carries = delivery.capacity.as_ref().map_or_else(String::new, |c| format!(", it carries {}", typed(c)));
        row("Pallets stand on", Some(format!("{floor}{carries}")));
    }
    if let Some(water) = &site.mixing_water {
        row("Mixing water", Some(water.source.text.clone()));
        row("At its warmest", water.warmest.as_ref().map(typed));
    }
    if let Some(kept) = &site.protection {
        row("The mix is kept at", kept.mix.as_ref().map(|(low, high)| format!("{} to {}", typed(low), typed(high))));
        row("Heat", kept.heat.as_ref().map(text));
        row("Against wind", kept.wind.as_ref().map(text));
        row("Against rain", kept.cover.as_ref().map(text));
    }
    if let Some(gate) = &site.gate {
        row("Color waits for", gate.after.as_ref().map(typed));
        row("pH of the wall, at most", gate.ph.as_ref().map(typed));
        row("Dryness", gate.moisture.as_ref().map(text));
    }
    let note = "Drawings, sheets and plans, as somebody copied them: the paper itself stands first.";
    Sheet { about: "as stated", heads: &["", ""], rows, note }
}

pub(super) fn text(text: &Text) -> String {
    text.text.clone()
}

fn bags(site: &Site) -> Sheet {
    let row = |lot: &crate::job::Lot| {
        vec![text(&lot.mix), text(&lot.material), text(&lot.number), typed(&lot.bag), day(&lot.made), text(&lot.state)]
    };
    Sheet {
        about: "bags on site",
        heads: &["Mix", "Bag", "Lot", "of", "Made", "State"],
        rows: site.lots.iter().map(row).collect(),
        note: "As they stand on the bags, and as they were when somebody looked.",
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::source::Folder;

    fn sheets(site: &str) -> Vec<Sheet> {
        let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let (job, _) = crate::read::job(&folder);
        let tally = Tally::of(&job);
        of(&tally, &job, job.sites.iter().find(|s| s.id == site).unwrap())
    }

    fn rows(site: &str, about: &str) -> Vec<String> {
        let sheets = sheets(site);
        let sheet = sheets.iter().find(|s| s.about == about).unwrap();
        assert!(sheet.rows.iter().all(|row| row.len() == sheet.heads.len()), "{sheet:?}");
        sheet.rows.iter().map(|row| row.join(" | ")).collect()
    }

    #[test]
    fn papers_of_a_site_and_of_no_other() {
        let papers = rows("larkenfell", "papers on file");
        let letter = [
            "Engineer's letter LF-E1 | 12 Feb 2026 | allows 30 lb/ft2",
            " |  | weight of the carved wall on the framing of LF-1, LF-2 and LF-3",
            " |  | by licensed engineer of record",
        ];
        assert_eq!(papers[..3], letter);
        let panel = papers.iter().position(|p| p.starts_with("Panel of rubble, LF-1, LF-2 | 19 Feb 2026 | CARVE-24 rev B")).unwrap();
        assert!(papers[panel + 1].ends_with("1 gal 2 qt 1 pt 1 cup in a load, 69 °F, upright"), "{papers:?}");
        assert!(papers[panel + 2].contains("mean 1.21 in, fill 60.6 % ± "), "{papers:?}");
        assert!(papers.iter().all(|p| !p.contains("plank") && !p.contains("Change order")), "{papers:?}");
        let change = rows("brack-ferry", "papers on file");
        let at = change
            .iter()
            .position(|p| p.starts_with("Change order, the plank wall grows by four feet | 10 Mar 2026 | not in force"))
            .unwrap();
        assert_eq!(change[at + 1], " |  | surfaces.BF-1.width 52 ft");
    }

    #[test]
    fn what_is_not_there_has_no_table() {
        assert!(sheets("sedge-basin").iter().all(|s| s.about != "bags on site" && !s.rows.is_empty()));
        assert_eq!(rows("larkenfell", "bags on site").len(), 4);
        assert_eq!(rows("larkenfell", "dates")[0], "Panel | 19 Feb 2026");
    }
}
