//! Markdown with slots
pub mod block;
pub mod render;
mod check;
mod markdown;
mod near;
mod offsets;
mod tags;
mod values;
mod word;
#[cfg(test)]
mod render_tests;
#[cfg(test)]
mod trial;
