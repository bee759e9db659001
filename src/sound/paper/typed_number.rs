//! D1: a number typed by hand that no figure says.

use crate::finding::{Finding, Severity};
use crate::prose::Verdict;
use crate::sound::{Check, Ground};

use super::audit;

/// The check.
pub const CHECK: Check = Check {
    name: "typed-number",
    ids: &["D1"],
    severities: &[Severity::Warn],
    title: "a number is typed by hand",
    manual: include_str!("typed_number.md"),
    twins: &[("es", include_str!("typed_number.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let heard = audit::all(ground).into_iter().filter(|h| matches!(h.verdict, Verdict::Other));
    let finding = |h: audit::Heard<'_, '_>| {
        let title = format!("`{}` is typed, no figure of {} says so", h.typed.text, h.seen.scope.subject);
        audit::finding(CHECK.name, Severity::Warn, &h, title, "typed by hand")
            .help(format!("link it to a figure, or declare {}", audit::declared(&h)))
    };
    heard.map(finding).collect()
}
