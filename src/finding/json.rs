//! Findings as JSON, for other programs; `docs/schema/findings.json` describes it. `format` is raised when a key changes its meaning or goes.

use serde_json::{Value, json};

use super::{Finding, Lines, place};
use crate::source::Span;

fn at(span: Span, label: &str, lines: &Lines<'_>) -> Value {
    let Some((path, text)) = lines(span.file) else { return Value::Null };
    let (line, column) = place(text, span.start);
    let (end_line, end_column) = place(text, span.end);
    json!({
        "path": path, "line": line, "column": column, "end": {"line": end_line, "column": end_column},
        "bytes": [span.start, span.end], "label": label,
    })
}

/// `{"format": 1, "findings": […]}`; lines and columns from 1, columns in characters, `end` after the last one.
pub fn json(findings: &[Finding], lines: &Lines<'_>) -> Value {
    let one = |f: &Finding| {
        json!({
            "name": f.name,
            "severity": f.severity.word(),
            "title": f.title,
            "at": f.at.as_ref().map_or(Value::Null, |(s, l)| at(*s, l, lines)),
            "related": f.related.iter().map(|(s, l)| at(*s, l, lines)).collect::<Vec<_>>(),
            "derived": f.derived,
            "source": f.source,
            "help": f.help,
            "figures": f.figures,
            "about": f.about,
            "accepted": f.accepted.as_ref().map(|a| json!({"by": a.by, "because": a.because, "value": a.value})),
        })
    };
    json!({"format": 1, "findings": findings.iter().map(one).collect::<Vec<_>>()})
}

#[cfg(test)]
mod tests {
    use super::super::Severity;
    use super::*;

    #[test]
    fn lines_and_columns_are_a_persons() {
        let finding = Finding::new("step-over-limit", Severity::Hold, "step is 2 qt, over 1 qt")
            .at(Span { file: 0, start: 13, end: 17 }, "step")
            .derived("2 qt > 1 qt")
            .figure("m.step");
        let seen = json(&[finding], &|_| Some(("mixes/m.md", "name: añ\ns: 2 qt\n")));
        let want = json!({"format": 1, "findings": [{
            "name": "step-over-limit", "severity": "HOLD", "title": "step is 2 qt, over 1 qt",
            "at": {"path": "mixes/m.md", "line": 2, "column": 4, "end": {"line": 2, "column": 8}, "bytes": [13, 17], "label": "step"},
            "related": [], "derived": ["2 qt > 1 qt"], "source": "", "help": "", "figures": ["m.step"],
            "about": null, "accepted": null,
        }]});
        assert_eq!(seen, want);
    }

    /// What the schema lists and what we write are the same keys: neither grows without the other.
    #[test]
    fn the_schema_lists_these_keys() {
        let schema: Value = serde_json::from_str(include_str!("../../docs/schema/findings.json")).unwrap();
        let mut finding = Finding::new("a", Severity::Hold, "b").at(Span { file: 0, start: 0, end: 1 }, "c");
        finding.accepted = Some(super::super::Accepted { by: "LEAD".into(), because: "seen".into(), value: None });
        let said = json(&[finding], &|_| Some(("mixes/m.md", "name: m\n")));
        let keys = |v: &Value| v.as_object().unwrap().keys().cloned().collect::<std::collections::BTreeSet<_>>();
        let one = &said["findings"][0];
        let defined = &schema["$defs"]["finding"]["properties"];
        assert_eq!(keys(one), keys(defined));
        assert_eq!(keys(&one["at"]), keys(&schema["$defs"]["place"]["properties"]));
        assert_eq!(keys(&one["accepted"]), keys(&defined["accepted"]["anyOf"][0]["properties"]));
        assert_eq!(schema["properties"]["format"]["const"], said["format"]);
        assert_eq!(schema["$defs"]["finding"]["required"].as_array().unwrap().len(), keys(one).len());
    }
}
