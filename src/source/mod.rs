//! Text with addresses. The only room that opens files.

mod file;
mod folder;
mod front;
mod span;
mod write;

pub use file::File;
pub use folder::{Fault, Folder};
pub use front::{Front, front};
mod kept;
pub use kept::Kept;
pub use span::Span;
pub use write::write_atomic;
