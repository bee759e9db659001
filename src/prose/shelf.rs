//! Bodies and what was made of them, kept: a text is rendered once for all documents in which its slots print the same.
//!
//! Two documents share a text's words if every name that its tags mention stands for the same in both: the same texts, and
//! figures of the same role and value. Only the ids of the figures may differ, and those are put in anew for each. So a
//! caution is parsed once for a thousand sites, and a procedure once for all that mix alike.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

use crate::finding::Finding;
use crate::job::Body;
use crate::tally::{Scope, Slot, Tally, Voice};

use super::block::{Doc, Use};
use super::render::{Options, Prepared, reached};

/// A body, prepared, or why it cannot be.
type Cut = Arc<Result<Prepared, Vec<Finding>>>;

/// Bodies and their documents, shared by the threads of a run. One shelf serves one tally.
#[derive(Debug, Default)]
pub struct Shelf {
    /// By file and offset.
    cut: Mutex<BTreeMap<(u32, u32), Cut>>,
    made: Mutex<BTreeMap<Key, Arc<Made>>>,
}

/// What a document was made of.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Key {
    body: (u32, u32),
    lang: &'static str,
    metric: bool,
    boxes: u32,
    /// What its names stand for.
    names: Vec<u8>,
}

#[derive(Debug)]
struct Made {
    doc: Doc,
    /// For each printed value, its figure's place among the figures that the tags mention.
    figures: Vec<usize>,
    /// For each printed name, its place among the names that the tags mention.
    names: Vec<usize>,
}

impl Shelf {
    /// An empty shelf.
    pub fn new() -> Shelf {
        Shelf::default()
    }

    /// The document of a body in one scope, as [`Prepared::render`] gives it.
    ///
    /// # Errors
    /// Every finding of the body in this scope.
    pub fn render(&self, body: &Body, scope: &Scope, tally: &Tally, voice: Voice, options: Options) -> Result<Doc, Vec<Finding>> {
        let cut = self.cut(body);
        let prepared = cut.as_ref().as_ref().map_err(Clone::clone)?;
        let apart = prepared.names_apart(scope);
        let mut read = Read { tally, apart, ids: Vec::new(), named: Vec::new(), known: BTreeMap::new(), said: Vec::new() };
        for path in prepared.names() {
            read.path(path, scope);
        }
        let Read { ids, named, said, .. } = read;
        let key =
            Key { body: (body.file, body.offset), lang: voice.lang.code(), metric: voice.metric, boxes: options.boxes_before, names: said };
        let kept = self.made.lock().unwrap_or_else(PoisonError::into_inner).get(&key).cloned();
        if let Some(made) = kept {
            return Ok(made.of(&ids, &named));
        }
        let doc = prepared.render(scope, tally, voice, options)?;
        let place = |u: &Use| ids.iter().position(|id| **id == u.figure);
        let spot = |name: &Arc<str>| named.iter().position(|n| *n == name);
        let figures = doc.values.iter().map(place).collect::<Option<Vec<usize>>>();
        let names = doc.names.iter().map(spot).collect::<Option<Vec<usize>>>();
        // What no tag mentions could not be put in anew: such a text is made for each document.
        if let (Some(figures), Some(names), false) = (figures, names, doc.own) {
            let made = Arc::new(Made { doc: doc.clone(), figures, names });
            let mut all = self.made.lock().unwrap_or_else(PoisonError::into_inner);
            // Another thread may have been first: then all use its words.
            return Ok(all.entry(key).or_insert(made).of(&ids, &named));
        }
        Ok(doc)
    }

    fn cut(&self, body: &Body) -> Cut {
        let key = (body.file, body.offset);
        if let Some(cut) = self.cut.lock().unwrap_or_else(PoisonError::into_inner).get(&key) {
            return cut.clone();
        }
        let cut = Arc::new(Prepared::new(body));
        self.cut.lock().unwrap_or_else(PoisonError::into_inner).entry(key).or_insert(cut).clone()
    }
}

impl Made {
    /// The document with the figures and names of another scope.
    fn of(&self, ids: &[&Arc<str>], named: &[&Arc<str>]) -> Doc {
        let of = |(used, place): (&Use, &usize)| {
            let figure = ids.get(*place).map_or(&used.figure, |id| *id);
            Use { figure: figure.clone(), value: used.value.clone(), at: used.at }
        };
        let names = self.names.iter().filter_map(|place| named.get(*place)).map(|name| (*name).clone()).collect();
        self.doc.with(self.doc.values.iter().zip(&self.figures).map(of).collect(), names)
    }
}

/// What the names of a body stand for, read into bytes and a list of figures.
struct Read<'s> {
    tally: &'s Tally,
    /// True if proper names are printed apart from the words.
    apart: bool,
    ids: Vec<&'s Arc<str>>,
    named: Vec<&'s Arc<str>>,
    /// First place of each figure and of each name.
    known: BTreeMap<&'s str, usize>,
    /// What they stand for, in bytes: equal for two scopes that print a body alike.
    said: Vec<u8>,
}

impl<'s> Read<'s> {
    /// A mark of what follows, and a number of it.
    fn note(&mut self, what: u8, number: usize) {
        self.said.push(what);
        self.said.extend((number as u64).to_le_bytes());
    }

