//! One rendered text as the checks see it.

use std::sync::Arc;

use super::text::Sentence;
use crate::job::{Card, Caution, Chapter, Distance, Edition, Page};
use crate::prose::Typed;
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
    pub scope: Arc<Scope>,
    /// The tree.
    pub doc: Doc,
    /// Distance class it is read at.
    pub reads: Distance,
}

impl Seen<'_> {
    /// Its sentences in reading order.
    pub fn sentences(&self) -> &[Sentence] {
        self.doc.sentences()
    }

    /// True if one phrase of each list may stand in it: see [`Doc::may_say`].
    pub fn may_say(&self, lists: &[&[&str]]) -> bool {
        lists.iter().all(|phrases| self.doc.may_say(phrases))
    }

    /// Every amount an author typed in it.
    pub fn typed(&self) -> &[Typed] {
        self.doc.typed(&self.edition.body, self.voice.lang)
    }

    /// Every amount an author declared fixed in it.
    pub fn fixed(&self) -> &[Typed] {
        self.doc.fixed(&self.edition.body, self.voice.lang)
    }
}
