//! B4: the glossary prints two words for one thing.

use crate::finding::{Finding, Severity};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "glossary-word-twice",
    ids: &["B4"],
    severities: &[Severity::Warn],
    title: "the glossary has two Spanish words for one thing",
    manual: include_str!("glossary_word_twice.md"),
    twins: &[("es", include_str!("glossary_word_twice.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let all = &ground.job.glossary;
    let mut found = Vec::new();
    for (n, word) in all.iter().enumerate() {
        let english = word.en.text.to_lowercase();
        let Some(first) = all.iter().take(n).find(|w| w.en.text.to_lowercase() == english) else { continue };
        if first.es.text.to_lowercase() == word.es.text.to_lowercase() {
            continue;
        }
        let title = format!("`{}` is both `{}` and `{}`", word.en.text, first.es.text, word.es.text);
        let finding = Finding::new(CHECK.name, Severity::Warn, title).at(word.es.at, "the second").related(first.es.at, "the first");
        let help = format!("keep one of them, and put the other under `heard`; or say what tells them apart: `{}, …`", word.en.text);
        found.push(finding.source("glossary of the job: one thing, one printed word").help(help));
    }
    found
}
