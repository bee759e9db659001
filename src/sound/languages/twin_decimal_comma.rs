//! B5: a Spanish text writes a decimal with a comma.

use std::collections::BTreeMap;

use crate::finding::{Finding, Severity};
use crate::sound::runs::{self, Run};
use crate::sound::{Check, Ground};
use crate::source::Span;
use crate::words::ES;

/// The check.
pub const CHECK: Check = Check {
    name: "twin-decimal-comma",
    ids: &["B5"],
    severities: &[Severity::Hold],
    title: "a Spanish text writes a decimal with a comma",
    manual: include_str!("twin_decimal_comma.md"),
    twins: &[("es", include_str!("twin_decimal_comma.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut files: BTreeMap<u32, Vec<(String, Span)>> = BTreeMap::new();
    for seen in ground.texts().filter(|s| s.voice.lang == ES) {
        for run in runs::of(seen) {
            for (number, at) in commas(&run) {
                let all = files.entry(at.file).or_default();
                if !all.iter().any(|(_, there)| *there == at) {
                    all.push((number, at));
                }
            }
        }
    }
    // Once a text: the habit is one.
    let mut found = Vec::new();
    for all in files.values() {
        let Some((number, at)) = all.iter().min_by_key(|(_, at)| *at) else { continue };
        let more = all.len().saturating_sub(1);
        let more = match more {
            0 => String::new(),
            1 => ", and once more in this text".to_owned(),
            more => format!(", and {more} times more in this text"),
        };
        let title = format!("`{number}` writes a decimal with a comma, US papers with a point{more}");
        let finding = Finding::new(CHECK.name, Severity::Hold, title).at(*at, "comma");
        let help = format!("write `{}`; better, print it by a slot", number.replace(',', "."));
        found.push(finding.source("glossary of the job: numbers as on the bags and gauges of a US site").help(help));
    }
    found
}

/// Numbers with one comma that parts no thousands.
fn commas(run: &Run) -> Vec<(String, Span)> {
    let mut out = Vec::new();
    let inside = |c: char| c.is_ascii_digit() || matches!(c, ',' | '.' | '/');
    let mut from = None;
    for (i, c) in run.text.char_indices().chain([(run.text.len(), ' ')]) {
        match (inside(c), from) {
            (true, None) if c.is_ascii_digit() => from = Some(i),
            (false, Some(start)) => {
                from = None;
                let number = run.text.get(start..i).unwrap_or("").trim_end_matches([',', '.', '/']);
                let parts: Vec<&str> = number.split(',').collect();
                let decimal = matches!(parts[..], [_, part] if part.len() != 3 && part.chars().all(|c| c.is_ascii_digit()));
                if decimal {
                    out.push((number.to_owned(), run.part(start, start + number.len())));
                }
            }
            _ => {}
        }
    }
    out
}
