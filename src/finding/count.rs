//! The last line of a run.

use super::{Finding, Severity};

/// `2 STOP, 1 HOLD, 0 WARN, 3 NOTE`, and what was hidden: findings less severe than `least` are not shown, and
/// `accepted` HOLDs neither.
pub fn count(findings: &[Finding], least: Severity, accepted: usize) -> String {
    let of = |severity: Severity| findings.iter().filter(|f| f.severity == severity).count();
    let words: Vec<String> = Severity::ALL.iter().map(|s| format!("{} {}", of(*s), s.word())).collect();
    let mut line = words.join(", ");
    let unseen: Vec<String> = Severity::ALL
        .iter()
        .filter(|s| **s > least && of(**s) > 0)
        .map(|s| format!("{} {}", of(*s), s.word()))
        .chain((accepted > 0).then(|| format!("{accepted} accepted HOLD")))
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
        let all = [f(Severity::Stop), f(Severity::Note), f(Severity::Stop)];
        assert_eq!(count(&all, Severity::Note, 0), "2 STOP, 0 HOLD, 0 WARN, 1 NOTE");
        assert_eq!(count(&all, Severity::Hold, 3), "2 STOP, 0 HOLD, 0 WARN, 1 NOTE; not shown: 1 NOTE, 3 accepted HOLD");
    }
}
