//! Markdown with placeholders → blocks, values put back, every piece with its place in the file.

use std::collections::VecDeque;
use std::ops::Range;

use pulldown_cmark::{Alignment, BlockQuoteKind, CodeBlockKind, Event, Options, Parser, Tag};

use crate::finding::{Finding, Severity};
use crate::job::Body;
use crate::quantity::parse;
use crate::quantity::show::JOIN;
use crate::source::Span;
use crate::tally::{Ask, Scope, Slot, Tally, Voice};

use super::block::{Block, BlockKind, Doc, Inline, Use};
use super::near;
use super::offsets::Offsets;
use super::render::{HOLDER, ask};

/// Fences that hold Markdown.
pub const PARTS: &[&str] = &["key", "stop", "strip"];

/// Fences that ask for a drawing or table, with the arguments each knows.
pub const ASKED: &[(&str, &[&str])] = &[
    ("cautions", &[]),
    ("ladder", &["mix"]),
    ("batch-log", &["rows"]),
    ("elevation", &["surface"]),
    ("takeoff", &["surface"]),
    ("worksheet", &["figure"]),
    ("in-force", &[]),
];

/// Lists, quotes and emphasis within each other; nobody means more.
const MOST_DEEP: usize = 24;

/// What a placeholder stands for.
#[derive(Clone, Debug)]
pub(super) struct Out {
    at: Span,
    what: What,
}

#[derive(Clone, Debug)]
enum What {
    Figure { id: String, ask: Ask, bags: bool },
    Text(String),
    Fixed { text: String, because: String },
    Problem { name: &'static str, title: String, help: String },
}

impl Out {
    /// Reads the fields of a slot's mark. `first` is the first word of the slot, `typed` says whether it holds a number.
    pub fn read(fields: &[&str], at: Span, first: &str, typed: bool) -> Out {
        let field = |i: usize| fields.get(i).copied().unwrap_or("").to_owned();
        let problem = |name, title: String, help: &str| What::Problem { name, title, help: help.to_owned() };
        let what = match (field(0).as_str(), field(1).as_str()) {
            ("figure", _) => What::Figure { id: field(1), ask: ask(&field(2)), bags: field(3) == "yes" },
            ("text", _) => What::Text(field(1)),
            ("fixed", _) => What::Fixed { text: field(1), because: field(2) },
            ("number", _) if !typed => What::Text(field(1)),
            ("number", n) => {
                let help = "link it to a figure, or declare `fixed(\"15 min\", because=\"…\")`";
                problem("slot-number", format!("a slot prints the bare number {n}"), help)
            }
            (_, "clash") => {
                let title = format!("one slot asks for `{}` and for `{}`", field(2), field(3));
                problem("filters-clash", title, "keep one of them, or write two slots")
            }
            (_, "no-figure") => {
                let title = format!("`{}` chooses how a figure is printed, and `{first}` is none", field(2));
                problem("filter-without-figure", title, "take the filter away")
            }
            (_, "inside") => problem("slot-inside", "a slot prints the inside of a figure".to_owned(), "print the figure itself"),
            _ => {
                problem("slot-group", format!("`{first}` is a group or list, not one value"), "go on to a name inside it, or loop over it")
            }
        };
        Out { at, what }
    }
}

/// What a document is printed from.
pub(super) struct Print<'a> {
    pub body: &'a Body,
    pub scope: &'a Scope,
    pub tally: &'a Tally,
    pub voice: Voice,
    pub outs: &'a [Out],
}

/// Parses the Markdown of a whole body. `boxes` is how many write-in boxes stand before it.
pub(super) fn parse(print: &Print, text: &str, offsets: &Offsets, boxes: u32) -> (Doc, Vec<Finding>) {
    let mut state = State { print, doc: Doc::default(), found: Vec::new(), boxes, deep: 0 };
    let blocks = state.body(text, offsets);
    state.doc.blocks = blocks;
    (state.doc, state.found)
}

struct State<'a> {
    print: &'a Print<'a>,
    doc: Doc,
    found: Vec<Finding>,
    boxes: u32,
    deep: usize,
}

/// The events of one text still to be read.
struct Feed<'t> {
    events: VecDeque<(Event<'t>, Range<usize>)>,
    text: &'t str,
    offsets: &'t Offsets,
    /// Set when a task marker was read; taken by the list item that holds it.
    task: bool,
}

impl Feed<'_> {
    fn at_end(&self) -> bool {
        matches!(self.events.front(), None | Some((Event::End(_), _)))
    }

    fn span(&self, at: &Range<usize>) -> Span {
        // Blocks of a list end after their line's end: the place shown is of the words.
        let run = self.text.get(at.clone()).unwrap_or("");
        self.offsets.span(&(at.start..at.start + run.trim_end().len()))
    }
}

