//! C5: a cover that touches work which gets color, by the plan of the cure and by what the texts say.

use crate::finding::{Finding, Severity};
use crate::job::Site;
use crate::sound::phrase::{Ask, each_clause};
use crate::sound::{Check, Ground};
use crate::tally::mixes_of;

/// The check.
pub const CHECK: Check = Check {
    name: "plastic-on-color",
    ids: &["C5"],
    severities: &[Severity::Warn],
    title: "plastic touches a colored face",
    manual: include_str!("plastic_on_color.md"),
    twins: &[("es", include_str!("plastic_on_color.es.md"))],
    run,
};

const PLASTIC: &[&str] = &["plastic", "poly", "polyethylene", "sheeting", "film", "plástico", "plásticos", "polietileno", "hule"];
const TOUCH: &[&str] = &[
    "against", "wrap", "wrapped", "wraps", "tight", "tightly", "press", "pressed", "lay", "flat", "onto", "touching", "touches", "touch",
    "stick", "directly", "contra", "pegue", "pegado", "pega", "envuelva", "envuelto", "apriete", "apretado", "toque", "toca", "encima",
    "directo",
];
const FACE: &[&str] = &[
    "face", "faces", "wall", "color", "colour", "colored", "work", "carving", "carved", "patch", "cara", "caras", "pared", "color",
    "talla", "tramo", "tallado",
];
/// Words of a cover that stands off, of the floor, and of a tool.
const OFF: &[&str] = &[
    "tent", "tented", "off", "away", "clear", "air", "floor", "ground", "crumpled", "texture", "stamp", "carpa", "separado", "separada",
    "lejos", "piso", "suelo", "arrugado", "textura", "sello",
];
const NOT: &[&str] =
    &["no", "not", "never", "don't", "without", "nunca", "jamás", "ni", "sin", "nada", "nothing", "keep", "avoid", "evite"];

const ASK: Ask<'static> = Ask { all: &[PLASTIC, TOUCH, FACE], unless: OFF, not: NOT };
const SOURCE: &str = "common practice, no source: where plastic touches, water stands and color comes out in ghosts";
const HELP: &str = "tent it: a cover on battens, a hand away from the face, tight at its edges";

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = ground.job.sites.iter().filter_map(|site| one(ground, site)).collect();
    found.extend(each_clause(ground, &ASK, |_, word, at| {
        Finding::new(CHECK.name, Severity::Warn, format!("the text lets `{word}` touch the face, it is to stand off"))
            .at(at, "touches the face")
            .source(SOURCE)
            .help(HELP)
    }));
    found
}

/// The cover of the cure plan, where the wall gets color: on it or in it.
fn one(ground: &Ground<'_>, site: &Site) -> Option<Finding> {
    let cover = site.cure.as_ref()?.cover.as_ref().filter(|c| c.text == "touching")?;
    let pigment = mixes_of(ground.job, site).iter().any(|m| m.pigment.as_ref().is_some_and(|p| p.value().si.to_f64() > 0.0));
    let why = match (pigment, &site.finish) {
        (true, _) => "has pigment in its mix",
        (false, Some(_)) => "gets color and sealer",
        (false, None) => return None,
    };
    let title = format!("the cover of {} touches the face, and the wall {why}", site.code.text);
    Some(
        Finding::new(CHECK.name, Severity::Warn, title)
            .at(cover.at, "touches the face")
            .source(SOURCE)
            .help(format!("{HELP}; `cover: tent`")),
    )
}
