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
    let count = |n: usize| if n == 1 { "1 step".to_owned() } else { format!("{n} steps") };
    let title = format!("the {} `{}` has {}, its twin {}", pair.sort, pair.name, count(here.len()), count(there.len()));
    let first = (0..).take(here.len().max(there.len())).find(|i| here.get(*i) != there.get(*i));
    let at = first.and_then(|i| twin.get(i)).or(twin.last()).map_or(pair.twin.title.at, |(_, at)| *at);
    let mut finding = Finding::new(CHECK.name, Severity::Stop, title).at(at, "the twin counts here").source("a lost step is a lost rule");
    if let Some((number, span)) = first.and_then(|i| original.get(i)) {
        finding = finding.related(*span, format!("step {number} of the original: {}", words(&pair.original.body, *span)));
        finding = finding.help(format!("give the twin the steps of its original, from step {number} on"));
    } else {
        finding = finding.help("take the steps out that the original has not");
    }
    Some(finding)
}

fn words(body: &Body, span: Span) -> String {
    let at = |n: u32| usize::try_from(n.saturating_sub(body.offset)).unwrap_or(0);
    let text = body.text.get(at(span.start)..at(span.end)).unwrap_or("");
    text.split_whitespace().skip(1).take(4).collect::<Vec<_>>().join(" ")
}
