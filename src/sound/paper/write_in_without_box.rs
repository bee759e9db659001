//! D9: a value is to be written by hand and has no box.

use crate::finding::{Finding, Severity};
use crate::job::{Card, Distance};
use crate::sound::runs::{self, Run};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::{once_a_place, typed};
use crate::sound::{Check, Ground, Role, Seen};

/// The check.
pub const CHECK: Check = Check {
    name: "write-in-without-box",
    ids: &["D9"],
    severities: &[Severity::Hold],
    title: "a value is to be written and has no box",
    manual: include_str!("write_in_without_box.md"),
    twins: &[("es", include_str!("write_in_without_box.es.md"))],
    run,
};

/// Words that ask for a value in writing.
const WRITE: &[&str] = &["write", "writes", "jot", "fill", "escriba", "escribe", "anote", "apunte", "llene"];
/// Words for the paper that it goes to, when that is another one.
const ELSEWHERE: &[&str] = &[
    "log",
    "sheet",
    "tag",
    "list",
    "record",
    "book",
    "tape",
    "board",
    "bag",
    "bags",
    "with",
    "up",
    "bitácora",
    "hoja",
    "etiqueta",
    "lista",
    "libro",
    "registro",
    "pizarra",
    "saco",
    "sacos",
    "con",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    // One slot may print the water of many mixes, and a place is told once: the first of them speaks for all.
    for seen in ground.texts() {
        found.extend(runs::of(seen).iter().filter_map(blank));
        let Role::Card(card) = seen.role else { continue };
        if runs::boxes(&seen.doc) > 0 {
            continue;
        }
        found.extend(seen.sentences().iter().filter_map(|s| asked(card, s)));
        found.extend(start(card, seen));
    }
    once_a_place(found)
}

/// Underscores typed to write on: too low for gloves, and the radio cannot name them.
fn blank(run: &Run) -> Option<Finding> {
    let start = run.text.find("___")?;
    let rest = run.text.get(start..)?;
    let long = rest.chars().take_while(|c| *c == '_').count();
    let finding = Finding::new(CHECK.name, Severity::Hold, format!("{long} underscores are typed to write on, 0 boxes"));
    Some(finding.at(run.part(start, start + long), "written here by hand").source(SOURCE).help(HELP))
}

fn asked(card: &Card, sentence: &Sentence) -> Option<Finding> {
    if sentence.says(ELSEWHERE) {
        return None;
    }
    let at = sentence.pieces.iter().find_map(|p| match p {
        Piece::Word(word, at) if WRITE.contains(&word.as_str()) => *at,
        _ => None,
    })?;
    let title = format!("the card `{}` asks for something in writing and has 0 boxes", card.id);
    Some(Finding::new(CHECK.name, Severity::Hold, title).at(at, "written where?").source(SOURCE).help(HELP).about(&card.id))
}

/// The start water of a WALL card moves with every carry-over: today's goes in a box.
fn start(card: &Card, seen: &Seen<'_>) -> Option<Finding> {
    if card.reads != Distance::Wall {
        return None;
    }
    let slot = seen.doc.values.iter().find(|u| u.name().ends_with("start_water"))?;
    let title = format!("the card `{}` prints a start water of {} and has 0 boxes for today's", card.id, typed(&slot.value.text));
    let finding = Finding::new(CHECK.name, Severity::Hold, title).at(slot.at, "moves with the ladder").about(&card.id);
    Some(finding.absent().source(SOURCE).help(HELP).figure(&*slot.figure))
}

const SOURCE: &str = "common practice, no source: a number without a box is written on the wall";
const HELP: &str = "add a box as a task-list line, such as `- [ ] today's start`; the page template gives it its height";
