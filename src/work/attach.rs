//! The JSON that goes with every PDF: its own printed values, never a price.

use serde_json::{Value, json};

use crate::press::payload::{Block, Inline, Line};
use crate::quantity::num::exact_text;
use crate::tally::PrintedValue;

use super::compose::Face;

/// One printed value of a face.
pub fn value(face: &str, lang: &str, value: &PrintedValue) -> Value {
    json!({
        "face": face,
        "lang": lang,
        "figure": value.figure,
        "ask": value.ask.key(),
        "text": value.text,
        "number": value.number.as_ref().map(fraction),
        "unit": value.unit.map(|u| u.symbol()),
    })
}

fn fraction(number: &num_rational::BigRational) -> String {
    if number.is_integer() { exact_text(number) } else { format!("{}/{}", number.numer(), number.denom()) }
}

/// The attachment of a document: its printed values in their order.
pub fn document(code: &str, title: &str, faces: &[(String, &Face<'_>)]) -> Vec<u8> {
    let mut values = Vec::new();
    for (id, face) in faces {
        let lang = face.lang.code();
        values.extend(face.values.iter().map(|v| value(id, lang, v)));
    }
    let all = json!({"format": 1, "document": code, "title": title, "values": values});
    serde_json::to_vec(&all).unwrap_or_default()
}

/// The sentences of blocks, values in place, in reading order: what a change is looked for in.
pub fn sentences(blocks: &[Block]) -> Vec<String> {
    let mut out = Vec::new();
    blocks.iter().for_each(|b| sentence(b, &mut out));
    out
}

fn sentence(block: &Block, out: &mut Vec<String>) {
    match block {
        Block::Heading { text, .. } | Block::Para { text } => out.push(line(text)),
        Block::Steps { items, .. } | Block::List { items } => items.iter().flatten().for_each(|b| sentence(b, out)),
        Block::Boxes { items } => out.extend(items.iter().map(|b| line(&b.label))),
        Block::Table { head, rows, caption, .. } => {
            out.push(head.iter().map(line).collect::<Vec<_>>().join(" | "));
            out.extend(rows.iter().map(|r| r.iter().map(line).collect::<Vec<_>>().join(" | ")));
            out.extend(caption.iter().map(line));
        }
        Block::Quote { blocks, .. } | Block::Key { blocks } | Block::Strip { blocks } => blocks.iter().for_each(|b| sentence(b, out)),
        Block::Stop { word, blocks } => {
            out.push(word.clone());
            blocks.iter().for_each(|b| sentence(b, out));
        }
        Block::Code { text } => out.push(text.clone()),
        Block::Cautions { items } => {
            for item in items {
                out.push(item.word.clone());
                item.blocks.iter().for_each(|b| sentence(b, out));
            }
        }
        // Geometry counts as content: a drawing is out of date when its data moves.
        Block::Drawing { name, alt, data } => out.push(format!("{name}: {alt}: {data}")),
        Block::Rule => {}
    }
}

fn line(inlines: &Line) -> String {
    inlines.iter().map(inline).collect()
}

fn inline(inline: &Inline) -> String {
    match inline {
        Inline::Text { s } | Inline::Code { s } | Inline::Value { s, .. } => s.clone(),
        Inline::Strong { c } | Inline::Em { c } | Inline::Link { c, .. } => line(c),
        Inline::Break => "\n".to_owned(),
        Inline::Bags { n, half, label } => format!("[{n}{} × {}]", if *half { "½" } else { "" }, label.as_deref().unwrap_or("")),
    }
}
