//! How faces fitted in earlier runs, by the digest of what was set: a face that has not changed is not set again.
//!
//! The file lies in the output folder, where everything may be deleted at any time. A line of it that cannot be read is as
//! good as none.

use std::collections::BTreeMap;
use std::path::Path;

use serde_json::{Value, json};

use crate::press::payload::Face;
use crate::press::{self, FaceFit, PressError};
use crate::source::{Kept, side_by_side, write_atomic};

use super::runs::Batch;

/// The file in the output folder.
const NAME: &str = "measured.jsonl";

/// Faces that are set as one document.
const MOST: usize = 40;

/// Measured faces, by digest.
#[derive(Debug, Default)]
pub struct Measured {
    known: BTreeMap<String, FaceFit>,
    /// Digests of this run.
    used: BTreeMap<String, FaceFit>,
}

impl Measured {
    /// What an earlier run left in the output folder.
    pub fn open(out: &Path) -> Measured {
        let bytes = Kept::new(out.join(NAME)).read().unwrap_or_default();
        let lines = bytes.split(|b| *b == b'\n').filter(|line| !line.is_empty());
        let entry = |line: &[u8]| {
            let mut value: Value = serde_json::from_slice(line).ok()?;
            let digest = value.get("digest")?.as_str()?.to_owned();
            Some((digest, serde_json::from_value(value.get_mut("fit")?.take()).ok()?))
        };
        Measured { known: lines.filter_map(entry).collect(), used: BTreeMap::new() }
    }

    /// How every face of some runs fits, run by run; only those that nobody has measured yet are set.
    ///
    /// # Errors
    /// What the typesetter says.
    pub fn runs(&mut self, batches: &[Batch<'_, '_, '_>]) -> Result<Vec<Vec<FaceFit>>, Vec<PressError>> {
        let mut done: Vec<Vec<FaceFit>> = vec![Vec::new(); batches.len()];
        let mut left: Vec<(usize, Vec<(String, &Face)>)> = Vec::new();
        for (n, batch) in batches.iter().enumerate() {
            let digests = side_by_side(&batch.run.faces, |face| press::face_digest(&batch.run, face).map(|digest| (digest, face)));
            let digests = digests.into_iter().collect::<Result<Vec<_>, _>>().map_err(|e| vec![e])?;
            let mut new = Vec::new();
            for (digest, face) in digests {
                match self.known.get(&digest) {
                    Some(fit) => {
                        if let Some(run) = done.get_mut(n) {
                            run.push(fit.clone());
                        }
                        self.used.insert(digest, fit.clone());
                    }
                    None => new.push((digest, face)),
                }
            }
            // A document of thousands of pages holds all of them in memory until the last is set.
            left.extend(new.chunks(MOST).map(|chunk| (n, chunk.to_vec())));
        }
        let set = side_by_side(&left, |(n, chunk)| {
            let faces = chunk.iter().map(|(_, face)| (*face).clone()).collect();
            batches.get(*n).map_or_else(|| Ok(Vec::new()), |batch| press::measured(&batch.run.with(faces)))
        });
        for (result, (n, chunk)) in set.into_iter().zip(&left) {
            let new = result?;
            let of: BTreeMap<&str, &FaceFit> = new.iter().map(|f| (f.id.as_str(), f)).collect();
            for (digest, face) in chunk {
                if let (Some(fit), Some(run)) = (of.get(face.id.as_str()), done.get_mut(*n)) {
                    run.push((*fit).clone());
                    self.used.insert(digest.clone(), (*fit).clone());
                }
            }
        }
        Ok(done)
    }

    /// Keeps what this run measured or used, and nothing older. A folder that cannot be written costs the next run its time.
    pub fn close(&self, out: &Path) {
        if self.used.keys().eq(self.known.keys()) {
            return;
        }
        let lines = self.used.iter().map(|(digest, fit)| format!("{}\n", json!({"digest": digest, "fit": fit})));
        let text: String = lines.collect();
        let _ = write_atomic(&out.join(NAME), text.as_bytes());
    }
}
