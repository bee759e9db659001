//! One issue run is one commit.

use std::fmt;

use crate::source::Kept;

use super::assign::Assigned;
use super::read::Register;

/// Where the register is kept. Implemented for [`Kept`]; tests keep it in memory.
pub trait Store {
    /// The whole file; empty if there is none yet.
    fn read(&self) -> Result<Vec<u8>, String>;

    /// Replaces the whole file by `new`, only if it still holds `old`; `Ok(false)` if it does not.
    ///
    /// All or nothing, also when the power fails, and one at a time.
    fn swap(&self, old: &[u8], new: &[u8]) -> Result<bool, String>;
}

impl Store for Kept {
    fn read(&self) -> Result<Vec<u8>, String> {
        Kept::read(self).map_err(|e| format!("{}: {e}", self.path().display()))
    }

    fn swap(&self, old: &[u8], new: &[u8]) -> Result<bool, String> {
        Kept::swap(self, old, new).map_err(|e| format!("{}: {e}", self.path().display()))
    }
}

/// Why nothing was entered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Another run entered cards since this one read the register, so codes and words may clash.
    Changed,
    /// The register holds lines of a newer format.
    Newer,
    /// The file could not be read, locked or written.
    Store(String),
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::Changed => {
                f.write_str("another run changed the register while this one was printing; nothing was entered, issue again")
            }
            Refusal::Newer => f.write_str("the register was written by a newer Hodbook; nothing was entered, issue with that version"),
            Refusal::Store(why) => write!(f, "nothing was entered in the register: {why}"),
        }
    }
}

/// Enters a run's new cards, all of them or none. True if the file was written.
///
/// Move the printed files to their place only afterwards: a card that is out and not in the register is
/// the one thing a recall cannot find. A run with nothing new leaves the file untouched.
pub fn commit(store: &dyn Store, register: &Register, run: &[Assigned]) -> Result<bool, Refusal> {
    if register.is_newer() {
        return Err(Refusal::Newer);
    }
    let mut text = register.bytes().to_vec();
    // A torn tail stays as evidence, on a line of its own.
    if text.last().is_some_and(|b| *b != b'\n') {
        text.push(b'\n');
    }
    let mut any = false;
    for assigned in run.iter().filter(|a| a.is_new()) {
        text.extend_from_slice(assigned.entry.line().map_err(Refusal::Store)?.as_bytes());
        any = true;
    }
    if !any {
        return Ok(false);
    }
    match store.swap(register.bytes(), &text) {
        Ok(true) => Ok(true),
        Ok(false) => Err(Refusal::Changed),
        Err(why) => Err(Refusal::Store(why)),
    }
}
