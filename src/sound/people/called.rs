//! Which cautions a card or a procedure calls for, and which it carries.

use crate::job::{Card, Caution, Page, Site, Text};
use crate::prose::block::Doc;
use crate::sound::{Ground, Role, Seen};
use crate::source::Span;
use crate::tally::Subject;

use super::conditions::{ALWAYS, CALLS, MIXER, WET_CEMENT};
use super::phrases::{Line, row, says};

/// A card or a procedure, with every language it was seen in once.
pub(super) struct Paper<'a> {
    /// How a finding calls it.
    pub name: String,
    /// Place of its name or code.
    pub at: Span,
    /// Cautions it lists.
    pub listed: &'a [Text],
    /// True if what it lists is printed on it.
    pub prints: bool,
    /// Its texts, one for each language.
    pub texts: Vec<&'a Seen<'a>>,
    /// Sites it is made for.
    pub sites: Vec<&'a Site>,
}

/// What in a text calls for a condition.
pub(super) struct Call {
    /// The condition.
    pub condition: &'static str,
    /// The words, as typed.
    pub words: String,
    /// Their place.
    pub at: Span,
}

/// Every card and procedure of a run.
pub(super) fn papers<'a>(ground: &'a Ground<'a>) -> Vec<Paper<'a>> {
    let mut known: Vec<(Key<'a>, Paper<'a>)> = Vec::new();
    for seen in ground.seen {
        let key = match seen.role {
            Role::Card(card) => Key::Card(card),
            Role::Procedure(page) => Key::Page(page),
            _ => continue,
        };
        match known.iter_mut().find(|(k, _)| k.same(&key)) {
            Some((_, paper)) => {
                let site = seen.subject.site();
                if paper.sites.last().is_none_or(|s| !std::ptr::eq(*s, site)) {
                    paper.sites.push(site);
                }
                if paper.texts.iter().all(|t| t.edition.lang != seen.edition.lang) {
                    paper.prints &= key.prints(seen);
                    paper.texts.push(seen);
                }
            }
            None => {
                let (name, at, listed) = match key {
                    Key::Card(card) => {
                        let Some(first) = card.editions.first() else { continue };
                        (format!("the {}", first.title.text), first.title.at, card.cautions.as_slice())
                    }
                    Key::Page(page) => (page.code.text.clone(), page.code.at, page.cautions.as_slice()),
                };
                known
                    .push((key, Paper { name, at, listed, prints: key.prints(seen), texts: vec![seen], sites: vec![seen.subject.site()] }));
            }
        }
    }
    known.into_iter().map(|(_, paper)| paper).collect()
}

#[derive(Clone, Copy)]
enum Key<'a> {
    Card(&'a Card),
    Page(&'a Page),
}

impl Key<'_> {
    fn same(&self, other: &Key<'_>) -> bool {
        match (self, other) {
            (Key::Card(a), Key::Card(b)) => std::ptr::eq(*a, *b),
            (Key::Page(a), Key::Page(b)) => std::ptr::eq(*a, *b),
            _ => false,
        }
    }

    /// The book sets a procedure's cautions by itself; a card has them where its fence stands.
    fn prints(&self, seen: &Seen<'_>) -> bool {
        matches!(self, Key::Page(_)) || asks(&seen.doc)
    }
}

fn asks(doc: &Doc) -> bool {
    let mut asks = false;
    doc.asked(&mut |name, _, _| asks |= name == "cautions");
    asks
}

impl<'a> Paper<'a> {
    /// The cautions printed on it.
    pub(super) fn carries(&self, ground: &'a Ground<'a>) -> Vec<&'a Caution> {
        let listed = |c: &&Caution| self.prints && self.listed.iter().any(|n| n.text == c.id);
        ground.job.cautions.iter().filter(listed).collect()
    }

    /// Which of the wanted conditions it calls for, each once, at the first words that do.
    pub(super) fn calls(&self, wanted: impl Fn(&str) -> bool) -> Vec<Call> {
        let mut calls: Vec<Call> = Vec::new();
        let open = |calls: &[Call], condition: &str| wanted(condition) && calls.iter().all(|c| c.condition != condition);
        for seen in &self.texts {
            for sentence in seen.sentences() {
                let line = Line::of(sentence);
                for (condition, phrases) in CALLS {
                    if !open(&calls, condition) {
                        continue;
                    }
                    let Some(i) = line.find(phrases) else { continue };
                    let phrase = line.phrase(i, phrases);
                    let Some(at) = line.places(i, phrase.split(' ').count()) else { continue };
                    calls.push(Call { condition, words: format!("`{phrase}`"), at });
                }
            }
            // A card for one mixer that prints the mixing time has the mixer running, whatever it calls it; so has wet mix.
            let Some(mixing) = seen.doc.values.iter().find(|u| u.figure.ends_with(".mixing")) else { continue };
            let turns = matches!(seen.subject, Subject::Batch(..));
            for condition in [(MIXER, turns), (WET_CEMENT, true)].iter().filter(|(_, yes)| *yes).map(|(c, _)| *c) {
                if open(&calls, condition) {
                    calls.push(Call { condition, words: "the mixing time".to_owned(), at: mixing.at });
                }
            }
        }
        if open(&calls, ALWAYS) {
            calls.push(Call { condition: ALWAYS, words: self.name.clone(), at: self.at });
        }
        calls
    }

    /// What it says of eyes and of skin, in one of its languages: by a caution for wet cement or in its own words.
    pub(super) fn wet(&self, ground: &'a Ground<'a>, seen: &Seen<'_>) -> (bool, bool) {
        let carried = self.carries(ground);
        let cautions: Vec<String> = carried
            .iter()
            .filter(|c| c.when.text == WET_CEMENT)
            .filter_map(|c| c.editions.iter().find(|e| e.lang == seen.edition.lang).or(c.editions.first()))
            .map(|e| row(&format!("{} {}", e.title.text, e.body.text)))
            .collect();
        let part = |names: &[&str]| {
            cautions.iter().any(|c| says(c, names)) || seen.sentences().iter().map(Line::of).any(|line| line.has(names) && line.has(RINSE))
        };
        (part(EYES), part(SKIN))
    }
}

const EYES: &[&str] = &["eye", "eyes", "ojo", "ojos"];
const SKIN: &[&str] = &["skin", "piel"];
/// What helps the one and the other.
const RINSE: &[&str] = &["rinse", "flush", "wash", "water", "enjuague", "lave", "agua"];
