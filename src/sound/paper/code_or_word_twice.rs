//! D8: two papers in force answer to one code or to one check-word.

use crate::finding::{Finding, Severity};
use crate::job::{Issued, Page};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "code-or-word-twice",
    ids: &["D8"],
    severities: &[Severity::Stop],
    title: "two papers answer to one code or one check-word",
    manual: include_str!("code_or_word_twice.md"),
    twins: &[("es", include_str!("code_or_word_twice.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (n, later) in ground.issued.iter().enumerate() {
        let before = ground.issued.get(..n).unwrap_or(&[]);
        if let Some(first) = before.iter().find(|b| !later.word.is_empty() && b.word.eq_ignore_ascii_case(&later.word)) {
            let title = format!("2 cards in force answer to {}: {} and {}", later.word, first.code, later.code);
            let help = format!("recall {} or {} and issue it anew: the register gives it a word of its own", first.code, later.code);
            found.push(both(title, first, later).help(help));
        }
        if let Some(first) = before.iter().find(|b| b.code == later.code) {
            let title = format!("2 cards in force are called {}: {} and {}", later.code, first.subject, later.subject);
            let help = format!("recall both cards of code {} and issue them anew", later.code);
            found.push(both(title, first, later).help(help));
        }
    }
    found.extend(ground.job.procedures.iter().filter_map(|page| procedure(ground, page)));
    found
}

fn both(title: String, first: &Issued, later: &Issued) -> Finding {
    let finding = Finding::new(CHECK.name, Severity::Stop, title).source(SOURCE);
    finding.figure(format!("{}/en", first.code)).figure(format!("{}/en", later.code))
}

/// A procedure whose code is one that cards get: the letter of a kind of card, a hyphen, digits.
fn procedure(ground: &Ground<'_>, page: &Page) -> Option<Finding> {
    let (letter, number) = page.code.text.split_once('-')?;
    let numbered = !number.is_empty() && number.chars().all(|c| c.is_ascii_digit());
    let card = ground.job.cards.iter().find(|c| numbered && c.code.text == letter)?;
    let title = format!("the procedure `{}` has a code of the {} cards", page.code.text, card.id);
    let finding = Finding::new(CHECK.name, Severity::Stop, title).at(page.code.at, "a card may be called this").source(SOURCE);
    let other = format!("give the procedure a letter that no card has, or leave the hyphen out: `{letter}{number}`");
    Some(finding.related(card.code.at, "its cards get this letter, a hyphen and a number").help(other))
}

const SOURCE: &str = "house rule: over the radio a code or a check-word means one paper";
