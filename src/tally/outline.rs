//! Flat outlines, of wall fields and of openings: their areas, what is walked around them, their points.

use crate::job::{Corner, Opening, Outline};
use crate::quantity::Worked;
use crate::quantity::expr::{Area, Length};
use crate::trade;
use crate::trade::arches::Sides;

use super::{Res, res};

/// The faces that an outline is made of: one, or the rectangle and the triangle of a gable.
pub(super) fn faces(outline: &Outline) -> Result<Vec<Worked<Area>>, String> {
    Ok(vec![res(match outline {
        Outline::Gable { width, eave, rise } => {
            return Ok(vec![res(trade::takeoff::rectangle(width, eave))?, res(trade::takeoff::gable(width, rise))?]);
        }
        Outline::Rectangle { width, height } => trade::takeoff::rectangle(width, height),
        Outline::Trapezoid { width, top, height, .. } => trade::takeoff::trapezoid(top, width, height),
        Outline::Semicircular { width, spring } => trade::arches::semicircular_opening(width, spring),
        Outline::Segmental { width, spring, rise } => trade::arches::segmental_opening(width, spring, rise),
        Outline::Circle { diameter } => trade::takeoff::circle(diameter),
        Outline::Polygon { corners } => trade::polygon::polygon(corners),
    })?])
}

/// Jambs and head of an opening, and its sill if that is coated; floor lines never.
pub(super) fn perimeter(opening: &Opening) -> Res<Length> {
    let sill = opening.sill_coated;
    let (walked, foot) = match &opening.outline {
        Outline::Rectangle { width, height } => {
            let sides = if sill { Sides::Four } else { Sides::Three };
            return res(trade::arches::rectangular_perimeter(width, height, sides));
        }
        Outline::Circle { diameter } => return res(trade::edges::circumference(diameter)),
        Outline::Polygon { corners } => return res(trade::polygon::polygon_perimeter(corners, sill)),
        Outline::Gable { .. } => return Err("no opening is a gable".to_owned()),
        Outline::Trapezoid { width, top, height, shift } => (trade::edges::trapezoid_perimeter(top, width, height, shift.as_ref()), width),
        Outline::Semicircular { width, spring } => (trade::arches::semicircular_perimeter(width, spring), width),
        Outline::Segmental { width, spring, rise } => (trade::arches::segmental_perimeter(width, spring, rise), width),
    };
    let walked = res(walked)?;
    if sill { res(trade::edges::with_sill(&walked, foot)) } else { Ok(walked) }
}

/// Length and height of the rectangle around an outline.
pub fn bounds(outline: &Outline) -> Result<(Worked<Length>, Worked<Length>), String> {
    Ok(match outline {
        Outline::Rectangle { width, height } => (width.clone(), height.clone()),
        Outline::Gable { width, eave, rise } => (width.clone(), res(trade::joints::face_height(eave, rise))?),
        Outline::Trapezoid { width, top, height, shift } => (res(trade::joints::face_width(width, top, shift.as_ref()))?, height.clone()),
        Outline::Semicircular { width, spring } => {
            (width.clone(), res(trade::joints::face_height(spring, &res(trade::sums::radius(width))?))?)
        }
        Outline::Segmental { width, spring, rise } => (width.clone(), res(trade::joints::face_height(spring, rise))?),
        Outline::Circle { diameter } => (diameter.clone(), diameter.clone()),
        Outline::Polygon { corners } => {
            let extent = |of: fn(&Corner) -> &Worked<Length>| {
                res(trade::polygon::extent(&corners.iter().map(|c| of(c).clone()).collect::<Vec<_>>()))
            };
            (extent(|c| &c.0)?, extent(|c| &c.1)?)
        }
    })
}

