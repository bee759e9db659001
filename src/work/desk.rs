//! Everything a run would print, before any of it is printed: documents, codes, books, findings.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use crate::finding::{Finding, Severity};
use crate::prose::Shelf;
use crate::register::{self, Assigned, Draft, Entry, Leaf, Register, Said};
use crate::sound::{self, Ground, Seen};
use crate::source::side_by_side;
use crate::words::Lang;

use super::book;
use super::compose::{self, Composer, Document, Plan};
use super::load::{Loaded, date, span};
use super::seam::Outcome;
use super::touch::{Bodies, Closure, Places};
use super::{attach, glyphs};

/// What will be set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sets {
    /// Cards and books.
    All,
    /// Cards; of books only the texts are looked at.
    Cards,
    /// Nothing: texts are looked at.
    Nothing,
}

/// The documents of a run.
pub struct Desk<'a> {
    /// Cards, in the order of their kinds.
    pub documents: Vec<Document<'a>>,
    /// Code of each card.
    pub codes: Vec<String>,
    /// What each card rests on.
    pub closures: Vec<Closure>,
    /// Books.
    pub books: Vec<book::Draft<'a>>,
    /// What each book rests on.
    pub book_closures: Vec<Closure>,
    bodies: Bodies,
    places: Places,
    /// Texts as the checks see them.
    pub seen: Vec<Seen<'a>>,
    /// Findings of reading, rendering and checking; faces have not been set yet.
    pub findings: Vec<Finding>,
}

