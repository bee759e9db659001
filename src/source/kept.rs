//! A file that is kept for years and replaced only as a whole.

use std::ffi::OsString;
use std::fs::{self, File, TryLockError};
use std::io;
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::write_atomic;

const TRIES: u32 = 100;
const PAUSE: Duration = Duration::from_millis(100);

/// A kept file and its lock, `.NAME.lock` beside it.
///
/// The lock is a file of its own because replacing a file drops whatever lock the old one held.
#[derive(Clone, Debug)]
pub struct Kept {
    path: PathBuf,
}

impl Kept {
    /// Names the file; nothing is opened yet.
    pub fn new(path: impl Into<PathBuf>) -> Kept {
        Kept { path: path.into() }
    }

    /// Its path.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The bytes; none if there is no such file.
    ///
    /// Needs no lock: a reader sees the old file or the new one, never half of each.
    pub fn read(&self) -> io::Result<Vec<u8>> {
        match fs::read(&self.path) {
            Err(e) if e.kind() == io::ErrorKind::NotFound => Ok(Vec::new()),
            other => other,
        }
    }

    /// Replaces the bytes if the file still holds `old`; false if not. Waits ten seconds for another run.
    pub fn swap(&self, old: &[u8], new: &[u8]) -> io::Result<bool> {
        if let Some(folder) = self.path.parent() {
            fs::create_dir_all(folder)?;
        }
        let _lock = self.lock(TRIES)?;
        if self.read()? != old {
            return Ok(false);
        }
        write_atomic(&self.path, new)?;
        Ok(true)
    }

    fn lock(&self, tries: u32) -> io::Result<File> {
        let mut name = OsString::from(".");
        name.push(self.path.file_name().unwrap_or_default());
        name.push(".lock");
        let file = File::options().create(true).append(true).open(self.path.with_file_name(name))?;
        for _ in 0..tries {
            match file.try_lock() {
                Ok(()) => return Ok(file),
                Err(TryLockError::WouldBlock) => std::thread::sleep(PAUSE),
                Err(TryLockError::Error(e)) => return Err(e),
            }
        }
        Err(io::Error::new(io::ErrorKind::WouldBlock, "another run holds the lock; wait for it to end, then try again"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_second_run_waits_and_then_says_why() {
        let folder = tempfile::tempdir().unwrap();
        let kept = Kept::new(folder.path().join("list.jsonl"));
        let held = kept.lock(1).unwrap();
        assert_eq!(kept.lock(2).unwrap_err().kind(), io::ErrorKind::WouldBlock);
        drop(held);
        assert!(kept.swap(b"", b"one\n").unwrap());
        assert!(!kept.swap(b"", b"two\n").unwrap());
        assert_eq!(kept.read().unwrap(), b"one\n");
    }
}
