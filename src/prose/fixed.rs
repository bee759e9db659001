//! Amounts declared with `fixed`: heard like typed ones, with the words around them.

use crate::job::Body;
use crate::words::Lang;

use super::block::Doc;
use super::flat;
use super::numbers::{Typed, in_line};

/// Every amount that a slot `fixed(…)` prints, once a place, with the place of its whole slot.
pub fn fixed_numbers(doc: &Doc, body: &Body, lang: Lang) -> Vec<Typed> {
    let source = |typed: &Typed| {
        let at = |n: u32| usize::try_from(n.saturating_sub(body.offset)).unwrap_or(0);
        body.text.get(at(typed.span.start)..at(typed.span.end)).unwrap_or("")
    };
    let mut out: Vec<Typed> = Vec::new();
    for line in flat::lines_with_slots(doc, body) {
        for typed in in_line(&line, lang) {
            let slot = source(&typed);
            if slot.starts_with("{{") && slot.contains("fixed") && !out.iter().any(|o| o.span == typed.span) {
                out.push(typed);
            }
        }
    }
    out
}
