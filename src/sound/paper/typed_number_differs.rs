//! D1: a typed number says something else than the figure its phrase names.

use crate::finding::{Finding, Severity};
use crate::prose::Verdict;
use crate::sound::told::typed;
use crate::sound::{Check, Ground};

use super::audit;

/// The check.
pub const CHECK: Check = Check {
    name: "typed-number-differs",
    ids: &["D1"],
    severities: &[Severity::Stop],
    title: "a typed number differs from the figure its phrase names",
    manual: include_str!("typed_number_differs.md"),
    twins: &[("es", include_str!("typed_number_differs.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for heard in audit::all(ground) {
        let Verdict::DiffersFrom(id, printed) = &heard.verdict else { continue };
        let printed = typed(printed);
        let figure = ground.tally.figure(id).map_or(id.as_str(), |f| crate::words::EN.text(f.label));
        let title = format!("`{}` is typed, the {figure} is {printed}", heard.typed.text);
        let finding = audit::finding(CHECK.name, Severity::Stop, &heard, title, "typed by hand")
            .derived(format!("for {}: {id} prints {printed}", heard.seen.scope.subject))
            .help(format!("{}; if it is meant, declare {}", audit::instead(&heard, id), audit::declared(&heard)));
        found.push(finding.figure(id));
    }
    found
}
