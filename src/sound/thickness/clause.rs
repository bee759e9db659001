//! Clauses of a text: what is said between two marks, with the words that make it an order about thickness.

use crate::sound::Seen;
use crate::sound::text::{Piece, Sentence};
use crate::source::Span;

/// One clause: words in order, printed values as `#` with the end of their figure's name (`#mean`, `#lifts`).
pub(super) struct Clause {
    words: Vec<(String, Option<Span>)>,
}

/// Words that turn a clause round, or make it a condition instead of an order.
const NOT: &[&str] = &["no", "not", "never", "nobody", "none", "without", "nothing", "don't", "doesn't", "isn't", "cannot", "can't"];
const NOT_ES: &[&str] = &["no", "nunca", "ni", "jamás", "nadie", "sin", "nada", "ningún", "ninguna"];
const IF: &[&str] = &["if", "when", "where", "unless", "wherever", "si", "cuando", "donde", "salvo"];
const AND: &[&str] = &["and", "but", "while", "y", "pero", "mientras"];
const ARTICLES: &[&str] = &["the", "a", "an", "its", "their", "your", "el", "la", "los", "las", "lo", "un", "una", "su"];

/// True if one of the phrases may stand in a sentence: its first word does. `#name` is a printed figure.
pub(super) fn may(seen: &Seen<'_>, sentence: &Sentence, phrases: &[&str]) -> bool {
    let begins = |word: &str| phrases.iter().any(|p| p.strip_prefix(word).is_some_and(|rest| rest.is_empty() || rest.starts_with(' ')));
    sentence.pieces.iter().any(|piece| match piece {
        Piece::Word(word, _) => begins(word),
        Piece::Value(i) => seen.doc.values.get(*i).is_some_and(|used| phrases.iter().any(|p| p.strip_prefix('#') == Some(used.name()))),
        Piece::Mark => false,
    })
}

/// Clauses of a sentence, parted at marks.
pub(super) fn clauses(seen: &Seen<'_>, sentence: &Sentence) -> Vec<Clause> {
    let mut all = vec![Clause { words: Vec::new() }];
    for piece in &sentence.pieces {
        let word = match piece {
            Piece::Mark => {
                all.push(Clause { words: Vec::new() });
                continue;
            }
            Piece::Word(word, at) => (word.clone(), *at),
            Piece::Value(i) => match seen.doc.values.get(*i) {
                Some(used) => (format!("#{}", used.name()), Some(used.at)),
                None => ("#".to_owned(), None),
            },
        };
        if let Some(open) = all.last_mut() {
            open.words.push(word);
        }
    }
    all.retain(|c| !c.words.is_empty());
    all
}

impl Clause {
    fn is(&self, i: usize, list: &[&str]) -> bool {
        self.words.get(i).is_some_and(|(w, _)| list.contains(&w.as_str()))
    }

    /// True if one of the words stands in it.
    pub fn has(&self, list: &[&str]) -> bool {
        (0..self.words.len()).any(|i| self.is(i, list))
    }

    /// True if it forbids, denies or only supposes.
    pub fn turned(&self) -> bool {
        self.has(NOT) || self.has(NOT_ES) || self.has(IF)
    }

    /// Its halves where `and` or `but` joins two orders; itself if there is none.
    pub fn parts(self, each_has: impl Fn(&Clause) -> bool) -> Vec<Clause> {
        let joint = (0..self.words.len()).find(|i| {
            let (left, right) = (self.slice(0, *i), self.slice(i + 1, self.words.len()));
            self.is(*i, AND) && each_has(&left) && each_has(&right)
        });
        match joint {
            Some(i) => vec![self.slice(0, i), self.slice(i + 1, self.words.len())],
            None => vec![self],
        }
    }

    fn slice(&self, from: usize, to: usize) -> Clause {
        Clause { words: self.words.get(from..to).unwrap_or(&[]).to_vec() }
    }

    /// Where each of the phrases stands: first word, word after the last.
    pub fn all<'c>(&'c self, phrases: &'c [&str]) -> impl Iterator<Item = (usize, usize)> + 'c {
        phrases.iter().flat_map(move |phrase| {
            let wanted: Vec<&str> = phrase.split(' ').collect();
            (0..self.words.len()).filter_map(move |i| {
                let here = wanted.iter().enumerate().all(|(k, w)| self.words.get(i + k).is_some_and(|(word, _)| word == w));
                here.then_some((i, i + wanted.len()))
            })
        })
    }

    /// The first of the phrases that one of the words leads up to, with nothing but articles between.
    pub fn led<'c>(&'c self, leads: &[&str], phrases: &'c [&str]) -> Option<(usize, usize)> {
        self.all(phrases).find(|(from, _)| {
            let before = (0..*from).rev().find(|i| !self.is(*i, ARTICLES));
            before.is_some_and(|i| self.is(i, leads))
        })
    }

    /// True if one of the words stands at the place, or one place further on.
    pub fn soon(&self, at: usize, list: &[&str]) -> bool {
        self.is(at, list) || self.is(at + 1, list)
    }

    /// True if one of the words stands from the one place up to the other.
    pub fn between(&self, from: usize, to: usize, list: &[&str]) -> bool {
        (from..to).any(|i| self.is(i, list))
    }

    /// True if the phrase ends the clause, or one of the words goes on.
    pub fn ends(&self, after: usize, list: &[&str]) -> bool {
        after >= self.words.len() || self.is(after, list)
    }

    /// Place of some of its words, as one if they stand together in a file.
    pub fn place(&self, (from, to): (usize, usize)) -> Option<Span> {
        let spans: Vec<Span> = self.words.get(from..to)?.iter().filter_map(|(_, at)| *at).collect();
        let (first, last) = (spans.first()?, spans.last()?);
        Some(if first.file == last.file && first.start < last.end { Span { end: last.end, ..*first } } else { *first })
    }

    /// Some of its words, one space between.
    pub fn said(&self, (from, to): (usize, usize)) -> String {
        let words = self.words.get(from..to).unwrap_or(&[]).iter().map(|(w, _)| w.trim_start_matches('#'));
        words.collect::<Vec<_>>().join(" ")
    }
}
