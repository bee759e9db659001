//! Phrases in a sentence, with the places of their words.

use crate::sound::text::{Piece, Sentence};
use crate::source::Span;

/// A sentence as a row of words: a printed value is `#`, a mark that parts clauses is `,`.
pub(super) struct Line<'a> {
    words: Vec<&'a str>,
    pieces: &'a [Piece],
}

/// Words that turn what follows round.
const NOT: &[&str] = &[
    "no", "not", "never", "don't", "nobody", "nothing", "neither", "nor", "without", "cannot", "can't", "nunca", "ni", "jamás", "nadie",
    "nada", "sin",
];
/// Words that open a condition: a `not` in it says when to act, not that nobody may.
const IF: &[&str] = &["if", "when", "until", "where", "once", "si", "cuando", "hasta", "donde"];

impl<'a> Line<'a> {
    /// The row of a sentence.
    pub(super) fn of(sentence: &'a Sentence) -> Line<'a> {
        let word = |p: &'a Piece| match p {
            Piece::Word(w, _) => w.as_str(),
            Piece::Value(_) => "#",
            Piece::Mark => ",",
        };
        Line { words: sentence.pieces.iter().map(word).collect(), pieces: &sentence.pieces }
    }

    /// Where the first of some phrases begins, at or after a word; marks inside a phrase are not stepped over.
    pub(super) fn find_from(&self, from: usize, phrases: &[&str]) -> Option<usize> {
        (from..self.words.len()).find(|i| phrases.iter().any(|p| self.stands(*i, p)))
    }

    /// The first of some phrases.
    pub(super) fn find(&self, phrases: &[&str]) -> Option<usize> {
        self.find_from(0, phrases)
    }

    /// True if one of some phrases stands in it.
    pub(super) fn has(&self, phrases: &[&str]) -> bool {
        self.find(phrases).is_some()
    }

    /// The first of some phrases that nothing before it turns round.
    pub(super) fn meant(&self, phrases: &[&str]) -> Option<usize> {
        let mut from = 0;
        while let Some(at) = self.find_from(from, phrases) {
            if !self.turned(at) {
                return Some(at);
            }
            from = at + 1;
        }
        None
    }

    fn stands(&self, at: usize, phrase: &str) -> bool {
        let mut words = phrase.split(' ').enumerate();
        words.all(|(k, p)| self.words.get(at + k).is_some_and(|w| *w == p))
    }

    /// True if a turning word stands before a word, but for one inside a condition that a mark has closed:
    /// `If it does not move, push it` pushes.
    pub(super) fn turned(&self, at: usize) -> bool {
        let mut condition = false;
        let mut open = false;
        for word in self.words.get(..at).unwrap_or(&[]) {
            if *word == "," {
                open &= !condition;
                condition = false;
            } else if IF.contains(word) {
                condition = true;
            } else if NOT.contains(word) {
                open = true;
            }
        }
        open
    }

    /// Which of some phrases stands at a word, the longest of them.
    pub(super) fn phrase(&self, at: usize, phrases: &[&'static str]) -> &'static str {
        phrases.iter().filter(|p| self.stands(at, p)).max_by_key(|p| p.len()).copied().unwrap_or("")
    }

    /// The place of so many words, if an author typed them in one go.
    pub(super) fn places(&self, at: usize, words: usize) -> Option<Span> {
        let (first, last) = (self.place(at)?, self.place(at + words.max(1) - 1)?);
        Some(if first.file == last.file && first.start <= last.start { Span { end: last.end, ..first } } else { first })
    }

    /// The word at a place of the row.
    pub(super) fn word(&self, at: usize) -> &'a str {
        self.words.get(at).copied().unwrap_or("")
    }

    /// Its place in the author's file, if an author typed it.
    pub(super) fn place(&self, at: usize) -> Option<Span> {
        self.pieces.get(at).and_then(Piece::place)
    }
}

/// The words of a plain text, lower case, in a row with one space between and around.
pub(super) fn row(text: &str) -> String {
    let words: Vec<String> = text.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()).map(str::to_lowercase).collect();
    format!(" {} ", words.join(" "))
}

/// True if one of some phrases stands in a row of words.
pub(super) fn says(row: &str, phrases: &[&str]) -> bool {
    phrases.iter().any(|p| row.contains(&format!(" {p} ")))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn meant(words: &[&str], phrase: &str) -> bool {
        let piece = |w: &&str| if *w == "," { Piece::Mark } else { Piece::Word((*w).to_owned(), None) };
        let sentence = Sentence { step: None, pieces: words.iter().map(piece).collect() };
        Line::of(&sentence).meant(&[phrase]).is_some()
    }

    #[test]
    fn a_condition_does_not_turn_what_follows_it() {
        assert!(meant(&["if", "it", "does", "not", "move", ",", "push", "it"], "push it"));
        assert!(!meant(&["do", "not", "push", "it"], "push it"));
        assert!(!meant(&["never", "scrape", ",", "push", "it"], "push it"));
        assert!(!meant(&["push", ",", "it"], "push it"));
        assert!(meant(&["no", "hands", "when", "it", "turns"], "no hands"));
    }

    #[test]
    fn plain_texts_are_rows() {
        assert!(says(&row("Flames and pilots out, air moving."), &["air moving"]));
        assert!(!says(&row("Repair"), &["air"]));
    }
}
