//! What a document's slots can reach: names to figures, texts, lists.

use indexmap::IndexMap;

/// One thing a slot can name.
#[derive(Clone, Debug, PartialEq)]
pub enum Slot {
    /// A figure, by id.
    Figure(String),
    /// A text in the document's language (names, codes, dates): printed as it is.
    Text(String),
    /// A group of names.
    Map(IndexMap<String, Slot>),
    /// A list to loop over.
    List(Vec<Slot>),
}

impl Slot {
    /// An empty group.
    pub fn map() -> Slot {
        Slot::Map(IndexMap::new())
    }

    /// Puts a name into a group; does nothing on other slots.
    pub fn put(&mut self, name: &str, slot: Slot) {
        if let Slot::Map(map) = self {
            map.insert(name.to_owned(), slot);
        }
    }

    /// The slot at a dotted path.
    pub fn get(&self, path: &str) -> Option<&Slot> {
        path.split('.').try_fold(self, |slot, name| match slot {
            Slot::Map(map) => map.get(name),
            _ => None,
        })
    }
}

/// The scope of one document: its group of names and what it was made for.
#[derive(Clone, Debug)]
pub struct Scope {
    /// Names a slot can use.
    pub root: Slot,
    /// Figure ids in scope, most specific first: what the typed-number audit compares with.
    pub figures: Vec<String>,
    /// Subject such as `larkenfell/carve-24/2`.
    pub subject: String,
}
