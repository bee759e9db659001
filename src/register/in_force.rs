//! The list of cards in force: for the book, for the radio in the morning, and for checks that ask.

use std::collections::BTreeMap;

use crate::job::Issued;

use super::entry::{Entry, Event};

/// The entries in force, by code.
///
/// A card is in force at its last issued revision until that revision is snipped or voided. A lost one
/// stays: somebody may still be reading it.
pub fn in_force<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> Vec<&'a Entry> {
    let mut last: BTreeMap<(&str, u32), &Entry> = BTreeMap::new();
    for entry in entries {
        match entry.kind {
            Event::Issued => {
                last.insert(order(&entry.code), entry);
            }
            Event::Snipped | Event::Voided => {
                // The end of an older revision says nothing about the one that replaced it.
                if last.get(&order(&entry.code)).is_some_and(|e| e.rev == entry.rev) {
                    last.remove(&order(&entry.code));
                }
            }
            Event::Lost | Event::Ordered => {}
        }
    }
    last.into_values().collect()
}

/// The same for checks, which may not know the register.
pub fn issued<'a>(entries: impl IntoIterator<Item = &'a Entry>) -> Vec<Issued> {
    let short = |e: &Entry| Issued { code: e.code.clone(), subject: e.subject.clone(), rev: e.rev.clone(), word: e.word.clone() };
    in_force(entries).into_iter().map(short).collect()
}

/// Sorts `M-100` after `M-99`.
fn order(code: &str) -> (&str, u32) {
    match code.rsplit_once('-').map(|(letter, number)| (letter, number.parse())) {
        Some((letter, Ok(number))) => (letter, number),
        _ => (code, 0),
    }
}
