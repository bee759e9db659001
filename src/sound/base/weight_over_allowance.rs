//! L7: a surface weighs more than anybody with the right to say so has allowed.

use num_rational::BigRational;

use crate::finding::{Finding, Severity};
use crate::job::{Letter, Site, Surface};
use crate::quantity::Quantity;
use crate::sound::limits::{self, Limit};
use crate::sound::told::{at_value, limit, printed, related_value, typed};
use crate::sound::{Check, Ground};
use crate::tally::PrintedValue;

/// The check.
pub const CHECK: Check = Check {
    name: "weight-over-allowance",
    ids: &["L7"],
    severities: &[Severity::Stop],
    title: "a surface weighs more than is allowed",
    manual: include_str!("weight_over_allowance.md"),
    twins: &[("es", include_str!("weight_over_allowance.es.md"))],
    run,
};

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let surfaces = ground.job.sites.iter().flat_map(|site| site.surfaces.iter().map(move |s| (site, s)));
    surfaces.filter_map(|(site, surface)| one(ground, site, surface)).collect()
}

/// Who allows the weight.
enum Allows<'a> {
    Letter(&'a Letter),
    Table(&'static Limit),
}

fn one(ground: &Ground<'_>, site: &Site, surface: &Surface) -> Option<Finding> {
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let (faces, mean) = (id("weight_faces"), id("weight_mean"));
    let heavier = [(&faces, "at its faces"), (&mean, "in the mean")]
        .into_iter()
        .filter_map(|(id, place)| printed(ground, id, site.metric).map(|v| (v, place)))
        .max_by(|(a, _), (b, _)| a.number.cmp(&b.number))?;
    let (weight, place): (PrintedValue, &str) = heavier;
    let (number, unit) = (weight.number.clone()?, weight.unit?);
    let allows = allowed(ground, site)?;
    let (quantity, source) = match &allows {
        Allows::Letter(letter) => (letter.allows.value().clone(), format!("engineer's letter {}", letter.reference.text)),
        Allows::Table(row) => (row.quantity()?, row.source.to_owned()),
    };
    if number <= exact(&quantity, unit)? {
        return None;
    }
    let (_, most) = limit(&quantity, unit, (1, 10))?;
    let said = typed(&weight.text);
    let framed = site.base.kind.text == "framed";
    let who = match &allows {
        Allows::Letter(letter) => format!("the engineer's letter {} allows {most}", letter.reference.text),
        Allows::Table(_) if framed => format!("framing without an engineer's letter gets at most {most}"),
        Allows::Table(_) => format!("a wall without an engineer's letter gets at most {most}"),
    };
    let texture = site.textures.iter().find(|t| t.name.text == surface.texture.text);
    let mut finding = Finding::new(CHECK.name, Severity::Stop, format!("{} weighs {said} {place}, {who}", surface.code.text))
        .derived("wet weights of carve coat, scratch coat and its key, and of lath and paper, rounded up")
        .derived("no 4 × 8 ft of it is heavier than its faces")
        .source(source)
        .help(format!(
            "a licensed engineer decides: file a letter that allows {} or more, or plan a shallower face; this is a planning figure and certifies nothing",
            typed_unit(&said)
        ));
    finding = match texture {
        Some(texture) => at_value(finding, ground, texture.most.node(), "the faces stand this far out"),
        None => finding.at(surface.at, "this surface"),
    };
    finding = match &allows {
        Allows::Letter(letter) => related_value(finding, ground, letter.allows.node(), "the letter allows this"),
        Allows::Table(_) => finding.related(site.base.kind.at, "no engineer's letter for this site is named"),
    };
    Some(finding.figure(faces).figure(mean).figure(format!("{}.weight_allowed", site.id)))
}

/// The letter's own figure, more or less than the table's; else the table's. A letter that is named but not on
/// file, or was written for another site, is no letter.
fn allowed<'a>(ground: &Ground<'a>, site: &Site) -> Option<Allows<'a>> {
    let named = site.base.letter.as_ref();
    if let Some(letter) = named.and_then(|n| ground.job.letters.iter().find(|l| l.id == n.text && l.site.text == site.code.text)) {
        return Some(Allows::Letter(letter));
    }
    let key = if site.base.kind.text == "framed" { limits::FRAMED } else { limits::ANYWHERE };
    limits::find(key).map(Allows::Table)
}

fn exact(quantity: &Quantity, unit: crate::quantity::units::UnitExpr) -> Option<BigRational> {
    quantity.exact_in(unit)
}

/// `25.8 lb/ft²` as an author types it.
fn typed_unit(text: &str) -> String {
    text.replace('²', "2")
}
