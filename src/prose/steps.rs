//! Steps of a page, and what a twin in another language must share with its original.

use std::fmt::Write as _;
use std::ops::Range;

use pulldown_cmark::{Event, Options, Parser, Tag};
use sha2::{Digest, Sha256};

use crate::job::Body;
use crate::source::Span;

use super::block::{Block, BlockKind, Doc, Inline};
use super::flat::words;
use super::offsets::span;
use super::tags::{Piece, TagKind, Tok, TokKind, cut, slice};

/// A numbered step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// Number on the face.
    pub number: u64,
    /// From its first to its last character.
    pub span: Span,
    /// Its text, values in place, blocks parted by spaces.
    pub text: String,
    /// Ids of the figures printed in it, in order, repeats kept.
    pub figures: Vec<String>,
}

/// Ordered steps at the top level, in order. A list that restarts goes on with its own numbers.
pub fn steps(doc: &Doc) -> Vec<Step> {
    let mut out = Vec::new();
    for block in doc.blocks() {
        let BlockKind::Steps(first, items) = &block.kind else { continue };
        for (number, item) in (*first..).zip(items) {
            let mut step = Step { number, span: block.at, text: String::new(), figures: Vec::new() };
            if let (Some(a), Some(b)) = (item.first(), item.last()) {
                step.span = Span { start: a.at.start, end: b.at.end.max(a.at.end), ..a.at };
            }
            gather(doc, item, &mut step);
            step.text = step.text.split_whitespace().collect::<Vec<_>>().join(" ");
            out.push(step);
        }
    }
    out
}

fn gather(doc: &Doc, blocks: &[Block], step: &mut Step) {
    for block in blocks {
        match &block.kind {
            BlockKind::Heading(_, w, _) | BlockKind::Para(w) => line(doc, w, step),
            BlockKind::Steps(_, items) | BlockKind::List(items) => items.iter().for_each(|item| gather(doc, item, step)),
            BlockKind::Boxes(boxes) => boxes.iter().for_each(|(_, w)| line(doc, w, step)),
            BlockKind::Table(_, head, rows) => head.iter().chain(rows.iter().flatten()).for_each(|w| line(doc, w, step)),
            BlockKind::Quote(_, inner) | BlockKind::Part(_, inner) => gather(doc, inner, step),
            BlockKind::Code(text) => step.text.push_str(&format!(" {text}")),
            BlockKind::Rule | BlockKind::Asked(..) => {}
        }
    }
}

fn line(doc: &Doc, inlines: &[Inline], step: &mut Step) {
    step.text.push(' ');
    step.text.push_str(&words(doc, inlines));
    figures(doc, inlines, &mut step.figures);
}

fn figures(doc: &Doc, inlines: &[Inline], out: &mut Vec<String>) {
    for inline in inlines {
        match inline {
            Inline::Value(i) | Inline::Bags(_, _, _, i) => out.extend(doc.values.get(*i).map(|u| u.figure.to_string())),
            Inline::Strong(inner) | Inline::Em(inner) | Inline::Link(_, inner) => figures(doc, inner, out),
            _ => {}
        }
    }
}

/// A body with its tags overwritten by a letter, byte for byte, so that every offset stays the file's.
fn masked(text: &str, with: u8) -> String {
    let mut masked = text.as_bytes().to_vec();
    for piece in cut(text).0 {
        let Piece::Tag(tag) = piece else { continue };
        if let Some(bytes) = masked.get_mut(tag.range) {
            bytes.iter_mut().filter(|b| **b != b'\n' && **b != b'\r').for_each(|b| *b = with);
        }
    }
    String::from_utf8_lossy(&masked).into_owned()
}

/// A block as written: the number of its step (0 for none), its place, its source with slots blanked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// Number of the step, 0 outside steps.
    pub step: u64,
    /// Its place.
    pub at: Span,
    /// Its source, byte for byte at its place, slots and control tags as spaces.
    pub text: String,
}

/// The blocks of a body as written, in order; each item of a numbered list is a block.
pub fn blocks_written(body: &Body) -> Vec<Written> {
    let offset = usize::try_from(body.offset).unwrap_or(0);
    let blank = masked(&body.text, b' ');
    let block = |(at, step): (Range<usize>, u64)| {
        let text = slice(&blank, &at).trim_end().to_owned();
        Written { step, at: span(body.file, offset + at.start..offset + at.start + text.len()), text }
    };
    written(body).into_iter().map(block).collect()
}

/// Top-level blocks of the body as written: range, and the step's number where it is one.
fn written(body: &Body) -> Vec<(Range<usize>, u64)> {
    // No mark in a tag is Markdown.
    let masked = masked(&body.text, b'x');
    let mut out: Vec<(Range<usize>, u64)> = Vec::new();
    let mut deep = 0_usize;
    let mut next: Option<u64> = None;
    for (event, at) in Parser::new_ext(&masked, Options::ENABLE_TABLES | Options::ENABLE_TASKLISTS | Options::ENABLE_GFM).into_offset_iter()
    {
        match event {
            Event::Start(Tag::List(Some(first))) if deep == 0 => {
                next = Some(first);
                deep += 1;
            }
            Event::Start(Tag::Item) if deep == 1 && next.is_some() => {
                out.push((at, next.unwrap_or(0)));
                next = next.map(|n| n + 1);
                deep += 1;
            }
            Event::Start(_) => {
                if deep == 0 {
                    out.push((at, 0));
                }
                deep += 1;
            }
            Event::End(_) => {
                deep = deep.saturating_sub(1);
                if deep == 0 {
                    next = None;
                }
            }
            _ if deep == 0 => out.push((at, 0)),
            _ => {}
        }
    }
    out
}

