//! The job folder: what may be read, and what is wrong with the files as files.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use walkdir::WalkDir;

use super::{File, Span};

/// A file larger than this is not an author's file.
const MOST_BYTES: u64 = 16 * 1024 * 1024;

/// What is wrong with a file before anyone asks what it means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Kebab-case name, the same as the finding's.
    pub name: &'static str,
    /// Path below the job folder.
    pub path: String,
    /// Place, if there is text to point at.
    pub at: Option<Span>,
    /// What is wrong.
    pub what: String,
    /// What would pass.
    pub help: String,
}

/// The files of one job folder, sorted by path, and their faults. Cloning shares the texts.
#[derive(Clone, Debug, Default)]
pub struct Folder {
    root: PathBuf,
    files: Vec<File>,
    faults: Vec<Fault>,
}

impl Folder {
    /// Reads every `.md`, `.csv` and `.jsonl` file below `root`. Skips `out/` and hidden names; follows links
    /// that stay inside and reports those that do not.
    ///
    /// # Errors
    /// Only when `root` itself is no folder that can be opened; all other trouble is a fault.
    pub fn open(root: &Path) -> std::io::Result<Folder> {
        let inside = root.canonicalize()?;
        if !inside.is_dir() {
            return Err(std::io::Error::new(std::io::ErrorKind::NotADirectory, "not a folder"));
        }
        let mut folder = Folder { root: inside.clone(), ..Folder::default() };
        let mut walk = WalkDir::new(&inside).follow_links(true).sort_by_file_name().into_iter();
        let mut found = Vec::new();
        while let Some(next) = walk.next() {
            let entry = match next {
                Ok(entry) => entry,
                Err(error) => {
                    folder.walk_fault(&error);
                    continue;
                }
            };
            let name = entry.file_name().to_string_lossy();
            let below = entry.depth() > 0;
            if below && (name.starts_with('.') || (entry.depth() == 1 && name == "out")) {
                if entry.file_type().is_dir() {
                    walk.skip_current_dir();
                }
                continue;
            }
            if below && entry.path_is_symlink() {
                let stays = entry.path().canonicalize().is_ok_and(|target| target.starts_with(&inside));
                if !stays {
                    let path = folder.relative(entry.path());
                    folder.fault(
                        "link-outside",
                        path.clone(),
                        format!("`{path}` is a link that leaves the job folder"),
                        "copy the file into the job folder",
                    );
                    if entry.file_type().is_dir() {
                        walk.skip_current_dir();
                    }
                    continue;
                }
            }
            if entry.file_type().is_file() && [".md", ".csv", ".jsonl"].iter().any(|ext| name.ends_with(ext)) {
                found.push((folder.relative(entry.path()), entry.path().to_owned()));
            }
        }
        found.sort();
        for (path, disk) in found {
            folder.read(path, &disk);
        }
        Ok(folder)
    }

    /// A folder of texts that never were on disk: for starter files, rehearsals and tests.
    pub fn of<P: Into<String>, T: Into<Arc<str>>>(files: impl IntoIterator<Item = (P, T)>) -> Folder {
        let mut folder = Folder::default();
        let mut files: Vec<(String, Arc<str>)> = files.into_iter().map(|(p, t)| (p.into(), t.into())).collect();
        files.sort();
        for (path, text) in files {
            folder.add(path, text);
        }
        folder
    }

    /// The same folder with other text in one file; a new path is added at the end. Writes nothing.
    #[must_use]
    pub fn with_text(&self, path: &str, text: &str) -> Folder {
        let mut folder = self.clone();
        folder.faults.retain(|f| f.path != path);
        let at = folder.files.iter().position(|f| f.path == path);
        folder.add(path.to_owned(), text.into());
        // A changed file keeps its number, so that places in the other files stay good.
        let Some(at) = at else { return folder };
        if let Some(new) = folder.files.pop() {
            let id = u32::try_from(at).unwrap_or(u32::MAX);
            for fault in folder.faults.iter_mut().filter(|f| f.path == path) {
                fault.at = fault.at.map(|span| Span { file: id, ..span });
            }
            if let Some(old) = folder.files.get_mut(at) {
                *old = File { id, ..new };
            }
        }
        folder
    }

