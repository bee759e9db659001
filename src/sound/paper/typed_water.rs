//! D1: an amount of water typed by hand that no figure says.

use crate::finding::{Finding, Severity};
use crate::prose::Verdict;
use crate::sound::{Check, Ground};

use super::audit;

/// The check.
pub const CHECK: Check = Check {
    name: "typed-water",
    ids: &["D1"],
    severities: &[Severity::Hold],
    title: "an amount of water is typed by hand",
    manual: include_str!("typed_water.md"),
    twins: &[("es", include_str!("typed_water.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let heard = audit::all(ground).into_iter().filter(|h| matches!(h.verdict, Verdict::Water));
    let finding = |h: audit::Heard<'_, '_>| {
        let title = format!("`{}` of water is typed, no figure of {} says so", h.typed.text, h.seen.scope.subject);
        audit::finding(CHECK.name, Severity::Hold, &h, title, "typed by hand")
            .help(format!("print a figure of the mix or the batch, or declare {}", audit::declared(&h)))
    };
    heard.map(finding).collect()
}
