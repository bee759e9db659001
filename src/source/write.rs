//! The one way this program writes a file.

use std::fs;
use std::io::{self, Write};
use std::path::Path;

/// Writes a file so that a reader sees the old bytes or the new ones, never a part: a temporary file in the
/// same folder, flushed to disk, renamed over the old one, and the folder flushed too. Makes missing folders.
///
/// # Errors
/// Whatever the system says; the old file is then as it was.
pub fn write_atomic(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let folder = match path.parent() {
        Some(p) if !p.as_os_str().is_empty() => p,
        _ => Path::new("."),
    };
    fs::create_dir_all(folder)?;
    let mut temporary = tempfile::NamedTempFile::new_in(folder)?;
    temporary.write_all(bytes)?;
    temporary.as_file().sync_all()?;
    #[cfg(unix)]
    {
        // The temporary file is private to its owner; paper and records are for the whole office.
        use std::os::unix::fs::PermissionsExt;
        let mode = fs::metadata(path).map_or(0o644, |m| m.permissions().mode());
        temporary.as_file().set_permissions(fs::Permissions::from_mode(mode))?;
    }
    temporary.persist(path).map_err(|e| e.error)?;
    #[cfg(unix)]
    fs::File::open(folder)?.sync_all()?;
    Ok(())
}

/// Removes the files of a folder that are not in `keep`; folders inside it and a missing folder are left alone.
///
/// # Errors
/// Whatever the system says.
pub fn clear(folder: &Path, keep: &[std::path::PathBuf]) -> io::Result<()> {
    let entries = match fs::read_dir(folder) {
        Err(e) if e.kind() == io::ErrorKind::NotFound => return Ok(()),
        other => other?,
    };
    for entry in entries {
        let path = entry?.path();
        if path.is_file() && !keep.contains(&path) {
            fs::remove_file(&path)?;
        }
    }
    Ok(())
}

/// True if the folder exists and holds anything, or if it is no folder at all.
pub fn holds_anything(folder: &Path) -> bool {
    match fs::read_dir(folder) {
        Ok(mut entries) => entries.next().is_some(),
        Err(e) => e.kind() != io::ErrorKind::NotFound,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn replaces_whole_files_and_leaves_nothing_behind() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("out/list.txt");
        write_atomic(&path, b"one").unwrap();
        write_atomic(&path, b"two").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"two");
        assert_eq!(fs::read_dir(dir.path().join("out")).unwrap().count(), 1);
    }
}
