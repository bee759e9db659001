//! The same papers from dumped inputs with the bare typesetter: what the benchmark compares with.
//!
//! `bare DUMP OUT` reads what `hodbook --dump DUMP issue` wrote and sets it: one thread a paper, same engine, same
//! fonts, same PDF/UA-1, same attachments, cards cut out of their run by pages. It knows nothing else.
#![allow(missing_docs, clippy::unwrap_used, clippy::disallowed_methods, reason = "a program of one page, for one purpose")]

use std::collections::BTreeMap;
use std::path::Path;
use std::sync::OnceLock;
use std::{env, fs, thread};

use typst::diag::{FileError, FileResult};
use typst::ecow::EcoVec;
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::model::Document as _;
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::{Page, PagedDocument};
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

static LIBRARY: OnceLock<LazyHash<Library>> = OnceLock::new();
static FONTS: OnceLock<(LazyHash<FontBook>, Vec<Font>)> = OnceLock::new();

fn fonts() -> &'static (LazyHash<FontBook>, Vec<Font>) {
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
        (LazyHash::new(FontBook::from_fonts(&faces)), faces)
    })
}

struct Memory {
    main: FileId,
    files: BTreeMap<String, Bytes>,
}

impl Memory {
    fn of(templates: &BTreeMap<String, Bytes>, main: &str, name: &str, data: Vec<u8>) -> Memory {
        let mut files = templates.clone();
        files.insert(name.to_owned(), Bytes::new(data));
        Memory { main: RootedPath::new(VirtualRoot::Project, VirtualPath::new(main).unwrap()).intern(), files }
    }

    fn set(&self) -> PagedDocument {
        typst::compile::<PagedDocument>(self).output.unwrap()
    }
}

impl World for Memory {
    fn library(&self) -> &LazyHash<Library> {
        LIBRARY.get_or_init(|| LazyHash::new(Library::default()))
    }
    fn book(&self) -> &LazyHash<FontBook> {
        &fonts().0
    }
    fn main(&self) -> FileId {
        self.main
    }
    fn source(&self, id: FileId) -> FileResult<Source> {
        let text = self.file(id)?;
        Ok(Source::new(id, String::from_utf8(text.to_vec()).unwrap()))
    }
    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let name = id.get().vpath().get_without_slash();
        self.files.get(name).cloned().ok_or_else(|| FileError::NotFound(name.into()))
    }
    fn font(&self, index: usize) -> Option<Font> {
        fonts().1.get(index).cloned()
    }
    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

fn main() {
    let words: Vec<String> = env::args().collect();
    let (dump, out) = (Path::new(&words[1]), Path::new(&words[2]));
    let read = |name: &str| fs::read(dump.join(name)).unwrap();
    let mut templates = BTreeMap::new();
    for folder in ["", "drawings/"] {
        for entry in fs::read_dir(dump.join("templates").join(folder)).unwrap().flatten().filter(|e| e.path().is_file()) {
            let name = format!("{folder}{}", entry.file_name().to_string_lossy());
            templates.insert(name, Bytes::new(fs::read(entry.path()).unwrap()));
        }
    }
    let papers: Vec<serde_json::Value> = serde_json::from_slice(&read("papers.json")).unwrap();
    thread::scope(|scope| {
        for paper in &papers {
            let (templates, read) = (&templates, &read);
            scope.spawn(move || {
                let text = |key: &str| paper[key].as_str().unwrap();
                let doc = Memory::of(templates, text("template"), text("name"), read(text("data"))).set();
                let write = |pages: EcoVec<Page>, attach: &str, path: &str| {
                    let carrier = Memory::of(templates, "attach.typ", "printed-values.json", read(attach)).set();
                    let mut pages = pages;
                    pages.make_mut()[0].frame.prepend_frame(typst::layout::Point::zero(), carrier.pages()[0].frame.clone());
                    let options = PdfOptions {
                        ident: Smart::Custom(path.to_owned()),
                        standards: PdfStandards::new(&[PdfStandard::Ua_1]).unwrap(),
                        ..PdfOptions::default()
                    };
                    let pdf = typst_pdf::pdf(&PagedDocument::new(pages, doc.info().clone()), &options).unwrap();
                    fs::create_dir_all(out.join(path).parent().unwrap()).unwrap();
                    fs::write(out.join(path), pdf).unwrap();
                };
                if let Some(path) = paper["out"].as_str() {
                    write(doc.pages().iter().cloned().collect(), text("attach"), path);
                }
                for cut in paper["cuts"].as_array().unwrap() {
                    let pages = cut["pages"].as_array().unwrap().iter().map(|n| doc.pages()[n.as_u64().unwrap() as usize].clone());
                    write(pages.collect(), cut["attach"].as_str().unwrap(), cut["out"].as_str().unwrap());
                }
            });
        }
    });
}
