//! Pages authors write: cards, procedures, cautions, chapters, the book, the glossary.

use super::{Body, Text};

/// How far away a paper is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Distance {
    /// One metre, gloves, glare.
    Wall,
    /// Held, clipboard, pocket.
    Hand,
    /// Office, truck, class table.
    Desk,
}

/// A paper size in millimetres, as printed (landscape swaps the sides).
#[derive(Clone, Debug, PartialEq)]
pub struct Paper {
    /// Name such as `tabloid landscape`.
    pub name: String,
    /// Width in micrometres, exact.
    pub width_um: u32,
    /// Height in micrometres, exact.
    pub height_um: u32,
}

/// What one card or page is made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Per {
    /// A site's mix, mixer and loads.
    Batch,
    /// A mix that a site uses.
    Mix,
    /// A site.
    Site,
}

/// One language of a page.
#[derive(Debug)]
pub struct Edition {
    /// Language code.
    pub lang: String,
    /// Title or name in that language.
    pub title: Text,
    /// The body.
    pub body: Body,
    /// For a twin: digests of the blocks it translates, and where they stand. Empty for the original.
    pub follows: Option<(Vec<String>, crate::source::Span)>,
}

/// A kind of card.
#[derive(Debug)]
pub struct Card {
    /// File stem, such as `mud`.
    pub id: String,
    /// Letter of the document code.
    pub code: Text,
    /// Reader, by role.
    pub reader: Text,
    /// Distance class.
    pub reads: Distance,
    /// Paper.
    pub paper: Paper,
    /// What one of them is made for.
    pub per: Per,
    /// Corner tab.
    pub tab: bool,
    /// Notch for the hole.
    pub notch: bool,
    /// Lamination.
    pub film: Option<Text>,
    /// Copies hung.
    pub copies: u32,
    /// Where it hangs.
    pub hung: Option<Text>,
    /// Cards on one press sheet (1 or 4).
    pub up: u32,
    /// Language codes of its faces, front first.
    pub faces: Vec<Text>,
    /// Language codes that a face holds besides its own, word under word.
    pub stacked: Vec<Text>,
    /// Names of the cautions it must carry.
    pub cautions: Vec<Text>,
    /// Editions, English first.
    pub editions: Vec<Edition>,
}

/// A procedure.
#[derive(Debug)]
pub struct Page {
    /// File stem.
    pub id: String,
    /// Document code such as `P04`.
    pub code: Text,
    /// What it is made for.
    pub per: Per,
    /// Name of the mix it speaks of.
    pub mix: Option<Text>,
    /// Names of its cautions.
    pub cautions: Vec<Text>,
    /// Editions, English first.
    pub editions: Vec<Edition>,
}

/// A caution.
#[derive(Debug)]
pub struct Caution {
    /// File stem.
    pub id: String,
    /// Condition that calls for it.
    pub when: Text,
    /// Editions; the title is the signal word.
    pub editions: Vec<Edition>,
}

/// A chapter text of the book.
#[derive(Debug)]
pub struct Chapter {
    /// File stem.
    pub id: String,
    /// Editions.
    pub editions: Vec<Edition>,
}

/// The book: chapters in order.
#[derive(Debug)]
pub struct Handbook {
    /// Editions, English first: the title, and the body that stands on the cover.
    pub editions: Vec<Edition>,
    /// Paper.
    pub paper: Paper,
    /// Chapters.
    pub chapters: Vec<BookChapter>,
}

/// One chapter of the book.
#[derive(Debug)]
pub struct BookChapter {
    /// Id used in links.
    pub id: Text,
    /// Title by language code.
    pub titles: Vec<(String, Text)>,
    /// Thumb-tab word.
    pub thumb: Text,
    /// What stands in it, in order: `chapters/NAME`, `procedures/NAME`, or one of the words
    /// `cautions`, `mixes`, `takeoff`, `worksheet`, `index`, `in force`, `glossary`.
    pub from: Vec<Text>,
}

/// A word of the glossary.
#[derive(Debug)]
pub struct Word {
    /// English.
    pub en: Text,
    /// Spanish to print.
    pub es: Text,
    /// Also heard.
    pub heard: Option<Text>,
    /// Note.
    pub note: Option<Text>,
}
