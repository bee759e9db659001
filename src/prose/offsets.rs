//! From a place in made-up text back to the author's file.

use std::ops::Range;

use crate::source::Span;

/// Where one stretch of the text comes from.
#[derive(Clone, Debug)]
enum Origin {
    /// Copied from the file, byte for byte, starting here.
    Copy(usize),
    /// Put in by the tag that stands here.
    Slot(Range<usize>),
}

/// Stretches of a text in order, each with its origin in the file.
#[derive(Clone, Debug, Default)]
pub(super) struct Offsets {
    file: u32,
    stretches: Vec<(Range<usize>, Origin)>,
}

impl Offsets {
    /// An empty map of one file.
    pub fn new(file: u32) -> Offsets {
        Offsets { file, stretches: Vec::new() }
    }

    fn end(&self) -> usize {
        self.stretches.last().map_or(0, |(at, _)| at.end)
    }

    /// Adds `len` bytes copied from the file at `start`.
    pub fn copy(&mut self, len: usize, start: usize) {
        let end = self.end();
        self.stretches.push((end..end + len, Origin::Copy(start)));
    }

    /// Adds `len` bytes put in by the tag at `tag` of the file.
    pub fn slot(&mut self, len: usize, tag: Range<usize>) {
        let end = self.end();
        self.stretches.push((end..end + len, Origin::Slot(tag)));
    }

    /// Adds a part of another map.
    pub fn part(&mut self, other: &Offsets, at: Range<usize>) {
        for (r, from) in other.stretches.iter().filter(|(r, _)| r.start < at.end && r.end > at.start) {
            let (a, b) = (r.start.max(at.start), r.end.min(at.end));
            match from {
                Origin::Copy(start) => self.copy(b - a, start + (a - r.start)),
                Origin::Slot(tag) => self.slot(b - a, tag.clone()),
            }
        }
    }

    fn find(&self, pos: usize) -> Option<&(Range<usize>, Origin)> {
        let i = self.stretches.partition_point(|(r, _)| r.end <= pos);
        self.stretches.get(i).or_else(|| self.stretches.last())
    }

    fn start_of(&self, pos: usize) -> usize {
        match self.find(pos) {
            Some((r, Origin::Copy(start))) => start + pos.saturating_sub(r.start).min(r.len()),
            Some((_, Origin::Slot(tag))) => tag.start,
            None => 0,
        }
    }

    fn end_of(&self, pos: usize) -> usize {
        match self.find(pos.saturating_sub(1)) {
            Some((r, Origin::Copy(start))) => start + pos.saturating_sub(r.start).min(r.len()),
            Some((_, Origin::Slot(tag))) => tag.end,
            None => 0,
        }
    }

    /// The place of a range. A range that crosses the seam of a loop covers the whole of what it came from.
    pub fn span(&self, at: &Range<usize>) -> Span {
        let start = self.start_of(at.start);
        let end = if at.end > at.start { self.end_of(at.end) } else { start };
        let (start, end) = if end < start { (end, self.start_of(at.start)) } else { (start, end) };
        span(self.file, start..end)
    }
}

/// A span from file bytes.
pub(super) fn span(file: u32, at: Range<usize>) -> Span {
    let short = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    Span { file, start: short(at.start), end: short(at.end) }
}
