//! The typesetter's world: memory only.
//!
//! Fonts and templates are part of the binary, the payload is a virtual file, and
//! everything else is refused: packages, paths, the clock.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World, WorldExt};

macro_rules! embed {
    ($($path:literal),* $(,)?) => {
        [$(($path, include_str!(concat!("../../templates/", $path)))),*]
    };
}

const EMBEDDED: [(&str, &str); 14] = embed![
    "cards.typ",
    "book.typ",
    "attach.typ",
    "theme.typ",
    "shapes.typ",
    "inline.typ",
    "blocks.typ",
    "furniture.typ",
    "drawings.typ",
    "drawings/ladder.typ",
    "drawings/batch-log.typ",
    "drawings/elevation.typ",
    "drawings/worksheet.typ",
    "drawings/in-force.typ",
];

/// The page templates: the embedded ones, some perhaps replaced by a job folder's.
#[derive(Clone, Debug)]
pub struct Templates {
    files: BTreeMap<String, String>,
}

impl Templates {
    /// The embedded templates.
    pub fn embedded() -> Templates {
        let files = EMBEDDED.iter().map(|(p, s)| ((*p).to_owned(), (*s).to_owned())).collect();
        Templates { files }
    }
    /// Replaces or adds one template; `path` is relative to the template folder.
    pub fn replace(&mut self, path: &str, text: &str) {
        self.files.insert(path.to_owned(), text.to_owned());
    }
    /// Paths and texts of the embedded templates, for a job folder that wants copies.
    pub fn list(&self) -> impl Iterator<Item = (&str, &str)> {
        self.files.iter().map(|(p, s)| (p.as_str(), s.as_str()))
    }
}

impl Default for Templates {
    fn default() -> Templates {
        Templates::embedded()
    }
}

/// A complaint of the typesetter, with the place it points at. `file` is a
/// template, or the virtual payload file; it is empty where there is no place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PressError {
    /// File it points into.
    pub file: String,
    /// Line, from 1; 0 without a place.
    pub line: usize,
    /// Column, from 1; 0 without a place.
    pub column: usize,
    /// What is wrong.
    pub message: String,
    /// What may help.
    pub hints: Vec<String>,
}

impl PressError {
    /// A complaint without a place.
    pub fn plain(message: impl Into<String>) -> PressError {
        PressError { file: String::new(), line: 0, column: 0, message: message.into(), hints: Vec::new() }
    }
}

impl std::fmt::Display for PressError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.file.is_empty() {
            write!(f, "{}", self.message)
        } else {
            write!(f, "{}:{}:{}: {}", self.file, self.line, self.column, self.message)
        }
    }
}

impl std::error::Error for PressError {}

struct Fonts {
    book: LazyHash<FontBook>,
    faces: Vec<Font>,
}

/// Loaded once for the life of the process.
fn fonts() -> &'static Fonts {
    static FONTS: OnceLock<Fonts> = OnceLock::new();
    FONTS.get_or_init(|| {
        let data: [&'static [u8]; 6] = [
            notosans::REGULAR_TTF,
            notosans::BOLD_TTF,
            notosans::ITALIC_TTF,
            notosans::BOLD_ITALIC_TTF,
            dejavu::sans::regular(),
            dejavu::sans::bold(),
        ];
        let faces: Vec<Font> = data.into_iter().flat_map(|d| Font::iter(Bytes::new(d))).collect();
        Fonts { book: LazyHash::new(FontBook::from_fonts(&faces)), faces }
    })
}

pub(super) fn faces() -> &'static [Font] {
    &fonts().faces
}

/// The notices that go wherever the embedded fonts go.
pub fn font_notices() -> &'static [(&'static str, &'static str)] {
    &[
        ("Noto Sans", "Copyright 2012 Google Inc. SIL Open Font License 1.1."),
        ("DejaVu Sans", "Copyright 2003 Bitstream, Inc. Bitstream Vera licence; DejaVu changes are in the public domain."),
    ]
}

