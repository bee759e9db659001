//! One file of the job folder: its text as on disk, and places in it.

use std::sync::Arc;

use super::Span;

/// A file of the run. The text is the disk's, byte order mark and line ends included, so that an offset
/// here is an offset there.
#[derive(Clone, Debug)]
pub struct File {
    /// Number in the run; [`Span::file`] refers to it.
    pub id: u32,
    /// Path below the job folder, with forward slashes.
    pub path: String,
    /// The text; only the part before the first bad byte if the file is not UTF-8.
    pub text: Arc<str>,
    /// False if the text must not be read (not UTF-8, empty, too large): a fault of the folder says why.
    pub whole: bool,
}

impl File {
    /// The first folder of the path; empty for a file that lies in the job folder itself.
    pub fn folder(&self) -> &str {
        self.path.split_once('/').map_or("", |(folder, _)| folder)
    }

    /// File name without `.md` and without the language: `mud` for `cards/mud.es.md`.
    pub fn stem(&self) -> &str {
        let name = self.name();
        name.split_once('.').map_or(name, |(stem, _)| stem)
    }

    /// The language in the file name: `es` for `cards/mud.es.md`, `None` for `cards/mud.md`.
    pub fn language(&self) -> Option<&str> {
        let (_, rest) = self.name().split_once('.')?;
        rest.rsplit_once('.').map(|(language, _)| language)
    }

    fn name(&self) -> &str {
        self.path.rsplit('/').next().unwrap_or(&self.path)
    }

    /// Line and column of a byte offset, both from 1; columns count characters and skip a byte order mark.
    /// An offset past the end, or inside a character, is moved back to one that exists.
    pub fn place(&self, offset: u32) -> (usize, usize) {
        let before = floor(&self.text, offset);
        let line = before.bytes().filter(|b| *b == b'\n').count() + 1;
        let start = before.rfind('\n').map_or(0, |i| i + 1);
        let column = before.get(start..).unwrap_or("").chars().filter(|c| *c != '\u{feff}').count() + 1;
        (line, column)
    }

    /// The place of a byte range.
    pub fn span(&self, start: usize, end: usize) -> Span {
        let clamp = |n: usize| u32::try_from(n.min(self.text.len())).unwrap_or(u32::MAX);
        Span { file: self.id, start: clamp(start), end: clamp(end.max(start)) }
    }

    /// The text of a place; empty if the place is not in this file.
    pub fn slice(&self, span: Span) -> &str {
        self.text.get(span.start as usize..span.end as usize).unwrap_or("")
    }
}

fn floor(text: &str, offset: u32) -> &str {
    let mut end = (offset as usize).min(text.len());
    while !text.is_char_boundary(end) {
        end -= 1;
    }
    text.get(..end).unwrap_or("")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(text: &str) -> File {
        File { id: 3, path: "cards/mud.es.md".into(), text: text.into(), whole: true }
    }

    #[test]
    fn columns_count_characters_from_one() {
        let f = file("\u{feff}---\r\nname: añadir 1 gal\r\n");
        assert_eq!(f.place(3), (1, 1));
        let at = f.text.find("1 gal").unwrap();
        assert_eq!(f.place(u32::try_from(at).unwrap()), (2, 14));
        assert_eq!(f.place(9999), (3, 1));
        assert_eq!((f.folder(), f.stem(), f.language()), ("cards", "mud", Some("es")));
    }
}
