//! What checks of a text's words share: a clause that says certain things and is not turned round.

use crate::finding::Finding;
use crate::job::Text;
use crate::source::Span;

use super::text::{Piece, Sentence};
use super::told::once_a_place;
use super::{Ground, Seen};

/// Words that turn a clause round, in every language of the cards.
pub(super) const NOT: &[&str] = &[
    "no", "not", "never", "nothing", "nobody", "none", "don't", "doesn't", "isn't", "cannot", "can't", "without", "nor", "nunca", "jamás",
    "nada", "nadie", "ni", "sin", "tampoco", "ningún", "ninguna", "evite", "avoid",
];

/// Words of a sentence that looks for a fault: it names what it does not want.
const SEARCH: &[&str] = &["look for", "watch for", "check for", "watch out", "busque", "revise si", "fíjese si", "cuidado con"];

/// What a clause must say: a word of each list, none of `unless`, and nothing that turns it round.
pub(super) struct Ask<'a> {
    /// One of each must stand there; the first is the one that is pointed at.
    pub all: &'a [&'a [&'a str]],
    /// Words that make it harmless.
    pub unless: &'a [&'a str],
    /// Words that turn it round, mostly [`NOT`].
    pub not: &'a [&'a str],
}

/// The clauses of a sentence: what stands between its marks.
pub(super) fn clauses(sentence: &Sentence) -> impl Iterator<Item = &[Piece]> {
    sentence.pieces.split(|p| matches!(p, Piece::Mark)).filter(|c| !c.is_empty())
}

/// True if a word of the list stands in the clause.
pub(super) fn says(clause: &[Piece], list: &[&str]) -> bool {
    find(clause, list).is_some()
}

/// The first word of the list in a clause.
pub(super) fn find<'c>(clause: &'c [Piece], list: &[&str]) -> Option<&'c Piece> {
    clause.iter().find(|p| matches!(p, Piece::Word(w, _) if list.contains(&w.as_str())))
}

impl Ask<'_> {
    /// Word and place of what the clause says, if it says it.
    pub fn hit(&self, clause: &[Piece]) -> Option<(String, Span)> {
        if says(clause, self.not) || says(clause, self.unless) || !self.all.iter().all(|list| says(clause, list)) {
            return None;
        }
        match find(clause, self.all.first()?)? {
            Piece::Word(word, Some(at)) => Some((word.clone(), *at)),
            _ => None,
        }
    }
}

/// Findings of a check over the clauses of every text, one for a place.
pub(super) fn each_clause(ground: &Ground<'_>, ask: &Ask<'_>, tell: impl Fn(&Seen<'_>, String, Span) -> Finding) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.texts().filter(|seen| seen.may_say(ask.all)) {
        for sentence in seen.sentences().iter().filter(|s| !s.says(SEARCH)) {
            for (word, at) in clauses(sentence).filter_map(|c| ask.hit(c)) {
                found.push(tell(seen, word, at));
            }
        }
    }
    once_a_place(found)
}

/// Words of an authored text, lower case, with their places where its letters are the file's.
pub(super) fn words(text: &Text) -> Vec<(String, Span)> {
    let mut out = Vec::new();
    let mut from = None;
    for (i, c) in text.text.char_indices().chain([(text.text.len(), ' ')]) {
        if c.is_alphanumeric() || c == '-' {
            from.get_or_insert(i);
        } else if let Some(start) = from.take()
            && let Some(word) = text.text.get(start..i)
        {
            out.push((word.to_lowercase(), text.part(start, i)));
        }
    }
    out
}

/// The first of these words in an authored text.
pub(super) fn named(text: &Text, list: &[&str]) -> Option<(String, Span)> {
    words(text).into_iter().find(|(w, _)| list.contains(&w.as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn clause(text: &str) -> Vec<Piece> {
        let at = Span { file: 0, start: 0, end: 1 };
        text.split(' ').map(|w| Piece::Word(w.to_owned(), Some(at))).collect()
    }

    #[test]
    fn a_clause_says_all_of_it_or_nothing() {
        let ask = Ask { all: &[&["plastic"], &["face", "cara"]], unless: &["tent"], not: NOT };
        assert!(ask.hit(&clause("press plastic to the face")).is_some());
        for quiet in ["no plastic on the face", "tent plastic over the face", "press plastic", "the face"] {
            assert!(ask.hit(&clause(quiet)).is_none(), "{quiet}");
        }
    }

    #[test]
    fn words_of_a_value_have_their_own_place() {
        let text = Text { text: "dry Plywood, OSB".to_owned(), at: Span { file: 3, start: 10, end: 26 } };
        assert_eq!(named(&text, &["plywood"]), Some(("plywood".to_owned(), Span { file: 3, start: 14, end: 21 })));
        let quoted = Text { at: Span { file: 3, start: 10, end: 28 }, ..text };
        assert_eq!(named(&quoted, &["osb"]), Some(("osb".to_owned(), Span { file: 3, start: 10, end: 28 })));
    }
}
