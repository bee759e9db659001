//! Tables of the book: the takeoff of a site, surface by surface, in both unit systems.

use crate::job::{Job, OpeningRule, Site};
use crate::press::payload::{Align, Block, Inline, Line};
use crate::tally::{Ask, PrintedValue, Tally, Voice, mix_of, scopes};

use super::worksheet;

/// A cell holding a printed value, which is kept; an empty cell where there is no such figure.
fn cell(tally: &Tally, id: &str, ask: Ask, voice: Voice, values: &mut Vec<PrintedValue>) -> Line {
    match tally.say(id, ask, voice) {
        Some(value) => {
            let inline = Inline::value(&value.text, id);
            values.push(value);
            vec![inline]
        }
        None => Vec::new(),
    }
}

struct Rows<'a> {
    tally: &'a Tally,
    voice: Voice,
    marks: &'a worksheet::Marks,
    rows: Vec<Vec<Line>>,
}

impl Rows<'_> {
    fn row(&mut self, key: &str, id: &str, bold: bool, values: &mut Vec<PrintedValue>) {
        if self.tally.figure(id).is_none() {
            return;
        }
        let mark = self.marks.get(id).map_or_else(String::new, |m| format!("\u{a0}{m}"));
        let label = vec![Inline::text(&format!("{}{mark}", self.voice.lang.text(key)))];
        let us = cell(self.tally, id, Ask::Us, self.voice, values);
        let metric = cell(self.tally, id, Ask::Metric, self.voice, values);
        let strong = |line: Line| if bold { vec![Inline::Strong { c: line }] } else { line };
        self.rows.push(vec![strong(label), strong(us), strong(metric)]);
    }
}

fn table(voice: Voice, rows: Vec<Vec<Line>>) -> Block {
    let head = ["takeoff.quantity", "takeoff.us", "takeoff.metric"].iter().map(|k| vec![Inline::text(voice.lang.text(k))]).collect();
    Block::Table { align: vec![Align::Left, Align::Right, Align::Right], head, rows, caption: None }
}

/// The takeoff of a site: one table per surface, one per mix for the order, one line for who decides.
pub fn takeoff(tally: &Tally, job: &Job, site: &Site, voice: Voice, values: &mut Vec<PrintedValue>) -> Vec<Block> {
    let lang = voice.lang;
    let marks = worksheet::Marks::of(tally, job, site);
    let mut blocks = Vec::new();
    for surface in &site.surfaces {
        let code = &surface.code.text;
        blocks.push(Block::Heading {
            level: 3,
            text: vec![Inline::text(&format!("{code}, {}", scopes::named(&surface.what, lang)))],
            id: format!("surface-{code}"),
        });
        let mut rows = Rows { tally, voice, marks: &marks, rows: Vec::new() };
        for (key, name, bold) in [
            ("takeoff.gross", "gross", false),
            ("takeoff.openings", "openings_area", false),
            ("takeoff.reveals", "reveals", false),
            ("takeoff.returns", "returns", false),
            ("takeoff.soffits", "soffits", false),
            ("takeoff.net", "net_area", true),
            ("takeoff.mean", "mean", false),
            ("takeoff.most", "most", false),
            ("takeoff.lifts", "lifts", false),
            ("takeoff.volume", "volume", false),
            ("takeoff.loads", "loads", true),
            ("figure.scratch_volume", "scratch_volume", false),
            ("figure.scratch_loads", "scratch_loads", false),
            ("takeoff.weight_mean", "weight_mean", false),
            ("takeoff.weight_faces", "weight_faces", true),
        ] {
            rows.row(key, &format!("{}/{code}.{name}", site.id), bold, values);
        }
        blocks.push(table(voice, rows.rows));
    }
    for name in site.mixes() {
        let Some(mix) = mix_of(job, &name.text) else { continue };
        let title = format!("{}: {}", lang.text("takeoff.order"), mix.name.text);
        blocks.push(Block::Heading { level: 3, text: vec![Inline::text(&title)], id: format!("order-{}", mix.id) });
        let mut rows = Rows { tally, voice, marks: &marks, rows: Vec::new() };
        for (key, name, bold) in [
            ("takeoff.volume", "volume", false),
            ("takeoff.loads", "loads", true),
            ("figure.batches", "batches", false),
            ("takeoff.additive", "bags_additive", true),
            ("takeoff.mortar", "bags_mortar", true),
        ] {
            rows.row(key, &format!("{}/{}.{name}", site.id, mix.id), bold, values);
        }
        rows.row("figure.additive_bag", &format!("{}.additive_bag", mix.id), false, values);
        rows.row("figure.mortar_bag", &format!("{}.mortar_bag", mix.id), false, values);
        blocks.push(table(voice, rows.rows));
    }
    if let Some(rule) = opening_rule(site) {
        blocks.push(Block::para(vec![Inline::text(&format!("{}.", lang.text(rule)))]));
    }
    blocks.extend(decides(tally, site, voice, values));
    blocks
}

/// Key of the words for the site's rule for openings, where it is not ours.
pub fn opening_rule(site: &Site) -> Option<&'static str> {
    match site.opening_rule {
        OpeningRule::DeductAll => None,
        OpeningRule::Is1200 => Some("opening_rule.is_1200_12"),
        OpeningRule::Reed1878 => Some("opening_rule.reed_1878"),
    }
}

/// Who decides about the weight: the letter's figure, and that these are planning figures.
fn decides(tally: &Tally, site: &Site, voice: Voice, values: &mut Vec<PrintedValue>) -> Vec<Block> {
    let lang = voice.lang;
    let mut text = Vec::new();
    if let Some(allowed) = tally.say(&format!("{}.weight_allowed", site.id), Ask::Both, voice) {
        let label = lang.text("figure.weight_allowed");
        text.push(Inline::text(&format!("{}: ", capital(label))));
        text.push(Inline::value(&allowed.text, &allowed.figure));
        text.push(Inline::text(". "));
        values.push(allowed);
    }
    text.push(Inline::text(&format!("{}.", lang.text("planning.note"))));
    vec![Block::Quote { tone: Some(crate::press::payload::Tone::Hold), blocks: vec![Block::para(text)] }]
}

/// A label at the start of a sentence.
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |c| c.to_uppercase().chain(chars).collect())
}
