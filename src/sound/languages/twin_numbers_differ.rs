//! B3: a step of a twin has another number typed than the step of its original.

use std::cmp::Ordering;
use std::collections::{BTreeMap, BTreeSet};

use crate::finding::{Finding, Severity};
use crate::prose::{Typed, numbered};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};

/// The check.
pub const CHECK: Check = Check {
    name: "twin-numbers-differ",
    ids: &["B3"],
    severities: &[Severity::Stop],
    title: "a twin has another number typed than its original",
    manual: include_str!("twin_numbers_differ.md"),
    twins: &[("es", include_str!("twin_numbers_differ.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut firsts: BTreeMap<(u32, &str), &Seen<'_>> = BTreeMap::new();
    for seen in ground.seen.iter().filter(|s| s.original.is_none()) {
        firsts.entry((seen.edition.body.file, seen.scope.subject.as_str())).or_insert(seen);
    }
    let mut found = Vec::new();
    let mut told = BTreeSet::new();
    for twin in ground.seen {
        let Some(original) = twin.original else { continue };
        let Some(first) = firsts.get(&(original.body.file, twin.scope.subject.as_str())) else { continue };
        if told.insert((first.doc.identity(), twin.doc.identity())) {
            found.extend(differ(first, first.typed(), twin, twin.typed()));
        }
    }
    once_a_place(found)
}

/// Numbers of each step that the other language has not, by value: a pint is two cups in both.
fn differ(first: &Seen<'_>, mine: &[Typed], twin: &Seen<'_>, its: &[Typed]) -> Vec<Finding> {
    let mut left = by_step(first, mine);
    let mut found = Vec::new();
    let mut odd = Vec::new();
    for (step, one) in by_step(twin, its) {
        let same = |(n, other): &(u64, &Typed)| *n == step && equal(other, one);
        match left.iter().position(same) {
            Some(i) => drop(left.remove(i)),
            None => odd.push((step, one)),
        }
    }
    for (step, one) in odd {
        let partner = left.iter().position(|(n, _)| *n == step).map(|i| left.remove(i).1);
        let place = if step == 0 { "outside its steps".to_owned() } else { format!("in step {step}") };
        let title = match partner {
            Some(other) => format!("the twin says `{}` {place}, its original `{}`", one.text, other.text),
            None => format!("only the twin says `{}` {place}", one.text),
        };
        let help = partner.map_or("print it by the same slot in both languages, or take it out".to_owned(), |other| {
            format!("write `{}` in both languages; better, print it by one slot", other.text)
        });
        let mut finding = Finding::new(CHECK.name, Severity::Stop, title).at(one.span, "the twin").source(SOURCE).help(help);
        if let Some(other) = partner {
            finding = finding.related(other.span, "the original");
        }
        found.push(finding);
    }
    for (step, one) in left {
        let place = if step == 0 { "outside its steps".to_owned() } else { format!("in step {step}") };
        let title = format!("only the original says `{}` {place}", one.text);
        let finding = Finding::new(CHECK.name, Severity::Stop, title).at(one.span, "the original").source(SOURCE);
        found.push(finding.related(twin.edition.title.at, "its twin").help("print it by the same slot in both languages"));
    }
    found
}

fn by_step<'t>(seen: &Seen<'_>, typed: &'t [Typed]) -> Vec<(u64, &'t Typed)> {
    let steps = numbered(&seen.edition.body);
    let step = |t: &Typed| steps.iter().find(|(_, at)| at.start <= t.span.start && t.span.end <= at.end).map_or(0, |(n, _)| *n);
    typed.iter().filter(|t| t.quantity.is_some()).map(|t| (step(t), t)).collect()
}

fn equal(a: &Typed, b: &Typed) -> bool {
    let (Some(a), Some(b)) = (&a.quantity, &b.quantity) else { return false };
    a.compare(b) == Some(Ordering::Equal)
}

const SOURCE: &str = "house rule: two languages, one set of numbers";
