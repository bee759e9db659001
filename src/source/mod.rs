//! Text with addresses. The only room that opens files.

mod kept;
mod span;
mod write;

pub use kept::Kept;
pub use span::Span;
pub use write::write_atomic;
