//! Blocks as plain lines of text: for steps, and for the audit of typed numbers.

use std::ops::Range;

use crate::job::Body;
use crate::source::Span;

use super::block::{Block, BlockKind, Doc, Inline};
use super::tags::{Piece, cut};

/// A stretch of a line.
#[derive(Clone, Debug)]
pub(super) enum Seg {
    /// Characters of the author's.
    Typed(String, Span),
    /// Output of a slot.
    Slot,
    /// A break between words.
    Gap,
}

/// A line: a paragraph, heading, cell or box.
#[derive(Clone, Debug, Default)]
pub(super) struct Line {
    pub segs: Vec<Seg>,
    /// Words that stand over or beside the line: head and first cell of a table.
    pub around: String,
}

/// Lines of a document; `body` tells typed text from slot output.
pub(super) fn lines(doc: &Doc, body: &Body) -> Vec<Line> {
    cut_lines(doc, body, false)
}

/// Lines of a document with the texts of its slots as if an author had typed them.
pub(super) fn lines_with_slots(doc: &Doc, body: &Body) -> Vec<Line> {
    cut_lines(doc, body, true)
}

fn cut_lines(doc: &Doc, body: &Body, open: bool) -> Vec<Line> {
    let (pieces, _) = cut(&body.text);
    let offset = usize::try_from(body.offset).unwrap_or(0);
    let tags = pieces.iter().filter_map(|p| match p {
        Piece::Tag(t) => Some(offset + t.range.start..offset + t.range.end),
        Piece::Text(_) => None,
    });
    let tags: Vec<Range<usize>> = tags.collect();
    let mut flat = Flat { doc, body, offset, tags, open, out: Vec::new() };
    flat.blocks(doc.blocks());
    flat.out
}

struct Flat<'a> {
    doc: &'a Doc,
    body: &'a Body,
    offset: usize,
    tags: Vec<Range<usize>>,
    /// True if texts of slots count as typed.
    open: bool,
    out: Vec<Line>,
}

impl Flat<'_> {
    fn blocks(&mut self, blocks: &[Block]) {
        for block in blocks {
            match &block.kind {
                BlockKind::Heading(_, words, _) | BlockKind::Para(words) => self.line(words, String::new()),
                BlockKind::Steps(_, items) | BlockKind::List(items) => items.iter().for_each(|item| self.blocks(item)),
                BlockKind::Boxes(boxes) => boxes.iter().for_each(|(_, words)| self.line(words, String::new())),
                BlockKind::Quote(_, inner) | BlockKind::Part(_, inner) => self.blocks(inner),
                BlockKind::Table(_, head, rows) => {
                    head.iter().for_each(|cell| self.line(cell, String::new()));
                    for row in rows {
                        let first = row.first().map(|c| words(self.doc, c)).unwrap_or_default();
                        for (cell, head) in row.iter().zip(head) {
                            self.line(cell, format!("{first} {}", words(self.doc, head)));
                        }
                    }
                }
                BlockKind::Code(_) => self.code(block.at),
                BlockKind::Rule | BlockKind::Asked(..) => {}
            }
        }
    }

    fn line(&mut self, inlines: &[Inline], around: String) {
        let mut segs = Vec::new();
        self.segs(inlines, &mut segs);
        self.out.push(Line { segs, around });
    }

    fn segs(&self, inlines: &[Inline], out: &mut Vec<Seg>) {
        for inline in inlines {
            match inline {
                Inline::Text(text, Some(at)) | Inline::Code(text, Some(at)) => {
                    let start = usize::try_from(at.start).unwrap_or(0);
                    let slot = !self.open && self.tags.iter().any(|t| t.start == start);
                    out.push(if slot { Seg::Slot } else { Seg::Typed(text.clone(), *at) });
                }
                Inline::Text(_, None) | Inline::Code(_, None) | Inline::Value(_) | Inline::Name(..) | Inline::Bags(..) => {
                    out.push(Seg::Slot)
                }
                Inline::Strong(inner) | Inline::Em(inner) | Inline::Link(_, inner) => self.segs(inner, out),
                Inline::Break => out.push(Seg::Gap),
            }
        }
    }

    /// Code is read from the file, tags blanked: the tree holds it with slots filled.
    fn code(&mut self, at: Span) {
        let (start, end) = (usize::try_from(at.start).unwrap_or(0), usize::try_from(at.end).unwrap_or(0));
        let mut segs = Vec::new();
        let mut from = start;
        for tag in self.tags.iter().filter(|t| t.start >= start && t.end <= end) {
            self.copy(from..tag.start, &mut segs);
            segs.push(Seg::Slot);
            from = tag.end;
        }
        self.copy(from..end, &mut segs);
        self.out.push(Line { segs, around: String::new() });
    }

    fn copy(&self, at: Range<usize>, out: &mut Vec<Seg>) {
        let inner = at.start.saturating_sub(self.offset)..at.end.saturating_sub(self.offset);
        if let Some(text) = self.body.text.get(inner) {
            out.push(Seg::Typed(text.to_owned(), super::offsets::span(self.body.file, at)));
        }
    }
}

/// Inlines as a reader reads them.
pub(super) fn words(doc: &Doc, inlines: &[Inline]) -> String {
    let mut out = String::new();
    for inline in inlines {
        match inline {
            Inline::Text(text, _) | Inline::Code(text, _) => out.push_str(text),
            Inline::Strong(inner) | Inline::Em(inner) | Inline::Link(_, inner) => out.push_str(&words(doc, inner)),
            Inline::Value(i) => out.push_str(doc.values.get(*i).map_or("", |u| u.value.text.as_str())),
            Inline::Break => out.push(' '),
            Inline::Name(..) => out.push('…'),
            Inline::Bags(..) => {}
        }
    }
    out
}
