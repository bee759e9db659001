//! What a document's slots can reach: names to figures, texts, lists.

use std::sync::Arc;

use indexmap::IndexMap;
use rustc_hash::FxBuildHasher;

/// One thing a slot can name. Groups and lists are shared: every card of a site names the same site.
#[derive(Clone, Debug, PartialEq)]
pub enum Slot {
    /// A figure, by id.
    Figure(Arc<str>),
    /// A text in the document's language (names, codes, dates): printed as it is.
    Text(Arc<str>),
    /// A proper name, such as a site's: printed as it is, and no check reads it as words of the text.
    Name(Arc<str>),
    /// A group of names.
    Map(Arc<Group>),
    /// A list to loop over.
    List(Arc<Vec<Slot>>),
}

impl Slot {
    /// An empty group.
    pub fn map() -> Slot {
        Slot::Map(Arc::default())
    }

    /// A figure by its id.
    pub fn figure(id: &str) -> Slot {
        Slot::Figure(id.into())
    }

    /// A text.
    pub fn text(text: &str) -> Slot {
        Slot::Text(text.into())
    }

    /// A proper name.
    pub fn name(text: &str) -> Slot {
        Slot::Name(text.into())
    }

    /// True if it is a proper name or holds one.
    pub fn has_names(&self) -> bool {
        match self {
            Slot::Name(_) => true,
            Slot::Map(map) => map.iter().any(|(_, slot)| slot.has_names()),
            Slot::List(items) => items.iter().any(Slot::has_names),
            Slot::Figure(_) | Slot::Text(_) => false,
        }
    }

    /// A list.
    pub fn list(items: Vec<Slot>) -> Slot {
        Slot::List(Arc::new(items))
    }

    /// Puts a name into a group; does nothing on other slots.
    pub fn put(&mut self, name: &str, slot: Slot) {
        if let Slot::Map(map) = self {
            Arc::make_mut(map).own.insert(name.to_owned(), slot);
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

/// Names and what they stand for.
pub type Names = IndexMap<String, Slot, FxBuildHasher>;

/// A group of names: its own, and below them those of the figures that many scopes share.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Group {
    /// Its own names.
    pub own: Names,
    /// Shared ones, the nearest first; a nearer name hides a farther one.
    pub below: Vec<Arc<Names>>,
}

impl Group {
    /// What a name stands for.
    pub fn get(&self, name: &str) -> Option<&Slot> {
        self.own.get(name).or_else(|| self.below.iter().find_map(|names| names.get(name)))
    }

    /// Every name with what it stands for, its own first.
    pub fn iter(&self) -> impl Iterator<Item = (&String, &Slot)> {
        let shared = self.below.iter().enumerate().flat_map(move |(depth, names)| {
            let hidden = move |name: &str| self.own.contains_key(name) || self.below.iter().take(depth).any(|near| near.contains_key(name));
            names.iter().filter(move |(name, _)| !hidden(name))
        });
        self.own.iter().chain(shared)
    }
}

/// The scope of one document: its group of names and what it was made for.
#[derive(Clone, Debug)]
pub struct Scope {
    /// Names a slot can use.
    pub root: Slot,
    /// Beginnings of the ids of the figures it can speak of, most particular first; [`crate::tally::Tally::near`] lists them.
    pub near: Vec<String>,
    /// Id of the site.
    pub site: String,
    /// Subject such as `larkenfell/carve-24/2`.
    pub subject: String,
}
