//! `setout`: lays out a new job folder with commented starter files; `schema` and `manual` of the formats.

use std::path::Path;

use crate::read;
use crate::source::write_atomic;

use super::seam::{Exit, Options, Outcome, Product};

/// Lays out a job folder. A folder that holds anything is left alone: nobody's work is overwritten.
pub fn setout(options: &Options, dir: &Path) -> Outcome {
    if crate::source::holds_anything(dir) {
        return Outcome::could_not(format!("{} is not empty; name a new folder", dir.display()));
    }
    let mut paths = Vec::new();
    // A new folder's cards are good for thirty days, so that the first run has nothing to say of dates.
    let until = options.on.unwrap_or(options.today).saturating_add(jiff::Span::new().days(30));
    for (path, text) in read::starters(&until.to_string()) {
        let path = dir.join(path);
        if let Err(e) = write_atomic(&path, text.as_bytes()) {
            return Outcome::could_not(format!("cannot write {}: {e}", path.display()));
        }
        paths.push(path);
    }
    let summary = format!("{} files laid out; next: hodbook --job {} sound", paths.len(), dir.display());
    Outcome { product: Product::Files(paths), summary, exit: Exit::Clean, ..Outcome::default() }
}

fn kind(word: &str) -> Result<&'static read::KindOf, Outcome> {
    let known = || read::KINDS.iter().map(|k| k.kind.to_owned());
    read::KINDS.iter().find(|k| k.kind == word).ok_or_else(|| Outcome::nothing("kind", word, known()))
}

/// The JSON Schema of a kind of file; of its twins in other languages for `KIND.twin`.
pub fn schema(word: &str) -> Outcome {
    let (word, twin) = word.strip_suffix(".twin").map_or((word, false), |w| (w, true));
    match kind(word) {
        Ok(kind) => {
            let text = serde_json::to_string_pretty(&read::schema(kind, twin)).unwrap_or_default();
            Outcome { product: Product::Text(text + "\n"), ..Outcome::default() }
        }
        Err(outcome) => outcome,
    }
}

/// The manual page of a kind of file.
pub fn manual(word: &str) -> Outcome {
    match kind(word) {
        Ok(kind) => Outcome { product: Product::Text(read::manual(kind)), ..Outcome::default() },
        Err(outcome) => outcome,
    }
}
