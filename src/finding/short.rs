//! One line a finding: `path:line:col: STOP name: title`.

use annotate_snippets::normalize_untrusted_str;

use super::{Finding, Lines, place};

/// The finding in one line, without a line end.
pub fn short(finding: &Finding, lines: &Lines<'_>) -> String {
    let at = finding.at.as_ref().and_then(|(span, _)| {
        let (path, text) = lines(span.file)?;
        let (line, column) = place(text, span.start);
        Some(format!("{path}:{line}:{column}: "))
    });
    let accepted = finding.accepted.as_ref().map(|a| format!(" (accepted by {})", normalize_untrusted_str(&a.by)));
    format!(
        "{}{} {}: {}{}",
        at.unwrap_or_default(),
        finding.severity.word(),
        finding.name,
        normalize_untrusted_str(&finding.title),
        accepted.unwrap_or_default()
    )
}
