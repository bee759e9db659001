//! `setout`: lays out a new job folder with commented starter files; `schema` and `manual` of the formats.

use std::path::Path;

use crate::read;
use crate::sound::languages::follows_for;
use crate::source::{Folder, write_atomic};

use super::seam::{Exit, Options, Outcome, Product};

/// Lays out a job folder. A folder that holds anything is left alone: nobody's work is overwritten.
pub fn setout(options: &Options, dir: &Path) -> Outcome {
    if crate::source::holds_anything(dir) {
        return Outcome::could_not(format!("{} is not empty; name a new folder", dir.display()));
    }
    let mut paths = Vec::new();
    // A new folder's cards are good for thirty days, so that the first run has nothing to say of dates.
    let until = options.on.unwrap_or(options.today).saturating_add(jiff::Span::new().days(30));
    for (path, text) in followed(read::starters(&until.to_string())) {
        let path = dir.join(path);
        if let Err(e) = write_atomic(&path, text.as_bytes()) {
            return Outcome::could_not(format!("cannot write {}: {e}", path.display()));
        }
        paths.push(path);
    }
    let summary = format!("{} files laid out; next: hodbook --job {} sound", paths.len(), dir.display());
    Outcome { product: Product::Files(paths), summary, exit: Exit::Clean, ..Outcome::default() }
}

/// The starter files with every twin following its original as it stands: the two were written together.
fn followed(files: Vec<(String, String)>) -> Vec<(String, String)> {
    let folder = Folder::of(files.iter().map(|(p, t)| (p.clone(), t.clone())));
    let (job, _) = read::job(&folder);
    let editions = job.company.iter().map(|c| &c.editions).chain(job.mixes.iter().map(|m| &m.editions));
    let editions = editions.chain(job.sites.iter().map(|s| &s.editions)).chain(job.handbook.iter().map(|h| &h.editions));
    let mut follows: Vec<(String, String)> = Vec::new();
    for edition in editions {
        let Some((original, twins)) = edition.split_first() else { continue };
        for twin in twins {
            if let Some(file) = folder.file(twin.body.file) {
                follows.push((file.path.clone(), follows_for(&original.body)));
            }
        }
    }
    let fill = |(path, text): (String, String)| {
        let value = follows.iter().find(|(p, _)| *p == path).map(|(_, v)| v);
        let text = value.map_or_else(|| text.clone(), |v| text.replacen("follows: []", &format!("follows: {v}"), 1));
        (path, text)
    };
    files.into_iter().map(fill).collect()
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