    /// The files, sorted by path.
    pub fn files(&self) -> &[File] {
        &self.files
    }

    /// A file by its number.
    pub fn file(&self, id: u32) -> Option<&File> {
        self.files.get(id as usize)
    }

    /// A file by its path.
    pub fn at(&self, path: &str) -> Option<&File> {
        self.files.iter().find(|f| f.path == path)
    }

    /// Faults of files as files.
    pub fn faults(&self) -> &[Fault] {
        &self.faults
    }

    /// Where the folder is on disk; empty for one made of texts.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// Path and text of a file, as the drawing of findings wants them.
    pub fn lines(&self, id: u32) -> Option<(&str, &str)> {
        self.file(id).map(|f| (f.path.as_str(), &*f.text))
    }

    /// A path that an author wrote, made plain (`a/../b.md` is `b.md`); `None` if it leaves the job folder.
    /// Looks at the words only: the file need not exist.
    pub fn inside(path: &str) -> Option<String> {
        if path.starts_with(['/', '\\', '~']) || path.contains(':') || path.contains('\0') {
            return None;
        }
        let mut parts: Vec<&str> = Vec::new();
        for part in path.split(['/', '\\']) {
            match part {
                "" | "." => {}
                ".." => {
                    parts.pop()?;
                }
                name => parts.push(name),
            }
        }
        Some(parts.join("/"))
    }

    fn relative(&self, path: &Path) -> String {
        let below = path.strip_prefix(&self.root).unwrap_or(path);
        below.components().map(|c| c.as_os_str().to_string_lossy()).collect::<Vec<_>>().join("/")
    }

    fn fault(&mut self, name: &'static str, path: String, what: String, help: &str) {
        self.faults.push(Fault { name, path, at: None, what, help: help.to_owned() });
    }

    fn walk_fault(&mut self, error: &walkdir::Error) {
        let path = error.path().map_or_else(String::new, |p| self.relative(p));
        if error.loop_ancestor().is_some() {
            let what = format!("`{path}` is a link to a folder that holds it");
            self.fault("link-loop", path, what, "remove the link");
        } else {
            let why = error.io_error().map_or("unknown reason".to_owned(), |e| e.kind().to_string());
            self.fault("file-unreadable", path.clone(), format!("`{path}` cannot be opened: {why}"), "check the file and its permissions");
        }
    }

    fn read(&mut self, path: String, disk: &Path) {
        let size = fs::metadata(disk).map_or(0, |m| m.len());
        if size > MOST_BYTES {
            let what = format!("`{path}` holds {size} bytes, at most {MOST_BYTES} are read");
            self.fault("file-too-large", path, what, "keep pictures and exports outside the Markdown");
            return;
        }
        match fs::read(disk) {
            Ok(bytes) => match String::from_utf8(bytes) {
                Ok(text) => self.add(path, text.into()),
                Err(error) => self.not_utf8(path, &error),
            },
            Err(error) => {
                let what = format!("`{path}` cannot be opened: {}", error.kind());
                self.fault("file-unreadable", path, what, "check the file and its permissions");
            }
        }
    }

    fn next_id(&self) -> u32 {
        u32::try_from(self.files.len()).unwrap_or(u32::MAX)
    }

    fn add(&mut self, path: String, text: Arc<str>) {
        let id = self.next_id();
        let log = !path.ends_with(".md");
        let empty = !log && text.trim_matches(|c: char| c.is_whitespace() || c == '\u{feff}').is_empty();
        if empty {
            self.faults.push(Fault {
                name: "file-empty",
                path: path.clone(),
                at: Some(Span { file: id, start: 0, end: 0 }),
                what: format!("`{path}` is empty"),
                help: "write it, or delete it".to_owned(),
            });
        }
        self.files.push(File { id, path, text, whole: !empty });
    }

