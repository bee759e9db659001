//! D14: an acceptance of another value.

use crate::finding::{Finding, Severity};
use crate::job::Accept;
use crate::sound::Check;

/// The check.
pub const CHECK: Check = Check {
    name: "acceptance-lapsed",
    ids: &["D14"],
    severities: &[Severity::Warn],
    title: "an acceptance of another value",
    manual: include_str!("acceptance_lapsed.md"),
    twins: &[("es", include_str!("acceptance_lapsed.es.md"))],
    run: super::later,
};

pub(super) fn finding(accept: &Accept, of: &Finding, now: Option<&str>) -> Finding {
    let title = match (&accept.value, now) {
        (Some(said), Some(now)) => format!("`{}` was accepted at `{}`, it is now at `{now}`", of.name, said.text),
        (Some(said), None) => format!("`{}` was accepted at `{}`, it is now about something missing", of.name, said.text),
        (None, Some(now)) => format!("`{}` is accepted without a value, it is at `{now}`", of.name),
        (None, None) => format!("`{}` is not accepted as it stands", of.name),
    };
    let help = match now {
        Some(now) => format!("if {} accepts that too, write `value: {now}`", accept.by.text),
        None => format!("if {} accepts that it is missing, take `value` out", accept.by.text),
    };
    let at = accept.value.as_ref().unwrap_or(&accept.finding).at;
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .at(at, "accepted here")
        .derived(of.title.clone())
        .source("house rule: an acceptance lapses when the value moves")
        .help(help);
    match &of.at {
        Some((span, label)) => finding.related(*span, label.clone()),
        None => finding,
    }
}
