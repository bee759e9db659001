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
    /// True if the words may mean any of the slots: `thickness` is the least or the most.
    pub any: bool,
    /// True if the words are telling only in the number's own phrase: verbs such as `add` and `mix`.
    pub near: bool,
    /// One of these must stand there too, if there are any.
    pub with: &'static [&'static str],
    /// None of these may: a sponge is thick too.
    pub without: &'static [&'static str],
}

const fn phrase(words: &'static [&'static str], slots: &'static [&'static str]) -> Phrase {
    Phrase { words, slots, any: false, near: false, with: &[], without: &[] }
}

const fn near(words: &'static [&'static str], slots: &'static [&'static str]) -> Phrase {
    Phrase { words, slots, any: false, near: true, with: &[], without: &[] }
}

/// The table of phrases, more particular ones first.
///
/// A phrase here makes a differing number a STOP, so words that also go with other lengths and times
/// (`at least`, `deep`, `cure`) are left out on purpose.
pub static PHRASES: &[Phrase] = &[
    phrase(&["least water", "least start", "agua mínima"], &["mix.least_water"]),
    phrase(
        &["start water", "water first", "agua inicial", "agua primero", "start", "inicial"],
        &["batch.start_water", "mix.start_water", "batch.start_water_weight"],
    ),
    near(
        &["start with", "starts at", "starts with", "begin with", "empiece con"],
        &["batch.start_water", "mix.start_water", "batch.start_water_weight"],
    ),
    phrase(
        &["limit", "never over", "never more", "no more than", "stop at", "límite", "nunca más de", "no más de", "tope"],
        &["batch.limit", "mix.limit", "mixer.most_loads"],
    ),
    near(&["at most", "cuando más"], &["batch.limit", "mix.limit", "mixer.most_loads"]),
    near(
        &["after a step", "after each step", "after the step", "tras la medida", "después de la medida", "mix again"],
        &["mix.after_step"],
    ),
    Phrase {
        words: &["minute more", "minutes more", "minuto más", "minutos más"],
        slots: &["mix.after_step"],
        any: false,
        near: true,
        with: &["mix", "bata", "mezcle"],
        without: &[],
    },
    phrase(&["step", "late addition", "late water", "medida"], &["batch.step", "mix.step"]),
    near(&["still dry", "add", "agregue", "añada", "eche"], &["batch.step", "mix.step"]),
    phrase(&["on the wall by", "place by", "placed by", "wall by", "a más tardar"], &["batch.place_by", "mix.place_by"]),
    near(
        &["use en", "place within", "place it within", "place it by", "the first bag", "el primer saco", "aplique en"],
        &["batch.place_by", "mix.place_by"],
    ),
    phrase(&["open time", "tiempo útil", "tiempo abierto"], &["mix.open_time"]),
    near(&["mix", "mixing", "mixes", "bata", "batir", "batido", "batiendo", "mezcle"], &["mix.mixing"]),
    phrase(&["in a lift", "each lift", "per lift", "por pasada", "cada pasada"], &["mix.lift"]),
    near(&["lift over", "lift is", "lift never", "pasada de más", "pasada es", "pasada nunca"], &["mix.lift"]),
    near(&["least thickness", "no thinner than", "espesor mínimo"], &["mix.thickness_least"]),
    near(&["most thickness", "espesor máximo"], &["mix.thickness_most"]),
    near(&["thinnest", "nowhere under", "not under", "of cover", "de cubierta"], &["mix.thickness_least"]),
    Phrase {
        words: &["thick", "thickness", "thickest", "espesor", "grueso"],
        slots: &["mix.thickness_most", "mix.thickness_least", "mix.lift"],
        any: true,
        near: true,
        with: &[],
        without: &["sponge", "gloves", "plastic", "rope", "plank", "board", "esponja", "guantes", "plástico", "cuerda", "tablón"],
    },
    near(
        &[
            "wet for",
            "keep wet",
            "keep it wet",
            "wall wet",
            "wet cure",
            "damp for",
            "keep it damp",
            "moist for",
            "húmedo",
            "húmeda",
            "mojada",
        ],
        &["mix.wet_cure"],
    ),
    near(&["strength class", "clase de resistencia"], &["mix.strength_class"]),
    near(&["% air", "% de aire", "% of air"], &["mix.air"]),
    near(&["wet density", "densidad fresca"], &["mix.wet_density"]),
    phrase(&["carve coat before", "next coat", "recoat", "otra capa"], &["mix.recoat"]),
    near(&["mortar", "mortero"], &["batch.mortar", "mix.mortar_bag"]),
    near(&["additive", "aditivo"], &["batch.additive", "mix.additive_bag"]),
    near(&["loads", "load", "juegos", "juego"], &["batch.loads"]),
    phrase(&["yield", "rendimiento"], &["mix.yield"]),
];

