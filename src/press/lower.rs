//! From the block tree of a document to what the templates see: values become their printed strings.

use crate::prose::block::{Block, BlockKind, Doc, Inline};
use crate::source::Span;
use crate::words::Lang;

use super::payload;

/// Fills a drawing or table that an author asked for by name: name, arguments, place.
pub type Asked<'a> = dyn FnMut(&str, &[(String, String)], Span) -> Vec<payload::Block> + 'a;

/// Lowers all blocks of a document.
pub fn blocks(doc: &Doc, lang: Lang, asked: &mut Asked<'_>) -> Vec<payload::Block> {
    list(doc.blocks(), doc, lang, asked)
}

fn list(blocks: &[Block], doc: &Doc, lang: Lang, asked: &mut Asked<'_>) -> Vec<payload::Block> {
    blocks.iter().flat_map(|b| block(b, doc, lang, asked)).collect()
}

fn items(items: &[Vec<Block>], doc: &Doc, lang: Lang, asked: &mut Asked<'_>) -> Vec<Vec<payload::Block>> {
    items.iter().map(|i| list(i, doc, lang, asked)).collect()
}

fn block(block: &Block, doc: &Doc, lang: Lang, asked: &mut Asked<'_>) -> Vec<payload::Block> {
    let one = match &block.kind {
        BlockKind::Heading(level, text, id) => {
            payload::Block::Heading { level: *level, text: line(text, doc), id: id.clone().unwrap_or_default() }
        }
        BlockKind::Para(text) => payload::Block::Para { text: line(text, doc) },
        BlockKind::Steps(start, steps) => {
            payload::Block::Steps { start: u32::try_from(*start).unwrap_or(1), items: items(steps, doc, lang, asked) }
        }
        BlockKind::List(entries) => payload::Block::List { items: items(entries, doc, lang, asked) },
        BlockKind::Boxes(boxes) => {
            payload::Block::Boxes { items: boxes.iter().map(|(n, label)| payload::WriteIn { n: *n, label: line(label, doc) }).collect() }
        }
        BlockKind::Table(align, head, rows) => payload::Block::Table {
            align: align.iter().map(|a| alignment(a)).collect(),
            head: head.iter().map(|c| line(c, doc)).collect(),
            rows: rows.iter().map(|r| r.iter().map(|c| line(c, doc)).collect()).collect(),
            caption: None,
        },
        BlockKind::Quote(tone, inner) => payload::Block::Quote {
            tone: match *tone {
                Some("caution") => Some(payload::Tone::Caution),
                Some("hold") => Some(payload::Tone::Hold),
                Some(_) => Some(payload::Tone::Note),
                None => None,
            },
            blocks: list(inner, doc, lang, asked),
        },
        BlockKind::Rule => payload::Block::Rule,
        BlockKind::Code(text) => payload::Block::Code { text: text.clone() },
        BlockKind::Part("key", inner) => payload::Block::Key { blocks: list(inner, doc, lang, asked) },
        BlockKind::Part("stop", inner) => {
            payload::Block::Stop { word: lang.text("stop.word").to_owned(), blocks: list(inner, doc, lang, asked) }
        }
        BlockKind::Part(_, inner) => payload::Block::Strip { blocks: list(inner, doc, lang, asked) },
        BlockKind::Asked(name, arguments) => return asked(name, arguments, block.at),
    };
    vec![one]
}

fn alignment(word: &str) -> payload::Align {
    match word {
        "right" => payload::Align::Right,
        "center" => payload::Align::Center,
        _ => payload::Align::Left,
    }
}

fn line(inlines: &[Inline], doc: &Doc) -> payload::Line {
    inlines.iter().map(|i| inline(i, doc)).collect()
}

fn inline(inline: &Inline, doc: &Doc) -> payload::Inline {
    match inline {
        Inline::Text(text, _) => payload::Inline::text(text),
        Inline::Strong(inner) => payload::Inline::Strong { c: line(inner, doc) },
        Inline::Em(inner) => payload::Inline::Em { c: line(inner, doc) },
        Inline::Code(text, _) => payload::Inline::Code { s: text.clone() },
        Inline::Break => payload::Inline::Break,
        Inline::Name(at, _) => payload::Inline::text(doc.names.get(*at).map_or("", |name| name)),
        Inline::Value(at) => match doc.values.get(*at) {
            Some(used) => payload::Inline::value(&used.value.text, &used.figure),
            None => payload::Inline::text(""),
        },
        Inline::Bags(n, half, label, _) => payload::Inline::Bags { n: *n, half: *half, label: Some(label.clone()) },
        Inline::Link(to, inner) => payload::Inline::Link { to: to.clone(), c: line(inner, doc) },
    }
}
