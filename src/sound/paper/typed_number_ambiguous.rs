//! D7: a number typed in a text can be read two ways.

use crate::finding::{Finding, Severity};
use crate::quantity::parse;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground};
use crate::words::EN;

/// The check.
pub const CHECK: Check = Check {
    name: "typed-number-ambiguous",
    ids: &["D7"],
    severities: &[Severity::Stop],
    title: "a typed number can be read two ways",
    manual: include_str!("typed_number_ambiguous.md"),
    twins: &[("es", include_str!("typed_number_ambiguous.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for seen in ground.texts() {
        for one in seen.typed() {
            // The whole is read by the grammar of the files, which knows both readings.
            let number = one.text.split_whitespace().find(|w| w.contains(['/', ',']));
            let Some(number) = number.map(|w| w.trim_end_matches(|c: char| !c.is_ascii_digit())) else { continue };
            let Err(fault) = parse::plain(number) else { continue };
            // Three digits behind a comma are thousands, on every receipt of the country.
            let thousands = number.split_once(',').is_some_and(|(_, part)| part.len() == 3);
            let comma = fault.name == "decimal-comma" && !thousands;
            // In Spanish text a comma is a slip of habit and has a check of its own.
            if !(fault.name == "fraction-ambiguous" || comma && seen.voice.lang == EN) {
                continue;
            }
            let start = one.text.find(number).unwrap_or(0);
            // Runs of spaces are folded in the text: then only the whole can be shown.
            let own = one.span.spans(one.text.len());
            let at = if own { one.span.part(start, start + number.len()) } else { one.span };
            let title = fault.what.clone();
            let finding = Finding::new(CHECK.name, Severity::Stop, title).at(at, "which one?").help(fault.help);
            found.push(finding.source("common practice, no source: in mud, eleven halves and one and a half look alike"));
        }
    }
    once_a_place(found)
}
