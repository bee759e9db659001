//! What a site's own figures say about hazards, whatever its texts say.

use num_rational::BigRational;

use crate::job::{Outline, Shape, Site, Surface};
use crate::quantity::Worked;
use crate::quantity::expr::Length;
use crate::quantity::units::find_expr;
use crate::sound::Ground;
use crate::sound::limits::{self, Limit};
use crate::sound::told::{authored, length, text};
use crate::source::Span;

use super::conditions::{FIRE, HEAT, HEIGHT, MIXER, OVERHEAD, SOLVENT, WEIGHT, WET_CEMENT};

/// A hazard of a site.
pub(super) struct Fact {
    /// The condition it calls for.
    pub condition: &'static str,
    /// Why, as a finding says it.
    pub why: String,
    /// Where that is written.
    pub at: Span,
}

/// The hazards of a site, each condition once.
pub(super) fn of(ground: &Ground<'_>, site: &Site) -> Vec<Fact> {
    let mut facts: Vec<Fact> = Vec::new();
    let mut add = |condition: &'static str, why: String, at: Span| {
        if facts.iter().all(|f| f.condition != condition) {
            facts.push(Fact { condition, why, at });
        }
    };
    for batch in &site.batches {
        add(WET_CEMENT, format!("{} is mixed here", batch.mix.text), batch.mix.at);
        add(MIXER, format!("it is mixed in the {}", batch.mixer.text), batch.mixer.at);
    }
    if site.base.kind.text == "framed" {
        add(WEIGHT, "a framed wall carries the weight".to_owned(), site.base.kind.at);
    }
    for surface in &site.surfaces {
        if let Some(fire) = surface.openings.iter().find(|o| o.what.iter().any(|(_, t)| is_firebox(&t.text))) {
            add(FIRE, format!("{} has a firebox", surface.code.text), fire.code.at);
        }
        let arch = surface.openings.iter().find(|o| o.depth.is_some() && is_arch(&o.outline)).map(|o| o.code.at);
        if let Some(at) = arch.or(surface.soffits.first().map(|s| s.code.at)) {
            add(OVERHEAD, format!("{} has an underside that gets a coat", surface.code.text), at);
        }
        if let Some((height, at, row)) = high(ground, surface) {
            let least = row.value;
            add(HEIGHT, format!("{} is {height} high, over {least}", surface.code.text), at);
        }
    }
    if let Some(at) = solvent(site) {
        add(SOLVENT, "a solvent is put on the wall".to_owned(), at);
    }
    if let Some((band, at)) = hot(ground, site) {
        add(
            HEAT,
            format!("work goes on up to {band}, a heat index that may pass {}", limits::find(limits::HEAT_INDEX).map_or("", |l| l.value)),
            at,
        );
    }
    facts
}

/// True for what an author calls a firebox.
pub(super) fn is_firebox(what: &str) -> bool {
    let words = super::phrases::row(what);
    super::phrases::says(&words, &["firebox", "fireplace", "fire box", "hogar", "chimenea"])
}

/// Where a site says that it uses a solvent.
pub(super) fn solvent(site: &Site) -> Option<Span> {
    let finish = site.finish.as_ref().filter(|f| f.solvent == Some(true))?;
    finish.ventilation.as_ref().or(finish.flames_out.as_ref()).map(|t| t.at).or(Some(site.name.at))
}

fn is_arch(outline: &Outline) -> bool {
    matches!(outline, Outline::Semicircular { .. } | Outline::Segmental { .. } | Outline::Circle { .. })
}

/// The height of a surface's tallest side, as authored: a gable's eave, never its rise alone.
fn height(shape: &Shape) -> Option<&Worked<Length>> {
    let taller = |a: &&Worked<Length>, b: &&Worked<Length>| a.value().si.compare(&b.value().si);
    match shape {
        Shape::Flat(Outline::Rectangle { height, .. } | Outline::Trapezoid { height, .. }) => Some(height),
        Shape::Flat(Outline::Gable { eave, .. }) => Some(eave),
        Shape::Flat(_) => None,
        Shape::Hearth { front, .. } => Some(&front.1),
        Shape::Box(faces) => faces.iter().map(|f| &f.height).max_by(taller),
        Shape::Column { height, .. } | Shape::Frustum { height, .. } => Some(height),
    }
}

fn high(ground: &Ground<'_>, surface: &Surface) -> Option<(String, Span, &'static Limit)> {
    let row = limits::find(limits::EDGE)?;
    let height = height(&surface.shape)?;
    let over = height.value().compare(&row.quantity()?)?.is_gt();
    let (_, at) = authored(ground, height.node())?;
    let unit = if height.node().unit().is_some_and(crate::quantity::expr::is_metric) { "m" } else { "ft" };
    over.then(|| (length(height.node(), unit), at, row))
}

/// The upper end of the band, where its heat index reaches the limit: the straight line that the US National Weather
/// Service uses below its regression, in °F and per cent; unknown air is taken as saturated.
fn hot(ground: &Ground<'_>, site: &Site) -> Option<(String, Span)> {
    let (degrees, percent) = (find_expr("°F")?, find_expr("%")?);
    let air = site.climate.band.1.value().exact_in(degrees)?;
    let whole = |n: i64| BigRational::from_integer(n.into());
    let humid = site.climate.humidity.as_ref().and_then(|h| h.value().exact_in(percent)).unwrap_or_else(|| whole(100));
    let part = |n: i64, d: i64| BigRational::new(n.into(), d.into());
    let index = air * part(105, 100) - part(515, 100) + humid * part(235, 10_000);
    let limit = limits::find(limits::HEAT_INDEX)?.quantity()?.exact_in(degrees)?;
    let (_, at) = authored(ground, site.climate.band.1.node())?;
    let said = text(ground, &format!("{}.band_high", site.id), site.metric)?;
    (index >= limit).then_some((said, at))
}
