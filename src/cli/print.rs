//! An outcome as text.

use crate::work::{Exit, Format, Look, Outcome, Product};

use super::paint::{Paint, clean};
use super::{nearest, table, tree};

/// What goes to standard output: the product, then the findings. In JSON, one value a line.
pub fn page(outcome: &Outcome, look: Look) -> String {
    let paint = Paint(look.color);
    let mut out = match (&outcome.product, look.format) {
        (Product::Nothing, _) => String::new(),
        (Product::Text(text), _) => text.clone(),
        (Product::Files(files), Format::Json) => {
            let files: Vec<_> = files.iter().map(|f| f.to_string_lossy()).collect();
            value(&serde_json::json!({"format": 1, "files": files}))
        }
        (Product::Files(files), _) => files.iter().map(|f| clean(&f.to_string_lossy()) + "\n").collect(),
        (Product::Tables(tables), Format::Plain) => spaced(tables.iter().map(|t| table::draw(t, paint))),
        (Product::Tables(tables), Format::Short) => tables.iter().map(table::short).collect(),
        (Product::Tables(tables), Format::Json) => tables.iter().map(|t| value(&table::json(t))).collect(),
        (Product::Trees(trees), Format::Plain) => spaced(trees.iter().map(|t| tree::draw(t, paint))),
        (Product::Trees(trees), Format::Short) => trees.iter().map(tree::short).collect(),
        (Product::Trees(trees), Format::Json) => trees.iter().map(|t| value(&tree::json(t))).collect(),
    };
    closed(&mut out);
    if !out.is_empty() && !outcome.findings.is_empty() && look.format == Format::Plain {
        out.push('\n');
    }
    out.push_str(&outcome.findings);
    closed(&mut out);
    out
}

/// What goes to standard error: names that are not there, then the last line.
pub fn aside(outcome: &Outcome) -> Vec<String> {
    let mut lines: Vec<String> = outcome.missing.iter().map(|m| format!("hodbook: {}", clean(&nearest::line(m)))).collect();
    match (outcome.summary.as_str(), outcome.exit) {
        ("", _) => {}
        (why, Exit::CouldNot) => lines.push(format!("hodbook: {}", clean(why))),
        (last, _) => lines.push(clean(last)),
    }
    lines
}

fn value(json: &serde_json::Value) -> String {
    format!("{json}\n")
}

fn spaced(parts: impl Iterator<Item = String>) -> String {
    parts.collect::<Vec<_>>().join("\n")
}

fn closed(text: &mut String) {
    if !text.is_empty() && !text.ends_with('\n') {
        text.push('\n');
    }
}