fn library() -> &'static LazyHash<Library> {
    static LIBRARY: OnceLock<LazyHash<Library>> = OnceLock::new();
    LIBRARY.get_or_init(|| LazyHash::new(Library::default()))
}

/// The embedded templates, parsed once for the life of the process: every card and attachment is set with them.
fn parsed() -> &'static BTreeMap<&'static str, Source> {
    static PARSED: OnceLock<BTreeMap<&'static str, Source>> = OnceLock::new();
    PARSED.get_or_init(|| EMBEDDED.iter().filter_map(|(p, s)| Some((*p, Source::new(intern(p).ok()?, (*s).to_owned())))).collect())
}

/// One compile: templates, the payload and its date.
pub(super) struct Room {
    main: FileId,
    sources: BTreeMap<String, Source>,
    data: BTreeMap<String, Bytes>,
    date: Option<Datetime>,
}

fn intern(path: &str) -> Result<FileId, PressError> {
    let path = VirtualPath::new(path).map_err(|_| PressError::plain(format!("`{path}` is no template path")))?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

impl Room {
    pub fn new(templates: &Templates, main: &str, data: Vec<(&str, Vec<u8>)>, [year, month, day]: [u16; 3]) -> Result<Room, PressError> {
        let mut sources = BTreeMap::new();
        for (path, text) in templates.list() {
            let source = match parsed().get(path).filter(|s| s.text() == text) {
                Some(source) => source.clone(),
                None => Source::new(intern(path)?, text.to_owned()),
            };
            sources.insert(path.to_owned(), source);
        }
        Ok(Room {
            main: intern(main)?,
            sources,
            data: data.into_iter().map(|(p, d)| (p.to_owned(), Bytes::new(d))).collect(),
            date: Datetime::from_ymd(i32::from(year), u8::try_from(month).unwrap_or(0), u8::try_from(day).unwrap_or(0)),
        })
    }

    /// Turns the typesetter's complaints into ours, each at the place it names.
    pub fn errors(&self, list: impl IntoIterator<Item = SourceDiagnostic>) -> Vec<PressError> {
        list.into_iter().map(|d| self.error(d)).collect()
    }
    fn error(&self, d: SourceDiagnostic) -> PressError {
        let mut error = PressError::plain(d.message.as_str());
        error.hints = d.hints.iter().map(|h| h.v.to_string()).collect();
        if let (Some(id), Some(range)) = (d.span.id(), self.range(d.span)) {
            error.file = id.get().vpath().get_without_slash().to_owned();
            if let Ok(source) = self.source(id)
                && let Some((line, column)) = source.lines().byte_to_line_column(range.start)
            {
                error.line = line + 1;
                error.column = column + 1;
            }
        }
        error
    }
}

impl World for Room {
    fn library(&self) -> &LazyHash<Library> {
        library()
    }
    fn book(&self) -> &LazyHash<FontBook> {
        &fonts().book
    }
    fn main(&self) -> FileId {
        self.main
    }
    fn source(&self, id: FileId) -> FileResult<Source> {
        let path = id.get();
        match path.root() {
            VirtualRoot::Project => {}
            VirtualRoot::Package(_) => return Err(FileError::AccessDenied),
        }
        let name = path.vpath().get_without_slash();
        self.sources.get(name).cloned().ok_or_else(|| FileError::NotFound(name.into()))
    }
    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let path = id.get();
        match path.root() {
            VirtualRoot::Project => {}
            VirtualRoot::Package(_) => return Err(FileError::AccessDenied),
        }
        let name = path.vpath().get_without_slash();
        self.data.get(name).cloned().ok_or_else(|| FileError::NotFound(name.into()))
    }
    fn font(&self, index: usize) -> Option<Font> {
        fonts().faces.get(index).cloned()
    }
    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        self.date
    }
}
