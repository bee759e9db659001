//! Text with addresses. The only room that opens files.

mod kept;
mod span;
pub use kept::Kept;
pub use span::Span;
