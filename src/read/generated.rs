//! The manual pages and schemas under `docs/` are the tables' own words: compared here, and written again when
//! `HODBOOK_WRITE=1` is set.
#![allow(clippy::disallowed_methods, reason = "a test reads what it compares")]

use std::path::Path;

use super::{KINDS, manual, schema};

#[test]
fn the_pages_in_docs_are_those_of_the_tables() {
    let docs = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs");
    let mut pages: Vec<(String, String)> = Vec::new();
    for kind in KINDS {
        pages.push((format!("format/{}.md", kind.kind), manual(kind)));
        for (twin, tail) in [(false, ""), (true, "-twin")] {
            let text = serde_json::to_string_pretty(&schema(kind, twin)).unwrap() + "\n";
            pages.push((format!("schema/{}{tail}.json", kind.kind), text));
        }
    }
    let write = std::env::var_os("HODBOOK_WRITE").is_some();
    for (path, text) in pages {
        let path = docs.join(path);
        if write {
            crate::source::write_atomic(&path, text.as_bytes()).unwrap();
        }
        let seen = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(seen == text, "{} is old: set HODBOOK_WRITE=1 and run this test again", path.display());
    }
}
