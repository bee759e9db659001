//! What was issued: which papers are in force, under which code, revision and check-word.
//!
//! The register is one text file, one JSON object a line, append-only in meaning. This room never opens it:
//! it reads bytes from a [`Store`] and hands a whole new file back. A run goes
//! [`Register::read`] → [`codes`] → [`assign()`] → (print) → [`commit()`].

pub mod assign;
pub mod check_words;
pub mod commit;
pub mod entry;
pub mod in_force;
pub mod read;

#[cfg(test)]
mod tests;

pub use assign::{Assigned, Change, Draft, Stuck, assign, codes};
pub use commit::{Refusal, Store, commit};
pub use entry::{Entry, Event, FORMAT, Leaf, Said, digest};
pub use in_force::{in_force, issued};
pub use read::Register;
