//! How faces fitted in earlier runs, by the digest of what was set: a face that has not changed is not set again.
//!
//! The file lies in the output folder, where everything may be deleted at any time. A line of it that cannot be read is as
//! good as none.

use std::collections::BTreeMap;
use std::path::Path;

use serde_json::{Value, json};

use crate::press::{self, FaceFit, PressError};
use crate::source::{Kept, write_atomic};

use super::runs::Batch;

/// The file in the output folder.
const NAME: &str = "measured.jsonl";

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

    /// How every face of a run fits; only those that nobody has measured yet are set.
    ///
    /// # Errors
    /// What the typesetter says.
    pub fn run(&self, batch: &Batch<'_, '_, '_>) -> Result<Vec<(String, FaceFit)>, Vec<PressError>> {
        let mut done = Vec::new();
        let mut left = Vec::new();
        for face in &batch.run.faces {
            let digest = press::face_digest(&batch.run, face).map_err(|e| vec![e])?;
            match self.known.get(&digest) {
                Some(fit) => done.push((digest, fit.clone())),
                None => left.push((digest, face)),
            }
        }
        if !left.is_empty() {
            let new = press::measured(&batch.run.with(left.iter().map(|(_, face)| (*face).clone()).collect()))?;
            let of: BTreeMap<&str, &FaceFit> = new.iter().map(|f| (f.id.as_str(), f)).collect();
            done.extend(left.into_iter().filter_map(|(digest, face)| Some((digest, (*of.get(face.id.as_str())?).clone()))));
        }
        Ok(done)
    }

    /// Notes what a run measured.
    pub fn note(&mut self, faces: Vec<(String, FaceFit)>) {
        self.used.extend(faces);
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
