//! Anchors and index of the book: every heading has an anchor; every glossary word found in the text points at the
//! heading it stands under.

use crate::job::Job;
use crate::press::payload::{Block, Chapter, Term};
use crate::words::{EN, Lang};

use super::attach;

/// Most places one index entry points at; a word on every page is no help to find anything.
const MOST_PLACES: usize = 6;

/// Gives every heading of a chapter an anchor of its own.
pub fn anchor(blocks: &mut [Block], chapter: &str) {
    for (n, block) in blocks.iter_mut().enumerate() {
        if let Block::Heading { id, .. } = block
            && id.is_empty()
        {
            *id = format!("{chapter}-{n}");
        }
    }
}

/// The index: headings below the chapter titles, and glossary words, in the order of the alphabet.
pub fn terms(chapters: &[Chapter], job: &Job, lang: Lang) -> Vec<Term> {
    let mut terms: Vec<Term> = Vec::new();
    let mut add = |term: &str, to: &str| match terms.iter_mut().find(|t| t.term.to_lowercase() == term.to_lowercase()) {
        Some(found) if found.to.iter().any(|t| t == to) => {}
        Some(found) => found.to.push(to.to_owned()),
        None => terms.push(Term { term: term.to_owned(), to: vec![to.to_owned()] }),
    };
    for chapter in chapters {
        let mut here = chapter.id.clone();
        for block in &chapter.blocks {
            let text = attach::sentences(std::slice::from_ref(block)).join(" ").to_lowercase();
            if let Block::Heading { id, .. } = block {
                here.clone_from(id);
                if !id.starts_with(super::trouble::CHECK) {
                    add(attach::sentences(std::slice::from_ref(block)).join(" ").trim(), &here);
                }
            }
            // The two-language word list and the worksheets hold every word there is.
            if matches!(block, Block::Table { .. } | Block::Drawing { .. }) {
                continue;
            }
            for word in &job.glossary {
                let word = if lang == EN { &word.en.text } else { &word.es.text };
                if holds(&text, &word.to_lowercase()) {
                    add(word, &here);
                }
            }
        }
    }
    terms.retain(|t| t.to.len() <= MOST_PLACES);
    terms.sort_by_key(|t| (folded(&t.term), t.term.clone()));
    terms
}

fn holds(text: &str, word: &str) -> bool {
    let edge = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
    word.len() > 2
        && text.match_indices(word).any(|(at, _)| {
            let (before, after) = (text.get(..at), text.get(at + word.len()..));
            edge(before.and_then(|t| t.chars().next_back())) && edge(after.and_then(|t| t.chars().next()))
        })
}

/// Letters without accents, so that `área` sorts under a.
fn folded(text: &str) -> String {
    text.to_lowercase()
        .chars()
        .map(|c| match c {
            'á' => 'a',
            'é' => 'e',
            'í' => 'i',
            'ó' => 'o',
            'ú' | 'ü' => 'u',
            'ñ' => 'n',
            other => other,
        })
        .collect()
}
