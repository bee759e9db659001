//! Texts of a document as they will be printed, case and marks kept, each with its place.

use crate::job::{Job, Text};
use crate::prose::block::{Block, BlockKind, Doc, Inline};
use crate::source::Span;

use super::Seen;

/// A run of text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::sound) struct Run {
    /// The text.
    pub text: String,
    /// Its place: of the characters, or of the slot that prints it.
    pub at: Span,
    /// True if the place is that of the characters.
    pub exact: bool,
}

/// A word of a run: itself, its place, and what stands between it and the word before.
pub(in crate::sound) type Placed<'r> = (&'r str, Span, &'r str);

impl Run {
    /// A text outside a body.
    pub fn of(text: &Text) -> Run {
        Run { text: text.text.clone(), at: text.at, exact: text.at.spans(text.text.len()) }
    }

    /// The place of a part of it.
    pub fn part(&self, from: usize, to: usize) -> Span {
        if self.exact { self.at.part(from, to) } else { self.at }
    }

    /// The first place of a mark or word, anywhere in it.
    pub fn find(&self, what: &str) -> Option<Span> {
        self.text.find(what).map(|i| self.part(i, i + what.len()))
    }

    /// Its words; apostrophes and hyphens stay inside, points do not.
    pub fn words(&self) -> Vec<Placed<'_>> {
        let inside = |c: char| c.is_alphanumeric() || matches!(c, '\'' | '’' | '-');
        let mut out = Vec::new();
        let (mut from, mut end) = (None, 0);
        for (i, c) in self.text.char_indices().chain([(self.text.len(), ' ')]) {
            match (inside(c), from) {
                (true, None) => from = Some(i),
                (false, Some(start)) => {
                    let gap = self.text.get(end..start).unwrap_or("");
                    out.extend(self.text.get(start..i).map(|w| (w, self.part(start, i), gap)));
                    (from, end) = (None, i);
                }
                _ => {}
            }
        }
        out
    }
}

/// The runs of a rendered text and of its title.
pub(super) fn of(seen: &Seen<'_>) -> Vec<Run> {
    let mut out = vec![Run::of(&seen.edition.title)];
    blocks(seen.doc.blocks(), &mut out);
    out
}

/// Proper names that sites and the company print: they are authored outside every text.
pub(super) fn of_names(job: &Job) -> Vec<Run> {
    let company = job.company.iter().map(|c| &c.name);
    let surfaces = job.sites.iter().flat_map(|s| &s.surfaces).flat_map(|s| s.what.iter().map(|(_, t)| t).chain([&s.code]));
    let sites = job.sites.iter().flat_map(|s| [&s.name, &s.code]);
    company.chain(sites).chain(surfaces).map(Run::of).collect()
}

/// Names of bags that the mixes print: they are authored outside every text.
pub(super) fn of_mixes(job: &Job) -> Vec<Run> {
    let bags = job.mixes.iter().flat_map(|m| [&m.additive, &m.mortar]);
    bags.flat_map(|b| b.class.iter().chain(b.names.iter().map(|(_, t)| t))).map(Run::of).collect()
}

fn blocks(all: &[Block], out: &mut Vec<Run>) {
    for block in all {
        match &block.kind {
            BlockKind::Heading(_, words, _) | BlockKind::Para(words) => inlines(words, out),
            BlockKind::Steps(_, items) | BlockKind::List(items) => items.iter().for_each(|item| blocks(item, out)),
            BlockKind::Boxes(boxes) => boxes.iter().for_each(|(_, words)| inlines(words, out)),
            BlockKind::Table(_, head, rows) => head.iter().chain(rows.iter().flatten()).for_each(|cell| inlines(cell, out)),
            BlockKind::Quote(_, inner) | BlockKind::Part(_, inner) => blocks(inner, out),
            BlockKind::Rule | BlockKind::Code(_) | BlockKind::Asked(..) => {}
        }
    }
}

fn inlines(all: &[Inline], out: &mut Vec<Run>) {
    for inline in all {
        match inline {
            Inline::Text(text, Some(at)) | Inline::Code(text, Some(at)) => out.push(Run::of(&Text { text: text.clone(), at: *at })),
            Inline::Strong(inner) | Inline::Em(inner) | Inline::Link(_, inner) => inlines(inner, out),
            _ => {}
        }
    }
}

/// How many write-in boxes a document holds.
pub(super) fn boxes(doc: &Doc) -> usize {
    fn count(all: &[Block]) -> usize {
        let one = |block: &Block| match &block.kind {
            BlockKind::Boxes(boxes) => boxes.len(),
            BlockKind::Steps(_, items) | BlockKind::List(items) => items.iter().map(|i| count(i)).sum(),
            BlockKind::Quote(_, inner) | BlockKind::Part(_, inner) => count(inner),
            // A sheet of rows to fill in is boxes and nothing else.
            BlockKind::Asked(name, _) if name == "batch-log" => 1,
            _ => 0,
        };
        all.iter().map(one).sum()
    }
    count(doc.blocks())
}
