//! Every number on paper, followed to the lines somebody typed and the constants somebody published.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "a test")]

use std::path::Path;
use std::process::Command;

use serde_json::Value;

/// Derivations of every figure that some document of the demo prints.
fn trees() -> Vec<Value> {
    let job = concat!(env!("CARGO_MANIFEST_DIR"), "/content");
    let words = ["--job", job, "--format", "json", "plumb", "--all"];
    let out = Command::new(env!("CARGO_BIN_EXE_hodbook")).args(words).output().unwrap();
    assert!(out.status.success());
    String::from_utf8(out.stdout).unwrap().lines().map(|l| serde_json::from_str(l).unwrap()).collect()
}

#[test]
fn every_printed_value_ends_in_what_was_typed_or_published() {
    let content = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/content"));
    let (mut typed, mut published) = (0, 0);
    let trees = trees();
    assert!(trees.len() > 250, "only {} figures", trees.len());
    for tree in &trees {
        let figure = tree["figure"].as_str().unwrap();
        let lines = tree["lines"].as_array().unwrap();
        assert!(!lines.is_empty(), "{figure} has no derivation");
        for line in lines {
            let rests: Vec<usize> =
                line["rests_on"].as_array().unwrap().iter().map(|n| usize::try_from(n.as_u64().unwrap()).unwrap()).collect();
            assert!(rests.iter().all(|n| *n < lines.len()), "{figure} points out of its lines");
            if !rests.is_empty() {
                continue;
            }
            if let Some(text) = line["authored"]["text"].as_str() {
                let path = line["path"].as_str().unwrap_or_else(|| panic!("{figure}: `{text}` has no file"));
                let file = std::fs::read_to_string(content.join(path)).unwrap();
                let row = usize::try_from(line["line"].as_u64().unwrap()).unwrap();
                let column = usize::try_from(line["column"].as_u64().unwrap()).unwrap();
                let from: String = file.lines().nth(row - 1).unwrap().chars().skip(column - 1).collect();
                assert!(from.trim_start_matches('"').starts_with(text), "{figure}: {path}:{row}:{column} holds `{from}`, not `{text}`");
                typed += 1;
            } else {
                // A leaf that nobody typed: a published constant, a definition, or arithmetic of the formula's own numbers.
                let source = line["source"].as_str().unwrap_or("");
                let own = line["symbols"].as_str().is_some_and(|s| !s.is_empty());
                assert!(!source.is_empty() || own, "{figure}: {} = {} comes from nowhere", line["symbol"], line["result"]);
                published += 1;
            }
        }
    }
    assert!(typed > 500 && published > 20, "{typed} typed, {published} published");
}

#[test]
fn both_unit_systems_round_the_same_way() {
    for tree in trees() {
        let ways: Vec<&str> = ["us", "metric"].iter().filter_map(|s| tree["printed"][s]["direction"].as_str()).collect();
        assert_eq!(ways.len(), 2, "{}", tree["figure"]);
        assert_eq!(ways[0], ways[1], "{}", tree["figure"]);
    }
}
