//! Markdown with placeholders → blocks, every piece with its place in the file.

use std::collections::VecDeque;
use std::ops::Range;
use std::sync::Arc;

use pulldown_cmark::{Alignment, BlockQuoteKind, Event, Options, Parser, Tag};

use crate::finding::{Finding, Severity};
use crate::source::Span;

use super::block::{Block, BlockKind, Doc, Inline, Use};
use super::fill::{Print, push_text};
use super::offsets::Offsets;

/// Lists, quotes and emphasis within each other; nobody means more.
pub(super) const MOST_DEEP: usize = 24;
/// Parses the Markdown of a whole body. `boxes` is how many write-in boxes stand before it.
pub(super) fn parse(print: &Print, text: &str, offsets: &Offsets, boxes: u32) -> (Doc, Vec<Finding>) {
    let mut state = State { print, values: Vec::new(), names: Vec::new(), own: false, found: Vec::new(), boxes, deep: 0 };
    let blocks = state.body(text, offsets);
    let mut doc = Doc::new(blocks, state.values);
    (doc.names, doc.own) = (state.names.into(), state.own);
    (doc, state.found)
}

pub(super) struct State<'a> {
    pub(super) print: &'a Print<'a>,
    pub(super) values: Vec<Use>,
    pub(super) names: Vec<Arc<str>>,
    /// Set when a name was put where only text can stand.
    pub(super) own: bool,
    pub(super) found: Vec<Finding>,
    pub(super) boxes: u32,
    pub(super) deep: usize,
}

/// The events of one text still to be read.
pub(super) struct Feed<'t> {
    pub(super) events: VecDeque<(Event<'t>, Range<usize>)>,
    pub(super) text: &'t str,
    pub(super) offsets: &'t Offsets,
    /// Set when a task marker was read; taken by the list item that holds it.
    pub(super) task: bool,
}

impl Feed<'_> {
    pub(super) fn at_end(&self) -> bool {
        matches!(self.events.front(), None | Some((Event::End(_), _)))
    }

    pub(super) fn span(&self, at: &Range<usize>) -> Span {
        // Blocks of a list end after their line's end: the place shown is of the words.
        let run = self.text.get(at.clone()).unwrap_or("");
        self.offsets.span(&(at.start..at.start + run.trim_end().len()))
    }
}

fn options() -> Options {
    Options::ENABLE_TABLES | Options::ENABLE_TASKLISTS | Options::ENABLE_GFM | Options::ENABLE_HEADING_ATTRIBUTES
}

