//! What the press is given, written to a folder: templates, data, attachments and a list of the papers to make of
//! them. The benchmark sets the same papers from it with the bare typesetter.

use std::path::Path;

use serde_json::{Value, json};

use crate::press::{self, PressError, payload};
use crate::source::write_atomic;

use super::attach;
use super::runs::{self, Batch};
use super::seam::Outcome;

/// Writes everything.
///
/// # Errors
/// What could not be written.
pub fn dump(dir: &Path, batches: &[Batch<'_, '_, '_>], books: &[(String, payload::Book, Vec<u8>)]) -> Result<(), Outcome> {
    let put = |name: &str, bytes: &[u8]| {
        write_atomic(&dir.join(name), bytes).map_err(|e| Outcome::could_not(format!("cannot write {}: {e}", dir.join(name).display())))
    };
    let given = |made: Result<Vec<u8>, Vec<PressError>>| made.map_err(|e| Outcome::could_not(format!("{e:?}")));
    for (path, text) in press::Templates::embedded().list() {
        put(&format!("templates/{path}"), text.as_bytes())?;
    }
    let mut papers: Vec<Value> = Vec::new();
    for (n, batch) in batches.iter().enumerate() {
        let data = format!("run-{n}.json");
        put(&data, &given(press::inputs::run_input(&batch.run))?)?;
        let all: Vec<_> = batch.ready.iter().flat_map(|r| runs::face_ids(r)).collect();
        let values = format!("run-{n}.values.json");
        put(&values, &attach::document(&batch.name, &batch.name, &all))?;
        let mut cuts: Vec<Value> = Vec::new();
        for one in &batch.ready {
            let own = format!("{}.values.json", one.entry.code);
            put(&own, &attach::document(&one.entry.code, &one.entry.code, &runs::face_ids(one)))?;
            cuts.push(json!({"out": format!("cards/{}.pdf", one.entry.code), "pages": runs::places(batch, one), "attach": own}));
        }
        let up = batch.ready.first().is_some_and(|r| r.document.card.up > 1);
        let out = format!("runs/{}.pdf", batch.name);
        // The sheets of small cards are set again, a face for every copy; the run itself is then only cut up.
        papers.push(json!({"template": "cards.typ", "name": "run.json", "data": data, "attach": values, "out": if up { Value::Null } else { json!(out) }, "cuts": cuts}));
        if up {
            let data = format!("run-{n}.copies.json");
            put(&data, &given(press::inputs::copies_input(&batch.run, &runs::pairs(batch)))?)?;
            papers.push(json!({"template": "cards.typ", "name": "run.json", "data": data, "attach": values, "out": out, "cuts": []}));
        }
    }
    for (path, book, values) in books {
        let stem = path.trim_start_matches("book/").trim_end_matches(".pdf");
        let (data, attached) = (format!("{stem}.json"), format!("{stem}.values.json"));
        put(&data, &given(press::inputs::book_input(book))?)?;
        put(&attached, values)?;
        papers.push(json!({"template": "book.typ", "name": "book.json", "data": data, "attach": attached, "out": path, "cuts": []}));
    }
    put("papers.json", &serde_json::to_vec_pretty(&papers).unwrap_or_default())
}
