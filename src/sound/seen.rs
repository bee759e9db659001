//! One rendered text as the checks see it.

use std::sync::OnceLock;

use super::text::Sentence;
use crate::job::{Card, Caution, Chapter, Distance, Edition, Page};
use crate::prose::block::Doc;
use crate::tally::{Scope, Subject, Voice};

/// What sort of text it is.
#[derive(Clone, Copy, Debug)]
pub enum Role<'a> {
    /// A face of a card.
    Card(&'a Card),
    /// A procedure in the book.
    Procedure(&'a Page),
    /// A caution.
    Caution(&'a Caution),
    /// A chapter text of the book.
    Chapter(&'a Chapter),
    /// Notes of the company, a mix or a site, or the cover of the book.
    Notes,
}

/// One rendered text: a face of a card, or a piece of the book, in one language.
#[derive(Debug)]
pub struct Seen<'a> {
    /// Document it is printed in, such as `M-02/en` or `larkenfell-en`.
    pub document: String,
    /// What sort of text.
    pub role: Role<'a>,
    /// The edition it was rendered from.
    pub edition: &'a Edition,
    /// The original, for a twin.
    pub original: Option<&'a Edition>,
    /// What it was made for.
    pub subject: Subject<'a>,
    /// Language and unit system.
    pub voice: Voice,
    /// What its slots could name.
    pub scope: Scope,
    /// The tree.
    pub doc: Doc,
    /// Distance class it is read at.
    pub reads: Distance,
    /// Its sentences, read once for the checks that ask; start it empty.
    pub read: OnceLock<Vec<Sentence>>,
}

impl Seen<'_> {
    /// Its sentences in reading order.
    pub fn sentences(&self) -> &[Sentence] {
        self.read.get_or_init(|| super::text::sentences(&self.doc))
    }
}