    fn text(&mut self, what: u8, text: &str) {
        self.note(what, text.len());
        self.said.extend(text.as_bytes());
    }

    /// What a path leads to, as far as it leads; names of loops lead nowhere, their lists are paths of their own.
    fn path(&mut self, path: &str, scope: &'s Scope) {
        self.note(b'p', usize::from(scope.root.get(path).is_some()));
        if let Some(slot) = reached(path, scope) {
            self.slot(slot);
        }
    }

    fn slot(&mut self, slot: &'s Slot) {
        match slot {
            Slot::Name(name) if self.apart && !name.is_empty() => {
                let next = self.named.len();
                let first = *self.known.entry(name).or_insert(next);
                self.note(b'n', first);
                self.named.push(name);
            }
            Slot::Text(text) | Slot::Name(text) => self.text(b't', text),
            Slot::Figure(id) => {
                let next = self.ids.len();
                let first = *self.known.entry(id).or_insert(next);
                // Checks tell a figure by its last name; two places of one figure must stay one.
                self.text(b'f', id.rsplit(['.', '/']).next().unwrap_or(id));
                self.note(b'i', first);
                match self.tally.content(id) {
                    Some(content) => self.said.extend(content.to_le_bytes()),
                    None => self.said.push(b'x'),
                }
                self.ids.push(id);
            }
            Slot::Map(map) => {
                self.note(b'm', map.iter().count());
                for (name, slot) in map.iter() {
                    self.text(b'k', name);
                    self.slot(slot);
                }
            }
            Slot::List(items) => {
                self.note(b'l', items.len());
                items.iter().for_each(|slot| self.slot(slot));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::trial::{ENGLISH, body};
    use super::*;
    use crate::quantity::Node;
    use crate::tally::{Basis, Figure, Role};

    /// Three sites with a figure each, the last one of another value.
    fn sites() -> (Tally, [Scope; 3]) {
        let mut tally = Tally::default();
        let scopes = [("ash", "5 gal"), ("birch", "5 gal"), ("cedar", "6 gal")].map(|(id, water)| {
            let figure = format!("{id}.water");
            let node: Node = crate::quantity::expr::Worked::<crate::quantity::sorts::Volume>::read(water).unwrap().node().clone();
            tally.add(Figure {
                id: figure.clone(),
                label: "figure.volume",
                worked: Ok(node),
                basis: Basis::Author,
                role: Role::StartWater,
            });
            let mut site = Slot::map();
            site.put("name", Slot::name(&format!("House {id}")));
            site.put("water", Slot::figure(&figure));
            site.put("rooms", Slot::list(vec![Slot::name(&format!("{id} hall")), Slot::name(&format!("{id} den"))]));
            let mut root = Slot::map();
            root.put("site", site);
            Scope { root, near: vec![format!("{id}.")], site: id.to_owned(), subject: id.to_owned() }
        });
        (tally, scopes)
    }

    fn made(text: &str) -> [Doc; 3] {
        let (tally, scopes) = sites();
        let shelf = Shelf::new();
        scopes.map(|scope| {
            let doc = shelf.render(&body(text), &scope, &tally, ENGLISH, Options::default()).unwrap();
            // From the shelf or not, it is what the body gives in this scope.
            let alone = Prepared::new(&body(text)).unwrap().render(&scope, &tally, ENGLISH, Options::default()).unwrap();
            assert_eq!((doc.blocks(), &doc.values, &doc.names), (alone.blocks(), &alone.values, &alone.names), "{text}");
            doc
        })
    }

    #[test]
    fn a_text_is_shared_where_it_prints_the_same() {
        let [ash, birch, cedar] = made("Pour {{ site.water }} at {{ site.name }}.\n");
        assert_eq!(ash.identity(), birch.identity());
        assert_ne!(ash.identity(), cedar.identity());
        assert_eq!((&*ash.values[0].figure, &*birch.values[0].figure), ("ash.water", "birch.water"));
        assert_eq!((&*ash.names[0], &*birch.names[0]), ("House ash", "House birch"));
    }

    #[test]
    fn names_in_a_loop_stay_in_their_order() {
        let [ash, birch, _] = made("{% for room in site.rooms %}{{ room }}, {% endfor %}{{ site.name }}\n");
        assert_eq!(ash.identity(), birch.identity());
        assert_eq!(birch.names.iter().map(|n| &**n).collect::<Vec<_>>(), ["birch hall", "birch den", "House birch"]);
    }

    /// Where a tag looks at the letters of a name, or a name stands where only text can, the text is each site's own.
    #[test]
    fn a_text_is_not_shared_where_its_names_are_read() {
        for text in [
            "{% if site.name == \"House ash\" %}Mind the step.{% endif %} Go on.\n",
            "{{ site.name | upper }}\n",
            "{% set house = site.name %}{% if house == \"House ash\" %}Here{% else %}There{% endif %}\n",
            "[plan](https://plans/{{ site.name }})\n",
        ] {
            let [ash, birch, _] = made(text);
            assert_ne!(ash.identity(), birch.identity(), "{text}");
        }
    }
}
