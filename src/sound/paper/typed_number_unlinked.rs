//! D2: a typed number is right today and linked to nothing.

use crate::finding::{Finding, Severity};
use crate::prose::Verdict;
use crate::sound::told::text;
use crate::sound::{Check, Ground};

use super::audit;

/// The check.
pub const CHECK: Check = Check {
    name: "typed-number-unlinked",
    ids: &["D2"],
    severities: &[Severity::Warn],
    title: "a typed number equals a figure and is not linked to it",
    manual: include_str!("typed_number_unlinked.md"),
    twins: &[("es", include_str!("typed_number_unlinked.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for heard in audit::all(ground) {
        let Verdict::Equals(id) = &heard.verdict else { continue };
        let figure = ground.tally.figure(id).map_or(id.as_str(), |f| crate::words::EN.text(f.label));
        let printed = text(ground, id, heard.seen.voice.metric).unwrap_or_default();
        let title = format!("`{}` is typed, it equals the {figure} {printed} today", heard.typed.text);
        let finding = audit::finding(CHECK.name, Severity::Warn, &heard, title, "typed by hand").help(format!(
            "{}, so that it moves with its mix; if it is meant, declare {}",
            audit::instead(&heard, id),
            audit::declared(&heard)
        ));
        found.push(finding.figure(id));
    }
    found
}
