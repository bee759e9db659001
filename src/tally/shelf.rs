//! Where a figure stands among thousands: by the owner of its id, and by what it says.
//!
//! A job of a thousand sites has half a million figures; the scope of one card asks for those of one site. Looking through
//! all of them for each card would make twice the sites four times the work.

use std::collections::HashMap;
use std::hash::{DefaultHasher, Hash, Hasher};

use crate::quantity::Num;

use super::{Figure, Scope, Tally};

/// Places of figures, by their number in the tally.
#[derive(Debug, Default)]
pub(super) struct Shelf {
    /// By what stands before the last point of the id.
    owners: HashMap<String, Vec<usize>>,
    /// By what stands before the first stroke or point.
    roots: HashMap<String, Vec<usize>>,
    /// What each figure says, as a number.
    contents: Vec<u64>,
}

impl Shelf {
    pub(super) fn put(&mut self, id: &str, index: usize, new: bool, content: u64) {
        if !new {
            if let Some(old) = self.contents.get_mut(index) {
                *old = content;
            }
            return;
        }
        self.contents.push(content);
        if let Some((owner, name)) = id.rsplit_once('.')
            && !name.contains('/')
        {
            push(&mut self.owners, owner, index);
        }
        push(&mut self.roots, root(id), index);
    }
}

fn push(map: &mut HashMap<String, Vec<usize>>, key: &str, index: usize) {
    match map.get_mut(key) {
        Some(places) => places.push(index),
        None => {
            map.insert(key.to_owned(), vec![index]);
        }
    }
}

fn root(id: &str) -> &str {
    id.split(['/', '.']).next().unwrap_or(id)
}

/// Alike for two figures that print alike in every voice and compare alike with every amount.
pub(super) fn content(figure: &Figure) -> u64 {
    let mut hasher = DefaultHasher::new();
    figure.role.hash(&mut hasher);
    match figure.worked.as_ref().map(|node| node.value()) {
        Ok(value) => {
            match &value.si {
                Num::Exact(r) => (0, r.numer(), r.denom()).hash(&mut hasher),
                Num::Real(x) => (1, x.to_bits()).hash(&mut hasher),
            }
            (value.dim, value.kind).hash(&mut hasher);
        }
        Err(_) => 2.hash(&mut hasher),
    }
    hasher.finish()
}

impl Tally {
    /// Figures of an owner whose id is `owner.name`, with their names, in working order.
    pub(super) fn of_owner(&self, owner: &str) -> impl Iterator<Item = (&str, &str)> {
        let places = self.shelf.owners.get(owner).into_iter().flatten();
        let ids = places.filter_map(|i| self.figures.get_index(*i)).map(|(id, _)| id.as_str());
        ids.filter_map(move |id| id.rsplit_once('.').map(|(_, name)| (name, id)))
    }

    /// Ids of the figures that a document can speak of, most particular first: what the typed-number audit compares with.
    ///
    /// Clocks of planned days belong to the day's own sheet: elsewhere any typed half hour would meet one of them.
    pub fn near(&self, scope: &Scope) -> impl Iterator<Item = &str> {
        scope.near.iter().flat_map(move |prefix| {
            let places = self.shelf.roots.get(root(prefix)).into_iter().flatten();
            let ids = places.filter_map(|i| self.figures.get_index(*i)).map(|(id, _)| id.as_str());
            ids.filter(move |id| id.starts_with(prefix.as_str()) && !super::of_a_day(&scope.site, id))
        })
    }

    /// A number that two figures share if they print alike in every voice and compare alike with every amount.
    pub fn content(&self, id: &str) -> Option<u64> {
        self.shelf.contents.get(self.figures.get_index_of(id)?).copied()
    }
}
