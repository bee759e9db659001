//! The typed-number audit, asked once for every text: each typed amount with its verdict.

use std::collections::BTreeMap;

use crate::finding::{Finding, Severity};
use crate::prose::{PHRASES, Typed, Verdict, verdict};
use crate::sound::{Ground, Seen};
use crate::source::Span;

/// One typed amount in one text, with its verdict there.
pub(super) struct Heard<'g, 'a> {
    pub typed: Typed,
    pub verdict: Verdict,
    pub seen: &'g Seen<'a>,
}

/// Rank of a verdict, worst first.
fn rank(verdict: &Verdict) -> u8 {
    match verdict {
        Verdict::DiffersFrom(..) => 0,
        Verdict::Water => 1,
        Verdict::Other => 2,
        Verdict::Equals(_) => 3,
    }
}

/// Every typed amount, once a place. A text is made for many subjects: a number that is right for one batch and
/// wrong for another is wrong.
pub(super) fn all<'g, 'a>(ground: &'g Ground<'a>) -> Vec<Heard<'g, 'a>> {
    let mut worst: BTreeMap<Span, Heard<'g, 'a>> = BTreeMap::new();
    for seen in ground.seen {
        for typed in seen.typed() {
            let verdict = verdict(typed, &seen.scope, ground.tally, seen.voice, PHRASES);
            let worse = worst.get(&typed.span).is_none_or(|h| rank(&verdict) < rank(&h.verdict));
            if worse {
                worst.insert(typed.span, Heard { typed: typed.clone(), verdict, seen });
            }
        }
    }
    worst.into_values().collect()
}

/// A slot that prints a figure in a text, by the name an author gives it.
pub(super) fn slot(heard: &Heard<'_, '_>, id: &str) -> Option<String> {
    fn find(slot: &crate::tally::Slot, id: &str, path: &str) -> Option<String> {
        use crate::tally::Slot;
        match slot {
            Slot::Figure(own) => (own.as_ref() == id).then(|| path.to_owned()),
            Slot::Map(map) => map.iter().find_map(|(name, slot)| {
                let path = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
                find(slot, id, &path)
            }),
            // What a loop reaches has no name outside the loop.
            Slot::Text(_) | Slot::Name(_) | Slot::List(_) => None,
        }
    }
    let root = &heard.seen.scope.root;
    // The batch's own name comes before the mix's, and that before any other.
    let near = ["batch", "mix", "mixer"].iter().find_map(|group| root.get(group).and_then(|s| find(s, id, group)));
    near.or_else(|| find(root, id, ""))
}

/// What to write instead of a number that says a figure.
pub(super) fn instead(heard: &Heard<'_, '_>, id: &str) -> String {
    match slot(heard, id) {
        Some(slot) => format!("print `{{{{ {slot} }}}}`"),
        None => format!("print the figure `{id}`"),
    }
}

/// A finding at a typed amount.
pub(super) fn finding(name: &'static str, severity: Severity, heard: &Heard<'_, '_>, title: String, label: &str) -> Finding {
    Finding::new(name, severity, title).at(heard.typed.span, label).source("house rule: no number reaches paper by hand")
}

/// How a number that is meant is declared.
pub(super) fn declared(heard: &Heard<'_, '_>) -> String {
    format!("`{{{{ fixed(\"{}\", because=\"…\") }}}}`", heard.typed.text)
}
