//! The tree a Markdown body becomes once its slots are filled.

use std::collections::BTreeSet;
use std::sync::{Arc, OnceLock};

use crate::job::Body;
use crate::source::Span;
use crate::tally::PrintedValue;
use crate::words::Lang;

use super::fixed::fixed_numbers;
use super::numbers::{Typed, typed_numbers};
use super::sentence::{self, Piece, Sentence};

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
    /// A printed value, by index into `Doc::values`.
    Value(usize),
    /// A proper name from a slot, by index into `Doc::names`, with the place of its slot.
    Name(usize, Span),
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
    /// Id of its figure.
    pub figure: Arc<str>,
    /// What is printed; its own `figure` is empty, because documents of other figures share it.
    pub value: Arc<PrintedValue>,
    /// Place of the slot `{{ … }}`.
    pub at: Span,
}

impl Use {
    /// A use of a printed value.
    pub fn new(mut value: PrintedValue, at: Span) -> Use {
        let figure = std::mem::take(&mut value.figure).into();
        Use { figure, value: Arc::new(value), at }
    }

    /// The last name of its figure, such as `start_water`.
    pub fn name(&self) -> &str {
        self.figure.rsplit('.').next().unwrap_or("")
    }

    /// The printed value with its figure.
    pub fn printed(&self) -> PrintedValue {
        PrintedValue { figure: self.figure.to_string(), ..PrintedValue::clone(&self.value) }
    }
}

/// Told the name, the arguments and the place of what a text asks for.
pub type Asker<'f> = dyn FnMut(&str, &[(String, String)], Span) + 'f;

/// A rendered body: its blocks, shared by every document that prints the same words, and what its slots print.
#[derive(Clone, Debug, Default)]
pub struct Doc {
    words: Arc<Words>,
    /// Printed values in the order of their slots' output.
    pub values: Arc<[Use]>,
    /// Proper names in the order of their slots' output.
    pub names: Arc<[Arc<str>]>,
    /// True if a name stands where only text can, such as the address of a link: then the words are this document's alone.
    pub(super) own: bool,
}

/// Blocks, and what is read out of them once for all who ask.
#[derive(Debug, Default)]
struct Words {
    blocks: Vec<Block>,
    sentences: OnceLock<Vec<Sentence>>,
    said: OnceLock<BTreeSet<String>>,
    typed: OnceLock<Vec<Typed>>,
    fixed: OnceLock<Vec<Typed>>,
}

impl Doc {
    /// A document of some blocks.
    pub fn new(blocks: Vec<Block>, values: Vec<Use>) -> Doc {
        Doc { words: Arc::new(Words { blocks, ..Words::default() }), values: values.into(), ..Doc::default() }
    }

    /// The same words with values of other figures, which print the same, and with other names.
    pub(super) fn with(&self, values: Vec<Use>, names: Vec<Arc<str>>) -> Doc {
        Doc { words: self.words.clone(), values: values.into(), names: names.into(), own: self.own }
    }

    /// Blocks.
    pub fn blocks(&self) -> &[Block] {
        &self.words.blocks
    }

    /// Visits every drawing and table asked for by name, with its arguments and place.
    pub fn asked(&self, visit: &mut Asker<'_>) {
        fn walk(all: &[Block], visit: &mut Asker<'_>) {
            for block in all {
                match &block.kind {
                    BlockKind::Asked(name, arguments) => visit(name, arguments, block.at),
                    BlockKind::Steps(_, items) | BlockKind::List(items) => items.iter().for_each(|item| walk(item, visit)),
                    BlockKind::Quote(_, inner) | BlockKind::Part(_, inner) => walk(inner, visit),
                    _ => {}
                }
            }
        }
        walk(self.blocks(), visit);
    }

    /// A number that documents share if one was made of the other's words.
    pub fn identity(&self) -> usize {
        Arc::as_ptr(&self.words) as usize
    }

    /// Its sentences in reading order.
    pub fn sentences(&self) -> &[Sentence] {
        self.words.sentences.get_or_init(|| sentence::sentences(&self.words.blocks))
    }

    /// True if one of these phrases may stand in it: every word of it does, somewhere. `#loads` is a slot that prints a
    /// figure of that name. It is quick, so a check asks it before it reads the sentences.
    pub fn may_say(&self, phrases: &[&str]) -> bool {
        let said = self.words.said.get_or_init(|| {
            let words = self.sentences().iter().flat_map(|s| &s.pieces).filter_map(|p| match p {
                Piece::Word(word, _) => Some(word.clone()),
                Piece::Value(_) | Piece::Mark => None,
            });
            words.collect()
        });
        let prints = |name: &str| self.values.iter().any(|u| u.name() == name);
        let stands = |word: &str| said.contains(word) || word.strip_prefix('#').is_some_and(prints);
        phrases.iter().any(|phrase| phrase.split(' ').all(stands))
    }

    /// Every amount an author typed in it; `body` and `lang` are those it was rendered from.
    pub fn typed(&self, body: &Body, lang: Lang) -> &[Typed] {
        self.words.typed.get_or_init(|| typed_numbers(self, body, lang))
    }

    /// Every amount an author declared fixed in it; `body` and `lang` are those it was rendered from.
    pub fn fixed(&self, body: &Body, lang: Lang) -> &[Typed] {
        self.words.fixed.get_or_init(|| fixed_numbers(self, body, lang))
    }
}
