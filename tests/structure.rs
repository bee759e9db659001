//! The rooms: who may import whom, which outside library lives where, and how long a file may be.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::disallowed_methods,
    reason = "a test"
)]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use kit::rooms::{collect, imports};

/// Room, and the rooms it may import.
const ROOMS: &[(&str, &[&str])] = &[
    ("words", &[]),
    ("quantity", &["words"]),
    ("source", &[]),
    ("finding", &["source", "words"]),
    ("job", &["quantity", "source"]),
    ("trade", &["quantity"]),
    ("read", &["words", "quantity", "source", "finding", "job"]),
    ("tally", &["words", "quantity", "source", "job", "trade"]),
    ("prose", &["words", "quantity", "source", "finding", "job", "tally"]),
    ("sound", &["words", "quantity", "source", "finding", "job", "trade", "tally", "prose"]),
    ("press", &["words", "quantity", "source", "finding", "job", "tally", "prose"]),
    // Language codes name the faces in an entry.
    ("register", &["source", "finding", "job", "tally", "words"]),
    ("work", &["words", "quantity", "source", "finding", "job", "trade", "read", "tally", "prose", "sound", "press", "register"]),
    // What it prints: figures' lines.
    ("cli", &["work", "finding", "quantity"]),
    ("main", &["cli", "work"]),
];

/// Outside library, and the rooms it may be used in.
const LIBRARIES: &[(&str, &[&str])] = &[
    ("annotate_snippets", &["finding"]),
    ("clap", &["cli"]),
    ("clap_complete", &["cli"]),
    ("clap_mangen", &["cli"]),
    ("csv", &["read", "work"]),
    ("dejavu", &["press"]),
    ("indexmap", &["tally", "read"]),
    ("indicatif", &["cli"]),
    ("jiff", &["cli", "read", "register", "work"]),
    ("libm", &["quantity", "trade", "tally", "work"]),
    ("mimalloc", &["top"]),
    ("notosans", &["press"]),
    ("num_bigint", &["quantity", "tally", "trade", "prose", "sound"]),
    ("num_integer", &["quantity", "prose"]),
    ("num_rational", &["quantity", "tally", "trade", "prose", "sound", "work"]),
    ("num_traits", &["quantity", "tally", "trade", "prose", "sound", "work"]),
    ("pulldown_cmark", &["prose"]),
    ("rustc_hash", &["tally"]),
    ("serde", &["press", "register"]),
    ("serde_json", &["words", "finding", "read", "tally", "press", "register", "work", "cli"]),
    ("serde_yaml", &["read"]),
    ("sha2", &["register", "prose", "press"]),
    ("strsim", &["quantity", "read", "prose", "cli"]),
    ("tempfile", &["source"]),
    ("tera", &["prose"]),
    ("typst", &["press"]),
    ("typst_layout", &["press"]),
    ("typst_pdf", &["press"]),
    ("unicode_width", &["cli"]),
    ("walkdir", &["source"]),
];

fn src() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

#[test]
fn rooms_import_only_upstream() {
    let rooms: BTreeMap<&str, &[&str]> = ROOMS.iter().copied().collect();
    let names: Vec<&str> = LIBRARIES.iter().map(|(n, _)| *n).collect();
    let mut broken = Vec::new();
    let mut inside = 0;
    for import in imports(&src(), &names).into_iter().filter(|i| !i.outside && i.room != "top") {
        inside += 1;
        let may = rooms.get(import.room.as_str()).unwrap_or_else(|| panic!("{} is no room of the table", import.room));
        if !may.contains(&import.target.as_str()) {
            broken.push(format!("src/{}:{} {} imports {}", import.file, import.line, import.room, import.target));
        }
    }
    assert!(inside > 200, "the walk found only {inside} imports");
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

#[test]
fn every_library_lives_in_its_rooms() {
    let homes: BTreeMap<&str, &[&str]> = LIBRARIES.iter().copied().collect();
    let names: Vec<&str> = LIBRARIES.iter().map(|(n, _)| *n).collect();
    let mut broken = Vec::new();
    let mut used: BTreeMap<String, usize> = BTreeMap::new();
    for import in imports(&src(), &names).into_iter().filter(|i| i.outside) {
        *used.entry(import.target.clone()).or_default() += 1;
        if !homes.get(import.target.as_str()).is_some_and(|rooms| rooms.contains(&import.room.as_str())) {
            broken.push(format!("src/{}:{} {} uses {}", import.file, import.line, import.room, import.target));
        }
    }
    assert!(broken.is_empty(), "{}", broken.join("\n"));
    for name in names {
        assert!(used.contains_key(name), "nothing uses {name}");
    }
}

#[test]
fn every_dependency_is_in_the_table_and_in_the_notes() {
    let manifest = include_str!("../Cargo.toml");
    let notes = include_str!("../DEVELOPERS.md");
    let section = manifest.split("[dependencies]").nth(1).and_then(|t| t.split("\n[").next()).unwrap();
    for line in section.lines().filter(|l| l.contains(" = ")) {
        let name = line.split(" = ").next().unwrap().trim();
        let code = name.replace('-', "_");
        assert!(LIBRARIES.iter().any(|(n, _)| *n == code), "{name} has no room");
        assert!(notes.contains(&format!("`{name}`")), "DEVELOPERS.md does not say why {name} is there");
    }
}

#[test]
fn files_stay_short() {
    /// Files that are one thing and longer than the rest: the derivation tree, the quantity grammar, the form that
    /// the templates see, the tree of a front matter.
    const LONG: &[(&str, usize)] =
        &[("quantity/expr.rs", 560), ("quantity/parse.rs", 550), ("press/payload.rs", 360), ("read/yaml.rs", 360)];
    let mut files = Vec::new();
    collect(&src(), &mut files);
    let mut broken = Vec::new();
    for file in files {
        let name = file.strip_prefix(src()).unwrap().to_string_lossy().into_owned();
        let text = std::fs::read_to_string(&file).unwrap();
        let limit = match LONG.iter().find(|(n, _)| *n == name) {
            Some((_, limit)) => *limit,
            None if name == "main.rs" => 26,
            None if name.contains("test") => 500,
            None => 350,
        };
        let lines = text.lines().count();
        if lines > limit {
            broken.push(format!("src/{name} has {lines} lines, {limit} are allowed"));
        }
    }
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}
