//! The data of drawings: strings for what is read, millimetres of the wall for what is drawn
//! ([`elevation`](super::elevation)).

use serde_json::{Value, json};

use crate::job::Mix;

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
pub(super) struct Pen<'a> {
    tally: &'a Tally,
    voice: Voice,
    pub(super) values: Vec<PrintedValue>,
}

impl<'a> Pen<'a> {
    pub(super) fn new(tally: &'a Tally, voice: Voice) -> Pen<'a> {
        Pen { tally, voice, values: Vec::new() }
    }
}

impl Pen<'_> {
    pub(super) fn say(&mut self, id: &str) -> Value {
        match self.tally.say(id, Ask::Own, self.voice) {
            Some(value) => {
                let text = value.text.clone();
                self.values.push(value);
                Value::String(text)
            }
            None => Value::Null,
        }
    }

    pub(super) fn word(&self, key: &str) -> &'static str {
        self.voice.lang.text(key)
    }
}

/// The water ladder of a mix: a row per rung, a column per batch size; the last rung is the limit.
pub fn ladder(tally: &Tally, mix: &Mix, sizes: &[String], voice: Voice) -> Drawing {
    let mut pen = Pen::new(tally, voice);
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
