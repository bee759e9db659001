//! Pages to bytes.
//!
//! Always under the typesetter's PDF/UA-1 checks: they also refuse a missing
//! glyph, which would otherwise print in silence. Identity and date are fixed, so
//! the same pages give the same bytes.

use typst::diag::Warned;
use typst::ecow::EcoVec;
use typst::foundations::{Datetime, Smart};
use typst::model::DocumentInfo;
use typst_layout::{Page, PagedDocument};
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use super::world::{PressError, Room, Templates};

/// Sets the document of one room.
pub(super) fn compile(room: &Room) -> Result<PagedDocument, Vec<PressError>> {
    // Nothing is evicted from the typesetter's cache here: one process sets one job, and every paper of it shares pages.
    let Warned { output, .. } = typst::compile::<PagedDocument>(room);
    output.map_err(|errors| room.errors(errors))
}

/// What a document calls itself.
pub(super) struct Identity<'a> {
    pub title: &'a str,
    pub lang: Option<&'a str>,
    pub date: [u16; 3],
}

/// A new document from pages of others, with its own values attached.
pub(super) fn assemble(
    mut pages: EcoVec<Page>,
    info: &DocumentInfo,
    identity: &Identity,
    attach: Option<&[u8]>,
) -> Result<PagedDocument, Vec<PressError>> {
    if let (Some(bytes), Some(first)) = (attach, pages.make_mut().first_mut()) {
        let carrier = carrier(bytes, identity.date)?;
        first.frame.prepend_frame(typst::layout::Point::zero(), carrier);
    }
    let mut info = info.clone();
    info.title = Some(identity.title.into());
    let [year, month, day] = identity.date;
    let date = Datetime::from_ymd(i32::from(year), u8::try_from(month).unwrap_or(0), u8::try_from(day).unwrap_or(0));
    info.date = Smart::Custom(date);
    Ok(PagedDocument::new(pages, info))
}

/// The frame that carries an attachment; it shows nothing.
fn carrier(bytes: &[u8], date: [u16; 3]) -> Result<typst::layout::Frame, Vec<PressError>> {
    let room = Room::new(&Templates::embedded(), "attach.typ", vec![("printed-values.json", bytes.to_vec())], date).map_err(|e| vec![e])?;
    let doc = compile(&room)?;
    doc.pages().first().map(|p| p.frame.clone()).ok_or_else(|| vec![PressError::plain("the attachment has no page")])
}

/// Writes the bytes.
pub(super) fn write(doc: &PagedDocument, identity: &Identity, room: &Room) -> Result<Vec<u8>, Vec<PressError>> {
    let standards = PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|e| vec![PressError::plain(e.message().as_str())])?;
    let options = PdfOptions {
        ident: Smart::Custom(format!("hodbook {} {:?}", identity.title, identity.lang)),
        creator: Smart::Custom(Some("Hodbook".into())),
        standards,
        ..PdfOptions::default()
    };
    typst_pdf::pdf(doc, &options).map_err(|errors| room.errors(errors))
}
