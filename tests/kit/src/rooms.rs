//! Who imports whom: every path of every source file, resolved to a room of the crate or to an outside library.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use syn::visit::{self, Visit};
use syn::{Attribute, ItemMod, ItemUse, UseTree};

/// One path in the source.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Import {
    /// File, from the source folder.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// Room of the file: its folder, or its stem at the top.
    pub room: String,
    /// First name of the path after `crate::` or the supers; or the library's name.
    pub target: String,
    /// True if the path goes out of the crate.
    pub outside: bool,
}

/// Every import below a source folder, test modules left out.
pub fn imports(src: &Path, libraries: &[&str]) -> Vec<Import> {
    let mut files = Vec::new();
    collect(src, &mut files);
    let skipped: BTreeSet<PathBuf> = files.iter().flat_map(|f| test_files(f)).collect();
    let mut all = Vec::new();
    for file in files.iter().filter(|f| !skipped.iter().any(|s| f.starts_with(s) || *f == s)) {
        // A file that cannot be parsed would otherwise pass as one that imports nothing.
        let text = fs::read_to_string(file).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
        let tree = syn::parse_file(&text).unwrap_or_else(|e| panic!("{}: {e}", file.display()));
        let relative = file.strip_prefix(src).unwrap_or(file);
        let module = module_of(relative);
        let mut walk = Walk { relative, module, libraries, found: Vec::new() };
        walk.visit_file(&tree);
        all.extend(walk.found);
    }
    all.sort();
    all.dedup();
    all
}

/// Rust files below a folder, in order.
pub fn collect(folder: &Path, files: &mut Vec<PathBuf>) {
    let mut entries: Vec<PathBuf> = fs::read_dir(folder).map(|d| d.flatten().map(|e| e.path()).collect()).unwrap_or_default();
    entries.sort();
    for entry in entries {
        if entry.is_dir() {
            collect(&entry, files);
        } else if entry.extension().is_some_and(|e| e == "rs") {
            files.push(entry);
        }
    }
}

fn for_tests(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|a| a.path().is_ident("cfg") && a.parse_args::<syn::Ident>().is_ok_and(|i| i == "test"))
}

/// Files and folders that a file declares as modules for tests only.
fn test_files(file: &Path) -> Vec<PathBuf> {
    let text = fs::read_to_string(file).unwrap_or_default();
    let Ok(tree) = syn::parse_file(&text) else { return Vec::new() };
    let stem = file.file_stem().map(|s| s.to_string_lossy().into_owned()).unwrap_or_default();
    let parent = file.parent().unwrap_or(Path::new("")).to_owned();
    let folder = if matches!(stem.as_str(), "mod" | "lib" | "main") { parent } else { parent.join(&stem) };
    let declared = tree.items.iter().filter_map(|item| match item {
        syn::Item::Mod(m) if m.content.is_none() && for_tests(&m.attrs) => Some(m.ident.to_string()),
        _ => None,
    });
    declared.flat_map(|name| [folder.join(format!("{name}.rs")), folder.join(name)]).collect()
}

/// Names of the module a file is: `quantity/num.rs` is `["quantity", "num"]`.
fn module_of(relative: &Path) -> Vec<String> {
    let mut names: Vec<String> = relative.components().map(|c| c.as_os_str().to_string_lossy().into_owned()).collect();
    if let Some(last) = names.pop() {
        let stem = last.trim_end_matches(".rs").to_owned();
        if !matches!(stem.as_str(), "mod" | "lib" | "main") {
            names.push(stem);
        }
    }
    names
}

struct Walk<'a> {
    relative: &'a Path,
    module: Vec<String>,
    libraries: &'a [&'a str],
    found: Vec<Import>,
}

impl Walk<'_> {
    fn path(&mut self, names: &[String], line: usize) {
        let room = self.module.first().cloned().unwrap_or_else(|| "top".to_owned());
        let mut at = self.module.clone();
        let (target, outside) = match names.first().map(String::as_str) {
            Some("crate" | "hodbook") => (names.get(1).cloned(), false),
            Some("super") => {
                let supers = names.iter().take_while(|n| *n == "super").count();
                at.truncate(at.len().saturating_sub(supers));
                at.extend(names.iter().skip(supers).cloned());
                (at.first().cloned(), false)
            }
            Some(name) if self.libraries.contains(&name) => (Some(name.to_owned()), true),
            _ => return,
        };
        let Some(target) = target else { return };
        if outside || target != room {
            let file = self.relative.to_string_lossy().into_owned();
            self.found.push(Import { file, line, room, target, outside });
        }
    }

    fn tree(&mut self, tree: &UseTree, before: &mut Vec<String>, line: usize) {
        match tree {
            UseTree::Path(p) => {
                before.push(p.ident.to_string());
                self.tree(&p.tree, before, line);
                before.pop();
            }
            UseTree::Group(g) => g.items.iter().for_each(|t| self.tree(t, before, line)),
            UseTree::Name(n) => self.leaf(&n.ident.to_string(), before, line),
            UseTree::Rename(r) => self.leaf(&r.ident.to_string(), before, line),
            UseTree::Glob(_) => self.path(&before.clone(), line),
        }
    }

    fn leaf(&mut self, name: &str, before: &[String], line: usize) {
        let mut names = before.to_vec();
        names.push(name.to_owned());
        self.path(&names, line);
    }
}

impl<'ast> Visit<'ast> for Walk<'_> {
    fn visit_item_mod(&mut self, item: &'ast ItemMod) {
        if for_tests(&item.attrs) {
            return;
        }
        self.module.push(item.ident.to_string());
        visit::visit_item_mod(self, item);
        self.module.pop();
    }

    fn visit_item_use(&mut self, item: &'ast ItemUse) {
        let line = item.use_token.span.start().line;
        self.tree(&item.tree, &mut Vec::new(), line);
    }

    fn visit_path(&mut self, path: &'ast syn::Path) {
        if path.segments.len() > 1 {
            let names: Vec<String> = path.segments.iter().map(|s| s.ident.to_string()).collect();
            let line = path.segments.first().map_or(0, |s| s.ident.span().start().line);
            self.path(&names, line);
        }
        visit::visit_path(self, path);
    }
}
