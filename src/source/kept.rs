//! A file that is kept for years and replaced only as a whole.

use std::fs::{self, File, TryLockError};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;

const TRIES: u32 = 100;
const PAUSE: Duration = Duration::from_millis(100);

/// A kept file and its lock, `NAME.lock` beside it.
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
        let folder = self.path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
        fs::create_dir_all(folder)?;
        let _lock = self.lock()?;
        if self.read()? != old {
            return Ok(false);
        }
        let mut temporary = tempfile::Builder::new().prefix(".register-").tempfile_in(folder)?;
        temporary.write_all(new)?;
        keep_mode(&self.path, temporary.as_file())?;
        temporary.as_file().sync_all()?;
        temporary.persist(&self.path).map_err(|e| e.error)?;
        sync_folder(folder)?;
        Ok(true)
    }

    fn lock(&self) -> io::Result<File> {
        let mut name = self.path.clone().into_os_string();
        name.push(".lock");
        let file = File::options().create(true).append(true).open(&name)?;
        for _ in 0..TRIES {
            match file.try_lock() {
                Ok(()) => return Ok(file),
                Err(TryLockError::WouldBlock) => std::thread::sleep(PAUSE),
                Err(TryLockError::Error(e)) => return Err(e),
            }
        }
        Err(io::Error::new(io::ErrorKind::WouldBlock, "another run has held the lock for ten seconds; wait for it to end, then try again"))
    }
}

/// A temporary file is private to its writer; the crew's shared folder needs the mode the file had.
#[cfg(unix)]
fn keep_mode(path: &Path, file: &File) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    let mode = fs::metadata(path).map_or(0o644, |m| m.permissions().mode());
    file.set_permissions(fs::Permissions::from_mode(mode))
}

#[cfg(not(unix))]
fn keep_mode(_: &Path, _: &File) -> io::Result<()> {
    Ok(())
}

/// Without this the rename itself may be lost when the power fails. Only Unix can open a folder.
#[cfg(unix)]
fn sync_folder(folder: &Path) -> io::Result<()> {
    File::open(folder)?.sync_all()
}

#[cfg(not(unix))]
fn sync_folder(_: &Path) -> io::Result<()> {
    Ok(())
}
