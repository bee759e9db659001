//! W10: a mixing step has water come by eye: from a hose, a splash, about so much, until it looks right.

use crate::finding::{Finding, Severity};
use crate::sound::text::Sentence;
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Role, Seen};

use super::pouring::{SPLASHED, SPLASHES, WATER, elsewhere, is, is_water, phrase, turned_far, words};

/// The check.
pub const CHECK: Check = Check {
    name: "water-by-eye",
    ids: &["W10"],
    severities: &[Severity::Hold],
    title: "a mixing step lets the crew judge water by eye",
    manual: include_str!("water_by_eye.md"),
    twins: &[("es", include_str!("water_by_eye.es.md"))],
    run,
};

/// Tools that measure nothing.
const TOOLS: &[&str] = &["hose", "hosepipe", "sprinkler", "manguera"];
/// What goes before an amount that is not meant exactly.
const ABOUT: &[&str] =
    &["about", "around", "roughly", "approximately", "approx", "some", "unos", "unas", "aproximadamente", "casi", "alrededor"];
/// What goes before one only where an amount follows at once: the word has other uses.
const ABOUT_AT_ONCE: &[&str] = &["como"];
/// How much water, said so that nobody knows.
const BY_EYE: &[&str] = &[
    "by eye",
    "eyeball",
    "eyeball it",
    "to taste",
    "by feel",
    "more or less",
    "give or take",
    "as needed",
    "as required",
    "as you like",
    "until it looks right",
    "till it looks right",
    "until it looks good",
    "until it feels right",
    "until it is right",
    "until you like it",
    "enough water",
    "some water",
    "a little water",
    "a bit of water",
    "a little more water",
    "a bit more water",
    "some more water",
    "a drop of water",
    "a ojo",
    "al ojo",
    "al tanteo",
    "al tiento",
    "al gusto",
    "a su gusto",
    "más o menos",
    "según haga falta",
    "según se necesite",
    "lo que haga falta",
    "lo que pida",
    "lo necesario",
    "hasta que se vea bien",
    "hasta que quede bien",
    "hasta que esté bien",
    "hasta que se sienta bien",
    "un poco de agua",
    "un poquito de agua",
    "un poco más de agua",
    "algo de agua",
    "poquita agua",
    "suficiente agua",
    "agua suficiente",
];
/// Words that make a step of another text one of mixing.
const MIXING: &[&str] = &["mix", "mixer", "mixing", "batch", "mezcla", "mezcladora", "tanda", "bata", "batir", "mezclar"];
/// Measures of water, the word itself left out.
const MEASURES: &[&str] = &[
    "cup", "cups", "pint", "pints", "quart", "quarts", "gallon", "gallons", "gal", "qt", "pt", "l", "ml", "liter", "liters", "litre",
    "litres", "taza", "tazas", "pinta", "pintas", "cuarto", "cuartos", "galón", "galones", "litro", "litros", "pail", "bucket", "cubeta",
    "jug", "jarra",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts_of_mixes().flat_map(|seen| one(ground, seen)).collect())
}

/// Only steps, and only of mixing: nobody measures the water that cleans a wall.
fn one(ground: &Ground<'_>, seen: &Seen<'_>) -> Vec<Finding> {
    let of_mix = seen.subject.mix(ground.job).is_some() && matches!(seen.role, Role::Card(_) | Role::Procedure(_));
    let steps = seen.sentences().iter().filter(|s| s.step.is_some() && (of_mix || s.has(MIXING)));
    steps.filter_map(|sentence| by_eye(ground, seen, sentence).and_then(|at| finding(ground, seen, sentence, at))).collect()
}

/// The first word that has water come by eye.
fn by_eye(ground: &Ground<'_>, seen: &Seen<'_>, sentence: &Sentence) -> Option<usize> {
    let words = words(sentence);
    // Which `#` is an amount of water.
    let printed: Vec<bool> =
        sentence.pieces.iter().map(|p| matches!(p, crate::sound::text::Piece::Value(i) if is_water(ground, seen, *i))).collect();
    let printed = |i: usize| printed.get(i).copied().unwrap_or(false);
    let any = |list: &[&str]| (0..words.len()).any(|i| is(&words, i, list));
    let water = any(WATER) || any(MEASURES) || (0..words.len()).any(printed);
    let amount = |from: usize, reach: usize| {
        let near = (from..from + reach).take_while(|k| words.get(*k).is_some_and(Option::is_some));
        near.into_iter().any(|k| is(&words, k, MEASURES) || printed(k))
    };
    let open = |i: &usize| !turned_far(&words, *i) && !elsewhere(&words, *i);
    let tool = (0..words.len()).find(|i| is(&words, *i, TOOLS) && open(i));
    let splash = (0..words.len()).find(|i| is(&words, *i, SPLASHES) && is(&words, i + 1, SPLASHED) && open(i));
    let about = (0..words.len()).find(|i| {
        let reach = if is(&words, *i, ABOUT) {
            4
        } else if is(&words, *i, ABOUT_AT_ONCE) {
            3
        } else {
            0
        };
        reach > 0 && open(i) && amount(i + 1, reach)
    });
    let said = BY_EYE.iter().filter_map(|p| phrase(&words, p)).find(|i| open(i) && water);
    [tool, splash, about, said].into_iter().flatten().min()
}

fn finding(ground: &Ground<'_>, seen: &Seen<'_>, sentence: &Sentence, at: usize) -> Option<Finding> {
    let span = sentence.place(at)?;
    let step = sentence.step?;
    let finding = Finding::new(CHECK.name, Severity::Hold, format!("step {step} has the crew judge water by eye, water is measured"))
        .at(span, "not measured")
        .source("common practice, no source: water that was not measured cannot be logged")
        .help("print the amount, such as `{{ mix.step }}` for each load, and name the measure it is poured from");
    let mix = seen.subject.mix(ground.job);
    Some(mix.map_or(finding.clone(), |m| finding.figure(format!("{}.start_water", m.id))))
}
