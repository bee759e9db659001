//! L1: mix straight on wood sheets, gypsum board, foam or paint, by the base as stated and by what the texts say.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::phrase::{Ask, each_clause, named, words};
use crate::sound::{Check, Ground};

/// The check.
pub const CHECK: Check = Check {
    name: "mix-on-bad-base",
    ids: &["L1"],
    severities: &[Severity::Stop],
    title: "mix goes straight on a base that does not hold it",
    manual: include_str!("mix_on_bad_base.md"),
    twins: &[("es", include_str!("mix_on_bad_base.es.md"))],
    run,
};

/// Bases that swell, peel or burn off, in the words of the trade.
const BAD: &[&str] = &[
    "plywood",
    "osb",
    "drywall",
    "wallboard",
    "gypsum",
    "plasterboard",
    "foam",
    "styrofoam",
    "paint",
    "painted",
    "particleboard",
    "triplay",
    "contrachapado",
    "contrachapada",
    "tablarroca",
    "tablaroca",
    "yeso",
    "espuma",
    "poliestireno",
    "pintura",
    "pintado",
    "pintada",
    "pintados",
    "pintadas",
];
/// What stands between the base and the mix, or takes the bad skin off.
const SAVED: &[&str] = &[
    "lath", "lathed", "mesh", "paper", "removed", "stripped", "strip", "remove", "scrape", "blasted", "under", "behind", "cover",
    "protect", "mask", "malla", "papel", "quite", "retire", "raspe", "quitada", "quitado", "debajo", "detrás", "cubra", "proteja", "tape",
];
/// Putting mix somewhere.
const PUT: &[&str] = &[
    "put",
    "place",
    "press",
    "apply",
    "spread",
    "trowel",
    "throw",
    "hang",
    "carve",
    "goes",
    "bonds",
    "sticks",
    "direct",
    "directly",
    "straight",
    "ponga",
    "aplique",
    "apriete",
    "extienda",
    "lance",
    "cuelgue",
    "va",
    "directo",
    "directamente",
    "pegue",
];
/// The mix.
const MIX: &[&str] =
    &["mix", "mud", "mortar", "coat", "scratch", "cement", "batch", "mezcla", "mortero", "capa", "rayado", "cemento", "tanda"];
const NOT: &[&str] =
    &["no", "not", "never", "don't", "nothing", "nobody", "nunca", "jamás", "nada", "nadie", "ni", "cannot", "avoid", "evite"];

const ASK: Ask<'static> = Ask { all: &[BAD, PUT, MIX], unless: SAVED, not: NOT };
const SOURCE: &str = "common practice, no source: wood swells, paper and paint peel, foam gives, and the coat comes off with them";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(one).collect();
    found.extend(each_clause(ground, &ASK, |_, word, at| {
        Finding::new(CHECK.name, Severity::Stop, format!("the text puts mix straight on `{word}`, it needs lath or a bare sound wall"))
            .at(at, "does not hold mix")
            .source(SOURCE)
            .help("write that paper and lath go on first, or that the skin is taken off to the sound wall")
    }));
    found
}

/// The base as stated: a bad material in it, and no lath.
fn one(site: &Site) -> Option<Finding> {
    let what = &site.base.what;
    let (word, at) = named(what, BAD)?;
    let said = words(what);
    let saved = |(i, (w, _)): (usize, &(String, crate::source::Span))| {
        // `no lath` saves nothing, `no paint` names nothing bad.
        let turned = i.checked_sub(1).and_then(|k| said.get(k)).is_some_and(|(b, _)| ["no", "without", "never"].contains(&b.as_str()));
        if turned { *w == word } else { SAVED.contains(&w.as_str()) }
    };
    if said.iter().enumerate().any(saved) {
        return None;
    }
    let how = if site.base.direct { "the carve coat goes straight" } else { "the coats of this site go" };
    let title = format!("{how} on `{word}`, mix holds on lath or on a bare sound wall");
    let finding = Finding::new(CHECK.name, Severity::Stop, title)
        .at(at, "does not hold mix")
        .source(SOURCE)
        .help("put paper and lath on it and say so in `base.what`, or take the skin off and write `paint removed to sound block`");
    Some(site.surfaces.iter().fold(finding, |f, s| f.figure(format!("{}/{}.net_area", site.id, s.code.text))))
}
