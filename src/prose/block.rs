//! The tree a Markdown body becomes once its slots are filled.

use crate::source::Span;

/// An inline piece.
#[derive(Clone, Debug, PartialEq)]
pub enum Inline {
    /// Author's or dictionary text, with its place if the author typed it.
    Text(String, Option<Span>),
    /// Strong.
    Strong(Vec<Inline>),
    /// Emphasis.
    Em(Vec<Inline>),
    /// Code.
    Code(String, Option<Span>),
    /// Line break.
    Break,
    /// A printed value, by index into [`Doc::values`].
    Value(usize),
    /// Bag outlines: whole bags, half a bag more, label inside (mass of one bag), value index for the alternative text.
    Bags(u32, bool, String, usize),
    /// A link.
    Link(String, Vec<Inline>),
}

/// A block with the place of its first character.
#[derive(Clone, Debug, PartialEq)]
pub struct Block {
    /// What it is.
    pub kind: BlockKind,
    /// Where it starts and ends in the author's file.
    pub at: Span,
}

/// Kinds of block.
#[derive(Clone, Debug, PartialEq)]
pub enum BlockKind {
    /// Heading, level 1 to 6, optional id.
    Heading(u8, Vec<Inline>, Option<String>),
    /// Paragraph.
    Para(Vec<Inline>),
    /// Ordered list: first number, items.
    Steps(u64, Vec<Vec<Block>>),
    /// Bulleted list.
    List(Vec<Vec<Block>>),
    /// Write-in boxes, from task-list items; each with its number on the face.
    Boxes(Vec<(u32, Vec<Inline>)>),
    /// Table: alignment per column (`left`, `right`, `center`), head, rows.
    Table(Vec<&'static str>, Vec<Vec<Inline>>, Vec<Vec<Vec<Inline>>>),
    /// Quote with a tone (`caution`, `hold`, `note`) or none.
    Quote(Option<&'static str>, Vec<Block>),
    /// Rule.
    Rule,
    /// Code.
    Code(String),
    /// A fence of ours that holds Markdown: `key`, `stop`, `strip`.
    Part(&'static str, Vec<Block>),
    /// A drawing or table asked for by name with arguments; filled from the tally later.
    Asked(String, Vec<(String, String)>),
}

/// One use of a printed value in a document.
#[derive(Clone, Debug, PartialEq)]
pub struct Use {
    /// The value.
    pub value: crate::tally::PrintedValue,
    /// Place of the slot `{{ … }}`.
    pub at: Span,
}

/// A rendered body.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Doc {
    /// Blocks.
    pub blocks: Vec<Block>,
    /// Printed values in the order of their slots' output.
    pub values: Vec<Use>,
}
