//! The data of drawings: strings for what is read, millimetres of the wall for what is drawn.

use serde_json::{Value, json};

use crate::job::{Mix, Opening, OpeningShape, Shape, Site, Surface};
use crate::quantity::Worked;
use crate::quantity::expr::Length;

use super::printed::{Ask, PrintedValue, Voice};
use super::{Tally, ladder_id};

/// A drawing for one document: its data, its alternative text and every printed value in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Name of the drawing, as authors ask for it.
    pub name: &'static str,
    /// Alternative text.
    pub alt: String,
    /// What the template draws.
    pub data: Value,
    /// Printed values in it, in reading order.
    pub values: Vec<PrintedValue>,
}

/// Says a figure and keeps it among the drawing's values; a missing figure gives `null`.
struct Pen<'a> {
    tally: &'a Tally,
    voice: Voice,
    values: Vec<PrintedValue>,
}

impl Pen<'_> {
    fn say(&mut self, id: &str) -> Value {
        match self.tally.say(id, Ask::Own, self.voice) {
            Some(value) => {
                let text = value.text.clone();
                self.values.push(value);
                Value::String(text)
            }
            None => Value::Null,
        }
    }

    fn word(&self, key: &str) -> &'static str {
        self.voice.lang.text(key)
    }
}

/// The water ladder of a mix: a row per rung, a column per batch size; the last rung is the limit.
pub fn ladder(tally: &Tally, mix: &Mix, sizes: &[String], voice: Voice) -> Drawing {
    let mut pen = Pen { tally, voice, values: Vec::new() };
    let rungs = (0..).take_while(|r| tally.figure(&ladder_id(mix, "added", *r)).is_some()).count();
    // The half load is named in words: a fraction this small would be misread on the wall.
    let column = |pen: &mut Pen<'_>, s: &String| match s.as_str() {
        "half" => Value::String(pen.word("ladder.half_load").to_owned()),
        _ => pen.say(&format!("{}.ladder_size.{s}", mix.id)),
    };
    let columns: Vec<Value> = sizes.iter().map(|s| column(&mut pen, s)).collect();
    let mut rows: Vec<Value> = Vec::new();
    for rung in 0..rungs {
        // The last rung says STOP where the others say what was added.
        let added = if rung + 1 == rungs { Value::Null } else { pen.say(&ladder_id(mix, "added", rung)) };
        let cells: Vec<Value> = sizes.iter().map(|s| pen.say(&ladder_id(mix, s, rung))).collect();
        rows.push(json!({"rung": rung.to_string(), "added": added, "cells": cells}));
    }
    let last = rows.pop().unwrap_or(Value::Null);
    let data = json!({
        "columns": columns,
        "head": [pen.word("ladder.rung"), pen.word("ladder.added")],
        "rows": rows,
        "last": {
            "rung": last.get("rung").cloned().unwrap_or(Value::Null),
            "word": pen.word("stop.word"),
            "cells": last.get("cells").cloned().unwrap_or(Value::Null),
            "text": pen.word("ladder.last"),
        },
    });
    Drawing { name: "ladder", alt: pen.word("ladder.alt").to_owned(), data, values: pen.values }
}

/// Number of step boxes a batch log row needs: the rungs of the ladder above zero.
pub fn step_boxes(tally: &Tally, mix: &Mix) -> usize {
    (1..).take_while(|r| tally.figure(&ladder_id(mix, "added", *r)).is_some()).count()
}

fn mm(length: &Worked<Length>) -> f64 {
    length.in_unit("mm")
}

/// Points of a circular arc from the left spring point to the right one over `width`, with a rise.
fn arch(left: f64, spring: f64, width: f64, rise: f64) -> Vec<[f64; 2]> {
    const STEPS: u32 = 40;
    let radius = (width * width / 4.0 + rise * rise) / (2.0 * rise);
    let (cx, cy) = (left + width / 2.0, spring + rise - radius);
    let half = libm::asin((width / 2.0 / radius).min(1.0));
    // A rise above half the span would turn the arc past the horizontal; the checks stop it earlier.
    (0..=STEPS)
        .map(|i| {
            let angle = -half + 2.0 * half * f64::from(i) / f64::from(STEPS);
            [round(cx + radius * libm::sin(angle)), round(cy + radius * libm::cos(angle))]
        })
        .collect()
}

fn round(x: f64) -> f64 {
    libm::round(x * 100.0) / 100.0
}

fn opening_points(opening: &Opening) -> Option<Vec<[f64; 2]>> {
    let (left, sill) = (mm(opening.left.as_ref()?), opening.sill.as_ref().map_or(0.0, mm));
    Some(match &opening.shape {
        OpeningShape::Rectangle { width, height, .. } => {
            let (right, top) = (left + mm(width), sill + mm(height));
            vec![[left, sill], [left, top], [right, top], [right, sill]]
        }
        OpeningShape::Semicircular { width, spring } => {
            let mut points = vec![[left, sill]];
            points.extend(arch(left, sill + mm(spring), mm(width), mm(width) / 2.0));
            points.push([left + mm(width), sill]);
            points
        }
        OpeningShape::Segmental { width, spring, rise } => {
            let mut points = vec![[left, sill]];
            points.extend(arch(left, sill + mm(spring), mm(width), mm(rise)));
            points.push([left + mm(width), sill]);
            points
        }
    })
}

/// The elevation of a flat surface with its openings and dimensions; `None` for round work and hearths.
pub fn elevation(tally: &Tally, site: &Site, surface: &Surface, voice: Voice) -> Option<Drawing> {
    let mut pen = Pen { tally, voice, values: Vec::new() };
    let id = |name: &str| format!("{}/{}.{name}", site.id, surface.code.text);
    let (w, outline, heights) = match &surface.shape {
        Shape::Rectangle { width, height } => {
            let (w, h) = (mm(width), mm(height));
            (w, vec![[0.0, 0.0], [0.0, h], [w, h], [w, 0.0]], vec![(0.0, h, "height")])
        }
        Shape::Gable { width, eave, rise } => {
            let (w, e, r) = (mm(width), mm(eave), mm(rise));
            let outline = vec![[0.0, 0.0], [0.0, e], [w / 2.0, e + r], [w, e], [w, 0.0]];
            (w, outline, vec![(0.0, e, "eave"), (e, e + r, "rise")])
        }
        Shape::Hearth { .. } | Shape::Column { .. } => return None,
    };
    let top = outline.iter().fold(0.0_f64, |m, [_, y]| m.max(*y));
    let mut dims = vec![json!({"from": [0.0, 0.0], "to": [w, 0.0], "side": "bottom", "text": pen.say(&id("width"))})];
    for (from, to, name) in heights {
        dims.push(json!({"from": [0.0, from], "to": [0.0, to], "side": "left", "text": pen.say(&id(name))}));
    }
    let mut openings = Vec::new();
    for opening in &surface.openings {
        let Some(points) = opening_points(opening) else { continue };
        let what = super::scopes::named(&opening.what, voice.lang);
        openings.push(json!({"label": format!("{what} {}", opening.code.text), "points": points}));
    }
    let alt = pen.word("elevation.alt").replace("{surface}", &surface.code.text);
    let data = json!({
        "outline": outline.iter().map(|[x, y]| [round(*x), round(*y)]).collect::<Vec<_>>(),
        "openings": openings, "dims": dims, "width_mm": round(w), "height_mm": round(top),
    });
    Some(Drawing { name: "elevation", alt, data, values: pen.values })
}
