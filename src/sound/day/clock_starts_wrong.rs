//! S12: a text counts the open time from placing, or the carve window from mixing.

use crate::finding::{Finding, Severity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};
use crate::source::Span;

use super::clauses::{one_of, place, turned};

/// The check.
pub const CHECK: Check = Check {
    name: "clock-starts-wrong",
    ids: &["S12"],
    severities: &[Severity::Stop],
    title: "a text starts the open time at the wall, or the carve window at the mixer",
    manual: include_str!("clock_starts_wrong.md"),
    twins: &[("es", include_str!("clock_starts_wrong.es.md"))],
    run,
};

/// Which of the two clocks.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Clock {
    /// Open time: it starts when powder meets water.
    Open,
    /// Carve window: it starts when mud meets the wall.
    Window,
}

/// What names the open time. The manual page lists them.
const OPEN: &[&str] = &[
    "open time",
    "working time",
    "pot life",
    "discard",
    "dump",
    "tiempo abierto",
    "tiempo de uso",
    "tiempo de la tanda",
    "deseche",
    "deséchela",
    "tírela",
];
/// What names the carve window.
const WINDOW: &[&str] = &[
    "carve window",
    "carving window",
    "window",
    "ventana",
    "ventana de tallado",
    "tiempo para tallar",
    "tiempo de tallado",
    "carve",
    "carving",
    "talle",
    "tallar",
];
/// Where a clock is said to start.
const FROM: &[&str] = &[
    "from",
    "since",
    "after",
    "starting at",
    "starts at",
    "starts when",
    "begins when",
    "desde",
    "a partir de",
    "después de",
    "tras",
    "empieza cuando",
    "corre desde",
];
/// One word of each of these, so that most sentences are let go at a glance.
const GLANCE: &[&str] =
    &["from", "since", "after", "starting", "starts", "begins", "desde", "partir", "después", "tras", "empieza", "corre"];
/// Words of the wall.
const WALL: &[&str] = &[
    "wall",
    "placing",
    "placed",
    "placement",
    "pared",
    "muro",
    "aplicar",
    "aplicarla",
    "aplicación",
    "aplicó",
    "aplica",
    "aplicada",
    "aplicado",
    "colocar",
    "colocación",
    "colocada",
];
/// Words of the mixer.
const MIXER: &[&str] = &[
    "mixing",
    "mixed",
    "mixer",
    "water",
    "powder",
    "bag",
    "bags",
    "batch",
    "batido",
    "batir",
    "batirla",
    "mezclar",
    "mezclado",
    "mezcladora",
    "agua",
    "polvo",
    "saco",
    "sacos",
];
/// How many words after `from` may say where it starts.
const REACH: usize = 8;

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    once_a_place(ground.texts().flat_map(|seen| seen.sentences().iter().filter_map(|s| one(seen, s))).collect())
}

fn one(seen: &Seen<'_>, sentence: &Sentence) -> Option<Finding> {
    if !sentence.has(GLANCE) {
        return None;
    }
    let all = 0..sentence.pieces.len();
    let mut clock: Option<Clock> = None;
    // The clock may be named after its start: `from the wall on, 50 min of open time`.
    let named = |at: usize| clock_at(seen, sentence, at);
    for at in all.clone() {
        clock = named(at).or(clock);
        let Some(words) = one_of(sentence, at, FROM) else { continue };
        if turned(sentence, at, 2) {
            continue;
        }
        let Some((starts, to)) = start(sentence, at + words) else { continue };
        let Some(clock) = clock.or_else(|| all.clone().skip(at).find_map(named)) else { continue };
        if starts != clock {
            return Some(finding(clock, place(sentence, at, to)?));
        }
    }
    None
}

fn clock_at(seen: &Seen<'_>, sentence: &Sentence, at: usize) -> Option<Clock> {
    if let Some(Piece::Value(i)) = sentence.pieces.get(at) {
        let figure = seen.doc.values.get(*i).map(|u| &*u.figure)?;
        let open = [".place_by", ".open_time", ".discard"].iter().any(|f| figure.ends_with(f));
        let window = [".opens", ".closes", ".carve_start"].iter().any(|f| figure.ends_with(f));
        return if open { Some(Clock::Open) } else { window.then_some(Clock::Window) };
    }
    match (one_of(sentence, at, OPEN), one_of(sentence, at, WINDOW)) {
        (Some(_), _) => Some(Clock::Open),
        // A verb alone is no clock: it needs the time it is done after.
        (_, Some(1)) if sentence.is(at, &["carve", "carving", "talle", "tallar"]) => timed(sentence, seen).then_some(Clock::Window),
        (_, Some(_)) => Some(Clock::Window),
        _ => None,
    }
}

/// True if a sentence states minutes or hours.
fn timed(sentence: &Sentence, seen: &Seen<'_>) -> bool {
    let unit = |w: &str| ["min", "minute", "minutes", "minuto", "minutos", "h", "hour", "hours", "hora", "horas"].contains(&w);
    let slot = |i: &usize| seen.doc.values.get(*i).and_then(|u| u.value.unit).is_some_and(|u| ["min", "h"].contains(&u.symbol().as_str()));
    sentence.pieces.iter().any(|p| match p {
        Piece::Word(w, _) => unit(w),
        Piece::Value(i) => slot(i),
        Piece::Mark => false,
    })
}

/// Where it starts: the first word of the wall or of the mixer, before a mark or another start.
fn start(sentence: &Sentence, from: usize) -> Option<(Clock, usize)> {
    for at in from..from + REACH {
        if one_of(sentence, at, FROM).is_some() {
            return None;
        }
        match sentence.word(at)? {
            w if WALL.contains(&w) => return Some((Clock::Window, at)),
            w if MIXER.contains(&w) => return Some((Clock::Open, at)),
            _ => {}
        }
    }
    None
}

fn finding(clock: Clock, at: Span) -> Finding {
    let (title, help) = match clock {
        Clock::Open => (
            "the open time is counted from the wall; it starts when powder meets water",
            "count it from the first bag or from water in: `by {{ mix.place_by }} from the first bag`",
        ),
        Clock::Window => (
            "the carve window is counted from the mixer; it starts when mud meets the wall",
            "count it from mud on the wall, patch by patch",
        ),
    };
    Finding::new(CHECK.name, Severity::Stop, title)
        .at(at, "the wrong start")
        .source("two clocks: open time of the mix sheet from water in, carve window from the wall; common practice, no source")
        .help(help)
}
