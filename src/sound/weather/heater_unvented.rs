//! E9: a heater burns fuel without a way out for its fumes.

use crate::finding::{Finding, Severity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground};
use crate::source::Span;

/// The check.
pub const CHECK: Check = Check {
    name: "heater-unvented",
    ids: &["E9"],
    severities: &[Severity::Stop],
    title: "a fuel heater has no way out for its fumes",
    manual: include_str!("heater_unvented.md"),
    twins: &[("es", include_str!("heater_unvented.es.md"))],
    run,
};

/// Heaters, by the words of a site.
const HEATERS: &[&str] = &["heater", "heaters", "heat", "calentador", "calentadores", "calefactor", "calefactores", "calefacción"];
/// Heaters that blow their fumes into the room by their build.
const OPEN: &[&str] = &["salamander", "salamanders", "torpedo"];
/// Words that say so of any heater.
const UNVENTED: &[&str] = &["unvented", "ventless", "vent-free", "flueless"];
/// Words that say so together with the next: `without a flue`, `sin salida`.
const WITHOUT: &[&str] = &["without", "sin"];
const FLUE: &[&str] = &["vent", "venting", "flue", "chimney", "salida", "ventilación", "ventilar", "chimenea", "escape", "ducto"];
const ARTICLES: &[&str] = &["a", "any", "its", "una", "un", "su", "al"];
/// Words that turn the sentence round: it forbids, or says what it does to people.
const NOT: &[&str] = &[
    "no",
    "not",
    "never",
    "don't",
    "nobody",
    "none",
    "forbidden",
    "banned",
    "prohibited",
    "stop",
    "off",
    "out",
    "poisons",
    "kills",
    "monoxide",
    "co",
    "nunca",
    "ni",
    "jamás",
    "nadie",
    "prohibido",
    "prohibidos",
    "alto",
    "apague",
    "saque",
    "mata",
    "monóxido",
    "envenena",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let said = ground.texts().flat_map(|seen| seen.sentences()).filter_map(open_heater).map(|(word, at)| text(&word, at));
    once_a_place(planned(ground).into_iter().chain(said).collect())
}

const SOURCE: &str =
    "fumes in a closed room: OSHA 1926.154 on temporary heating (recalled); carbonation of fresh faces is common practice, no source";

fn finding(title: String, at: Span, label: &str) -> Finding {
    Finding::new(CHECK.name, Severity::Stop, title)
        .at(at, label)
        .source(SOURCE)
        .help("take an electric heater, or one whose fumes go outdoors through a flue, and say so: `heat: vented heater`")
}

fn planned(ground: &Ground<'_>) -> Vec<Finding> {
    let heats = ground.job.sites.iter().filter_map(|s| Some((s, s.protection.as_ref()?.heat.as_ref()?)));
    let open = heats.filter(|(_, heat)| heat.text == "unvented heater");
    open.map(|(site, heat)| {
        finding(
            format!("{} is heated by an unvented heater, only a vented or an electric one may warm a wall", site.code.text),
            heat.at,
            "this heater",
        )
    })
    .collect()
}

fn text(word: &str, at: Span) -> Finding {
    finding(format!("the text calls for a heater that is `{word}`, only a vented or an electric one may warm a wall"), at, "this heater")
}

/// The words that make a heater an open one, and their place; nothing if the sentence forbids it.
fn open_heater(sentence: &Sentence) -> Option<(String, Span)> {
    let words: Vec<(&str, Option<Span>)> =
        sentence.pieces.iter().map(|p| if let Piece::Word(w, at) = p { (w.as_str(), *at) } else { ("", None) }).collect();
    let is = |i: usize, list: &[&str]| words.get(i).is_some_and(|(w, _)| list.contains(w));
    let heats = (0..words.len()).any(|i| is(i, HEATERS) || is(i, OPEN));
    if !heats || (0..words.len()).any(|i| is(i, NOT)) {
        return None;
    }
    let one = (0..words.len()).find(|i| is(*i, UNVENTED) || is(*i, OPEN));
    let (from, to) = one.map(|i| (i, i)).or_else(|| {
        (0..words.len()).find_map(|i| {
            let flue = if is(i + 1, ARTICLES) { i + 2 } else { i + 1 };
            (is(i, WITHOUT) && is(flue, FLUE)).then_some((i, flue))
        })
    })?;
    let (start, end) = (words.get(from)?.1?, words.get(to)?.1?);
    let said: Vec<&str> = words.get(from..=to)?.iter().map(|(w, _)| *w).collect();
    Some((said.join(" "), Span { end: end.end, ..start }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::prose::block::{Block, BlockKind, Doc, Inline};

    fn heard(text: &str) -> Option<String> {
        let at = Span { file: 0, start: 0, end: u32::try_from(text.len()).unwrap() };
        let block = Block { kind: BlockKind::Para(vec![Inline::Text(text.to_owned(), Some(at))]), at };
        let doc = Doc::new(vec![block], Vec::new());
        let all = doc.sentences();
        all.iter().find_map(open_heater).map(|(word, _)| word)
    }

    #[test]
    fn heaters_that_are_called_for_and_heaters_that_are_forbidden() {
        for (text, word) in [
            ("Run an unvented heater in the tent overnight.", "unvented"),
            ("Warm the room with a salamander.", "salamander"),
            ("A gas heater without a flue will do.", "without a flue"),
            ("Ponga un calentador sin salida en la carpa.", "sin salida"),
            ("Use un calefactor sin ventilación.", "sin ventilación"),
        ] {
            assert_eq!(heard(text).as_deref(), Some(word), "{text}");
        }
        for text in [
            "Never run an unvented heater.",
            "An unvented heater is forbidden here.",
            "A heater must be vented outdoors.",
            "El calentador debe tener salida al exterior.",
            "No use calentadores sin salida.",
            "Work without a vent in the mold.",
            "An electric heater keeps the tent warm.",
        ] {
            assert_eq!(heard(text), None, "{text}");
        }
    }
}
