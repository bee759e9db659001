//! Fences with a word of ours: parts that hold Markdown, drawings and tables asked for by name.

use std::ops::Range;

use pulldown_cmark::{CodeBlockKind, Event};

use crate::finding::{Finding, Severity};
use crate::source::Span;

use super::block::BlockKind;
use super::markdown::{Feed, MOST_DEEP, State};
use super::near;
use super::offsets::Offsets;

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

impl State<'_> {
    /// A fence by its word; `None` when it is a finding.
    pub(super) fn fence(&mut self, kind: &CodeBlockKind, at: &Range<usize>, place: Span, feed: &mut Feed) -> Option<BlockKind> {
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
                    let help = match near::nearest(key, keys.iter().copied()) {
                        Some(near) if near != key => format!("did you mean `{near}=…`?"),
                        _ if keys.is_empty() => "it takes no arguments".to_owned(),
                        _ => format!("write `{}=…`", keys.join("=…` `")),
                    };
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
}
