//! D4: a text names a revision of a mix that is not in force.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::text::{Piece, Sentence, sentences_in};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "mix-revision-not-in-force",
    ids: &["D4"],
    severities: &[Severity::Stop],
    title: "a text names a mix revision that is not in force",
    manual: include_str!("mix_revision_not_in_force.md"),
    twins: &[("es", include_str!("mix_revision_not_in_force.es.md"))],
    run,
};

/// Words before a revision letter.
const REVISION: &[&str] = &["rev", "revision", "revisión"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.texts() {
        let title = sentences_in(&seen.edition.title);
        for sentence in seen.sentences().iter().chain(&title) {
            found.extend(one(ground, sentence));
        }
    }
    once_a_place(found)
}

/// A mix named in the sentence and the letter that follows it: `CARVE-24 rev B`, `CARVE-24, revision B`.
fn one(ground: &Ground<'_>, sentence: &Sentence) -> Option<Finding> {
    let words: Vec<(&str, Option<crate::source::Span>)> =
        sentence.pieces.iter().filter_map(|p| if let Piece::Word(word, at) = p { Some((word.as_str(), *at)) } else { None }).collect();
    let word = |i: usize| words.get(i).map_or("", |(w, _)| *w);
    for i in 0..words.len() {
        let letter = word(i + 1);
        let single = letter.chars().count() == 1 && letter.chars().all(char::is_alphabetic);
        if !REVISION.contains(&word(i)) || !single {
            continue;
        }
        // `rev a card` is no revision of a mix: only a mix named before it makes it one.
        let named = |mix: &&Mix| (0..i).any(|k| word(k) == mix.name.text.to_lowercase());
        let Some(mix) = ground.job.mixes.iter().find(named) else { continue };
        let said = letter.to_uppercase();
        if said == mix.rev.text.to_uppercase() {
            continue;
        }
        let title = format!("`{} rev {said}` is named, rev {} is in force", mix.name.text, mix.rev.text);
        let mut finding = Finding::new(CHECK.name, Severity::Stop, title)
            .related(mix.rev.at, "the revision in force")
            .source("house rule: one revision of a mix is in force at a time, the one of its file")
            .help(format!(
                "read the text against rev {0}, then write rev {0}; or leave the letter out: the footer prints it",
                mix.rev.text
            ));
        if let Some(at) = words.get(i + 1).and_then(|(_, at)| *at) {
            finding = finding.at(at, "this revision");
        }
        return Some(finding);
    }
    None
}
