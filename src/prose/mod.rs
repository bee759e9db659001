//! Markdown with slots → a tree of blocks; every number typed in text.

pub mod block;