impl<'a> Desk<'a> {
    /// Composes and checks everything, or only the cards and books that `ids` name.
    ///
    /// Codes are always those of a full run, so that a card made alone is the same card. What `sets` leaves out is made for
    /// the checks alone, and no paper can be set from it.
    ///
    /// # Errors
    /// An id that names nothing.
    pub fn open(loaded: &'a Loaded, register: &Register, found: Vec<Finding>, ids: &[String], sets: Sets) -> Result<Desk<'a>, Outcome> {
        let mut findings: Vec<Finding> = loaded.findings.iter().cloned().chain(found).collect();
        let plans = compose::plans(&loaded.job);
        let subjects: Vec<(&str, &str)> = plans.iter().map(|p| (p.key.as_str(), p.card.code.text.as_str())).collect();
        let all_codes = register::codes(register, &subjects);
        let chosen = choose(loaded, &plans, &all_codes, ids)?;
        let shelf = Arc::new(Shelf::new());
        // A site at a time, side by side: whatever its cards and books have in common is made once.
        let mut of_sites: BTreeMap<&str, Vec<(usize, &Plan<'a>)>> = BTreeMap::new();
        for (i, plan) in plans.iter().enumerate().filter(|(_, p)| chosen.cards.contains(p.key.as_str())) {
            of_sites.entry(&plan.subject.site().id).or_default().push((i, plan));
        }
        let made = side_by_side(&loaded.job.sites, |site| {
            let mut composer = Composer::new(&loaded.job, &loaded.tally, shelf.clone(), sets != Sets::Nothing);
            let own = of_sites.get(site.id.as_str()).into_iter().flatten();
            let cards: Vec<(usize, Document<'a>)> = own.map(|(i, plan)| (*i, composer.card(plan))).collect();
            composer.sets = sets == Sets::All;
            let langs = languages(loaded).into_iter().filter(|l| chosen.books.contains(&book::name(site, *l)));
            let books: Vec<book::Draft<'a>> = langs.filter_map(|lang| book::draft(&mut composer, site, lang)).collect();
            (cards, books, composer.findings)
        });
        let (mut cards, mut books) = (Vec::new(), Vec::new());
        for (own_cards, own_books, found) in made {
            cards.extend(own_cards);
            books.extend(own_books);
            findings.extend(found);
        }
        // Cards stand in the order of their kinds.
        cards.sort_by_key(|(i, _)| *i);
        let codes: Vec<String> = cards.iter().filter_map(|(i, _)| all_codes.get(*i).cloned()).collect();
        let mut documents: Vec<Document<'a>> = cards.into_iter().map(|(_, document)| document).collect();
        let mut seen = Vec::new();
        for (document, code) in documents.iter_mut().zip(&codes) {
            for face in &mut document.faces {
                let name = format!("{code}/{}", face.lang.code());
                seen.extend(face.hand_over(&name));
            }
        }
        for book in &mut books {
            let name = book.name.clone();
            seen.extend(book.face.hand_over(&name));
        }
        // What is only read is withheld from nobody.
        let cards = if sets == Sets::Nothing { &[] } else { documents.as_slice() };
        let bound = if sets == Sets::All { books.as_slice() } else { &[] };
        let closures = cards.iter().zip(&codes).map(|(d, code)| Closure::of(&loaded.tally, &d.faces, code)).collect();
        let book_closures = bound.iter().map(|b| Closure::of(&loaded.tally, std::slice::from_ref(&b.face), &b.name)).collect();
        let mut desk = Desk {
            documents,
            codes,
            closures,
            books,
            book_closures,
            bodies: Bodies::of(&loaded.job),
            places: Places::default(),
            seen,
            findings: Vec::new(),
        };
        desk.keep(findings);
        let issued = register::issued(register.entries());
        let (unprintable, found) = std::thread::scope(|scope| {
            let unprintable = scope.spawn(|| glyphs::check(&desk.seen));
            let found = sound::run(&Ground { seen: &desk.seen, issued: &issued, ..loaded.ground() });
            (unprintable.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)), found)
        });
        desk.keep(unprintable);
        desk.keep(found);
        desk.settle(loaded);
        Ok(desk)
    }

    /// Lets the authors' acceptances meet the findings; again after faces were set, for theirs.
    pub fn settle(&mut self, loaded: &Loaded) {
        let lines = |file: u32| loaded.folder.lines(file);
        let settled = sound::signed::settle(&loaded.job, &mut self.findings, &lines);
        self.keep(settled.found);
    }

    /// After a run of every check over every paper: acceptances that accept nothing.
    pub fn close(&mut self, loaded: &Loaded) {
        let lines = |file: u32| loaded.folder.lines(file);
        let settled = sound::signed::settle(&loaded.job, &mut self.findings, &lines);
        self.keep(sound::signed::idle(&loaded.job, &settled));
        self.keep(settled.found);
    }

    /// Adds findings that are not there yet: a body is rendered for many subjects, and its mistake is one.
    pub fn keep(&mut self, found: Vec<Finding>) {
        let key = |f: &Finding| (f.name, f.at.as_ref().map(|(span, _)| *span), f.title.clone());
        let mut known: BTreeSet<_> = self.findings.iter().map(key).collect();
        for finding in found {
            if known.insert(key(&finding)) {
                self.places.add(self.findings.len(), &finding);
                self.findings.push(finding);
            }
        }
    }

    /// The worst severity among the findings that touch a paper.
    fn worst(&self, paper: Option<&Closure>) -> Option<Severity> {
        paper.and_then(|paper| paper.worst(&self.findings, &self.places, &self.bodies))
    }

    /// What was accepted on a paper, worst first.
    fn let_through<'s>(&'s self, paper: Option<&'s Closure>) -> Vec<&'s Finding> {
        let mut all: Vec<&Finding> =
            paper.map_or_else(Vec::new, |paper| paper.accepted(&self.findings, &self.places, &self.bodies).collect());
        all.sort_by_key(|f| f.severity);
        all
    }

    /// Cards that may be printed: none that a STOP touches. By index.
    pub fn free(&self) -> Vec<usize> {
        let whole = |d: &Document<'_>| d.faces.iter().all(|f| !f.blocks.is_empty()) && !d.faces.is_empty();
        (0..self.documents.len())
            .filter(|i| self.worst(self.closures.get(*i)) != Some(Severity::Stop))
            .filter(|i| self.documents.get(*i).is_some_and(whole))
            .collect()
    }

    /// True if a HOLD touches the card.
    pub fn held(&self, card: usize) -> bool {
        self.worst(self.closures.get(card)) == Some(Severity::Hold)
    }

    /// What was accepted on a card, worst first.
    pub fn accepted(&self, card: usize) -> Vec<&Finding> {
        self.let_through(self.closures.get(card))
    }

    /// What was accepted in a book, worst first.
    pub fn book_accepted(&self, book: usize) -> Vec<&Finding> {
        self.let_through(self.book_closures.get(book))
    }

    /// True if a HOLD touches the book.
    pub fn book_held(&self, book: usize) -> bool {
        self.worst(self.book_closures.get(book)) == Some(Severity::Hold)
    }

    /// Books that may be printed, by index.
    pub fn free_books(&self) -> Vec<usize> {
        (0..self.books.len()).filter(|i| self.worst(self.book_closures.get(*i)) != Some(Severity::Stop)).collect()
    }

    /// Register drafts of some cards.
    pub fn drafts(&self, loaded: &Loaded, cards: &[usize]) -> Vec<Draft> {
        cards.iter().filter_map(|i| self.draft(loaded, *i)).collect()
    }

    fn draft(&self, loaded: &Loaded, at: usize) -> Option<Draft> {
        let (document, code, closure) = (self.documents.get(at)?, self.codes.get(at)?, self.closures.get(at)?);
        let mut values = Vec::new();
        for face in &document.faces {
            let id = format!("{code}/{}", face.lang.code());
            values.extend(face.values.iter().map(|v| Said::value(&id, face.lang, v)));
            let sentences = attach::sentences(&face.blocks);
            values.extend(sentences.iter().enumerate().map(|(n, s)| Said::sentence(&id, face.lang, &format!("block {}", n + 1), s)));
        }
        let leaves = closure.leaves().filter_map(|mark| {
            let place = loaded.place(mark)?;
            let text = loaded.folder.file(mark.file)?.slice(span(mark)).to_owned();
            Some(Leaf { key: String::new(), text, file: place.path, line: u32::try_from(place.line).unwrap_or(0) })
        });
        Some(Draft {
            subject: document.key.clone(),
            card: document.card.id.clone(),
            code: code.clone(),
            languages: document.faces.iter().map(|f| f.lang.code().to_owned()).collect(),
            copies: document.card.copies,
            hung: document.card.hung.as_ref().map(|t| t.text.clone()),
            holder: None,
            good_until: date(&document.subject.site().good_until),
            values,
            leaves: leaves.collect(),
        })
    }
}

#[derive(Default)]
struct Chosen<'p> {
    cards: BTreeSet<&'p str>,
    books: BTreeSet<String>,
}

