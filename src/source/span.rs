//! Places in the author's files.

/// A byte range in one file of the run. File numbers are given by [`super::Folder`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Span {
    /// Number of the file.
    pub file: u32,
    /// First byte.
    pub start: u32,
    /// Byte after the last.
    pub end: u32,
}

impl Span {
    /// True if it covers so many bytes: then a text of that length is the file's own, letter for letter.
    pub fn spans(self, bytes: usize) -> bool {
        usize::try_from(self.end.saturating_sub(self.start)).is_ok_and(|n| n == bytes)
    }

    /// Some of its bytes, counted from its first.
    pub fn part(self, from: usize, to: usize) -> Span {
        let offset = |n: usize| self.start.saturating_add(u32::try_from(n).unwrap_or(u32::MAX));
        Span { start: offset(from), end: offset(to), ..self }
    }
}
