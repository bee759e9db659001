//! The last line of a run.

use super::{Finding, Severity};

/// `2 STOP, 1 HOLD, 0 WARN, 3 NOTE`, and what was hidden: findings less severe than `least` are not shown, and
/// accepted ones neither.
pub fn count(findings: &[Finding], least: Severity) -> String {
    let of = |severity: Severity| findings.iter().filter(|f| f.severity == severity && f.accepted.is_none()).count();
    let accepted = findings.iter().filter(|f| f.accepted.is_some()).count();
    let words: Vec<String> = Severity::ALL.iter().map(|s| format!("{} {}", of(*s), s.word())).collect();
    let mut line = words.join(", ");
    let unseen: Vec<String> = Severity::ALL
        .iter()
        .filter(|s| **s > least && of(**s) > 0)
        .map(|s| format!("{} {}", of(*s), s.word()))
        .chain((accepted > 0).then(|| format!("{accepted} accepted")))
        .collect();
    if !unseen.is_empty() {
        line.push_str(&format!("; not shown: {}", unseen.join(", ")));
    }
    line
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_what_was_hidden() {
        let f = |s| Finding::new("a", s, "b");
        let mut all = vec![f(Severity::Stop), f(Severity::Note), f(Severity::Stop)];
        assert_eq!(count(&all, Severity::Note), "2 STOP, 0 HOLD, 0 WARN, 1 NOTE");
        let mut held = f(Severity::Hold);
        held.accepted = Some(super::super::Accepted { by: "LEAD".into(), because: "seen".into(), value: None });
        all.push(held);
        assert_eq!(count(&all, Severity::Hold), "2 STOP, 0 HOLD, 0 WARN, 1 NOTE; not shown: 1 NOTE, 1 accepted");
    }
}
