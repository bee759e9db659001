//! The bound handbook.

use typst::ecow::EcoVec;
use typst::model::Document;

use super::fit;
use super::payload::Book;
use super::pdf::{self, Identity};
use super::settle;
use super::world::{PressError, Room, Templates};

/// A book as it came out.
pub struct Bound {
    /// The file.
    pub pdf: Vec<u8>,
    /// Its pages.
    pub pages: usize,
    /// The text of each page in reading order, for reading printed values back.
    pub texts: Vec<String>,
    bare: Vec<String>,
    /// Texts printed over one another, with the index of their page.
    pub overlaps: Vec<(usize, String, String)>,
    /// The smallest type placed, in points, running heads and footers included.
    pub smallest_pt: f64,
}

impl Bound {
    /// True if the words or the value stand on some page, white space aside.
    pub fn shows(&self, words: &str) -> bool {
        let words = fit::bare(words);
        self.bare.iter().any(|t| t.contains(&words))
    }
}

/// Sets a book with the embedded templates.
pub fn book(book: &Book, attach: Option<&[u8]>) -> Result<Bound, Vec<PressError>> {
    book_with(&Templates::embedded(), book, attach)
}

/// Sets a book with templates that a job folder may have replaced.
pub fn book_with(templates: &Templates, book: &Book, attach: Option<&[u8]>) -> Result<Bound, Vec<PressError>> {
    let data = serde_json::to_vec(&settle::book(book)).map_err(|e| vec![PressError::plain(e.to_string())])?;
    let room = Room::new(templates, "book.typ", vec![("book.json", data)], book.date).map_err(|e| vec![e])?;
    let doc = pdf::compile(&room)?;
    let placed: Vec<_> = doc.pages().iter().map(|p| fit::texts(&p.frame)).collect();
    let smallest_pt = placed.iter().flatten().filter(|p| !p.ghost).map(|p| p.size).fold(f64::INFINITY, f64::min);
    let overlaps =
        placed.iter().enumerate().flat_map(|(n, page)| fit::overlaps(page.iter()).into_iter().map(move |(a, b)| (n, a, b))).collect();
    let texts: Vec<String> = placed.iter().map(|page| page.iter().map(|p| p.text.as_str()).collect::<Vec<_>>().join("\n")).collect();
    let identity = Identity { title: &book.title, lang: Some(&book.lang), date: book.date };
    let pages: EcoVec<_> = doc.pages().iter().cloned().collect();
    let whole = pdf::assemble(pages, doc.info(), &identity, attach)?;
    let bytes = pdf::write(&whole, &identity, &room)?;
    let bare = texts.iter().map(|t| fit::bare(t)).collect();
    Ok(Bound { pdf: bytes, pages: doc.pages().len(), texts, bare, overlaps, smallest_pt })
}
