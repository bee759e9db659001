//! Characters that no embedded face can show, reported at the author's characters before anything is set.

use std::collections::BTreeSet;

use crate::finding::{Finding, Severity};
use crate::press;
use crate::prose::block::{Block, BlockKind, Inline};
use crate::sound::Seen;
use crate::source::Span;

/// One finding per place that holds a character we cannot print.
pub fn check(seen: &[Seen<'_>]) -> Vec<Finding> {
    let mut found: Vec<Finding> = Vec::new();
    let mut told = BTreeSet::new();
    let mut names = BTreeSet::new();
    for text in seen {
        for name in text.doc.names.iter() {
            if !names.insert(name.as_ref()) {
                continue;
            }
            let missing = press::missing(name);
            if !missing.is_empty() {
                found.push(finding(&missing).at(text.edition.title.at, "a name printed here"));
            }
        }
        if !told.insert(text.doc.identity()) {
            continue;
        }
        for block in text.doc.blocks() {
            walk(block, &mut |s, at| {
                let missing = press::missing(s);
                if missing.is_empty() {
                    return;
                }
                let finding = finding(&missing).at(at.unwrap_or(block.at), "cannot be printed");
                if !found.iter().any(|f| f.at == finding.at) {
                    found.push(finding);
                }
            });
        }
    }
    found
}

fn finding(missing: &[char]) -> Finding {
    let shown: Vec<String> = missing.iter().map(|c| format!("`{c}` (U+{:04X})", u32::from(*c))).collect();
    Finding::new("glyph-missing", Severity::Stop, format!("no face on board can print {}", shown.join(", ")))
        .help("write it with letters, digits and the signs of the trade")
}

fn walk(block: &Block, visit: &mut dyn FnMut(&str, Option<Span>)) {
    let lists = |items: &[Vec<Block>], visit: &mut dyn FnMut(&str, Option<Span>)| {
        for inner in items.iter().flatten() {
            walk(inner, visit);
        }
    };
    match &block.kind {
        BlockKind::Heading(_, text, _) | BlockKind::Para(text) => line(text, visit),
        BlockKind::Steps(_, items) | BlockKind::List(items) => lists(items, visit),
        BlockKind::Boxes(boxes) => boxes.iter().for_each(|(_, label)| line(label, visit)),
        BlockKind::Table(_, head, rows) => {
            head.iter().for_each(|c| line(c, visit));
            rows.iter().flatten().for_each(|c| line(c, visit));
        }
        BlockKind::Quote(_, inner) | BlockKind::Part(_, inner) => lists(std::slice::from_ref(inner), visit),
        BlockKind::Code(text) => visit(text, Some(block.at)),
        BlockKind::Rule | BlockKind::Asked(..) => {}
    }
}

fn line(inlines: &[Inline], visit: &mut dyn FnMut(&str, Option<Span>)) {
    for inline in inlines {
        match inline {
            Inline::Text(s, at) | Inline::Code(s, at) => visit(s, *at),
            Inline::Strong(inner) | Inline::Em(inner) | Inline::Link(_, inner) => line(inner, visit),
            Inline::Break | Inline::Value(_) | Inline::Name(..) | Inline::Bags(..) => {}
        }
    }
}
