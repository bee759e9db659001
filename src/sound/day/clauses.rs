//! Small readings of a sentence that the text checks of this family share.

use crate::quantity::Num;
use crate::quantity::parse;
use crate::sound::text::{Piece, Sentence};
use crate::source::Span;

/// The length of the first of these phrases that begins at a place, in words.
pub(super) fn one_of(sentence: &Sentence, at: usize, phrases: &[&str]) -> Option<usize> {
    phrases.iter().find(|p| sentence.starts(at, p)).map(|p| p.split(' ').count())
}

/// Words that turn what follows round.
pub(super) const NOT: &[&str] = &["no", "not", "never", "don't", "nunca", "ni", "jamás", "nor"];

/// True if one of them stands within some words before a place, with no mark between.
pub(super) fn turned(sentence: &Sentence, at: usize, reach: usize) -> bool {
    (1..=reach)
        .map_while(|k| at.checked_sub(k))
        .take_while(|i| !matches!(sentence.pieces.get(*i), Some(Piece::Mark)))
        .any(|i| sentence.is(i, NOT))
}

/// The place from one piece to another, if an author typed both in one file.
pub(super) fn place(sentence: &Sentence, from: usize, to: usize) -> Option<Span> {
    let (a, b) = (sentence.place(from)?, sentence.place(to)?);
    (a.file == b.file && a.start <= b.end).then_some(Span { file: a.file, start: a.start, end: b.end.max(a.end) })
}

const NUMBERS: &[(&[&str], i64)] = &[
    (&["one", "a", "an", "un", "una", "uno"], 1),
    (&["two", "dos"], 2),
    (&["three", "tres"], 3),
    (&["four", "cuatro"], 4),
    (&["six", "seis"], 6),
    (&["eight", "ocho"], 8),
    (&["ten", "diez"], 10),
    (&["twelve", "doce"], 12),
    (&["twenty-four", "veinticuatro"], 24),
    (&["thirty-six"], 36),
];

/// A number, in digits or as a word.
pub(super) fn number(word: &str) -> Option<Num> {
    if word.starts_with(|c: char| c.is_ascii_digit()) {
        return parse::plain(word).ok();
    }
    NUMBERS.iter().find(|(words, _)| words.contains(&word)).map(|(_, n)| Num::int(*n))
}
