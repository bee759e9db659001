//! What a typed amount says against the tally: it contradicts a figure, repeats one, is water, or neither.

use crate::quantity::Quantity;
use crate::tally::{Ask, Scope, Slot, Tally, Voice};

use super::numbers::Typed;

/// What the audit makes of one typed amount.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// The phrase names a figure, and the paper prints another value for it: figure id, printed text.
    DiffersFrom(String, String),
    /// It equals a figure in scope.
    Equals(String),
    /// Water, linked to no figure.
    Water,
    /// Anything else.
    Other,
}

/// Words that name a figure, and where to look for it, first match of the right dimension.
#[derive(Clone, Copy, Debug)]
pub struct Phrase {
    /// Any of these in the phrase; all words of one of them, side by side.
    pub words: &'static [&'static str],
    /// Slots.
    pub slots: &'static [&'static str],
}

/// The table of phrases, more particular ones first.
pub const PHRASES: &[Phrase] = &[
    Phrase { words: &["least water", "least start", "agua mínima"], slots: &["mix.least_water"] },
    Phrase {
        words: &[
            "start water",
            "water first",
            "start with",
            "starts at",
            "start",
            "agua inicial",
            "agua primero",
            "inicial",
            "empiece con",
        ],
        slots: &["batch.start_water", "mix.start_water", "batch.start_water_weight"],
    },
    Phrase {
        words: &[
            "limit",
            "never over",
            "never more",
            "no more than",
            "at most",
            "stop at",
            "límite",
            "nunca más de",
            "no más de",
            "cuando más",
            "tope",
        ],
        slots: &["batch.limit", "mix.limit", "mix.lift", "mix.thickness_most", "mixer.most_loads"],
    },
    Phrase {
        words: &[
            "after a step",
            "after each step",
            "after the step",
            "tras la medida",
            "mix again",
            "minute more",
            "minutes more",
            "minutos más",
        ],
        slots: &["mix.after_step"],
    },
    Phrase {
        words: &["step", "late addition", "late water", "still dry", "add", "medida", "agregue", "añada", "eche"],
        slots: &["batch.step", "mix.step", "batch.start_water", "mix.start_water"],
    },
    Phrase {
        words: &["on the wall by", "place by", "placed by", "wall by", "a más tardar", "use en"],
        slots: &["batch.place_by", "mix.place_by"],
    },
    Phrase { words: &["open time", "tiempo útil", "tiempo abierto"], slots: &["mix.open_time", "batch.place_by", "mix.place_by"] },
    Phrase { words: &["mix", "mixing", "mixes", "bata", "batir", "batido", "mezcle"], slots: &["mix.mixing"] },
    Phrase {
        words: &["thin", "thinnest", "at least", "nowhere under", "not under", "cover", "al menos", "menos de", "mínimo"],
        slots: &["mix.thickness_least"],
    },
    Phrase { words: &["in a lift", "each lift", "per lift", "a lift", "por pasada", "cada pasada"], slots: &["mix.lift"] },
    Phrase {
        words: &["thick", "thickness", "thickest", "deep", "espesor", "grueso", "hondo"],
        slots: &["mix.thickness_most", "mix.thickness_least"],
    },
    Phrase { words: &["wet for", "keep wet", "keep it wet", "damp for", "cure", "húmedo", "húmeda", "curado"], slots: &["mix.wet_cure"] },
    Phrase {
        words: &["carve coat before", "next coat", "recoat", "before the carve", "antes de la capa", "otra capa"],
        slots: &["mix.recoat"],
    },
    Phrase { words: &["bag of mortar", "mortar bag", "mortar", "saco de mortero", "mortero"], slots: &["batch.mortar", "mix.mortar_bag"] },
    Phrase {
        words: &["bag of additive", "additive bag", "additive", "saco de aditivo", "aditivo"],
        slots: &["batch.additive", "mix.additive_bag"],
    },
    Phrase { words: &["loads", "load", "juegos", "juego"], slots: &["batch.loads"] },
    Phrase { words: &["yield", "rendimiento"], slots: &["mix.yield"] },
];

/// Phrases that speak of the half load: their figures come first.
const HALF: &[&str] = &["half load", "medio juego", "media carga"];
/// Phrases that speak of one load, not of the batch.
const PER_LOAD: &[&str] = &["per load", "each load", "for a load", "a load", "por juego", "por carga", "cada juego", "un juego"];

/// The verdict on one typed amount. Values are compared as printed, in either unit system.
pub fn verdict(typed: &Typed, scope: &Scope, tally: &Tally, voice: Voice, phrases: &[Phrase]) -> Verdict {
    if let Some(q) = &typed.quantity {
        let named = named(typed, q, scope, tally, phrases);
        if let Some(id) = &named {
            if says(id, q, tally, voice) {
                return Verdict::Equals(id.clone());
            }
            let printed = tally.say(id, Ask::Own, voice).map(|v| v.text).unwrap_or_default();
            return Verdict::DiffersFrom(id.clone(), printed);
        }
        if let Some(id) = scope.figures.iter().find(|id| like(id, q, tally) && says(id, q, tally, voice)) {
            return Verdict::Equals(id.clone());
        }
    }
    if typed.is_water { Verdict::Water } else { Verdict::Other }
}

fn holds(text: &str, phrase: &str) -> bool {
    format!(" {text} ").contains(&format!(" {phrase} "))
}

/// The figure that the phrase names, then the sentence.
fn named(typed: &Typed, q: &Quantity, scope: &Scope, tally: &Tally, phrases: &[Phrase]) -> Option<String> {
    let any = |list: &[&str]| list.iter().any(|p| holds(&typed.around, p));
    for text in [&typed.words, &typed.around] {
        for phrase in phrases.iter().filter(|p| p.words.iter().any(|w| holds(text, w))) {
            let mut slots: Vec<String> = phrase.slots.iter().map(|s| (*s).to_owned()).collect();
            if any(HALF) {
                let half = phrase.slots.iter().filter_map(|s| s.strip_prefix("mix.").or_else(|| s.strip_prefix("batch.")));
                slots.splice(0..0, half.map(|s| format!("mix.half.{s}")).collect::<Vec<_>>());
            } else if any(PER_LOAD) {
                slots.sort_by_key(|s| s.starts_with("batch."));
            }
            let found = slots.iter().find_map(|path| match scope.root.get(path) {
                Some(Slot::Figure(id)) if like(id, q, tally) => Some(id.clone()),
                _ => None,
            });
            if found.is_some() {
                return found;
            }
        }
    }
    None
}

/// Same dimension and, for counts, counting the same thing.
fn like(id: &str, q: &Quantity, tally: &Tally) -> bool {
    let value = tally.figure(id).and_then(|f| f.worked.as_ref().ok());
    value.is_some_and(|n| n.value().dim == q.dim && (q.dim != crate::quantity::Dim::NONE || n.value().kind == q.kind))
}

/// True if the paper prints this value for the figure, in its own units, the other ones, or unrounded.
fn says(id: &str, q: &Quantity, tally: &Tally, voice: Voice) -> bool {
    let printed = [Ask::Own, Ask::Second].into_iter().filter_map(|ask| tally.say(id, ask, voice));
    let same = |v: crate::tally::PrintedValue| match (v.number, v.unit) {
        (Some(n), Some(u)) => q.exact_in(u).is_some_and(|x| x == n),
        _ => false,
    };
    let exact = tally.figure(id).and_then(|f| f.worked.as_ref().ok()).and_then(|n| n.value().compare(q));
    printed.into_iter().any(same) || exact == Some(std::cmp::Ordering::Equal)
}
