//! Hodbook turns a wall and a mix design into the cards at the mixer and the book in the gang box.
//!
//! Modules are the data flow, and imports only point upstream:
//!
//! ```text
//! source ─→ read ─→ job ─┐
//!                        ├─→ tally ─→ prose ─→ sound ─→ work ─→ cli
//! quantity ─→ trade ─────┘              └────→ press ──↗
//!                                              register ─↗
//! ```
//!
//! A folder of files is [`read`] into a [`job`]; the formulas of the [`trade`] work it into the figures of a [`tally`];
//! [`prose`] puts the figures into the author's Markdown; [`sound`] judges what the paper would say; the [`press`] sets
//! it; the [`register`] remembers what was issued; [`work`] is one file per command.

pub mod words;

pub mod quantity;

pub mod source;

pub mod finding;

pub mod job;

pub mod read;

pub mod trade;

pub mod tally;

pub mod prose;

pub mod sound;

pub mod press;

pub mod register;

pub mod work;

pub mod cli;
