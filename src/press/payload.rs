//! What the templates see, as Rust types. Version 1.
//!
//! Strings only: everything is already rounded, translated and ordered when it
//! comes here. A value holds U+00A0 inside a term (`3 gal`) and a plain space
//! between terms (`3 gal 1 qt`) where its own box may break it.

use serde::{Deserialize, Serialize};

/// The version of this form that the templates understand.
pub const VERSION: u32 = 1;

/// How far away a paper is read; decides every type size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "UPPERCASE")]
pub enum Distance {
    Wall,
    Hand,
    Desk,
}

impl Distance {
    /// The smallest type that operative text may have, in points.
    pub fn least_line(self) -> f64 {
        match self {
            Distance::Wall => 28.0,
            Distance::Hand => 14.0,
            Distance::Desk => 10.0,
        }
    }

    /// The smallest size of the one key number, in points.
    pub fn least_key(self) -> f64 {
        match self {
            Distance::Wall => 72.0,
            Distance::Hand => 28.0,
            Distance::Desk => 12.0,
        }
    }

    /// The smallest size of a caution's signal word, in points.
    pub fn least_word(self) -> f64 {
        match self {
            Distance::Wall => 54.0,
            Distance::Hand => 24.0,
            Distance::Desk => 14.0,
        }
    }
}

/// A sheet of paper as it hangs: width first.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Paper {
    pub name: String,
    pub width_mm: f64,
    pub height_mm: f64,
}

impl Paper {
    pub fn new(name: &str, width_mm: f64, height_mm: f64) -> Paper {
        Paper { name: name.to_owned(), width_mm, height_mm }
    }
}

/// A run of card faces on one paper, at one reading distance.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Run {
    pub payload: u32,
    pub kind: String,
    pub paper: Paper,
    pub distance: Distance,
    pub title: String,
    pub lang: String,
    /// Year, month, day: the only date the document knows.
    pub date: [u16; 3],
    /// Adds the rules that show whether the paper was printed true to size.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub proof: bool,
    pub faces: Vec<Face>,
}

impl Run {
    pub fn new(paper: Paper, distance: Distance, title: &str, lang: &str, date: [u16; 3], faces: Vec<Face>) -> Run {
        Run { payload: VERSION, kind: "cards".into(), paper, distance, title: title.into(), lang: lang.into(), date, proof: false, faces }
    }
}

/// One side of a card: exactly one page. Faces of one card share the part of
/// their id before the slash (`M-01/en`, `M-01/es`).
#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Face {
    pub id: String,
    pub lang: String,
    pub title: String,
    #[serde(default)]
    pub tab: Option<Tab>,
    #[serde(default)]
    pub notch: bool,
    #[serde(default)]
    pub band: Option<String>,
    #[serde(default)]
    pub footer: Vec<String>,
    #[serde(default)]
    pub authority: String,
    pub blocks: Vec<Block>,
}

/// The corner that is snipped off to kill a card.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Tab {
    pub letter: String,
    pub shape: Shape,
    pub word: String,
    pub side: Side,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Shape {
    Circle,
    Square,
    Triangle,
    Diamond,
    Star,
    Cross,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Side {
    Left,
    Right,
    Top,
    Bottom,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Align {
    Left,
    Right,
    Center,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Tone {
    Caution,
    Hold,
    Note,
}

/// A run of inline nodes.
pub type Line = Vec<Inline>;

/// One block of a face or a chapter.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "k", rename_all = "lowercase")]
pub enum Block {
    Heading {
        level: u8,
        text: Line,
        #[serde(default)]
        id: String,
    },
    Para {
        text: Line,
    },
    Steps {
        #[serde(default = "one")]
        start: u32,
        items: Vec<Vec<Block>>,
    },
    List {
        items: Vec<Vec<Block>>,
    },
    Boxes {
        items: Vec<WriteIn>,
    },
    Table {
        align: Vec<Align>,
        head: Vec<Line>,
        rows: Vec<Vec<Line>>,
        #[serde(default)]
        caption: Option<Line>,
    },
    Quote {
        #[serde(default)]
        tone: Option<Tone>,
        blocks: Vec<Block>,
    },
    Rule,
    Code {
        text: String,
    },
    /// The ruled box with the one big numeral; the first paragraph is the value.
    Key {
        blocks: Vec<Block>,
    },
    /// The octagon; `word` stands in it.
    Stop {
        #[serde(default = "stop_word")]
        word: String,
        blocks: Vec<Block>,
    },
    Strip {
        blocks: Vec<Block>,
    },
    Cautions {
        items: Vec<Caution>,
    },
    Drawing {
        name: String,
        #[serde(default)]
        alt: String,
        data: serde_json::Value,
    },
}

fn one() -> u32 {
    1
}

fn stop_word() -> String {
    "STOP".into()
}

/// A box to write in, numbered so that it can be called over the radio.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct WriteIn {
    pub n: u32,
    pub label: Line,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Caution {
    pub word: String,
    pub blocks: Vec<Block>,
}

/// One inline node.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "i", rename_all = "lowercase")]
pub enum Inline {
    Text {
        s: String,
    },
    Strong {
        c: Line,
    },
    Em {
        c: Line,
    },
    Code {
        s: String,
    },
    Break,
    /// A printed value; it is never parted over two lines.
    Value {
        s: String,
        #[serde(default)]
        id: String,
    },
    Bags {
        n: u32,
        #[serde(default)]
        half: bool,
        #[serde(default)]
        label: Option<String>,
    },
    Link {
        to: String,
        c: Line,
    },
}

impl Inline {
    pub fn text(s: &str) -> Inline {
        Inline::Text { s: s.into() }
    }

    pub fn value(s: &str, id: &str) -> Inline {
        Inline::Value { s: s.into(), id: id.into() }
    }
}

impl Block {
    pub fn para(text: Line) -> Block {
        Block::Para { text }
    }

    pub fn heading(level: u8, text: &str) -> Block {
        Block::Heading { level, text: vec![Inline::text(text)], id: String::new() }
    }
}

/// The bound handbook.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Book {
    pub payload: u32,
    pub kind: String,
    pub paper: Paper,
    pub distance: Distance,
    pub lang: String,
    pub date: [u16; 3],
    pub title: String,
    #[serde(default)]
    pub subtitle: String,
    pub cover: Cover,
    pub labels: Labels,
    #[serde(default)]
    pub footer: Vec<String>,
    #[serde(default)]
    pub authority: String,
    pub chapters: Vec<Chapter>,
    #[serde(default)]
    pub index: Vec<Term>,
}

#[derive(Clone, Debug, PartialEq, Default, Serialize, Deserialize)]
pub struct Cover {
    #[serde(default)]
    pub lines: Vec<String>,
    #[serde(default)]
    pub blocks: Vec<Block>,
    #[serde(default)]
    pub tab: Option<Tab>,
    #[serde(default)]
    pub band: Option<String>,
}

/// The few words a book sets by itself, in its language.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Labels {
    pub contents: String,
    pub index: String,
    pub page: String,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Chapter {
    pub id: String,
    /// The short word on the thumb tab.
    #[serde(default)]
    pub thumb: String,
    pub title: String,
    /// A chapter read nearer than the rest of the book, such as a worksheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub distance: Option<Distance>,
    pub blocks: Vec<Block>,
}

/// An index entry and the anchors it points at: ids of headings or chapters.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Term {
    pub term: String,
    pub to: Vec<String>,
}
