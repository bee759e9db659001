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
