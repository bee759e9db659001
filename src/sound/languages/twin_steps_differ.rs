//! B7: a twin has other steps than its original.

use crate::finding::{Finding, Severity};
use crate::job::Body;
use crate::prose::numbered;
use crate::sound::{Check, Ground};
use crate::source::Span;

use super::twins::{self, Pair};

/// The check.
pub const CHECK: Check = Check {
    name: "twin-steps-differ",
    ids: &["B7"],
    severities: &[Severity::Stop],
    title: "a twin has other steps than its original",
    manual: include_str!("twin_steps_differ.md"),
    twins: &[("es", include_str!("twin_steps_differ.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    twins::pairs(ground.job).iter().filter_map(one).collect()
}

fn one(pair: &Pair<'_>) -> Option<Finding> {
    let (original, twin) = (numbered(&pair.original.body), numbered(&pair.twin.body));
    let numbers = |list: &[(u64, Span)]| list.iter().map(|(n, _)| *n).collect::<Vec<u64>>();
    let (here, there) = (numbers(&original), numbers(&twin));
    if here == there {
        return None;
    }
    // Markdown counts a list through whatever is typed, so a lost step shows in the typed numbers first.
    let typed = |body: &Body, list: &[(u64, Span)]| list.iter().map(|(n, at)| leading(body, *at).unwrap_or(*n)).collect::<Vec<u64>>();
    let (mine, its) = (typed(&pair.original.body, &original), typed(&pair.twin.body, &twin));
    let first = (0..mine.len().max(its.len())).find(|i| mine.get(*i) != its.get(*i));
    let first = first.or_else(|| (0..here.len().max(there.len())).find(|i| here.get(*i) != there.get(*i)))?;
    let count = |n: usize| if n == 1 { "1 step".to_owned() } else { format!("{n} steps") };
    let title = if here.len() == there.len() {
        let number = |list: &[u64]| list.get(first).copied().unwrap_or(0);
        format!("step {} of the {} `{}` is step {} in its twin", number(&here), pair.sort, pair.name, number(&there))
    } else {
        format!("the {} `{}` has {}, its twin {}", pair.sort, pair.name, count(here.len()), there.len())
    };
    let at = twin.get(first).or(twin.last()).map_or(pair.twin.title.at, |(_, at)| *at);
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(at, "the twin differs from here on")
        .source("house rule: over the radio, a step is one step in both languages");
    if let Some((number, span)) = original.get(first) {
        finding = finding.related(*span, format!("step {number} of the original: {}", words(&pair.original.body, *span)));
        finding = finding.help(format!("give the twin the steps of its original, from step {number} on"));
    } else {
        finding = finding.help("take the steps out that the original has not");
    }
    Some(finding)
}

/// The number that an author typed before a step.
fn leading(body: &Body, at: Span) -> Option<u64> {
    let start = usize::try_from(at.start.saturating_sub(body.offset)).ok()?;
    let digits: String = body.text.get(start..)?.trim_start().chars().take_while(char::is_ascii_digit).collect();
    digits.parse().ok()
}

fn words(body: &Body, span: Span) -> String {
    let at = |n: u32| usize::try_from(n.saturating_sub(body.offset)).unwrap_or(0);
    let text = body.text.get(at(span.start)..at(span.end)).unwrap_or("");
    text.split_whitespace().skip(1).take(4).collect::<Vec<_>>().join(" ")
}
