//! Text with addresses. The only room that opens files.
#![allow(clippy::disallowed_methods, reason = "this is the room that opens files")]

mod file;
mod folder;
mod front;
mod kept;
mod side;
mod span;
mod write;

pub use file::File;
pub use folder::{Fault, Folder};
pub use front::{Front, front};
pub use kept::Kept;
pub use side::side_by_side;
pub use span::Span;
pub use write::{clear, holds_anything, write_atomic};