/// A digest of each block as written, for a twin's `follows:`; each item of a numbered list is a block.
///
/// Four hex digits of the SHA-256 of the block's source with white space folded: wrapping a line anew moves nothing.
pub fn block_digests(body: &Body) -> Vec<(String, Span)> {
    let offset = usize::try_from(body.offset).unwrap_or(0);
    let digest = |at: &Range<usize>| {
        let text = slice(&body.text, at);
        let folded = text.split_whitespace().collect::<Vec<_>>().join(" ");
        let mut hex = String::new();
        for byte in Sha256::digest(folded.as_bytes()).iter().take(2) {
            let _ = write!(hex, "{byte:02x}");
        }
        (hex, span(body.file, offset + at.start..offset + at.start + text.trim_end().len()))
    };
    written(body).iter().map(|(at, _)| digest(at)).collect()
}

/// The numbered steps of a body as written: number and place, top level, in order.
pub fn numbered(body: &Body) -> Vec<(u64, Span)> {
    let offset = usize::try_from(body.offset).unwrap_or(0);
    let steps = written(body).into_iter().filter(|(_, number)| *number > 0);
    steps
        .map(|(at, number)| {
            let length = slice(&body.text, &at).trim_end().len();
            (number, span(body.file, offset + at.start..offset + at.start + length))
        })
        .collect()
}

/// The slots of a body as written: number of the step each stands in (0 outside), its expression, its place.
///
/// White space is folded and the reason of `fixed` left out, so that the slots of a twin are the same texts.
pub fn slots(body: &Body) -> Vec<(u64, String, Span)> {
    let offset = usize::try_from(body.offset).unwrap_or(0);
    let blocks = written(body);
    let mut out = Vec::new();
    for piece in cut(&body.text).0 {
        let Piece::Tag(tag) = piece else { continue };
        if tag.kind != TagKind::Slot {
            continue;
        }
        let step = blocks.iter().find(|(at, _)| at.contains(&tag.range.start)).map_or(0, |(_, n)| *n);
        let place = span(body.file, offset + tag.range.start..offset + tag.range.end);
        out.push((step, expression(&body.text, &tag.toks), place));
    }
    out
}

fn expression(text: &str, toks: &[Tok]) -> String {
    let mut out = String::new();
    let mut skip = false;
    for tok in toks {
        let word = slice(text, &tok.at);
        skip |= tok.kind == TokKind::Path && word == "because";
        if skip && word != ")" {
            continue;
        }
        skip = false;
        if word == ")" && out.ends_with(',') {
            out.pop();
        }
        out.push_str(&if word == "|" { " | ".to_owned() } else { word });
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::render::{Options, render};
    use super::super::trial::{ENGLISH, body, demo, scope};
    use super::*;

    const PAGE: &str = "Intro\n\n1. Add {{ mix.start_water }}\n   ```key\n   {{ mix.limit|second }}\n   ```\n2. Mix\n\n8. On by {{ fixed(\"5 min\",\n because=\"x\") }} **{{ mix.step }}**\n\n- a\n- b {{ mix.name }}\n";

    #[test]
    fn steps_and_slots_of_a_page() {
        let (scope, tally) = scope();
        let doc = render(&body(PAGE), &scope, &tally, ENGLISH, Options::default()).unwrap();
        let all = steps(&doc);
        let short: Vec<(u64, usize)> = all.iter().map(|s| (s.number, s.figures.len())).collect();
        assert_eq!(short, [(1, 2), (2, 0), (3, 1)]);
        assert_eq!(all[0].figures, ["made/mix.start_water", "made/mix.limit"]);
        assert_eq!(all[2].text, "On by 5 min 1 cup");
        assert_eq!(&PAGE[all[1].span.start as usize - 100..all[1].span.end as usize - 100], "Mix");
        let got: Vec<(u64, String)> = slots(&body(PAGE)).into_iter().map(|(n, e, _)| (n, e)).collect();
        let want = [(1, "mix.start_water"), (1, "mix.limit | second"), (3, "fixed(\"5 min\")"), (3, "mix.step"), (0, "mix.name")];
        assert_eq!(got, want.map(|(n, e)| (n, e.to_owned())));
    }

    #[test]
    fn digests_move_with_their_block_only() {
        let before = block_digests(&body(PAGE));
        assert_eq!(before.len(), 5);
        assert!(before.iter().all(|(d, _)| d.len() == 4));
        let after = block_digests(&body(&PAGE.replace("2. Mix", "2. Mix   it").replace("Intro", "Intro ")));
        let moved: Vec<usize> = (0..5).filter(|i| before[*i].0 != after[*i].0).collect();
        assert_eq!(moved, [2]);
    }

    #[test]
    fn twins_of_the_demo_share_their_slots() {
        let all = demo();
        for (path, english, _) in &all {
            let name = path.to_string_lossy().to_string();
            let twin = name.replace(".md", ".es.md");
            let Some((_, spanish, _)) = all.iter().find(|(p, _, _)| p.to_string_lossy() == twin) else { continue };
            let list = |b: &Body| slots(b).into_iter().map(|(n, e, _)| (n, e)).collect::<Vec<_>>();
            assert_eq!(list(english), list(spanish), "{name}");
            assert!(block_digests(english).len() + 2 >= block_digests(spanish).len(), "{name}");
        }
    }
}
