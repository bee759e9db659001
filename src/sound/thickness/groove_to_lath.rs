//! T9: a text has grooves cut down to lath or scratch coat.

use crate::finding::{Finding, Severity};
use crate::sound::told::once_a_place;
use crate::sound::{Check, Ground, Seen};

use super::clause::{Clause, clauses, may};

/// The check.
pub const CHECK: Check = Check {
    name: "groove-to-lath",
    ids: &["T9"],
    severities: &[Severity::Hold],
    title: "a text has grooves cut down to lath or scratch coat",
    manual: include_str!("groove_to_lath.md"),
    twins: &[("es", include_str!("groove_to_lath.es.md"))],
    run,
};

const GROOVES: &[&str] = &[
    "groove",
    "grooves",
    "joint",
    "joints",
    "bed line",
    "bed lines",
    "crack",
    "cracks",
    "surco",
    "surcos",
    "ranura",
    "ranuras",
    "junta",
    "juntas",
    "grieta",
    "grietas",
];
/// Joints of the building are cut through the lath, and must be.
const OTHER_JOINTS: &[&str] = &["control", "expansion", "movimiento", "dilatación", "cut-line"];
const CUTS: &[&str] = &[
    "cut",
    "cuts",
    "carve",
    "carves",
    "dig",
    "rake",
    "deepen",
    "scrape",
    "take",
    "run",
    "go",
    "goes",
    "reach",
    "reaches",
    "corte",
    "talle",
    "cave",
    "excave",
    "ahonde",
    "profundice",
    "raspe",
    "lleve",
    "haga",
    "llegan",
    "llegue",
    "abra",
];
const DOWN_TO: &[&str] =
    &["to", "into", "onto", "through", "reach", "reaches", "see", "hit", "touch", "bare", "hasta", "al", "toque", "vea", "tocar", "a"];
const UNDER: &[&str] = &[
    "lath",
    "metal",
    "mesh",
    "wire",
    "scratch",
    "scratch coat",
    "malla",
    "metal desplegado",
    "alambre",
    "rayado",
    "capa rayada",
    "base rayada",
];
/// What may follow: `to the lath line` speaks of a line.
const GOES_ON: &[&str] =
    &["coat", "everywhere", "in", "on", "at", "below", "under", "behind", "so", "with", "for", "en", "por", "de", "con", "para"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let each = |seen: &Seen<'_>| -> Vec<Finding> {
        let all = seen.sentences().iter().filter(|s| may(seen, s, GROOVES)).flat_map(|sentence| clauses(seen, sentence));
        all.filter_map(|clause| one(&clause)).collect()
    };
    once_a_place(ground.texts().filter(|s| s.may_say(&[GROOVES, CUTS, UNDER])).flat_map(each).collect())
}

fn one(clause: &Clause) -> Option<Finding> {
    let groove = clause.all(GROOVES).next()?;
    if clause.turned() || clause.has(OTHER_JOINTS) || !clause.has(CUTS) {
        return None;
    }
    let under = clause.led(DOWN_TO, UNDER).filter(|(_, to)| clause.ends(*to, GOES_ON))?;
    let title = format!("the text has grooves cut to the `{}`; mud must stay under every groove", clause.said(under));
    let mut finding = Finding::new(CHECK.name, Severity::Hold, title)
        .at(clause.place(under)?, "cut down to this")
        .source("common practice, no source: a groove without cover cracks, lets water in and rusts the lath")
        .help("say how much stays under the groove, such as `{{ mix.thickness_least }}` of the carve mix");
    if let Some(at) = clause.place(groove) {
        finding = finding.related(at, "these grooves");
    }
    Some(finding)
}
