//! Markdown with slots → a tree of blocks; every number typed in text.
//!
//! A body goes through four steps: [`tags`](self) finds the slots, Tera fills them with marks instead of
//! text, the marks become an offset map, and CommonMark is parsed around opaque placeholders. So every
//! piece of the tree knows its place in the author's file, and no value is ever read as Markdown.

pub mod block;
pub mod compare;
pub mod numbers;
pub mod render;
pub mod sentence;
pub mod shelf;
pub mod steps;

mod amount;
mod check;
mod fence;
mod fill;
mod fixed;
mod flat;
mod markdown;
mod near;
mod offsets;
mod tags;
mod tokens;
mod values;
mod word;

pub use compare::{PHRASES, Phrase, Verdict, differs, verdict};
pub use fence::{ASKED, PARTS};
pub use fixed::fixed_numbers;
pub use near::help as did_you_mean;
pub use numbers::{Typed, typed_in, typed_numbers};
pub use render::{Options, Prepared, render};
pub use shelf::Shelf;
pub use steps::{Step, Written, block_digests, blocks_written, numbered, slots, steps};
#[cfg(test)]
mod numbers_tests;
#[cfg(test)]
mod render_tests;
#[cfg(test)]
mod torn_tests;
#[cfg(test)]
mod trial;
