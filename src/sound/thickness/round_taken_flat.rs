//! T11: round work is taken off as a flat face.

use crate::finding::{Finding, Severity};
use crate::job::{Outline, Shape, Site, Surface};
use crate::quantity::expr::{Length, Plain};
use crate::quantity::num::Direction;
use crate::quantity::units::find_expr;
use crate::quantity::{Node, Num, Worked};
use crate::sound::told::at_value;
use crate::sound::{Check, Ground};
use crate::trade::coats::{ratio_to_flat, scratch_face};

use num_rational::BigRational;

use super::of;

/// The check.
pub const CHECK: Check = Check {
    name: "round-taken-flat",
    ids: &["T11"],
    severities: &[Severity::Warn],
    title: "round work is taken off as a flat face",
    manual: include_str!("round_taken_flat.md"),
    twins: &[("es", include_str!("round_taken_flat.es.md"))],
    run,
};

/// Names of round things.
const ROUND: &[&str] = &[
    "column",
    "columns",
    "trunk",
    "trunks",
    "log",
    "logs",
    "pillar",
    "pillars",
    "cylinder",
    "cylinders",
    "barrel",
    "barrels",
    "columna",
    "columnas",
    "tronco",
    "troncos",
    "pilar",
    "pilares",
    "cilindro",
    "cilindros",
    "barril",
    "barriles",
];
/// Words that say one is only half round.
const HALF: &[&str] =
    &["half", "half-round", "engaged", "media", "medio", "medias", "medios", "adosada", "adosado", "adosadas", "adosados"];
/// Words that say a thing of such a name has flat faces, or is a wall of such a look or beside one.
const FLAT: &[&str] = &[
    "square",
    "flat",
    "face",
    "faces",
    "side",
    "sides",
    "box",
    "boxed",
    "wall",
    "behind",
    "between",
    "beside",
    "cabin",
    "end",
    "ends",
    "cuadrada",
    "cuadradas",
    "cuadrado",
    "cuadrados",
    "cara",
    "caras",
    "lado",
    "lados",
    "plana",
    "plano",
    "pared",
    "muro",
    "detrás",
    "entre",
    "cabaña",
    "pattern",
    "base",
    "plinth",
];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    surfaces.filter_map(|(site, surface)| one(ground, site, surface)).collect()
}

/// The job's own columns and tapered rounds are rings. A column that was unrolled into a rectangle is not.
fn one(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let Shape::Flat(Outline::Rectangle { width, height }) = &surface.shape else { return None };
    let words: Vec<String> = surface.what.iter().flat_map(|(_, text)| words(&text.text)).collect();
    let says = |list: &[&str]| words.iter().any(|w| list.contains(&w.as_str()));
    // An unrolled column is a sheet without holes; a real wall of logs has corners, doors and windows.
    let plain = surface.openings.is_empty() && surface.returns.is_empty() && surface.soffits.is_empty();
    if !says(ROUND) || says(FLAT) || !plain {
        return None;
    }
    let half = says(HALF);
    let core = radius(width, half);
    let face = match &surface.scratch {
        Some(scratch) => scratch_face(&core, &scratch.thickness).ok()?,
        None => core.clone(),
    };
    let mean = of::mean(site.textures.iter().find(|t| t.name.text == surface.texture.text)?)?;
    let more = more(&ratio_to_flat(&face, &mean).ok()?)?;
    let title = format!(
        "{} is round by its name and taken off flat: its mean of {} needs {more} % more",
        surface.code.text,
        of::tape_to(site, mean.node())
    );
    let around = if half { "half a girth" } else { "a girth" };
    let wide = of::tape_to(site, core.node());
    let kind = if half { "half column" } else { "column" };
    let diameter = of::tape_to(site, &(core.node().clone() + core.node().clone()));
    let finding = Finding::new(CHECK.name, Severity::Warn, title)
        .derived(format!(
            "{around} of this width is a core of {wide} radius; the coat begins at the scratch face, {}",
            of::tape_to(site, face.node())
        ))
        .derived(format!("1 + {} ÷ (2 × {}) = {more} % more than flat", of::tape_to(site, mean.node()), of::tape_to(site, face.node())))
        .source("geometry: a ring is longer outside than at its core")
        .help(format!("write `shape: {kind}` with `diameter: {diameter}` and its `count`, or name it for what it is if it is flat"));
    let finding = at_value(finding, ground, width.node(), "unrolled");
    let finding = crate::sound::told::related_value(finding, ground, height.node(), "its height");
    Some(finding.about(&surface.code.text).figure(of::figure(site, surface, "volume")).figure(of::figure(site, surface, "loads")))
}

fn words(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    lower.split(|c: char| !(c.is_alphanumeric() || c == '-')).filter(|w| !w.is_empty()).map(str::to_owned).collect()
}

/// Radius of the core whose girth, or half girth, is the width.
fn radius(width: &Worked<Length>, half: bool) -> Worked<Length> {
    let turns = Node::given(if half { 1 } else { 2 }, 1) * Node::pi();
    Worked::new(width.node().clone() / turns)
}

/// How much more than flat, in per cent to a tenth, rounded up: short mud is what this is about.
fn more(ratio: &Worked<Plain>) -> Option<String> {
    let tenth = BigRational::new(1.into(), 10.into());
    let over = ratio.node().clone() - Node::given(1, 1);
    let number = over.value().in_unit(find_expr("%")?)?.round(Direction::Up, &tenth);
    Some(Num::Exact(number).plain())
}