/// Phrases that speak of the half load: their figures come first.
const HALF: &[&str] = &["half load", "medio juego", "media carga"];
/// Phrases that speak of one load, not of the batch.
const PER_LOAD: &[&str] = &["per load", "each load", "for a load", "a load", "por juego", "por carga", "cada juego", "un juego"];

/// The figure that the words around a typed amount name, and its printed text, if they name one and it prints otherwise.
pub fn differs(typed: &Typed, scope: &Scope, tally: &Tally, voice: Voice, phrases: &[Phrase]) -> Option<(String, String)> {
    match by_words(typed, typed.quantity.as_ref()?, scope, tally, voice, phrases)? {
        Verdict::DiffersFrom(id, printed) => Some((id, printed)),
        _ => None,
    }
}

/// The verdict of the words around an amount; nothing where they name no figure.
fn by_words(typed: &Typed, q: &Quantity, scope: &Scope, tally: &Tally, voice: Voice, phrases: &[Phrase]) -> Option<Verdict> {
    let named = named(typed, q, scope, tally, phrases);
    if let Some(id) = named.iter().find(|id| says(id, q, tally, voice)) {
        return Some(Verdict::Equals(id.clone()));
    }
    let id = named.into_iter().next()?;
    let printed = tally.say(&id, Ask::Own, voice).map(|v| v.text).unwrap_or_default();
    Some(Verdict::DiffersFrom(id, printed))
}

/// The verdict on one typed amount. Values are compared as printed, in either unit system.
pub fn verdict(typed: &Typed, scope: &Scope, tally: &Tally, voice: Voice, phrases: &[Phrase]) -> Verdict {
    if let Some(q) = &typed.quantity {
        if let Some(verdict) = by_words(typed, q, scope, tally, voice, phrases) {
            return verdict;
        }
        if let Some(id) = tally.near(scope).find(|id| like(id, q, tally) && says(id, q, tally, voice)) {
            return Verdict::Equals(id.to_owned());
        }
    }
    if typed.is_water { Verdict::Water } else { Verdict::Other }
}

/// True if the phrase stands in the text, between spaces.
fn holds(text: &str, phrase: &str) -> bool {
    text.match_indices(phrase).any(|(at, found)| {
        let (before, after) = (text.get(..at).unwrap_or(""), text.get(at + found.len()..).unwrap_or(""));
        (before.is_empty() || before.ends_with(' ')) && (after.is_empty() || after.starts_with(' '))
    })
}

/// The figures that the phrase names, else those that the sentence names.
fn named(typed: &Typed, q: &Quantity, scope: &Scope, tally: &Tally, phrases: &[Phrase]) -> Vec<String> {
    // A text is compared in many scopes; what its words name is the same in all of them.
    let told = if std::ptr::eq(phrases, PHRASES) { typed.told.get_or_init(|| told(typed, phrases)) } else { &told(typed, phrases) };
    for (any, slots) in told {
        let mut found = slots.iter().filter_map(|path| match scope.root.get(path) {
            Some(Slot::Figure(id)) if like(id, q, tally) => Some(id.to_string()),
            _ => None,
        });
        let found: Vec<String> = if *any { found.collect() } else { found.next().into_iter().collect() };
        if !found.is_empty() {
            return found;
        }
    }
    Vec::new()
}

/// Slots that the words around a typed amount may mean, the likeliest first; true beside those of which any may be meant.
fn told(typed: &Typed, phrases: &[Phrase]) -> Vec<(bool, Vec<String>)> {
    let says = |list: &[&str]| list.iter().any(|p| holds(&typed.around, p));
    let mut all = Vec::new();
    for (text, far) in [(&typed.words, false), (&typed.around, true)] {
        for phrase in phrases.iter().filter(|p| {
            !(far && p.near) && p.words.iter().any(|w| holds(text, w)) && (p.with.is_empty() || says(p.with)) && !says(p.without)
        }) {
            let mut slots: Vec<String> = phrase.slots.iter().map(|s| (*s).to_owned()).collect();
            if says(HALF) {
                let half = phrase.slots.iter().filter_map(|s| s.strip_prefix("mix.").or_else(|| s.strip_prefix("batch.")));
                slots.splice(0..0, half.map(|s| format!("mix.half.{s}")).collect::<Vec<_>>());
            } else if says(PER_LOAD) {
                slots.sort_by_key(|s| s.starts_with("batch."));
            }
            all.push((phrase.any, slots));
        }
    }
    all
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