fn options() -> Options {
    Options::ENABLE_TABLES | Options::ENABLE_TASKLISTS | Options::ENABLE_GFM | Options::ENABLE_HEADING_ATTRIBUTES
}

impl State<'_> {
    fn body(&mut self, text: &str, offsets: &Offsets) -> Vec<Block> {
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

    /// A fence by its word; `None` when it is a finding.
    fn fence(&mut self, kind: &CodeBlockKind, at: &Range<usize>, place: Span, feed: &mut Feed) -> Option<BlockKind> {
        let mut inner = String::new();
        let mut map = Offsets::new(self.print.body.file);
        while !feed.at_end() {
            let Some((event, r)) = feed.events.pop_front() else { break };
            if let Event::Text(t) = event {
                map.part(feed.offsets, r.start..r.start + t.len().min(r.len()));
                inner.push_str(&t);
                // An end of line that Markdown folded still has to take up its byte in the map.
                let short = t.len().saturating_sub(r.len());
                if short > 0 {
                    let end = usize::try_from(feed.offsets.span(&r).end).unwrap_or(0);
                    map.slot(short, end..end);
                }
            }
        }
        let info = match kind {
            CodeBlockKind::Fenced(info) => self.plain(info),
            CodeBlockKind::Indented => String::new(),
        };
        let mut words = info.split_whitespace();
        let Some(word) = words.next() else { return Some(BlockKind::Code(self.plain(&inner))) };
        if let Some(part) = PARTS.iter().find(|p| **p == word) {
            if let Some(extra) = words.next() {
                self.fence_word(
                    feed,
                    at,
                    extra,
                    format!("`{part}` takes no arguments"),
                    "fence-argument",
                    "write its text on the lines below",
                );
            }
            self.deep += 1;
            let blocks = if self.deep > MOST_DEEP { Vec::new() } else { self.body(&inner, &map) };
            self.deep -= 1;
            return Some(BlockKind::Part(part, blocks));
        }
        let Some((_, keys)) = ASKED.iter().find(|(name, _)| *name == word) else {
            let known: Vec<&str> = PARTS.iter().copied().chain(ASKED.iter().map(|(n, _)| *n)).collect();
            let help = near::help(word, &known);
            self.fence_word(feed, at, word, format!("no fence is called `{word}`"), "fence-unknown", &help);
            return None;
        };
        let mut args = Vec::new();
        for arg in words {
            match arg.split_once('=') {
                Some((key, value)) if keys.contains(&key) && !value.is_empty() => args.push((key.to_owned(), value.to_owned())),
                _ => {
                    let key = arg.split('=').next().unwrap_or(arg);
                    let help =
                        if keys.is_empty() { "it takes no arguments".to_owned() } else { format!("write `{}=…`", keys.join("=…` `")) };
                    let title = format!("`{word}` has no argument `{key}`");
                    self.fence_word(feed, at, arg, title, "fence-argument", &help);
                }
            }
        }
        if !inner.trim().is_empty() {
            let help = "close the fence on the next line and write the text below it";
            let title = format!("text inside `{word}`, which is filled from the tally");
            self.found.push(Finding::new("fence-filled", Severity::Stop, title).at(place, "would not be printed").help(help));
        }
        Some(BlockKind::Asked(word.to_owned(), args))
    }

    fn fence_word(&mut self, feed: &Feed, at: &Range<usize>, word: &str, title: String, name: &'static str, help: &str) {
        let line = feed.text.get(at.clone()).and_then(|t| t.lines().next()).unwrap_or("");
        let here = line.find(word).map_or(at.start..at.start + line.len(), |i| at.start + i..at.start + i + word.len());
        self.found.push(Finding::new(name, Severity::Stop, title).at(feed.offsets.span(&here), "here").help(help));
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

    /// Text with its placeholders put back.
    fn words(&mut self, text: &str, at: &Range<usize>, feed: &Feed, code: bool, out: &mut Vec<Inline>) {
        // Code starts after its backticks; text with entities is not the file's text and keeps the place of the whole.
        let source = feed.text.get(at.clone()).unwrap_or("");
        let shift = if source == text { Some(0) } else { code.then(|| source.find(text)).flatten() };
        let place = |a: usize, b: usize| match shift {
            Some(s) => feed.offsets.span(&(at.start + s + a..at.start + s + b)),
            None => feed.offsets.span(at),
        };
        let mut run = 0;
        let put = |a: usize, b: usize, out: &mut Vec<Inline>| {
            let words = text.get(a..b).unwrap_or("");
            match (words.is_empty(), code) {
                (true, _) => {}
                (false, true) => out.push(Inline::Code(words.to_owned(), Some(place(a, b)))),
                (false, false) => push_text(out, words.to_owned(), place(a, b)),
            }
        };
        for (i, c) in text.char_indices() {
            let Some(n) = holder(c) else { continue };
            put(run, i, out);
            run = i + c.len_utf8();
            if let Some(inline) = self.filled(n) {
                out.push(inline);
            }
        }
        put(run, text.len(), out);
    }

    /// Text with placeholders replaced by what they print: code, link addresses, info words.
    fn plain(&mut self, text: &str) -> String {
        let mut out = String::new();
        for c in text.chars() {
            match holder(c).map(|n| self.filled(n)) {
                None => out.push(c),
                Some(Some(Inline::Text(t, _))) => out.push_str(&t),
                Some(Some(Inline::Value(i) | Inline::Bags(.., i))) => {
                    out.push_str(self.doc.values.get(i).map_or("", |u| u.value.text.as_str()));
                }
                Some(_) => {}
            }
        }
        out
    }

    fn stop(&mut self, name: &'static str, title: String, at: Span, label: &str, help: &str) -> Option<Inline> {
        self.found.push(Finding::new(name, Severity::Stop, title).at(at, label).help(help));
        None
    }

    fn filled(&mut self, n: usize) -> Option<Inline> {
        let print = self.print;
        let out = print.outs.get(n)?;
        let at = out.at;
        match &out.what {
            What::Problem { name, title, help } => self.stop(name, title.clone(), at, "this slot", help),
            What::Text(text) => Some(Inline::Text(text.clone(), Some(at))),
            What::Fixed { text, because } => {
                if because.trim().is_empty() {
                    let title = format!("`{text}` is fixed without a reason");
                    return self.stop("fixed-without-reason", title, at, "a typed number", "say where it comes from: because=\"…\"");
                }
                match parse::read(text) {
                    Ok(_) => Some(Inline::Text(text.trim().replace(' ', &JOIN.to_string()), Some(at))),
                    Err(fault) => self.stop("fixed-unreadable", fault.what, at, "a typed number", &fault.help),
                }
            }
            What::Figure { id, ask, bags } => {
                let Some(value) = print.tally.say(id, *ask, print.voice) else {
                    let title = format!("the figure `{id}` was not worked for {}", print.scope.subject);
                    return self.stop("slot-unfilled", title, at, "prints nothing", "give what it is worked from, or take the slot away");
                };
                let index = self.doc.values.len();
                if *bags {
                    let counted = value.unit.is_some_and(|u| u.symbol() == "bag").then(|| value.number.clone()).flatten();
                    let Some(number) = counted else {
                        let title = format!("`bags` draws a count of bags, this prints `{}`", value.text);
                        return self.stop("bags-of-what", title, at, "drawn here", "use it on mortar or additive");
                    };
                    let whole = number.floor();
                    let half = whole < number;
                    let count = u32::try_from(whole.numer()).unwrap_or(0);
                    self.doc.values.push(Use { value, at });
                    return Some(Inline::Bags(count, half, self.bag_label(id), index));
                }
                self.doc.values.push(Use { value, at });
                Some(Inline::Value(index))
            }
        }
    }

    /// Mass of one bag of what a figure counts.
    fn bag_label(&self, id: &str) -> String {
        let last = id.rsplit('.').next().unwrap_or("");
        let path = match last {
            l if l.starts_with("mortar") => "mix.mortar_bag",
            l if l.starts_with("additive") => "mix.additive_bag",
            _ => return String::new(),
        };
        match self.print.scope.root.get(path) {
            Some(Slot::Figure(id)) => self.print.tally.say(id, Ask::Own, self.print.voice).map(|v| v.text).unwrap_or_default(),
            _ => String::new(),
        }
    }
}

fn holder(c: char) -> Option<usize> {
    u32::from(c).checked_sub(HOLDER).filter(|n| *n < 0x1_0000).and_then(|n| usize::try_from(n).ok())
}

/// Adds text, joined to the text before it when both are the file's own characters side by side.
fn push_text(out: &mut Vec<Inline>, words: String, at: Span) {
    let copied = |text: &str, at: &Span| usize::try_from(at.end.saturating_sub(at.start)).is_ok_and(|n| n == text.len());
    if let Some(Inline::Text(last, Some(place))) = out.last_mut() {
        if place.end == at.start && copied(last, place) && copied(&words, &at) {
            last.push_str(&words);
            place.end = at.end;
            return;
        }
    }
    out.push(Inline::Text(words, Some(at)));
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
