//! Which thickness a text orders by: bags go by the mean, lifts by the greatest.

use crate::sound::Ground;
use crate::source::Span;

use super::clause::{Clause, clauses, may};

/// Words for the mean thickness.
pub(super) const MEAN: &[&str] =
    &["mean", "average", "media", "promedio", "espesor medio", "espesor promedio", "grueso medio", "grueso promedio", "#mean"];
/// Words for the greatest thickness.
pub(super) const MOST: &[&str] = &[
    "maximum",
    "max",
    "greatest",
    "deepest",
    "thickest",
    "most thickness",
    "#most",
    "#carve_most",
    "máximo",
    "máxima",
    "espesor máximo",
    "grueso máximo",
    "mayor espesor",
    "más hondo",
    "más honda",
    "más grueso",
];
/// Words for what is ordered and mixed.
pub(super) const BAGS: &[&str] = &["bag", "bags", "load", "loads", "saco", "sacos", "juego", "juegos", "#loads", "#volume"];
/// Words for lifts.
pub(super) const LIFTS: &[&str] = &["lift", "lifts", "pasada", "pasadas", "#lifts"];

/// What may follow such a word and still mean the thickness.
const GOES_ON: &[&str] = &[
    "thickness",
    "depth",
    "place",
    "places",
    "point",
    "spot",
    "face",
    "faces",
    "only",
    "of",
    "here",
    "alone",
    "espesor",
    "grueso",
    "lugar",
    "punto",
    "de",
    "del",
    "solo",
    "sola",
    "for",
    "para",
    "decides",
    "decide",
    "sets",
    "gives",
    "buys",
    "governs",
    "da",
    "compra",
    "fija",
    "manda",
    "dice",
    "says",
    "tells",
];
/// Orders to work something out.
const ORDERS: &[&str] = &[
    "order",
    "figure",
    "count",
    "reckon",
    "calculate",
    "compute",
    "estimate",
    "plan",
    "work",
    "base",
    "take",
    "buy",
    "size",
    "figured",
    "counted",
    "planned",
    "based",
    "pida",
    "calcule",
    "cuente",
    "compre",
    "estime",
    "saque",
    "planee",
    "pídalos",
    "calculan",
    "cuentan",
    "calculadas",
    "calculados",
    "goes",
    "go",
    "van",
    "va",
];
const BY: &[&str] = &["on", "by", "from", "with", "off", "por", "con", "según", "del", "al", "sobre"];
const DECIDES: &[&str] =
    &["decides", "decide", "sets", "gives", "buys", "governs", "da", "compra", "fija", "manda", "dice", "says", "tells"];
const USES: &[&str] = &["use", "take", "using", "use", "tome", "emplee", "usar", "tomar"];
const FOR: &[&str] = &["for", "para"];

/// An order by the wrong thickness.
pub(super) struct Wrong {
    /// Place of the words for the thickness.
    pub at: Span,
    /// Those words.
    pub said: String,
    /// Place of what is ordered by it.
    pub of: Option<Span>,
}

/// Orders of `things` by one of the `wrong` thicknesses in all texts.
pub(super) fn orders(ground: &Ground<'_>, things: &[&str], wrong: &[&str]) -> Vec<Wrong> {
    let mut all = Vec::new();
    for seen in ground.texts().filter(|seen| seen.may_say(&[things, wrong])) {
        let both = seen.sentences().iter().filter(|s| may(seen, s, things) && may(seen, s, wrong));
        for clause in both.flat_map(|sentence| clauses(seen, sentence)) {
            // `The mean buys the bags and the maximum decides the lifts`: two orders, each of its own thickness.
            let parts = clause.parts(|c| c.all(MEAN).chain(c.all(MOST)).next().is_some());
            all.extend(parts.iter().filter(|c| !c.turned()).filter_map(|c| order(c, things, wrong)));
        }
    }
    all
}

fn order(clause: &Clause, things: &[&str], wrong: &[&str]) -> Option<Wrong> {
    let ends = |(_, to): &(usize, usize)| clause.ends(*to, GOES_ON);
    let thing = clause.all(things).next()?;
    // Order the bags by the maximum.
    let by = clause.led(BY, wrong).filter(ends).filter(|(from, _)| clause.between(0, *from, ORDERS));
    // The maximum decides the bags.
    let subject = || clause.all(wrong).find(|(_, to)| (clause.soon(*to, DECIDES) || clause.soon(to + 1, DECIDES)) && thing.0 > *to);
    // Use the maximum for the bags.
    let used = || clause.led(USES, wrong).filter(|(_, to)| thing.0 > *to && clause.between(*to, thing.0, FOR));
    let words = by.or_else(subject).or_else(used)?;
    Some(Wrong { at: clause.place(words)?, said: clause.said(words), of: clause.place(thing) })
}
