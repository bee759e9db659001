//! D11: a placeholder was left in a text.

use crate::finding::{Finding, Severity};
use crate::sound::runs;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "placeholder-left",
    ids: &["D11"],
    severities: &[Severity::Stop],
    title: "a placeholder was left in a text",
    manual: include_str!("placeholder_left.md"),
    twins: &[("es", include_str!("placeholder_left.es.md"))],
    run,
};

/// Words that stand for what is still to come, as they are typed. Lower-case ones are words of the trade.
const WORDS: &[&str] = &["TODO", "TBD", "TBC", "FIXME", "XXX", "XX", "PENDIENTE", "PD"];
/// Marks that do.
const MARKS: &[&str] = &["???", "[?]", "<...>", "<…>", "[...]", "[…]", "[insert", "[fill"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for run in ground.texts().flat_map(runs::of).chain(runs::of_mixes(ground.job)).chain(runs::of_names(ground.job)) {
        let word = run.words().into_iter().find(|(w, ..)| WORDS.contains(w)).map(|(w, at, _)| (w.to_owned(), at));
        let mark = || MARKS.iter().find_map(|m| run.find(m).map(|at| ((*m).to_owned(), at)));
        let Some((what, at)) = word.or_else(mark) else { continue };
        let finding = Finding::new(CHECK.name, Severity::Stop, format!("`{what}` stands where the text is still to come"));
        let help = "write what belongs here, or take the sentence out; a figure is printed by a slot such as `{{ mix.limit }}`";
        found.push(finding.at(at, "still to come").source("house rule: nothing half-written is hung on a wall").help(help));
    }
    once_a_place(found)
}
