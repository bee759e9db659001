//! Every formula has one source, and every function of the room names its own.

#![allow(clippy::disallowed_methods, reason = "a test reads the files of the room")]

use super::*;
use std::collections::BTreeSet;

/// Every file of the room but the tables of sources and the tests.
fn files() -> Vec<(String, String)> {
    let room = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/trade");
    let mut files = Vec::new();
    for entry in std::fs::read_dir(room).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if name.ends_with(".rs") && !name.ends_with("_tests.rs") && !["mod.rs", "sources.rs"].contains(&name.as_str()) {
            files.push((name, std::fs::read_to_string(&path).unwrap()));
        }
    }
    assert!(files.len() > 30, "{} files", files.len());
    files
}

fn own(file: &str) -> &str {
    file.split("#[cfg(test)]").next().unwrap()
}

#[test]
fn every_formula_has_one_source_and_every_source_a_formula() {
    let mut listed = BTreeSet::new();
    for source in all() {
        for formula in source.formulas {
            assert!(listed.insert(*formula), "{formula} is listed twice");
        }
    }
    let mut used = BTreeSet::new();
    let files = files();
    for (_, file) in &files {
        used.extend(own(file).split('"').filter(|t| {
            let digits = t.strip_prefix('F').and_then(|t| t.split_once(' ')).map_or("", |(n, _)| n);
            !digits.is_empty() && digits.bytes().all(|b| b.is_ascii_digit())
        }));
    }
    assert_eq!(used.symmetric_difference(&listed).collect::<Vec<_>>(), Vec::<&&str>::new());
}

#[test]
fn every_public_function_names_its_source() {
    for (name, file) in &files() {
        let functions = own(file).matches("\npub fn ").count();
        let named: Vec<&str> = own(file).split("Source: `").skip(1).filter_map(|t| t.split('`').next()).collect();
        assert_eq!(functions, named.len(), "{name}: {named:?}");
        for key in named {
            assert!(find(key).is_some(), "no source is called {key}");
        }
        assert_eq!(own(file).matches("/// ```\n/// use ").count(), functions, "{name}: an example for each of {functions}");
    }
}
