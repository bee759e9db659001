//! Helpers that only tests use: the imports of a source tree, and PDFs read back.
#![allow(clippy::disallowed_methods, reason = "a test reads what it looks at")]

pub mod paper;
pub mod rooms;

use std::path::Path;

/// Copies the demo job to a folder, without a register that somebody's own issue left in it.
pub fn copy_demo(to: &Path) {
    copy(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../content"), to).unwrap_or_else(|e| panic!("the demo cannot be copied: {e}"));
}

fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    std::fs::create_dir_all(to)?;
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        if entry.file_name().to_string_lossy().contains("register") {
            continue;
        }
        let target = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            std::fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}
