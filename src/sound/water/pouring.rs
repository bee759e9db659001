//! How a sentence lets water in, and how it forbids it: the words of both languages, for the checks of this family.

use crate::sound::text::{Piece, Sentence};
use crate::sound::{Ground, Seen};
use crate::source::Span;

/// Words that let something in. The manual page lists them.
pub(super) const LETS_IN: &[&str] = &[
    "add",
    "adds",
    "adding",
    "pour",
    "pours",
    "pouring",
    "give",
    "hose",
    "spray",
    "agregue",
    "agréguela",
    "agréguele",
    "agregar",
    "agrega",
    "añada",
    "añádale",
    "añadir",
    "eche",
    "échela",
    "échele",
    "echar",
    "vierta",
    "viértala",
    "viértale",
    "verter",
    "póngale",
    "dele",
    "déle",
    "rocíe",
];
/// Words that let water in and need not name it, and the words that then follow: `splash some in` does, `splashes burn` does not.
pub(super) const SPLASHES: &[&str] = &["splash", "dash", "squirt", "trickle", "salpique", "chorro", "chorrito"];
/// What follows such a word where it lets water in.
pub(super) const SPLASHED: &[&str] = &["some", "in", "more", "a", "it", "of", "water", "un", "de", "agua", "más"];
/// Water.
pub(super) const WATER: &[&str] =
    &["water", "cup", "cups", "pint", "pints", "quart", "quarts", "gallon", "gallons", "agua", "taza", "tazas", "pinta", "cuarto", "galón"];
/// Words before the water that make it what something goes into: `add the mortar to the water`.
pub(super) const INTO: &[&str] = &["to", "into", "in", "al", "en", "sobre"];
/// Small words between such a word and the water.
pub(super) const ARTICLES: &[&str] = &["the", "a", "start", "el", "la", "this", "that"];
/// Words that turn the next verb round.
pub(super) const NOT: &[&str] =
    &["no", "not", "never", "don't", "nobody", "before", "without", "nunca", "ni", "jamás", "nadie", "antes", "sin"];
/// Words that may stand between the one and the other: `nobody may ever add`, `no se le agregue`.
pub(super) const BETWEEN: &[&str] = &[
    "or", "and", "a", "an", "any", "ever", "you", "one", "may", "must", "should", "to", "o", "y", "se", "le", "les", "lo", "la", "me",
    "más", "vuelva", "debe", "puede", "de", "que", "they", "anyone", "usted",
];

/// The place of the word that lets water in, if one does.
pub(super) fn lets_in(sentence: &Sentence) -> Option<Span> {
    let word = |p: &Piece| if let Piece::Word(w, _) = p { Some(w.clone()) } else { None };
    let words: Vec<Option<String>> = sentence.pieces.iter().map(word).collect();
    let is = |i: usize, list: &[&str]| words.get(i).and_then(Option::as_deref).is_some_and(|w| list.contains(&w));
    let into = |i: usize| (0..i).rev().find(|k| !is(*k, ARTICLES)).is_some_and(|k| is(k, INTO));
    let water = (0..words.len()).find(|i| is(*i, WATER) && !into(*i));
    for i in 0..words.len() {
        if is(i, SPLASHES) && is(i + 1, SPLASHED) && !turned(&words, i) {
            return sentence.place(i);
        }
        if is(i, LETS_IN) && !turned(&words, i) {
            // `Add no water`: the turning word stands between the verb and the water.
            let open = water.is_some_and(|w| w < i || !(i + 1..w).any(|k| is(k, NOT)));
            if open {
                return sentence.place(i);
            }
        }
    }
    None
}

/// True if a turning word stands before the word, with nothing between but small words and other such verbs.
pub(super) fn turned(words: &[Option<String>], at: usize) -> bool {
    for word in words.get(..at).unwrap_or(&[]).iter().rev() {
        let Some(word) = word.as_deref() else { return false };
        if NOT.contains(&word) {
            return true;
        }
        if ![BETWEEN, LETS_IN, SPLASHES].iter().any(|list| list.contains(&word)) {
            return false;
        }
    }
    false
}

/// Words about cleaning, curing and the barrel: water there is not water in the mix.
const ELSEWHERE: &[&str] = &[
    "wash", "washing", "wash-out", "clean", "clean-up", "rinse", "mist", "misting", "cure", "curing", "barrel", "eyes", "eyewash", "skin",
    "hands", "drink", "lave", "lavar", "lavado", "limpie", "limpiar", "enjuague", "curado", "barril", "ojos", "lavaojos", "piel", "manos",
    "beba",
];
/// What is wetted without being mixed, where the verb speaks of it: `wet the wall by hose`.
const WETTED: &[&str] =
    &["wall", "walls", "lath", "block", "floor", "base", "ground", "pared", "paredes", "muro", "malla", "bloque", "piso", "base"];

/// True if the clause around a word speaks of other water than that of the mix.
pub(super) fn elsewhere(words: &[Option<String>], at: usize) -> bool {
    let start = (0..at).rev().find(|i| words.get(*i).is_some_and(Option::is_none)).map_or(0, |i| i + 1);
    let end = (at..words.len()).find(|i| words.get(*i).is_some_and(Option::is_none)).unwrap_or(words.len());
    let verb = (start..=at).find(|i| is(words, *i, LETS_IN) || is(words, *i, &["wet", "moje"])).unwrap_or(at);
    (start..end).any(|i| is(words, i, ELSEWHERE)) || (verb + 1..(verb + 4).min(end)).any(|i| is(words, i, WETTED))
}

/// Words of a sentence, values as `#`, marks between clauses as nothing.
pub(super) fn words(sentence: &Sentence) -> Vec<Option<String>> {
    let word = |p: &Piece| match p {
        Piece::Word(w, _) => Some(w.clone()),
        Piece::Value(_) => Some("#".to_owned()),
        Piece::Mark => None,
    };
    sentence.pieces.iter().map(word).collect()
}

/// True if the word at a place is one of these.
pub(super) fn is(words: &[Option<String>], at: usize, list: &[&str]) -> bool {
    words.get(at).and_then(Option::as_deref).is_some_and(|w| list.contains(&w))
}

/// Where a phrase stands in a clause: index of its first word.
pub(super) fn phrase(words: &[Option<String>], phrase: &str) -> Option<usize> {
    let parts: Vec<&str> = phrase.split(' ').collect();
    (0..words.len()).find(|i| parts.iter().enumerate().all(|(k, p)| is(words, i + k, &[*p])))
}

/// True if a printed value of the sentence, by its index in the document, is an amount of water.
pub(super) fn is_water(ground: &Ground<'_>, seen: &Seen<'_>, value: usize) -> bool {
    let figure = seen.doc.values.get(value).and_then(|used| ground.tally.figure(&used.figure));
    figure.is_some_and(|f| f.role.is_water())
}

/// As [`turned`], and prepositions, articles and the water itself may stand between too: `no water by hose`.
pub(super) fn turned_far(words: &[Option<String>], at: usize) -> bool {
    const FAR: &[&str] = &[
        "by", "with", "from", "using", "out", "it", "comes", "goes", "con", "de", "desde", "por", "viene", "llega", "al", "del", "el",
        "los", "las", "do", "be", "is", "mida", "measure", "measured", "guess",
    ];
    for word in words.get(..at).unwrap_or(&[]).iter().rev() {
        let Some(word) = word.as_deref() else { return false };
        if NOT.contains(&word) {
            return true;
        }
        if ![BETWEEN, LETS_IN, SPLASHES, WATER, ARTICLES, FAR].iter().any(|list| list.contains(&word)) {
            return false;
        }
    }
    false
}
