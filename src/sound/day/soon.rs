//! S7 in texts: a sentence that lets the carve coat on too soon.

use crate::finding::{Finding, Severity};
use crate::quantity::units::find_expr;
use crate::quantity::{Num, Quantity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::{related_value, text};
use crate::sound::{Ground, Seen};
use crate::source::Span;
use crate::tally::mix_of;

use super::clauses::{NOT, number, one_of, place, turned};
use super::next_coat_too_soon::{CHECK, SOURCE};

const CARVE: &[&str] = &["carve", "carving", "carved", "talle", "tallar", "talla", "tallado", "tallada", "coat", "capa", "coats"];
const SCRATCH: &[&str] = &["scratch", "rayada", "rayado"];
/// Words before an amount after which something may be done.
const AFTER: &[&str] = &["after", "wait", "in", "tras", "después", "espere", "pasadas", "pasados", "cumplidas", "las", "los", "from"];
/// Words before an amount that say until when it may not.
const BEFORE: &[&str] = &["before", "antes", "until", "hasta"];
/// Words behind an amount that do the same.
const LATER: &[&str] = &["later", "después", "after"];
const HOURS: &[&str] = &["h", "hr", "hrs", "hour", "hours", "hora", "horas"];
const DAYS: &[&str] = &["d", "day", "days", "día", "días", "dia", "dias"];
/// A day that is not counted.
const NEXT_DAY: &[&str] = &["next day", "following day", "next morning", "día siguiente", "otro día", "mañana siguiente"];
/// Words between the one that counts and the amount: `after at least 24 h`, `después de unas 24 h`.
const BETWEEN: &[&str] =
    &["at", "least", "about", "some", "only", "just", "de", "unas", "unos", "al", "menos", "solo", "the", "for", "que", "pasen"];

/// Sentences of every text that speak of the wait, and are too short.
pub(super) fn found(ground: &Ground<'_>) -> Vec<Finding> {
    ground.texts_of_mixes().flat_map(|seen| one(ground, seen)).collect()
}

fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let own = seen.subject.mix(ground.job);
    let scratch = own.filter(|m| m.coat.text == "scratch");
    let of_site = seen.subject.site().scratch_mix.as_ref().and_then(|name| mix_of(ground.job, &name.text));
    let Some((mix, recoat)) = scratch.or(of_site).and_then(|m| Some((m, m.recoat.as_ref()?))) else { return Vec::new() };
    let Some(least) = find_expr("h").and_then(|h| recoat.value().in_unit(h)) else { return Vec::new() };
    let mut found = Vec::new();
    for sentence in seen.sentences() {
        let speaks = sentence.has(CARVE) && (scratch.is_some() || sentence.has(SCRATCH));
        let Some((hours, at)) = speaks.then(|| wait(sentence, seen)).flatten() else { continue };
        if !hours.compare(&least).is_lt() {
            continue;
        }
        let id = format!("{}.recoat", mix.id);
        let asks = text(ground, &id, seen.voice.metric).unwrap_or_default();
        let title = format!("the text lets the carve coat on after {} h, {} asks for {asks}", hours.plain(), mix.name.text);
        let finding = Finding::new(CHECK.name, Severity::Stop, title)
            .at(at, "too soon")
            .source(SOURCE)
            .help("print the mix's own wait: `{{ mix.recoat }}`")
            .figure(id);
        found.push(related_value(finding, ground, recoat.node(), "wait before the next coat"));
    }
    found
}

/// The wait that a sentence speaks of, in hours, and its place.
fn wait(sentence: &Sentence, seen: &Seen<'_>) -> Option<(Num, Span)> {
    (0..sentence.pieces.len()).find_map(|at| amount(sentence, seen, at))
}

fn amount(sentence: &Sentence, seen: &Seen<'_>, at: usize) -> Option<(Num, Span)> {
    if let Some(words) = one_of(sentence, at, NEXT_DAY) {
        return (!turned(sentence, at, 6)).then_some((Num::int(24), place(sentence, at, at + words - 1)?));
    }
    let (hours, span, behind) = match sentence.pieces.get(at)? {
        Piece::Value(i) => {
            let used = seen.doc.values.get(*i)?;
            // The mix's own wait is right by itself.
            if used.figure.ends_with(".recoat") {
                return None;
            }
            let amount = Quantity::of(&Num::Exact(used.value.number.clone()?), used.value.unit?);
            (amount.in_unit(find_expr("h")?)?, used.at, at + 1)
        }
        Piece::Word(first, _) => {
            // `24-hour` is one word.
            let (digits, unit) = first.split_once('-').filter(|(d, _)| d.starts_with(|c: char| c.is_ascii_digit())).unwrap_or((first, ""));
            let n = number(digits)?;
            let (unit, last) = if unit.is_empty() { (sentence.word(at + 1)?, at + 1) } else { (unit, at) };
            let each = match unit {
                u if HOURS.contains(&u) => 1,
                u if DAYS.contains(&u) => 24,
                _ => return None,
            };
            (n.mul(&Num::int(each)), place(sentence, at, last)?, last + 1)
        }
        Piece::Mark => return None,
    };
    let lead = (1..=5).map_while(|k| at.checked_sub(k)).find(|i| !sentence.is(*i, BETWEEN))?;
    let barred = (0..lead).any(|i| sentence.is(i, NOT));
    let counts = sentence.is(lead, BEFORE) || (sentence.is(lead, AFTER) || sentence.is(behind, LATER)) && !barred;
    counts.then_some((hours, span))
}
