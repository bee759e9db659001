//! A run of card faces: one document, one face a page.

use std::sync::OnceLock;

use sha2::{Digest, Sha256};
use typst::ecow::EcoVec;
use typst::model::Document;
use typst_layout::PagedDocument;

use super::fit::{self, FaceFit};
use super::payload::{Face, Run};
use super::pdf::{self, Identity};
use super::settle;
use super::world::{PressError, Room, Templates};

/// A run as it came out: its bytes, how each face fitted, and the pages, so that
/// single cards can be cut out of it without setting them again.
pub struct Pressed {
    /// The file of the whole run.
    pub pdf: Vec<u8>,
    /// How each face fitted, in the order of the run.
    pub faces: Vec<FaceFit>,
    /// Pages of the run.
    pub pages: usize,
    pub(super) doc: PagedDocument,
    date: [u16; 3],
}

impl Pressed {
    /// The faces that do not fit.
    pub fn overflowing(&self) -> impl Iterator<Item = &FaceFit> {
        self.faces.iter().filter(|f| !f.fits())
    }

    /// The index of a face by its id.
    pub fn face(&self, id: &str) -> Option<usize> {
        self.faces.iter().position(|f| f.id == id)
    }
}

impl Run {
    /// The same run with other faces.
    pub fn with(&self, faces: Vec<Face>) -> Run {
        let (kind, paper, title, lang) = (self.kind.clone(), self.paper.clone(), self.title.clone(), self.lang.clone());
        Run { kind, paper, title, lang, faces, ..*self }
    }
}

/// Sets a run with the embedded templates. An overflowing face is no error here:
/// it is told in [`Pressed::faces`].
pub fn cards(run: &Run, attach: Option<&[u8]>) -> Result<Pressed, Vec<PressError>> {
    cards_with(&Templates::embedded(), run, attach)
}

/// Sets a run with templates that a job folder may have replaced.
pub fn cards_with(templates: &Templates, run: &Run, attach: Option<&[u8]>) -> Result<Pressed, Vec<PressError>> {
    let (room, doc) = set(templates, run)?;
    let faces = fit::faces(&doc);
    let identity = Identity { title: &run.title, lang: Some(&run.lang), date: run.date };
    let pages: EcoVec<_> = doc.pages().iter().cloned().collect();
    let whole = pdf::assemble(pages, doc.info(), &identity, attach)?;
    let bytes = pdf::write(&whole, &identity, &room)?;
    Ok(Pressed { pdf: bytes, faces, pages: doc.pages().len(), doc, date: run.date })
}

/// Sets a run and says how its faces fitted, without making a file of it.
///
/// # Errors
/// What the typesetter says.
pub fn measured(run: &Run) -> Result<Vec<FaceFit>, Vec<PressError>> {
    let fits = set(&Templates::embedded(), run).map(|(_, doc)| fit::faces(&doc));
    // What a few runs ago was remembered is of no use to thousands of faces more, and fills the memory.
    typst::comemo::evict(2);
    fits
}

/// A number over everything that decides how a face comes out: its own payload, what its run says of all, and the press.
///
/// # Errors
/// What could not be written as JSON.
pub fn face_digest(run: &Run, face: &Face) -> Result<String, PressError> {
    let alone = run.with(vec![face.clone()]);
    let payload = serde_json::to_vec(&alone).map_err(|e| PressError::plain(e.to_string()))?;
    let mut hash = Sha256::new();
    hash.update(press_digest());
    hash.update(&payload);
    Ok(hash.finalize().iter().map(|byte| format!("{byte:02x}")).collect())
}

/// A number over the embedded templates, over what settles and measures a face, and over the versions of the typesetter and
/// of the letters: a program built anew between two releases must not believe the old one.
fn press_digest() -> &'static [u8] {
    static DIGEST: OnceLock<Vec<u8>> = OnceLock::new();
    DIGEST.get_or_init(|| {
        let templates = Templates::embedded();
        let own = [include_str!("fit.rs"), include_str!("settle.rs"), include_str!("../../Cargo.lock")];
        let mut hash = Sha256::new();
        for part in templates.list().flat_map(|(path, text)| [path, text]).chain(own) {
            hash.update((part.len() as u64).to_le_bytes());
            hash.update(part.as_bytes());
        }
        hash.finalize().to_vec()
    })
}

/// Compiles a run and goes no further.
pub(super) fn set(templates: &Templates, run: &Run) -> Result<(Room, PagedDocument), Vec<PressError>> {
    let data = serde_json::to_vec(&settle::run(run)).map_err(|e| vec![PressError::plain(e.to_string())])?;
    let room = Room::new(templates, "cards.typ", vec![("run.json", data)], run.date).map_err(|e| vec![e])?;
    let doc = pdf::compile(&room)?;
    Ok((room, doc))
}

/// A document of its own made of the given faces of a run (indices into
/// [`Pressed::faces`]), in that order, each face at most once.
pub fn single(pressed: &Pressed, faces: &[usize], title: &str, attach: Option<&[u8]>) -> Result<Vec<u8>, Vec<PressError>> {
    let mut pages = EcoVec::new();
    for &n in faces {
        let Some(face) = pressed.faces.get(n) else {
            return Err(vec![PressError::plain(format!("the run has no face number {n}"))]);
        };
        for page in pressed.doc.pages().iter().skip(face.page).take(face.pages) {
            let mut page = page.clone();
            page.number = pages.len() as u64 + 1;
            pages.push(page);
        }
    }
    let identity = Identity { title, lang: None, date: pressed.date };
    let doc = pdf::assemble(pages, pressed.doc.info(), &identity, attach)?;
    let room = Room::new(&Templates::embedded(), "cards.typ", Vec::new(), pressed.date).map_err(|e| vec![e])?;
    pdf::write(&doc, &identity, &room)
}
