//! The elevation of a surface: its outline square on, openings, dimensions. Round work is seen from the side, a
//! hearth or a box from its front.

use serde_json::{Value, json};

use crate::job::{Opening, Outline, Shape, Site, Surface};
use crate::quantity::Worked;
use crate::quantity::expr::Length;

use super::drawings::{Drawing, Pen};
use super::printed::Voice;
use super::{Tally, outline};

type Points = Vec<[f64; 2]>;

fn mm(length: &Worked<Length>) -> f64 {
    length.in_unit("mm")
}

fn round(x: f64) -> f64 {
    libm::round(x * 100.0) / 100.0
}

fn rounded(points: &[[f64; 2]]) -> Points {
    points.iter().map(|[x, y]| [round(*x), round(*y)]).collect()
}

/// A dimension: the figure it prints, its ends, its side.
struct Dim {
    figure: String,
    from: [f64; 2],
    to: [f64; 2],
    side: &'static str,
}

fn across(figure: &str, from: f64, to: f64) -> Dim {
    Dim { figure: figure.to_owned(), from: [from, 0.0], to: [to, 0.0], side: "bottom" }
}

fn over(figure: &str, from: f64, to: f64, y: f64) -> Dim {
    Dim { figure: figure.to_owned(), from: [from, y], to: [to, y], side: "top" }
}

fn up(figure: &str, from: f64, to: f64) -> Dim {
    Dim { figure: figure.to_owned(), from: [0.0, from], to: [0.0, to], side: "left" }
}

fn flat(shape: &Outline) -> (Points, Vec<Dim>) {
    let points = outline::points(shape);
    let dims = match shape {
        Outline::Rectangle { width, height } => vec![across("width", 0.0, mm(width)), up("height", 0.0, mm(height))],
        Outline::Gable { width, eave, rise } => {
            let (e, r) = (mm(eave), mm(rise));
            vec![across("width", 0.0, mm(width)), up("eave", 0.0, e), up("rise", e, e + r)]
        }
        Outline::Trapezoid { width, top, height, shift } => {
            let (w, t, h) = (mm(width), mm(top), mm(height));
            let left = shift.as_ref().map_or((w - t) / 2.0, mm);
            vec![across("width", 0.0, w), over("top", left, left + t, h), up("height", 0.0, h)]
        }
        Outline::Semicircular { width, spring } => vec![across("width", 0.0, mm(width)), up("spring", 0.0, mm(spring))],
        Outline::Segmental { width, spring, rise } => {
            let (s, r) = (mm(spring), mm(rise));
            vec![across("width", 0.0, mm(width)), up("spring", 0.0, s), up("rise", s, s + r)]
        }
        Outline::Circle { diameter } => vec![across("diameter", 0.0, mm(diameter))],
        Outline::Polygon { .. } => {
            let reach = |of: usize| {
                let places = || points.iter().filter_map(move |p| p.get(of).copied());
                (places().fold(f64::INFINITY, f64::min), places().fold(f64::NEG_INFINITY, f64::max))
            };
            let ((x0, x1), (y0, y1)) = (reach(0), reach(1));
            let at = |mut dim: Dim| {
                // Measured from the outline's own edge, wherever the author counts from.
                match dim.side {
                    "left" => (dim.from[0], dim.to[0]) = (x0, x0),
                    _ => (dim.from[1], dim.to[1]) = (y0, y0),
                }
                dim
            };
            vec![at(across("width", x0, x1)), at(up("height", y0, y1))]
        }
    };
    (points, dims)
}

fn front(prefix: &str, width: f64, height: f64) -> (Points, Vec<Dim>) {
    let points = vec![[0.0, 0.0], [0.0, height], [width, height], [width, 0.0]];
    (points, vec![across(&format!("{prefix}width"), 0.0, width), up(&format!("{prefix}height"), 0.0, height)])
}

/// Outline and dimensions; `None` for a box without a face.
fn drawn(shape: &Shape) -> Option<(Points, Vec<Dim>)> {
    Some(match shape {
        Shape::Flat(shape) => flat(shape),
        Shape::Hearth { front: (width, height), .. } => front("", mm(width), mm(height)),
        Shape::Box(faces) => {
            let face = faces.first()?;
            front(&format!("{}.", face.code.text), mm(&face.width), mm(&face.height))
        }
        Shape::Column { diameter, height, .. } => {
            let (points, mut dims) = front("", mm(diameter), mm(height));
            dims.iter_mut().filter(|d| d.figure == "width").for_each(|d| d.figure = "diameter".to_owned());
            (points, dims)
        }
        Shape::Frustum { foot, head, height } => {
            let (f, d, h) = (mm(foot), mm(head), mm(height));
            let left = (f - d) / 2.0;
            let points = vec![[0.0, 0.0], [left, h], [left + d, h], [f, 0.0]];
            (points, vec![across("foot", 0.0, f), over("head", left, left + d, h), up("height", 0.0, h)])
        }
    })
}

/// Where an opening stands in the wall, in millimetres; `None` where the author does not say.
pub fn placed(opening: &Opening) -> Option<Vec<[f64; 2]>> {
    let (left, sill) = (mm(opening.left.as_ref()?), opening.sill.as_ref().map_or(0.0, mm));
    Some(outline::points(&opening.outline).iter().map(|[x, y]| [x + left, y + sill]).collect())
}

/// The elevation of a surface with its openings and dimensions.
pub fn elevation(tally: &Tally, site: &Site, surface: &Surface, voice: Voice) -> Option<Drawing> {
    let mut pen = Pen::new(tally, voice);
    let (outline, dims) = drawn(&surface.shape)?;
    let reach = |of: usize| {
        let places = || outline.iter().filter_map(move |p| p.get(of).copied());
        places().fold(f64::NEG_INFINITY, f64::max) - places().fold(f64::INFINITY, f64::min)
    };
    let mut said = Vec::new();
    // A dimension of nothing, such as the spring line of a field that is all arch, is not drawn.
    for dim in dims.iter().filter(|d| d.from != d.to) {
        let text = pen.say(&format!("{}/{}.{}", site.id, surface.code.text, dim.figure));
        if text != Value::Null {
            said.push(json!({"from": rounded(&[dim.from]).first(), "to": rounded(&[dim.to]).first(), "side": dim.side, "text": text}));
        }
    }
    let mut openings = Vec::new();
    for opening in &surface.openings {
        let Some(points) = placed(opening) else { continue };
        let what = super::scopes::named(&opening.what, voice.lang);
        openings.push(json!({"label": format!("{what} {}", opening.code.text), "points": rounded(&points)}));
    }
    let key = if surface.shape.is_round() { "elevation.side" } else { "elevation.alt" };
    let alt = pen.word(key).replace("{surface}", &surface.code.text);
    let data = json!({
        "outline": rounded(&outline), "openings": openings, "dims": said,
        "width_mm": round(reach(0)), "height_mm": round(reach(1)),
    });
    Some(Drawing { name: "elevation", alt, data, values: pen.values })
}
