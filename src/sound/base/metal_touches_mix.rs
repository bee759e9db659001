//! L10: aluminum or copper against wet cement, by the base as stated and by what the texts say.

use crate::finding::{Finding, Severity};
use crate::sound::phrase::{Ask, NOT, each_clause, named, words};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "metal-touches-mix",
    ids: &["L10"],
    severities: &[Severity::Warn],
    title: "aluminum or copper touches the mix",
    manual: include_str!("metal_touches_mix.md"),
    twins: &[("es", include_str!("metal_touches_mix.es.md"))],
    run,
};

/// Metals that fresh cement eats, or that eat the lath beside them.
const METAL: &[&str] = &["aluminum", "aluminium", "copper", "aluminio", "cobre"];
/// What touches.
const MIX: &[&str] = &[
    "mix", "mud", "mortar", "coat", "scratch", "lath", "cement", "embed", "embedded", "bed", "bedded", "mezcla", "mortero", "capa",
    "rayado", "malla", "cemento", "ahogue", "ahogado", "ahogada",
];
/// What keeps them apart.
const APART: &[&str] = &[
    "isolate",
    "isolated",
    "isolates",
    "tape",
    "taped",
    "separate",
    "separated",
    "painted",
    "membrane",
    "away",
    "clear",
    "replace",
    "remove",
    "aísle",
    "aislado",
    "aislada",
    "aislados",
    "aisladas",
    "cinta",
    "separe",
    "separado",
    "separada",
    "lejos",
    "forre",
    "forrado",
    "forrada",
    "retire",
    "quite",
    "membrana",
    "plástico",
];

const ASK: Ask<'static> = Ask { all: &[METAL, MIX], unless: APART, not: NOT };
const SOURCE: &str = "common practice, no source: wet cement is caustic to aluminum, and copper drives the rust of steel lath beside it";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for site in &ground.job.sites {
        let what = &site.base.what;
        let apart = words(what).iter().any(|(w, _)| APART.contains(&w.as_str()) || NOT.contains(&w.as_str()));
        if let Some((word, at)) = named(what, METAL).filter(|_| !apart) {
            let title = format!("`{word}` stands in the base of {} and nothing keeps it from the mix", site.code.text);
            found.push(
                Finding::new(CHECK.name, Severity::Warn, title)
                    .at(at, "touches fresh cement")
                    .source(SOURCE)
                    .help(format!("isolate it with tape or a membrane and say so: `{word} flashing, taped`")),
            );
        }
    }
    found.extend(each_clause(ground, &ASK, |_, word, at| {
        Finding::new(CHECK.name, Severity::Warn, format!("the text lets `{word}` touch the mix"))
            .at(at, "touches fresh cement")
            .source(SOURCE)
            .help("say what isolates it: tape, membrane, or another metal")
    }));
    found
}
