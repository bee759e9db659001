//! The worksheet appendix: every printed figure of a site's book, line by line, so that a stranger can work it
//! again with a pocket calculator.

use serde_json::json;

use crate::job::{Job, Site};
use crate::press::payload::Block;
use crate::quantity::print::{self, Line};
use crate::tally::{Ask, Figure, PrintedValue, Tally, Voice, of_a_day};
use crate::words::Lang;

use super::compose::Composer;

/// Marks `W1`, `W2` … of a site's figures, in working order.
#[derive(Debug)]
pub struct Marks {
    ids: Vec<String>,
}

impl Marks {
    /// Marks every figure of a site, of its surfaces, its mixes and their batches.
    pub fn of(tally: &Tally, job: &Job, site: &Site) -> Marks {
        let mixes = job.mixes.iter().filter(|m| site.mixes().any(|n| n.text == m.name.text));
        let own = mixes.map(|m| &m.id).chain([&site.id]).flat_map(|id| tally.figures_of(id));
        let kept = |f: &&Figure| !f.role.is_money() && !of_a_day(&site.id, &f.id) && !f.id.contains(".ladder");
        let ids = own.filter(kept).filter(|f| worked(f)).map(|f| f.id.clone()).collect();
        Marks { ids }
    }

    /// The mark of a figure.
    pub fn get(&self, id: &str) -> Option<String> {
        self.ids.iter().position(|i| i == id).map(|n| format!("W{}", n + 1))
    }

    /// Marked ids in order.
    pub fn iter(&self) -> impl Iterator<Item = &str> {
        self.ids.iter().map(String::as_str)
    }
}

/// True if a figure has arithmetic to show: an authored value alone needs no worksheet line.
fn worked(figure: &Figure) -> bool {
    figure.worked.as_ref().is_ok_and(|node| print::own_lines("", node).first().is_some_and(|l| !l.symbols.is_empty()))
}

/// The appendix of a site: one entry per marked figure.
pub fn blocks(composer: &Composer<'_>, site: &Site, voice: Voice, values: &mut Vec<PrintedValue>) -> Vec<Block> {
    let marks = Marks::of(composer.tally, composer.job, site);
    let mut lines = Vec::new();
    for id in marks.iter() {
        let Some(figure) = composer.tally.figure(id) else { continue };
        let Ok(node) = &figure.worked else { continue };
        let Some(printed) = composer.tally.say(id, Ask::Own, voice) else { continue };
        let own = print::own_lines("", node);
        let (text, inputs) = texts(&own, &marks, voice.lang);
        let label = format!("{} ({id})", voice.lang.text(figure.label));
        let formula = own.first().map_or("", |l| l.formula.as_str());
        lines.push(json!({
            "mark": marks.get(id).unwrap_or_default(),
            "label": label,
            "text": text,
            "where": format!("{inputs} → {}", printed.text),
            "formula": formula,
        }));
        values.push(printed);
    }
    if lines.is_empty() {
        return Vec::new();
    }
    vec![Block::Drawing { name: "worksheet".into(), alt: voice.lang.text("worksheet.title").to_owned(), data: json!({ "lines": lines }) }]
}

/// The arithmetic of one figure, and where its inputs come from.
fn texts(lines: &[Line], marks: &Marks, lang: Lang) -> (String, String) {
    let mut steps = Vec::new();
    let mut inputs = Vec::new();
    for line in lines {
        let unit = if line.unit.is_empty() { String::new() } else { format!("\u{a0}{}", line.unit) };
        if let Some(id) = line.figure.as_deref() {
            // A figure of one day has no line here: its name says where it is worked.
            let unmarked = || if line.symbols.is_empty() { origin(line, lang) } else { format!("{} ({id})", line.result) };
            inputs.push(format!("{} = {}", line.symbol, marks.get(id).unwrap_or_else(unmarked)));
        } else if line.symbols.is_empty() {
            inputs.push(format!("{} = {}", line.symbol, origin(line, lang)));
        } else {
            steps.push(format!("{} = {} = {} = {}{unit}", line.symbol, line.symbols, line.numbers, line.result));
        }
    }
    (steps.join("; "), inputs.join(", "))
}

fn origin(line: &Line, lang: Lang) -> String {
    match &line.authored {
        Some((text, key)) => format!("{text} ({key})"),
        None if !line.source.is_empty() => format!("{}{}", line.result, source(line)),
        None => format!("{} ({})", line.result, lang.text("worksheet.given")),
    }
}

fn source(line: &Line) -> String {
    format!(" ({})", line.source)
}