impl State<'_> {
    pub(super) fn body(&mut self, text: &str, offsets: &Offsets) -> Vec<Block> {
        let events = Parser::new_ext(text, options()).into_offset_iter().collect();
        let mut feed = Feed { events, text, offsets, task: false };
        let mut blocks = Vec::new();
        while !feed.events.is_empty() {
            blocks.extend(self.blocks(&mut feed));
            feed.events.pop_front();
        }
        blocks
    }

    fn unprinted(&mut self, at: Span, what: &str, help: &str) {
        let title = format!("{what} are not printed");
        self.found.push(Finding::new("markdown-unprinted", Severity::Stop, title).at(at, "here").help(help));
    }

    /// Blocks up to the end of the element that is open; the end itself stays.
    fn blocks(&mut self, feed: &mut Feed) -> Vec<Block> {
        self.deep += 1;
        let mut out = Vec::new();
        while !feed.at_end() {
            if self.deep > MOST_DEEP {
                self.too_deep(feed);
                break;
            }
            let Some((event, at)) = feed.events.front().cloned() else { break };
            let place = feed.span(&at);
            match event {
                Event::Start(tag) if is_block(&tag) => {
                    feed.events.pop_front();
                    self.block(tag, &at, place, feed, &mut out);
                    feed.events.pop_front();
                }
                Event::Rule => {
                    feed.events.pop_front();
                    out.push(Block { kind: BlockKind::Rule, at: place });
                }
                Event::Html(html) => {
                    feed.events.pop_front();
                    self.html(&html, place);
                }
                _ => {
                    let start = place.start;
                    let (words, end) = self.inlines(feed, true);
                    let at = Span { start, end: end.max(start), ..place };
                    if !words.is_empty() {
                        out.push(Block { kind: BlockKind::Para(words), at });
                    }
                }
            }
        }
        self.deep -= 1;
        out
    }

    fn too_deep(&mut self, feed: &mut Feed) {
        let mut open = 0_usize;
        while let Some((event, at)) = feed.events.front() {
            match event {
                Event::Start(_) => open += 1,
                Event::End(_) if open == 0 => break,
                Event::End(_) => open -= 1,
                _ => {}
            }
            let at = feed.span(at);
            let title = format!("lists and quotes stand more than {MOST_DEEP} deep");
            if !self.found.iter().any(|f| f.name == "markdown-too-deep") {
                let f = Finding::new("markdown-too-deep", Severity::Stop, title).at(at, "here").help("write it flatter");
                self.found.push(f);
            }
            feed.events.pop_front();
        }
    }

    fn block(&mut self, tag: Tag, at: &Range<usize>, place: Span, feed: &mut Feed, out: &mut Vec<Block>) {
        let kind = match tag {
            Tag::Paragraph => {
                let (words, _) = self.inlines(feed, false);
                if words.is_empty() {
                    return;
                }
                BlockKind::Para(words)
            }
            Tag::Heading { level, id, .. } => {
                let (words, _) = self.inlines(feed, false);
                BlockKind::Heading(level as u8, words, id.map(|i| i.to_string()))
            }
            Tag::BlockQuote(kind) => {
                let tone = kind.map(|k| match k {
                    BlockQuoteKind::Warning | BlockQuoteKind::Caution => "caution",
                    BlockQuoteKind::Important => "hold",
                    BlockQuoteKind::Note | BlockQuoteKind::Tip => "note",
                });
                BlockKind::Quote(tone, self.blocks(feed))
            }
            Tag::CodeBlock(kind) => match self.fence(&kind, at, place, feed) {
                Some(kind) => kind,
                None => return,
            },
            Tag::HtmlBlock => {
                let mut html = String::new();
                while !feed.at_end() {
                    if let Some((Event::Html(h) | Event::Text(h), _)) = feed.events.pop_front() {
                        html.push_str(&h);
                    }
                }
                return self.html(&html, place);
            }
            Tag::List(first) => return self.list(first, place, feed, out),
            Tag::Table(aligns) => self.table(&aligns, feed),
            _ => {
                out.extend(self.blocks(feed));
                return;
            }
        };
        out.push(Block { kind, at: place });
    }

    /// A comment of the author's is not for the reader; any other HTML would be lost without a word.
    fn html(&mut self, html: &str, at: Span) {
        let html = html.trim();
        if !(html.starts_with("<!--") && html.ends_with("-->")) {
            self.unprinted(at, "HTML tags", "write it in Markdown");
        }
    }

    fn list(&mut self, first: Option<u64>, place: Span, feed: &mut Feed, out: &mut Vec<Block>) {
        let mut plain: Vec<Vec<Block>> = Vec::new();
        let mut boxes: Vec<(u32, Vec<Inline>)> = Vec::new();
        let mut started = place;
        let flush = |plain: &mut Vec<Vec<Block>>, boxes: &mut Vec<(u32, Vec<Inline>)>, at: Span, out: &mut Vec<Block>| {
            if !plain.is_empty() {
                out.push(Block { kind: BlockKind::List(std::mem::take(plain)), at });
            }
            if !boxes.is_empty() {
                out.push(Block { kind: BlockKind::Boxes(std::mem::take(boxes)), at });
            }
        };
        while !feed.at_end() {
            let Some((_, at)) = feed.events.pop_front() else { break };
            let here = feed.span(&at);
            feed.task = false;
            let before = self.boxes;
            let mut item = self.blocks(feed);
            feed.events.pop_front();
            if !std::mem::take(&mut feed.task) {
                if !boxes.is_empty() {
                    flush(&mut plain, &mut boxes, started, out);
                    started = here;
                }
                plain.push(item);
                continue;
            }
            // The item's own number comes before those of boxes inside it.
            self.boxes = before + 1;
            let words = match item.first() {
                Some(Block { kind: BlockKind::Para(words), .. }) => words.clone(),
                _ => Vec::new(),
            };
            if item.len() > 1 {
                self.unprinted(here, "more lines under a write-in box", "keep the box to one line and write the rest below the list");
            }
            if first.is_some() {
                item.truncate(0);
                item.push(Block { kind: BlockKind::Boxes(vec![(self.boxes, words)]), at: here });
                plain.push(item);
            } else {
                if !plain.is_empty() {
                    flush(&mut plain, &mut boxes, started, out);
                    started = here;
                }
                boxes.push((self.boxes, words));
            }
        }
        match first {
            Some(number) => out.push(Block { kind: BlockKind::Steps(number, plain), at: place }),
            None => flush(&mut plain, &mut boxes, started, out),
        }
    }

    fn table(&mut self, aligns: &[Alignment], feed: &mut Feed) -> BlockKind {
        let sides = aligns.iter().map(|a| match a {
            Alignment::None | Alignment::Left => "left",
            Alignment::Right => "right",
            Alignment::Center => "center",
        });
        let mut head = Vec::new();
        let mut rows = Vec::new();
        while !feed.at_end() {
            let Some((row, _)) = feed.events.pop_front() else { break };
            let mut cells = Vec::new();
            while !feed.at_end() {
                feed.events.pop_front();
                cells.push(self.inlines(feed, false).0);
                feed.events.pop_front();
            }
            feed.events.pop_front();
            if matches!(row, Event::Start(Tag::TableHead)) { head = cells } else { rows.push(cells) }
        }
        BlockKind::Table(sides.collect(), head, rows)
    }

    /// Inlines up to the end of the element that is open, or up to the next block when `loose`.
    fn inlines(&mut self, feed: &mut Feed, loose: bool) -> (Vec<Inline>, u32) {
        self.deep += 1;
        let mut out: Vec<Inline> = Vec::new();
        let mut end = 0;
        while !feed.at_end() {
            if self.deep > MOST_DEEP {
                self.too_deep(feed);
                break;
            }
            if loose && matches!(feed.events.front(), Some((Event::Start(tag), _)) if is_block(tag)) {
                break;
            }
            let Some((event, at)) = feed.events.pop_front() else { break };
            end = feed.span(&at).end.max(end);
            match event {
                Event::Text(t) => self.words(&t, &at, feed, false, &mut out),
                Event::Code(t) => self.words(&t, &at, feed, true, &mut out),
                Event::SoftBreak => push_text(&mut out, " ".to_owned(), feed.offsets.span(&at)),
                Event::HardBreak => out.push(Inline::Break),
                Event::TaskListMarker(_) => feed.task = true,
                Event::InlineHtml(html) | Event::Html(html) => self.html(&html, feed.span(&at)),
                Event::Start(tag) => {
                    let (inner, _) = self.inlines(feed, false);
                    feed.events.pop_front();
                    match tag {
                        Tag::Strong => out.push(Inline::Strong(inner)),
                        Tag::Emphasis => out.push(Inline::Em(inner)),
                        Tag::Link { dest_url, .. } => out.push(Inline::Link(self.plain(&dest_url), inner)),
                        Tag::Image { .. } => {
                            self.unprinted(feed.span(&at), "pictures", "ask for a drawing by name in a fence");
                            out.extend(inner);
                        }
                        _ => out.extend(inner),
                    }
                }
                _ => {}
            }
        }
        self.deep -= 1;
        (out, end)
    }
}

fn is_block(tag: &Tag) -> bool {
    matches!(
        tag,
        Tag::Paragraph
            | Tag::Heading { .. }
            | Tag::BlockQuote(_)
            | Tag::CodeBlock(_)
            | Tag::HtmlBlock
            | Tag::List(_)
            | Tag::Item
            | Tag::Table(_)
            | Tag::TableHead
            | Tag::TableRow
            | Tag::TableCell
            | Tag::FootnoteDefinition(_)
            | Tag::DefinitionList
            | Tag::DefinitionListTitle
            | Tag::DefinitionListDefinition
            | Tag::MetadataBlock(_)
    )
}
