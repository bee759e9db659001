//! What is on file for a site and is no figure: the dates of the job, the papers in the records, the bags that came, what
//! was agreed about joints and color. Each as a table for the screen, in the words and amounts of whoever wrote it down.

use crate::job::{Appliance, Day, Job, Letter, Panel, Site, Text};
use crate::quantity::Worked;
use crate::quantity::expr::{How, Sort};
use crate::words::EN;

use super::{Ask, Tally, Voice, mixes_of, panels};

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
    let all = [dates(site), agreed(site), bags(site), papers(tally, job, site)];
    all.into_iter().filter(|sheet| !sheet.rows.is_empty()).collect()
}

/// A day as English paper writes it.
fn day(day: &Day) -> String {
    EN.date(day.year, day.month, day.day)
}

/// An amount as it was typed.
pub fn typed<S: Sort>(value: &Worked<S>) -> String {
    let node = value.node();
    match node.how() {
        How::Authored { text, .. } => text.clone(),
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

/// What drawings, sheets and people agreed on, and no figure rests on.
fn agreed(site: &Site) -> Sheet {
    let mut rows: Vec<Vec<String>> = Vec::new();
    let mut row = |head: &str, said: Option<String>| rows.extend(said.map(|said| vec![head.to_owned(), said]));
    for joint in &site.joints {
        let lath = if joint.lath.text == "cut" { "lath cut" } else { "lath goes through" };
        let said = format!("{} upright, {} level, {lath}", typed(&joint.upright), typed(&joint.level));
        row(&format!("Joints of {}", joint.surface.text), Some(said));
    }
    if let Some(details) = &site.details {
        row("Framing bends at most", details.deflection.as_ref().map(|d| format!("L/{}", typed(d))));
        row("Foot above earth", details.weep_earth.as_ref().map(typed));
        row("Foot above paving", details.weep_paving.as_ref().map(typed));
        row("Scratch coat before carving", details.scratch_state.as_ref().map(text));
        row("Waterproofing", details.waterproofing.as_ref().map(text));
    }
    if let Some(water) = &site.mixing_water {
        row("Mixing water", Some(water.source.text.clone()));
        row("At its warmest", water.warmest.as_ref().map(typed));
    }
    if let Some(gate) = &site.gate {
        row("Color waits for", gate.after.as_ref().map(typed));
        row("pH of the wall, at most", gate.ph.as_ref().map(typed));
        row("Dryness", gate.moisture.as_ref().map(text));
    }
    Sheet {
        about: "as agreed",
        heads: &["", ""],
        rows,
        note: "Drawings and sheets, as somebody copied them. The sheet itself stands first.",
    }
}

fn text(text: &Text) -> String {
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

fn papers(tally: &Tally, job: &Job, site: &Site) -> Sheet {
    let mine = |code: &Text| code.text == site.code.text;
    let mut rows: Vec<Vec<String>> = Vec::new();
    rows.extend(job.letters.iter().filter(|l| mine(&l.site)).map(letter));
    rows.extend(job.appliances.iter().filter(|a| mine(&a.site)).map(appliance));
    rows.extend(panels::of(job, site).map(|p| panel(tally, site, p)));
    for mix in mixes_of(job, site) {
        let weighed = mix.mixing.weighed.as_ref();
        rows.extend(weighed.map(|w| {
            vec![format!("Weighed pail of {}", mix.name.text), day(&w.date), format!("{} wet", typed(&w.density)), String::new()]
        }));
        rows.extend(
            mix.date.as_ref().map(|d| vec![format!("{} rev {}", mix.name.text, mix.rev.text), day(d), String::new(), String::new()]),
        );
    }
    Sheet {
        about: "papers on file",
        heads: &["What", "Of", "Says", "By"],
        rows,
        note: "The papers themselves stand first: law, engineer, makers' sheets, then the panel.",
    }
}

fn letter(letter: &Letter) -> Vec<String> {
    let says = format!("allows {}: {}", typed(&letter.allows), letter.what.text);
    vec![format!("Engineer's letter {}", letter.reference.text), day(&letter.date), says, text(&letter.from)]
}

fn appliance(one: &Appliance) -> Vec<String> {
    let part = |head: &str, said: Option<String>| said.map(|said| format!("{head} {said}"));
    let parts = [
        one.manual.as_ref().map(text),
        part("clearance", one.clearance.as_ref().map(typed)),
        part("mix at the edge", one.edge.as_ref().map(typed)),
        part("mix bears", one.service.as_ref().map(typed)),
    ];
    let says: Vec<String> = parts.into_iter().flatten().collect();
    let dated = one.date.as_ref().map_or_else(String::new, day);
    let by = one.checked_by.as_ref().map_or_else(String::new, text);
    vec![format!("Papers of {} in {}", one.opening.text, one.surface.text), dated, says.join(", "), by]
}

fn panel(tally: &Tally, site: &Site, panel: &Panel) -> Vec<String> {
    let voice = Voice { lang: EN, metric: site.metric };
    let say = |name: &str| {
        let value = tally.say(&format!("{}/{}.{name}", site.id, panel.id), Ask::Own, voice);
        value.map_or_else(String::new, |v| v.text.replace(crate::quantity::show::JOIN, " "))
    };
    let fill = tally.figure(&format!("{}/{}.fill", site.id, panel.id)).map(|_| format!(", fill {} ± {}", say("fill"), say("fill_error")));
    let says = format!(
        "{} rev {}, {} in a load, {}, {}; mean {}{}",
        panel.mix.text,
        panel.rev.text,
        typed(&panel.water),
        typed(&panel.temperature),
        panel.stood.text,
        say("mean"),
        fill.unwrap_or_default()
    );
    let walls: String = panel.surfaces.iter().map(|s| format!(", {}", s.text)).collect();
    vec![format!("Panel of {}{walls}", panel.texture.text), day(&panel.date), says, text(&panel.signed_by)]
}
