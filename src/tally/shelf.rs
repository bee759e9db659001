//! Where a figure stands among thousands: by the site or mix it belongs to, and by what it says.
//!
//! A job of a thousand sites has half a million figures; the scope of one card asks for those of one site. Looking through
//! all of them for each card would make twice the sites four times the work. The figures of a site are worked apart from
//! those of another, so that sites can be worked side by side.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::{Arc, OnceLock};

use indexmap::IndexMap;
use rustc_hash::FxBuildHasher;

use crate::quantity::Num;

use super::scope::{Names, Slot};
use super::{Figure, Scope, Tally};

/// The figures of one site or mix, in working order.
#[derive(Debug, Default)]
pub(super) struct Part {
    /// Their ids are shared by every scope that names them.
    figures: IndexMap<Arc<str>, Figure, FxBuildHasher>,
    /// Names of figures by what stands before the last point of their ids; made when first asked for.
    groups: OnceLock<IndexMap<String, Arc<Names>, FxBuildHasher>>,
    /// What each figure says, as a number.
    contents: Vec<u64>,
}

impl Part {
    fn add(&mut self, figure: Figure) {
        let said = content(&figure);
        let (index, old) = self.figures.insert_full(figure.id.as_str().into(), figure);
        if let Some(known) = self.contents.get_mut(index).filter(|_| old.is_some()) {
            *known = said;
            return;
        }
        self.contents.push(said);
        self.groups.take();
    }

    fn groups(&self) -> &IndexMap<String, Arc<Names>, FxBuildHasher> {
        self.groups.get_or_init(|| {
            let mut all: IndexMap<String, Names, FxBuildHasher> = IndexMap::default();
            for id in self.figures.keys() {
                let Some((owner, name)) = id.rsplit_once('.').filter(|(_, name)| !name.contains('/')) else { continue };
                let slot = Slot::Figure(id.clone());
                match all.get_mut(owner) {
                    Some(names) => drop(names.insert(name.to_owned(), slot)),
                    None => drop(all.insert(owner.to_owned(), Names::from_iter([(name.to_owned(), slot)]))),
                }
            }
            all.into_iter().map(|(owner, names)| (owner, Arc::new(names))).collect()
        })
    }

    fn ids(&self) -> impl Iterator<Item = &str> {
        self.figures.keys().map(|id| &**id)
    }
}

/// The site or mix that a figure belongs to.
fn root(id: &str) -> &str {
    id.split(['/', '.']).next().unwrap_or(id)
}

/// Alike for two figures that print alike in every voice and compare alike with every amount.
fn content(figure: &Figure) -> u64 {
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
    fn part(&self, id: &str) -> Option<&Part> {
        self.parts.get(root(id))
    }

    /// A figure by id.
    pub fn figure(&self, id: &str) -> Option<&Figure> {
        let own = self.part(id).and_then(|part| part.figures.get(id));
        own.or_else(|| self.base.as_ref()?.figure(id))
    }

    /// All figures, mixes first, then site by site, each in working order.
    pub fn figures(&self) -> impl Iterator<Item = &Figure> {
        self.parts.values().flat_map(|part| part.figures.values())
    }

    /// The figures of one site or mix, in working order.
    pub fn figures_of(&self, id: &str) -> impl Iterator<Item = &Figure> {
        self.part(id).into_iter().flat_map(|part| part.figures.values())
    }

    /// Adds a figure.
    pub fn add(&mut self, figure: Figure) {
        match self.parts.get_mut(root(&figure.id)) {
            Some(part) => part.add(figure),
            None => {
                let mut part = Part::default();
                let name = root(&figure.id).to_owned();
                part.add(figure);
                self.parts.insert(name, part);
            }
        }
    }

    /// Takes over what was worked apart.
    pub(super) fn take(&mut self, parts: IndexMap<String, Part>) {
        for (name, part) in parts {
            if self.parts.contains_key(&name) {
                part.figures.into_values().for_each(|figure| self.add(figure));
            } else {
                self.parts.insert(name, part);
            }
        }
    }

    /// Figures of an owner whose id is `owner.name`, by their names, in working order.
    pub(super) fn of_owner(&self, owner: &str) -> Arc<Names> {
        self.part(owner).and_then(|part| part.groups().get(owner)).cloned().unwrap_or_default()
    }

    /// Ids of the figures that a document can speak of, most particular first: what the typed-number audit compares with.
    ///
    /// Clocks of planned days belong to the day's own sheet: elsewhere any typed half hour would meet one of them.
    pub fn near(&self, scope: &Scope) -> impl Iterator<Item = &str> {
        scope.near.iter().flat_map(move |prefix| {
            let ids = self.part(prefix).into_iter().flat_map(Part::ids);
            ids.filter(move |id| id.starts_with(prefix.as_str()) && !super::of_a_day(&scope.site, id))
        })
    }

    /// A number that two figures share if they print alike in every voice and compare alike with every amount.
    pub fn content(&self, id: &str) -> Option<u64> {
        let part = self.part(id)?;
        part.contents.get(part.figures.get_index_of(id)?).copied()
    }
}
