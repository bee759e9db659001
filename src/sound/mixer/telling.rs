//! How texts tell a crew to put something in, in both languages: words, what turns them round, where they stand.

use crate::job::{Job, Mix};
use crate::sound::Seen;
use crate::sound::text::{Piece, Sentence};
use crate::source::Span;
use crate::tally::mixes_of;

/// Words that turn round what follows them.
const NOT: &[&str] = &[
    "no", "not", "never", "don't", "nobody", "none", "without", "before", "instead", "nunca", "ni", "jamás", "nadie", "sin", "antes",
    "ningún", "ninguna",
];
/// Words that put something in. The manual pages list them.
pub(super) const PUTS_IN: &[&str] = &[
    "add",
    "adds",
    "added",
    "adding",
    "pour",
    "pours",
    "poured",
    "put",
    "puts",
    "use",
    "uses",
    "dose",
    "stir",
    "tip",
    "charge",
    "charges",
    "goes",
    "go",
    "throw",
    "agregue",
    "agrega",
    "agregar",
    "agréguele",
    "añada",
    "añade",
    "añadir",
    "añádale",
    "eche",
    "echa",
    "echar",
    "échele",
    "use",
    "usa",
    "usar",
    "ponga",
    "pone",
    "poner",
    "póngale",
    "vierta",
    "vierte",
    "cargue",
    "lleva",
    "dosifique",
    "dele",
    "déle",
];
/// Words that may stand between a turning word and the verb that it turns.
const BETWEEN: &[&str] = &[
    "or", "and", "a", "an", "any", "ever", "you", "one", "may", "must", "should", "to", "be", "is", "o", "y", "se", "le", "les", "lo",
    "la", "me", "más", "debe", "puede", "de", "que", "they", "anyone", "usted", "there", "more",
];
/// Half.
pub(super) const HALF: &[&str] = &["half", "halve", "halves", "mitad", "medio", "media", "medios"];
/// The mortar.
pub(super) const MORTAR: &[&str] = &["mortar", "mortero"];
/// The additive.
pub(super) const ADDITIVE: &[&str] = &["additive", "aditivo"];
/// What is left of it.
pub(super) const REST: &[&str] = &["rest", "remaining", "remainder", "resto", "restante"];

/// Places of the words in a sentence.
pub(super) fn all<'s>(sentence: &'s Sentence, list: &'s [&'s str]) -> impl Iterator<Item = usize> + 's {
    (0..sentence.pieces.len()).filter(move |i| sentence.is(*i, list))
}

/// Where a phrase of several words begins.
pub(super) fn phrase(sentence: &Sentence, phrase: &str) -> Option<usize> {
    (0..sentence.pieces.len()).find(|i| sentence.starts(*i, phrase))
}

/// True if a turning word stands before it, with nothing between but small words and words of the list.
pub(super) fn turned(sentence: &Sentence, at: usize, list: &[&str]) -> bool {
    for i in (0..at).rev() {
        if sentence.is(i, NOT) {
            return true;
        }
        if !sentence.is(i, BETWEEN) && !sentence.is(i, list) {
            return false;
        }
    }
    false
}

/// True if a turning word stands before it in its clause.
pub(super) fn negated(sentence: &Sentence, at: usize) -> bool {
    let clause = (0..at).rev().take_while(|i| !matches!(sentence.pieces.get(*i), Some(Piece::Mark)));
    clause.into_iter().any(|i| sentence.is(i, NOT))
}

/// Where a thing stands that the sentence tells somebody to put in: a verb before it or behind it that nothing turns round.
pub(super) fn put_in(sentence: &Sentence, things: &[&str]) -> Option<usize> {
    all(sentence, things).find(|thing| {
        if negated(sentence, *thing) {
            return false;
        }
        let free = |verb: usize| !turned(sentence, verb, PUTS_IN);
        let before = (0..*thing).rev().find(|i| sentence.is(*i, PUTS_IN)).is_some_and(free);
        let clause = (*thing..sentence.pieces.len()).take_while(|i| !matches!(sentence.pieces.get(*i), Some(Piece::Mark)));
        let mut behind = clause.skip(1);
        before || behind.find(|i| sentence.is(*i, PUTS_IN) || sentence.is(*i, NOT)).is_some_and(|i| sentence.is(i, PUTS_IN) && free(i))
    })
}

/// Place of a piece in the author's file.
pub(super) fn place(seen: &Seen<'_>, sentence: &Sentence, at: usize) -> Option<Span> {
    match sentence.pieces.get(at)? {
        Piece::Value(i) => seen.doc.values.get(*i).map(|u| u.at),
        piece => piece.place(),
    }
}

/// Id of the figure that a piece prints.
pub(super) fn figure<'s>(seen: &'s Seen<'_>, sentence: &Sentence, at: usize) -> Option<&'s str> {
    match sentence.pieces.get(at)? {
        Piece::Value(i) => seen.doc.values.get(*i).map(|u| &*u.figure),
        _ => None,
    }
}

/// True if the sentence prints a figure whose id ends so.
pub(super) fn prints(seen: &Seen<'_>, sentence: &Sentence, end: &str) -> bool {
    (0..sentence.pieces.len()).any(|i| figure(seen, sentence, i).is_some_and(|id| id.ends_with(end)))
}

/// The mixes that a text speaks of: its own, or those of its site.
pub(super) fn mixes<'a>(job: &'a Job, seen: &Seen<'a>) -> Vec<&'a Mix> {
    match seen.subject.mix(job) {
        Some(mix) => vec![mix],
        None => mixes_of(job, seen.subject.site()),
    }
}