    fn not_utf8(&mut self, path: String, error: &std::string::FromUtf8Error) {
        let id = self.next_id();
        let good = error.utf8_error().valid_up_to();
        let bytes = error.as_bytes();
        let text: Arc<str> = std::str::from_utf8(bytes.get(..good).unwrap_or_default()).unwrap_or("").into();
        let file = File { id, path: path.clone(), text, whole: false };
        let (line, column) = file.place(u32::try_from(good).unwrap_or(u32::MAX));
        let byte = bytes.get(good).copied().unwrap_or(0);
        self.faults.push(Fault {
            name: "file-not-utf8",
            path,
            at: Some(file.span(good, good)),
            what: format!("byte 0x{byte:02X} at line {line}, column {column} is not UTF-8"),
            help: "save the file as UTF-8".to_owned(),
        });
        self.files.push(file);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_sorted_and_reports_bad_files() {
        let dir = tempfile::tempdir().unwrap();
        let outside = tempfile::tempdir().unwrap();
        fs::write(outside.path().join("secret.md"), "secret").unwrap();
        let put = |name: &str, bytes: &[u8]| {
            let path = dir.path().join(name);
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(path, bytes).unwrap();
        };
        put("sites/b.md", b"---\n---\n");
        put("sites/a.md", b"---\nx: \xff\n---\n");
        put("company.md", b"\xef\xbb\xbf \n");
        put("out/x.md", b"generated");
        put("photo.png", b"\x00");
        #[cfg(unix)]
        {
            std::os::unix::fs::symlink(outside.path().join("secret.md"), dir.path().join("sites/c.md")).unwrap();
            std::os::unix::fs::symlink(dir.path(), dir.path().join("sites/again")).unwrap();
            std::os::unix::fs::symlink("nowhere.md", dir.path().join("gone.md")).unwrap();
        }
        let folder = Folder::open(dir.path()).unwrap();
        let paths: Vec<&str> = folder.files().iter().map(|f| f.path.as_str()).collect();
        assert_eq!(paths, ["company.md", "sites/a.md", "sites/b.md"]);
        let mut faults: Vec<(&str, &str)> = folder.faults().iter().map(|f| (f.name, f.path.as_str())).collect();
        faults.sort_unstable();
        let mut expected = vec![("file-empty", "company.md"), ("file-not-utf8", "sites/a.md")];
        if cfg!(unix) {
            expected.extend([("file-unreadable", "gone.md"), ("link-loop", "sites/again"), ("link-outside", "sites/c.md")]);
        }
        assert_eq!(faults, expected);
        let bad = folder.faults().iter().find(|f| f.name == "file-not-utf8").unwrap();
        assert_eq!(bad.what, "byte 0xFF at line 2, column 4 is not UTF-8");
    }

    #[test]
    fn overlay_changes_one_file_and_keeps_numbers() {
        let folder = Folder::of([("b.md", "two"), ("a.md", "one")]);
        let other = folder.with_text("a.md", "three").with_text("c.md", "new");
        let texts: Vec<(u32, &str, &str)> = other.files().iter().map(|f| (f.id, f.path.as_str(), &*f.text)).collect();
        assert_eq!(texts, [(0, "a.md", "three"), (1, "b.md", "two"), (2, "c.md", "new")]);
        assert_eq!(&*folder.files()[0].text, "one");
        assert_eq!(other.with_text("b.md", "").faults().len(), 1);
    }

    #[test]
    fn paths_of_authors_stay_inside() {
        assert_eq!(Folder::inside("./chapters/../mixes/a.md").as_deref(), Some("mixes/a.md"));
        for path in ["../secret.md", "/etc/passwd", "a/../../b.md", "C:\\x.md", "~/x.md", "https://a.example/b.md"] {
            assert_eq!(Folder::inside(path), None, "{path}");
        }
    }
}
