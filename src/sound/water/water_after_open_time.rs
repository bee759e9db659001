//! W14: a text lets water into mix after its open time, or into colored mix after it has left the mixer.

use crate::finding::{Finding, Severity};
use crate::job::Mix;
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::{once_a_place, text};
use crate::sound::{Check, Ground, Role, Seen};
use crate::source::Span;

use super::pouring::{LETS_IN, NOT, SPLASHES, elsewhere, is, lets_in, phrase, turned_far, words};

/// The check.
pub const CHECK: Check = Check {
    name: "water-after-open-time",
    ids: &["W14"],
    severities: &[Severity::Stop],
    title: "a text lets water into mix that is past its time",
    manual: include_str!("water_after_open_time.md"),
    twins: &[("es", include_str!("water_after_open_time.es.md"))],
    run,
};

/// Words for bringing old mix back with water.
const BACK: &[&str] = &[
    "retemper",
    "retempers",
    "retempering",
    "re-temper",
    "wet it up",
    "wet it again",
    "wet it back",
    "wet up the mix",
    "wet up the batch",
    "loosen it with water",
    "soften it with water",
    "thin it with water",
    "freshen it",
    "revive it",
    "bring it back",
    "retemple",
    "retemplar",
    "rehumedezca",
    "remoje la mezcla",
    "remójela",
    "mójela otra vez",
    "vuelva a mojarla",
    "aflójela con agua",
    "ablándela con agua",
    "revívala",
    "reviva la mezcla",
];
/// What is said of it where it is forbidden after its name.
const FORBIDS: &[&str] = &[
    "forbidden",
    "not",
    "never",
    "ruins",
    "spoils",
    "kills",
    "weakens",
    "prohibido",
    "prohibida",
    "arruina",
    "debilita",
    "mata",
    "nunca",
    "no",
];
/// Words for the time that is over.
const PAST: &[&str] = &[
    "past its open time",
    "after its open time",
    "past open time",
    "after open time",
    "after the open time",
    "past its time",
    "pasado su tiempo",
    "pasado el tiempo",
    "después de su tiempo",
    "después del tiempo",
];
/// Words of a time that is still running.
const BEFORE: &[&str] = &["before", "until", "till", "within", "antes", "hasta", "dentro"];
/// Where mix is once it has left the mixer.
const AT_WALL: &[&str] = &[
    "wheelbarrow",
    "barrow",
    "tub",
    "tubs",
    "board",
    "mortarboard",
    "hawk",
    "trowel",
    "carretilla",
    "tina",
    "tinas",
    "artesa",
    "charola",
    "talocha",
    "tabla",
    "llana",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(
        ground
            .texts_of_mixes()
            .filter(|s| [BACK, LETS_IN, SPLASHES].iter().any(|list| s.may_say(&[list])))
            .flat_map(|seen| one(ground, seen))
            .collect(),
    )
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let mix = seen.subject.mix(ground.job);
    let all = seen.sentences();
    let mixing = mix.is_some() && matches!(seen.role, Role::Card(_) | Role::Procedure(_));
    // Steps behind the one that says by when it is on the wall.
    let done = all.iter().filter(|s| mixing && timed(seen, s).is_some()).filter_map(|s| s.step).next();
    let colored = mix.filter(|m| m.pigment.as_ref().is_some_and(|p| !p.value().si.is_zero()));
    let mut found = Vec::new();
    for sentence in all {
        let late = sentence.step.zip(done).is_some_and(|(step, done)| step > done);
        let pours = lets_in(sentence).filter(|at| {
            let verb = sentence.pieces.iter().position(|p| p.place() == Some(*at));
            verb.is_some_and(|verb| !elsewhere(&words(sentence), verb))
        });
        if let Some(at) = back(sentence).or_else(|| pours.filter(|at| past(seen, sentence, *at) || late)) {
            found.push(finding(ground, seen, mix, at, true));
        } else if let (Some(_), Some(at), true) = (colored, pours, sentence.has(AT_WALL)) {
            found.push(finding(ground, seen, mix, at, false));
        }
    }
    found
}

/// Where a sentence prints the time by which mix is on the wall, or its open time.
fn timed(seen: &Seen<'_>, sentence: &Sentence) -> Option<usize> {
    let is_time = |i: &usize| seen.doc.values.get(*i).is_some_and(|u| u.figure.ends_with(".place_by") || u.figure.ends_with(".open_time"));
    sentence.pieces.iter().position(|p| matches!(p, Piece::Value(i) if is_time(i)))
}

/// Words that bring old mix back with water, and are not turned round before or after.
fn back(sentence: &Sentence) -> Option<Span> {
    let words = words(sentence);
    let at = BACK.iter().find_map(|p| phrase(&words, p))?;
    let forbidden = words.iter().skip(at + 1).take_while(|w| w.is_some()).flatten().any(|w| FORBIDS.contains(&w.as_str()));
    // `It may be wet up` needs no water named; `do not wet it up` is what every card says.
    let turned = turned_far(&words, at) || (0..at).rev().take(3).any(|i| is(&words, i, NOT));
    if turned || forbidden { None } else { sentence.place(at) }
}

/// True if the sentence lets water in at a place behind a time that is over.
fn past(seen: &Seen<'_>, sentence: &Sentence, at: Span) -> bool {
    if sentence.has(BEFORE) {
        return false;
    }
    let words = words(sentence);
    let verb = sentence.pieces.iter().position(|p| p.place() == Some(at));
    let over = timed(seen, sentence).or_else(|| PAST.iter().find_map(|p| phrase(&words, p)));
    over.zip(verb).is_some_and(|(over, verb)| over < verb)
}

fn finding(ground: &Ground<'_>, seen: &Seen<'_>, mix: Option<&Mix>, at: Span, late: bool) -> Finding {
    let id = mix.map(|m| format!("{}/{}.place_by", seen.subject.site().id, m.id));
    let time = id.as_deref().and_then(|id| text(ground, id, seen.voice.metric));
    let name = mix.map_or("mix".to_owned(), |m| m.name.text.clone());
    let limit = match (time, late) {
        (Some(time), true) => format!(" after its time: it is on the wall by {time} or it is waste"),
        (None, true) => " after its time: then it is waste".to_owned(),
        (_, false) => " after it has left the mixer, and it is colored".to_owned(),
    };
    let finding = Finding::new(CHECK.name, Severity::Stop, format!("this lets water into {name}{limit}"))
        .at(at, "lets water in")
        .source(
            "mix sheet: open time; ASTM C270 lets mortar be used for 2 1/2 h and no longer (not verified against a copy); no water into colored \
             mix once it is out of the mixer: common practice, no source",
        )
        .help("write that it is discarded: no water after its time, whoever asks");
    match id {
        Some(id) => finding.figure(id),
        None => finding,
    }
}
