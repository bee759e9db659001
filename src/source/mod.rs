//! Text with addresses. The only room that opens files.

mod span;
pub use span::Span;
