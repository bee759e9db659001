//! Amounts declared with `fixed`: heard like typed ones, with the words around them.

use crate::job::Body;
use crate::source::Span;
use crate::words::Lang;

use super::block::Doc;
use super::flat::{self, Seg};
use super::numbers::{Typed, in_line};

/// Every amount that a slot `fixed(…)` prints, once a place, with the place of its whole slot.
pub fn fixed_numbers(doc: &Doc, body: &Body, lang: Lang) -> Vec<Typed> {
    if !body.text.contains("fixed") {
        return Vec::new();
    }
    let declares = |at: &Span| {
        let offset = |n: u32| usize::try_from(n.saturating_sub(body.offset)).unwrap_or(0);
        let slot = body.text.get(offset(at.start)..offset(at.end)).unwrap_or("");
        slot.starts_with("{{") && slot.contains("fixed")
    };
    let mut out: Vec<Typed> = Vec::new();
    let all = flat::lines_with_slots(doc, body);
    for line in all.iter().filter(|l| l.segs.iter().any(|seg| matches!(seg, Seg::Typed(_, at) if declares(at)))) {
        for typed in in_line(line, lang) {
            if declares(&typed.span) && !out.iter().any(|o| o.span == typed.span) {
                out.push(typed);
            }
        }
    }
    out
}
