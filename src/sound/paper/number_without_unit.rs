//! D3: a number in an instruction has no unit.

use crate::finding::{Finding, Severity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Role};
use crate::source::Span;
use crate::words::Lang;

/// The check.
pub const CHECK: Check = Check {
    name: "number-without-unit",
    ids: &["D3"],
    severities: &[Severity::Stop],
    title: "a number in an instruction has no unit",
    manual: include_str!("number_without_unit.md"),
    twins: &[("es", include_str!("number_without_unit.es.md"))],
    run,
};

/// Verbs that take an amount.
const TAKES: &[&str] = &[
    "add",
    "adds",
    "pour",
    "put",
    "use",
    "mix",
    "wait",
    "give",
    "take",
    "set",
    "hold",
    "soak",
    "agregue",
    "añada",
    "eche",
    "échele",
    "agréguele",
    "ponga",
    "póngale",
    "vierta",
    "use",
    "bata",
    "mezcle",
    "espere",
    "dele",
    "deje",
    "tome",
];
/// Words that may stand between the verb and its number.
const BETWEEN: &[&str] =
    &["another", "only", "just", "about", "up", "to", "at", "most", "least", "otro", "otros", "otras", "solo", "hasta", "como"];
/// Words after a number that name no unit: what was counted is not said.
const AFTER: &[&str] = &[
    "to", "into", "and", "then", "from", "for", "with", "if", "again", "per", "on", "at", "a", "al", "y", "luego", "si", "por", "para",
    "con", "en", "desde", "otra",
];
const MORE: &[&str] = &["more", "más"];
const RANGE: &[&str] = &["to", "or", "a", "o"];
const ARTICLES: &[&str] = &["the", "each", "every", "a", "it"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.texts().filter(|seen| seen.may_say(&[TAKES])) {
        // In a table the head says the unit.
        let told = seen.sentences().iter().filter(|s| s.step.is_some() || matches!(seen.role, Role::Card(_) | Role::Caution(_)));
        found.extend(told.filter_map(|s| one(s, seen.voice.lang)));
    }
    once_a_place(found)
}

fn one(sentence: &Sentence, lang: Lang) -> Option<Finding> {
    let pieces = &sentence.pieces;
    let word = |i: usize| sentence.word(i).unwrap_or("");
    let number = |i: usize| is_number(word(i), lang);
    for verb in (0..pieces.len()).filter(|i| TAKES.contains(&word(*i))) {
        let Some(first) = (verb + 1..pieces.len()).find(|i| !BETWEEN.contains(&word(*i))).filter(|i| number(*i)) else { continue };
        let mut end = first;
        // `1 1/2`, `2 to 3`: the unit comes after the last of them.
        loop {
            if number(end + 1) {
                end += 1;
            } else if RANGE.contains(&word(end + 1)) && number(end + 2) {
                end += 2;
            } else {
                break;
            }
        }
        let last = end;
        if MORE.contains(&word(end + 1)) {
            end += 1;
        }
        let next = word(end + 1);
        let bare = match pieces.get(end + 1) {
            None | Some(Piece::Mark) => true,
            Some(Piece::Value(_)) => false,
            // `2 in` is two inches, `2 in the mixer` is not.
            Some(Piece::Word(..)) => AFTER.contains(&next) || next == "in" && ARTICLES.contains(&word(end + 2)),
        };
        if !bare {
            continue;
        }
        let said: Vec<&str> = (first..=last).map(word).collect();
        let said = said.join(" ");
        let title = format!("`{} {said}` has no unit", word(verb));
        let mut finding = Finding::new(CHECK.name, Severity::Stop, title)
            .source("common practice, no source: nobody can ask a card what it meant")
            .help(format!("say of what: `{said} cups`, `{said} min`; better, print the figure by its slot"));
        if let (Some(a), Some(b)) = (pieces.get(first).and_then(Piece::place), pieces.get(last).and_then(Piece::place)) {
            finding = finding.at(Span { end: b.end.max(a.end), ..a }, "of what?");
        }
        return Some(finding);
    }
    None
}

/// True for a number in digits or in words; `one` is no number by itself.
pub(super) fn is_number(word: &str, lang: Lang) -> bool {
    let digits = word.chars().any(char::is_numeric) && word.chars().all(|c| c.is_numeric() || matches!(c, '.' | ',' | '/'));
    digits || lang.number(word).is_some_and(|n| n > 1)
}