/// Which cards and books the ids name: a code, a kind of card, a subject, a site, a book; all when there are none.
fn choose<'p>(loaded: &Loaded, plans: &'p [Plan<'_>], codes: &[String], ids: &[String]) -> Result<Chosen<'p>, Outcome> {
    let all_books: Vec<(String, &str)> =
        loaded.job.sites.iter().flat_map(|s| languages(loaded).into_iter().map(|l| (book::name(s, l), s.id.as_str()))).collect();
    let mut chosen = Chosen::default();
    if ids.is_empty() {
        chosen.cards = plans.iter().map(|p| p.key.as_str()).collect();
        chosen.books = all_books.into_iter().map(|(name, _)| name).collect();
        return Ok(chosen);
    }
    for id in ids {
        let cards = plans.iter().zip(codes).filter(|(p, code)| {
            *code == id || p.card.id == *id || p.key == *id || p.subject.id(&loaded.job) == *id || p.subject.site().id == *id
        });
        let cards: Vec<&str> = cards.map(|(p, _)| p.key.as_str()).collect();
        let books: Vec<String> =
            all_books.iter().filter(|(name, site)| name == id || site == id || id == "book").map(|(n, _)| n.clone()).collect();
        if cards.is_empty() && books.is_empty() {
            let kinds = loaded.job.cards.iter().map(|c| c.id.clone());
            let known = codes.iter().cloned().chain(kinds).chain(all_books.into_iter().map(|(n, _)| n));
            return Err(Outcome::nothing("card", id, known));
        }
        chosen.cards.extend(cards);
        chosen.books.extend(books);
    }
    Ok(chosen)
}

/// Languages of the company's paper.
pub fn languages(loaded: &Loaded) -> Vec<Lang> {
    loaded.job.company.iter().flat_map(|c| &c.languages).filter_map(|t| Lang::find(&t.text)).collect()
}

/// The cards in force once a run is entered: what was, replaced by what the run enters.
pub fn in_force<'e>(register: &'e Register, run: &'e [Assigned]) -> Vec<&'e Entry> {
    let new: BTreeSet<&str> = run.iter().map(|a| a.entry.code.as_str()).collect();
    let old = register::in_force(register.entries()).into_iter().filter(|e| !new.contains(e.code.as_str()));
    let mut all: Vec<&Entry> = old.chain(run.iter().map(|a| &a.entry)).collect();
    all.sort_by(|a, b| a.code.cmp(&b.code));
    all
}
