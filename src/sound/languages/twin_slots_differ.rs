//! B3: a step of a twin prints other values than the step of its original.

use std::collections::BTreeSet;

use crate::finding::{Finding, Severity};
use crate::prose::{numbered, slots};
use crate::sound::{Check, Ground};
use crate::source::Span;

use super::twins::{self, Pair};

/// The check.
pub const CHECK: Check = Check {
    name: "twin-slots-differ",
    ids: &["B3"],
    severities: &[Severity::Stop],
    title: "a step of a twin prints other values than its original",
    manual: include_str!("twin_slots_differ.md"),
    twins: &[("es", include_str!("twin_slots_differ.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    twins::pairs(ground.job).iter().flat_map(one).collect()
}

/// Slots of each step, as sets: a value may stand twice in a longer sentence.
fn one(pair: &Pair<'_>) -> Vec<Finding> {
    let (original, twin) = (slots(&pair.original.body), slots(&pair.twin.body));
    let steps: BTreeSet<u64> = original.iter().chain(&twin).map(|(step, ..)| *step).collect();
    let of = |list: &[(u64, String, Span)], step: u64| -> BTreeSet<String> {
        list.iter().filter(|(n, ..)| *n == step).map(|(_, slot, _)| slot.clone()).collect()
    };
    let places = numbered(&pair.twin.body);
    let mut found = Vec::new();
    for step in steps {
        let bare = places.iter().find(|(n, _)| *n == step).map_or(pair.twin.title.at, |(_, at)| *at);
        let (here, there) = (of(&original, step), of(&twin, step));
        let whole = if step == 0 { "outside its steps".to_owned() } else { format!("in step {step}") };
        let place = |list: &[(u64, String, Span)], slot: &str| list.iter().find(|(n, s, _)| *n == step && s == slot).map(|(.., at)| *at);
        let beside = |list: &[(u64, String, Span)]| list.iter().find(|(n, ..)| *n == step).map(|(.., at)| *at);
        let lacks: Vec<&String> = here.difference(&there).collect();
        let adds: Vec<&String> = there.difference(&here).collect();
        for slot in &lacks {
            let title = format!("the twin of the {} `{}` lacks `{{{{ {slot} }}}}` {whole}", pair.sort, pair.name);
            // One missing for one added is one mistake: the carets stand under the one that took its place.
            let at = adds.first().and_then(|s| place(&twin, s)).or_else(|| beside(&twin)).unwrap_or(bare);
            let label = if there.is_empty() { "the twin prints nothing here" } else { "the twin prints this" };
            let mut finding = Finding::new(CHECK.name, Severity::Stop, title).at(at, label).help(help(slot, step));
            if let Some(span) = place(&original, slot) {
                finding = finding.related(span, "the original prints this");
            }
            found.push(finding.source(SOURCE));
        }
        for slot in adds.iter().skip(lacks.len()) {
            let title = format!("the twin of the {} `{}` adds `{{{{ {slot} }}}}` {whole}", pair.sort, pair.name);
            let at = place(&twin, slot).unwrap_or(bare);
            let finding = Finding::new(CHECK.name, Severity::Stop, title).at(at, "only the twin prints this");
            found.push(finding.source(SOURCE).help("take it out, or print it in the original too"));
        }
    }
    found
}

fn help(slot: &str, step: u64) -> String {
    let step = if step == 0 { String::new() } else { format!(" in step {step}") };
    format!("print `{{{{ {slot} }}}}`{step} of the twin as well")
}

const SOURCE: &str = "house rule: two languages, one set of numbers";
