//! B4: a twin prints a word that is heard on site, not the word of the glossary.

use crate::finding::{Finding, Severity};
use crate::job::{Job, Word};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground};

use super::side::{self, Words};

/// The check.
pub const CHECK: Check = Check {
    name: "heard-word-printed",
    ids: &["B4"],
    severities: &[Severity::Warn],
    title: "a twin prints a word that the glossary only hears",
    manual: include_str!("heard_word_printed.md"),
    twins: &[("es", include_str!("heard_word_printed.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    // The glossary speaks Spanish.
    let pairs = side::all(ground).filter(|(p, _)| p.twin.lang == "es" && p.sort != "glossary");
    let heard = ground.job.glossary.iter().filter(|word| word.heard.is_some());
    let heard: Vec<(&Word, String)> = heard.map(|word| (word, english(word).to_lowercase())).collect();
    let mut found = Vec::new();
    for (_, blocks) in pairs {
        for (original, twin) in blocks {
            let said = original.sentences.iter().flatten().map(|(word, _)| word.as_str()).collect::<Vec<_>>().join(" ");
            let spoken: Vec<&Word> = heard.iter().filter(|(_, english)| said.contains(english)).map(|(word, _)| *word).collect();
            if !spoken.is_empty() {
                let (mine, its) = (original.sentences.concat(), twin.sentences.concat());
                found.extend(spoken.iter().filter_map(|word| one(ground.job, word, &mine, &its)));
            }
        }
    }
    once_a_place(found)
}

/// `float, the tool` is looked for as `float`.
fn english(word: &Word) -> &str {
    word.en.text.split(',').next().unwrap_or("").trim()
}

fn one(job: &Job, word: &Word, mine: &Words, its: &Words) -> Option<Finding> {
    let heard = word.heard.as_ref()?;
    let english = english(word);
    side::phrase(mine, english)?;
    let spanish = word.es.text.split([',', '(']).next()?.trim();
    let head = spanish.split_whitespace().next()?;
    if side::phrase(its, head).is_some() {
        return None;
    }
    // What the glossary prints for something else is no slip: `capa` is a coat, and heard for a lift.
    let printed = |said: &str| job.glossary.iter().any(|w| w.es.text.split([' ', ',']).any(|part| part == said));
    let said = heard.text.split(',').map(str::trim).filter(|h| !printed(h));
    let (said, at) = said.filter_map(|h| side::phrase(its, h).map(|at| (h, at))).next()?;
    let title = format!("`{said}` is what some crews call {english}, the glossary prints `{}`", word.es.text);
    let finding = Finding::new(CHECK.name, Severity::Warn, title).at(at, "heard, not printed").related(word.es.at, "the glossary");
    let note = word.note.as_ref().map_or(String::new(), |n| format!(" ({})", n.text));
    let help = format!("write `{}`{note}, or let the lead change the glossary for the whole crew", word.es.text);
    Some(finding.source("glossary of the job; common practice, no source: regional words").help(help))
}
