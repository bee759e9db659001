//! Derivations as a tree: each line once, under the first that rests on it, with its number.

use serde_json::{Value, json};

use unicode_width::UnicodeWidthStr;

use crate::quantity::print::Line;
use crate::work::{Place, Tree};

use super::paint::{Paint, clean};

/// The tree as lines, each with its line end.
pub fn draw(tree: &Tree, paint: Paint) -> String {
    let mut out = format!("{}  {}\n", paint.bold(&clean(&tree.figure)), clean(&tree.label));
    for printed in &tree.printed {
        let unit = if printed.unit.is_empty() { String::new() } else { format!(" {}", printed.unit) };
        let rounding = format!("rounded {} to {}{unit}", printed.direction, printed.measure);
        out.push_str(&format!("  printed   {}  {}\n", paint.bold(&clean(&printed.text)), paint.dim(&clean(&rounding))));
    }
    out.push_str(&format!("  basis     {}\n", clean(&tree.basis)));
    if let Some(missing) = &tree.missing {
        out.push_str(&format!("  no value  {}\n", clean(missing)));
        return out;
    }
    out.push('\n');
    let margin = tree.lines.len().to_string().len();
    let mut shown = vec![false; tree.lines.len()];
    let mut page = Page { tree, paint, margin, out };
    page.branch(0, 0, &mut shown);
    page.out
}

/// One line: id, printed texts, and what it comes from.
pub fn short(tree: &Tree) -> String {
    let texts: Vec<String> = tree.printed.iter().map(|p| clean(&p.text)).collect();
    let formula = tree.lines.first().map_or("", |l| l.formula.as_str());
    format!("{}\t{}\t{}\n", clean(&tree.figure), texts.join("\t"), clean(tree.missing.as_deref().unwrap_or(formula)))
}

/// The tree as JSON, one value.
pub fn json(tree: &Tree) -> Value {
    let line = |(i, line): (usize, &Line)| {
        let place = tree.places.get(i).and_then(Option::as_ref);
        json!({
            "symbol": line.symbol,
            "formula": line.formula,
            "symbols": line.symbols,
            "numbers": line.numbers,
            "result": line.result,
            "unit": line.unit,
            "authored": line.authored.as_ref().map(|(text, key)| json!({"text": text, "key": key})),
            "path": place.map(|p| &p.path),
            "line": place.map(|p| p.line),
            "column": place.map(|p| p.column),
            "source": line.source,
            "rests_on": line.rests_on,
        })
    };
    let mut printed = serde_json::Map::new();
    for p in &tree.printed {
        let said = json!({"text": p.text, "direction": p.direction, "measure": p.measure, "unit": p.unit});
        printed.insert(p.system.to_owned(), said);
    }
    json!({
        "format": 1,
        "figure": tree.figure,
        "label": tree.label,
        "basis": tree.basis,
        "missing": tree.missing,
        "lines": tree.lines.iter().enumerate().map(line).collect::<Vec<_>>(),
        "printed": printed,
    })
}

/// Longest symbol that stands on one row with its formula.
const LONG: usize = 12;

/// A fraction as a decimal of seven digits, to get the feel of it; the fraction is what counts.
fn about(result: &str) -> Option<String> {
    let (over, under) = result.split_once('/')?;
    let value = over.parse::<f64>().ok()? / under.parse::<f64>().ok()?;
    let mut size = value.abs();
    let mut places = 6usize;
    while size >= 10.0 && places > 0 {
        size /= 10.0;
        places -= 1;
    }
    value.is_finite().then(|| format!("{value:.places$}"))
}

struct Page<'a> {
    tree: &'a Tree,
    paint: Paint,
    margin: usize,
    out: String,
}

impl Page<'_> {
    fn branch(&mut self, at: usize, depth: usize, shown: &mut [bool]) {
        let Some(line) = self.tree.lines.get(at) else { return };
        let Some(seen) = shown.get_mut(at) else { return };
        if *seen {
            let see = format!("{}  {}", clean(&line.symbol), self.paint.dim(&format!("as in line {}", at + 1)));
            self.row(None, depth, &see);
            return;
        }
        *seen = true;
        self.own(at, line, depth);
        for next in &line.rests_on {
            self.branch(*next, depth + 1, shown);
        }
    }

    /// `A = l × w = 22 × 9 = 198 ft2`, a step a row with the signs under each other.
    fn own(&mut self, at: usize, line: &Line, depth: usize) {
        let symbol = clean(&line.symbol);
        let unit = if line.unit.is_empty() { String::new() } else { format!(" {}", clean(&line.unit)) };
        let about = about(&line.result).map_or_else(String::new, |n| format!(", about {n}{unit}"));
        let result = format!("{}{}", self.paint.bold(&format!("{}{unit}", clean(&line.result))), self.paint.dim(&about));
        let mut steps: Vec<String> = Vec::new();
        let same = |text: &str| text.is_empty() || text == line.result;
        if !line.symbols.is_empty() && line.symbols != line.symbol && line.symbols != line.numbers {
            steps.push(clean(&line.symbols));
        }
        if !same(&line.numbers) {
            steps.push(clean(&line.numbers));
        }
        steps.push(result);
        let notes = self.notes(at, line);
        let last = steps.len() - 1;
        let width = symbol.width();
        // An id as long as the figure's own would push the arithmetic off the screen.
        let apart = width > LONG && last > 0;
        let blank = " ".repeat(if apart { 1 } else { width });
        if apart {
            self.row(Some(at + 1), depth, &symbol);
        }
        for (i, step) in steps.into_iter().enumerate() {
            let left = if i == 0 && !apart { &symbol } else { &blank };
            let formula =
                if i == 0 && !line.formula.is_empty() { self.paint.dim(&format!("   [{}]", clean(&line.formula))) } else { String::new() };
            let note = if i == last { notes.as_str() } else { "" };
            self.row((i == 0 && !apart).then_some(at + 1), depth, &format!("{left} = {step}{formula}{note}"));
        }
    }

    fn notes(&self, at: usize, line: &Line) -> String {
        let mut notes = String::new();
        if let Some((text, key)) = &line.authored {
            notes.push_str(&format!("   typed `{}`", clean(text)));
            if !key.is_empty() {
                notes.push_str(&format!(" as {}", clean(key)));
            }
        }
        if let Some(Place { path, line, column }) = self.tree.places.get(at).and_then(Option::as_ref) {
            notes.push_str(&format!(", {}:{line}:{column}", clean(path)));
        }
        if !line.source.is_empty() {
            notes.push_str(&format!("   source: {}", clean(&line.source)));
        }
        self.paint.dim(&notes)
    }

    fn row(&mut self, number: Option<usize>, depth: usize, text: &str) {
        let number = number.map_or(String::new(), |n| n.to_string());
        let indent = "  ".repeat(depth);
        self.out.push_str(&format!("{number:>w$}  {indent}{text}\n", w = self.margin));
    }
}
