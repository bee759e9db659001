//! C1: a text that keeps the wall wet for another time than the mix sheet says.

use std::cmp::Ordering;

use super::days::spoken;
use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::quantity::Quantity;
use crate::sound::phrase::{clauses, says};
use crate::sound::text::Piece;
use crate::sound::told::{once_a_place, related_value, text};
use crate::sound::{Check, Ground, Seen};
use crate::source::Span;
use crate::tally::mixes_of;

/// The check.
pub const CHECK: Check = Check {
    name: "wet-cure-differs",
    ids: &["C1"],
    severities: &[Severity::Stop],
    title: "a text keeps the wall wet for another time than the mix sheet",
    manual: include_str!("wet_cure_differs.md"),
    twins: &[("es", include_str!("wet_cure_differs.es.md"))],
    run,
};

/// Keeping a wall wet.
const WET: &[&str] = &[
    "wet",
    "moist",
    "damp",
    "moisture",
    "misted",
    "mist",
    "moist-cure",
    "wet-cure",
    "húmedo",
    "húmeda",
    "húmedos",
    "húmedas",
    "mojado",
    "mojada",
    "humedad",
    "rociada",
];
/// Words that make a time another one: a wait before, a rhythm, a delay.
const OTHER: &[&str] = &[
    "before", "within", "every", "each", "after", "until", "later", "ago", "antes", "cada", "dentro", "después", "tras", "hasta", "luego",
];
/// Keeping off a time that is named only to refuse it.
const NOT: &[&str] = &["no", "not", "never", "don't", "nunca", "jamás", "ni", "instead"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.texts_of_mixes().filter(|seen| seen.may_say(&[WET])) {
        for clause in seen.sentences().iter().flat_map(clauses) {
            if says(clause, WET) && !says(clause, OTHER) && !says(clause, NOT) {
                found.extend(times(seen, clause).into_iter().filter_map(|(said, time, at)| one(ground, seen, &said, &time, at)));
            }
        }
    }
    once_a_place(found)
}

/// The times of a clause that an author typed or pinned; the slot of the wet time itself follows the mix.
fn times(seen: &Seen<'_>, clause: &[Piece]) -> Vec<(String, Quantity, Span)> {
    let mut words: Vec<(String, Option<Span>)> = Vec::new();
    for piece in clause {
        match piece {
            Piece::Word(word, at) => words.push((word.clone(), *at)),
            Piece::Value(i) => {
                let used = seen.doc.values.get(*i).filter(|u| !u.figure.ends_with(".wet_cure"));
                let text = used.map(|u| (crate::sound::told::typed(&u.value.text).to_lowercase(), u.at));
                match text {
                    Some((text, at)) => words.extend(text.split_whitespace().map(|w| (w.to_owned(), Some(at)))),
                    // A slot of the sheet's own time parts what stands before from what stands behind.
                    None => words.push((String::new(), None)),
                }
            }
            Piece::Mark => {}
        }
    }
    let pair = |pair: &[(String, Option<Span>)]| match pair {
        [(number, Some(from)), (unit, Some(to))] => {
            let time = spoken(number, unit)?;
            let at = if from.file == to.file && from.start <= to.end { Span { end: to.end.max(from.end), ..*from } } else { *from };
            Some((format!("{number} {unit}"), time, at))
        }
        _ => None,
    };
    words.windows(2).filter_map(pair).collect()
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>, said: &str, time: &Quantity, at: Span) -> Option<Finding> {
    let own = seen.subject.mix(ground.job);
    let mixes: Vec<&Mix> = own.map_or_else(|| mixes_of(ground.job, seen.subject.site()), |m| vec![m]);
    // A text for several mixes is right if it is right for one of them: which one it means, only a reader knows.
    if mixes.iter().any(|m| m.cure.wet.value().compare(time) == Some(Ordering::Equal)) {
        return None;
    }
    let mix = mixes.first()?;
    let id = format!("{}.wet_cure", mix.id);
    let sheet = text(ground, &id, seen.voice.metric)?;
    let title = format!("the text keeps it wet {said}, the sheet of {} says wet {sheet}, then {}", mix.name.text, mix.cure.then.text);
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(at, "another time than the sheet's")
        .source("mix sheet; a polymer mix forms its film in air (summary of a report of ACI 548, not verified against a copy)")
        .help("write `{{ mix.wet_cure }}`; plaster's wet week is for plain mortar")
        .figure(id);
    Some(related_value(finding, ground, mix.cure.wet.node(), "wet time of the mix sheet"))
}