/// The measures that a drawing prints: name of the figure, its label, the length.
pub(super) fn measures(outline: &Outline) -> Vec<(&'static str, &'static str, Worked<Length>)> {
    let own = |name, label, length: &Worked<Length>| (name, label, length.clone());
    match outline {
        Outline::Rectangle { width, height } => vec![own("width", "figure.width", width), own("height", "figure.height", height)],
        Outline::Gable { width, eave, rise } => {
            vec![own("width", "figure.width", width), own("eave", "figure.height", eave), own("rise", "figure.rise", rise)]
        }
        Outline::Trapezoid { width, top, height, .. } => {
            vec![own("width", "figure.width", width), own("top", "figure.top", top), own("height", "figure.height", height)]
        }
        Outline::Semicircular { width, spring } => vec![own("width", "figure.width", width), own("spring", "figure.spring", spring)],
        Outline::Segmental { width, spring, rise } => {
            vec![own("width", "figure.width", width), own("spring", "figure.spring", spring), own("rise", "figure.rise", rise)]
        }
        Outline::Circle { diameter } => vec![own("diameter", "figure.diameter", diameter)],
        Outline::Polygon { corners } => {
            let places = |of: fn(&Corner) -> &Worked<Length>| corners.iter().map(|c| of(c).clone()).collect::<Vec<_>>();
            let (across, up) = (trade::polygon::extent(&places(|c| &c.0)), trade::polygon::extent(&places(|c| &c.1)));
            let named = [("width", "figure.width", across), ("height", "figure.height", up)];
            named.into_iter().filter_map(|(name, label, extent)| Some((name, label, extent.ok()?))).collect()
        }
    }
}

fn mm(length: &Worked<Length>) -> f64 {
    length.in_unit("mm")
}

/// Points of a circular arc from the left spring point to the right one over `width`, with a rise of at most half
/// of it; a higher rise has no figures, and its surface is not printed.
fn arch(spring: f64, width: f64, rise: f64) -> Vec<[f64; 2]> {
    const STEPS: u32 = 40;
    if rise <= 0.0 || width <= 0.0 {
        return vec![[0.0, spring], [width, spring]];
    }
    let radius = (width * width / 4.0 + rise * rise) / (2.0 * rise);
    let (cx, cy) = (width / 2.0, spring + rise - radius);
    let half = libm::asin((width / 2.0 / radius).min(1.0));
    (0..=STEPS)
        .map(|i| {
            let angle = -half + 2.0 * half * f64::from(i) / f64::from(STEPS);
            [cx + radius * libm::sin(angle), cy + radius * libm::cos(angle)]
        })
        .collect()
}

/// Points of an outline in millimetres, its foot and left edge at zero, y upwards.
pub fn points(outline: &Outline) -> Vec<[f64; 2]> {
    let headed = |width: f64, spring: f64, rise: f64| {
        let mut points = vec![[0.0, 0.0]];
        points.extend(arch(spring, width, rise));
        points.push([width, 0.0]);
        // A field that springs from its foot has no jambs.
        points.dedup();
        points
    };
    match outline {
        Outline::Rectangle { width, height } => {
            let (w, h) = (mm(width), mm(height));
            vec![[0.0, 0.0], [0.0, h], [w, h], [w, 0.0]]
        }
        Outline::Gable { width, eave, rise } => {
            let (w, e, r) = (mm(width), mm(eave), mm(rise));
            vec![[0.0, 0.0], [0.0, e], [w / 2.0, e + r], [w, e], [w, 0.0]]
        }
        Outline::Trapezoid { width, top, height, shift } => {
            let (w, t, h) = (mm(width), mm(top), mm(height));
            let left = shift.as_ref().map_or((w - t) / 2.0, mm);
            vec![[0.0, 0.0], [left, h], [left + t, h], [w, 0.0]]
        }
        Outline::Semicircular { width, spring } => headed(mm(width), mm(spring), mm(width) / 2.0),
        Outline::Segmental { width, spring, rise } => headed(mm(width), mm(spring), mm(rise)),
        Outline::Circle { diameter } => {
            const STEPS: u32 = 72;
            let r = mm(diameter) / 2.0;
            let turn = |i: u32| f64::from(i) / f64::from(STEPS) * std::f64::consts::TAU;
            (0..STEPS).map(|i| [r - r * libm::cos(turn(i)), r + r * libm::sin(turn(i))]).collect()
        }
        Outline::Polygon { corners } => corners.iter().map(|(x, y)| [mm(x), mm(y)]).collect(),
    }
}
