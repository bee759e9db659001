//! Every fenced block of the README is run: commands against the demo, content in a copy of it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::disallowed_methods,
    reason = "a test"
)]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const README: &str = include_str!("../README.md");
const CI: &str = include_str!("../.ci/run");

struct Fence {
    info: String,
    text: String,
    line: usize,
}

/// Fences of three or more backticks; a longer fence may hold shorter ones.
fn fences(markdown: &str) -> Vec<Fence> {
    let mut found = Vec::new();
    let mut open: Option<(usize, Fence)> = None;
    for (n, line) in markdown.lines().enumerate() {
        let ticks = line.len() - line.trim_start_matches('`').len();
        match &mut open {
            None if ticks >= 3 => {
                open = Some((ticks, Fence { info: line.trim_start_matches('`').to_owned(), text: String::new(), line: n + 1 }));
            }
            None => {}
            Some((wide, _)) if ticks >= *wide && line.trim_matches('`').is_empty() => found.extend(open.take().map(|(_, f)| f)),
            Some((_, fence)) => fence.text.push_str(&format!("{line}\n")),
        }
    }
    assert!(open.is_none(), "a fence is left open");
    found
}

/// A fresh folder with a copy of the demo job in `content`.
struct Desk {
    dir: tempfile::TempDir,
}

impl Desk {
    fn new() -> Desk {
        let dir = tempfile::tempdir().unwrap();
        kit::copy_demo(&dir.path().join("content"));
        Desk { dir }
    }

    fn path(&self, file: &str) -> PathBuf {
        self.dir.path().join("content").join(file)
    }

    /// Exit code, and what the command says on both outputs, the product first.
    fn run(&self, words: &[&str]) -> (i32, String) {
        let out =
            Command::new(env!("CARGO_BIN_EXE_hodbook")).args(words).current_dir(self.dir.path()).env("NO_COLOR", "1").output().unwrap();
        let text = format!("{}{}", String::from_utf8(out.stdout).unwrap(), String::from_utf8(out.stderr).unwrap());
        (out.status.code().unwrap(), text)
    }
}

/// True if `got` is `shown`, where a line `…` stands for any number of lines.
fn matches(shown: &[&str], got: &[&str]) -> bool {
    match shown.split_first() {
        None => got.is_empty(),
        Some((&"…", rest)) => (0..=got.len()).any(|n| matches(rest, &got[n..])),
        Some((line, rest)) => got.first() == Some(line) && matches(rest, &got[1..]),
    }
}

fn console(fence: &Fence) {
    let desk = Desk::new();
    if let Some(change) = fence.info.strip_prefix("console change ") {
        let (file, edit) = change.split_once(" :: ").unwrap();
        let (old, new) = edit.split_once(" -> ").unwrap();
        let text = fs::read_to_string(desk.path(file)).unwrap();
        assert_eq!(text.matches(old).count(), 1, "line {}: `{old}` must stand once in {file}", fence.line);
        fs::write(desk.path(file), text.replace(old, new)).unwrap();
    }
    let mut lines = fence.text.lines().peekable();
    let mut commands = 0;
    while let Some(line) = lines.next() {
        let words: Vec<&str> =
            line.strip_prefix("$ hodbook ").unwrap_or_else(|| panic!("line {}: {line}", fence.line)).split(' ').collect();
        let mut shown = Vec::new();
        while let Some(next) = lines.next_if(|l| !l.starts_with("$ ")) {
            shown.push(next.trim_end());
        }
        let (_, text) = desk.run(&words);
        let got: Vec<&str> = text.lines().map(str::trim_end).collect();
        assert!(matches(&shown, &got), "line {}: `{line}` now says\n{text}", fence.line);
        commands += 1;
    }
    assert!(commands > 0, "line {}: no command", fence.line);
}

/// A whole file, or more surfaces of a site, put into the demo: it must still be without a STOP or a HOLD.
fn content(fence: &Fence) {
    let desk = Desk::new();
    let mut words = fence.info.split(' ').skip(1);
    let file = words.next().unwrap_or_else(|| panic!("line {}: which file is this?", fence.line));
    match words.next() {
        None => {
            fs::create_dir_all(desk.path(file).parent().unwrap()).unwrap();
            fs::write(desk.path(file), &fence.text).unwrap();
        }
        Some("surfaces") => {
            let text = fs::read_to_string(desk.path(file)).unwrap();
            let (before, after) = text.split_once("calendar:\n").unwrap();
            fs::write(desk.path(file), format!("{before}{}calendar:\n{after}", fence.text)).unwrap();
        }
        Some(other) => panic!("line {}: `{other}`", fence.line),
    }
    let (code, text) = desk.run(&["sound"]);
    assert!(code == 0 && text.contains("0 STOP, 0 HOLD"), "line {}: {file}\n{text}", fence.line);
    let (code, text) = desk.run(&["issue", "--proof"]);
    assert_eq!(code, 0, "line {}: {file}\n{text}", fence.line);
}

/// Every name in a drawing of a folder is in the folder that `setout` lays out.
fn folder(fence: &Fence) {
    let desk = Desk::new();
    desk.run(&["setout", "yard-wall"]);
    for line in fence.text.lines().filter(|l| l.starts_with("  ")) {
        for name in line.split_whitespace().take_while(|w| w.ends_with('/') || w.ends_with(".md")).filter(|n| *n != "records/") {
            assert!(desk.dir.path().join("yard-wall").join(name).exists(), "line {}: {name}", fence.line);
        }
    }
}

#[test]
fn every_block_of_the_readme_does_what_it_shows() {
    let mut seen = Vec::new();
    for fence in fences(README) {
        let kind = fence.info.split(' ').next().unwrap_or("").to_owned();
        match kind.as_str() {
            "sh" => {
                for command in fence.text.lines() {
                    assert!(CI.lines().any(|l| l.trim().starts_with(command)), "CI does not run `{command}`");
                }
            }
            "console" => console(&fence),
            "yaml" | "markdown" | "csv" => content(&fence),
            "text" => folder(&fence),
            other => panic!("line {}: nobody runs a block of `{other}`", fence.line),
        }
        seen.push(kind);
    }
    for kind in ["sh", "console", "yaml", "markdown", "csv", "text"] {
        assert!(seen.iter().any(|k| k == kind), "no block of `{kind}` was found");
    }
}

#[test]
fn the_pictures_are_there() {
    for picture in ["docs/pictures/mud-card.png", "docs/pictures/site-book.png"] {
        assert!(README.contains(picture));
        let bytes = fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join(picture)).unwrap();
        assert!(bytes.starts_with(&[0x89, b'P', b'N', b'G']), "{picture}");
    }
}
