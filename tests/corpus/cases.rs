//! Reads a corpus file, runs its cases and writes it again with what the checks say.

use std::fs;
use std::path::{Path, PathBuf};

use hodbook::finding::{self, Colour, Finding};
use hodbook::job::{Fit, Issued};
use hodbook::source::Folder;

use super::scene::{self, Switch};

/// Corpus files, sorted.
pub fn files(folder: &Path) -> Vec<PathBuf> {
    let mut all: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
    all.retain(|p| p.extension().is_some_and(|e| e == "md"));
    all.sort();
    all
}

/// One case.
#[derive(Default)]
pub struct Case {
    /// Its heading.
    pub title: String,
    changes: Vec<(String, String, String)>,
    /// Faces as measured.
    pub fits: Vec<Fit>,
    /// Cards in force.
    pub issued: Vec<Issued>,
    also: String,
    /// Expected lines.
    pub short: String,
    /// Expected screen.
    pub screen: Option<String>,
}

impl Case {
    /// The demo with the case's changes.
    pub fn folder(&self, demo: &Folder) -> Folder {
        let mut folder = demo.clone();
        for (kind, path, text) in &self.changes {
            if kind == "file" {
                folder = folder.with_text(path, text);
                continue;
            }
            if kind == "gone" {
                assert!(folder.at(path).is_some(), "{}: no file {path}", self.title);
                let left = folder.files().iter().filter(|f| f.path != *path);
                folder = Folder::of(left.map(|f| (f.path.clone(), f.text.clone())).collect::<Vec<_>>());
                continue;
            }
            let mut now = folder.at(path).unwrap_or_else(|| panic!("{}: no file {path}", self.title)).text.to_string();
            for line in text.lines() {
                let (old, new) = line.split_once(" ->").unwrap_or_else(|| panic!("{}: `{line}` has no ->", self.title));
                let (old, new) = (old.replace("\\n", "\n"), new.strip_prefix(' ').unwrap_or(new).replace("\\n", "\n"));
                assert_eq!(now.matches(&old).count(), 1, "{}: `{old}` must stand once in {path}", self.title);
                now = now.replace(&old, &new);
            }
            folder = folder.with_text(path, &now);
        }
        folder
    }
}

/// The fenced blocks of a text in order: info line, content; and the headings between them.
fn parts(text: &str) -> Vec<(String, String)> {
    let mut out = Vec::new();
    let mut open: Option<(String, String, String)> = None;
    for line in text.lines() {
        let ticks: String = line.chars().take_while(|c| *c == '`').collect();
        match &mut open {
            Some((fence, info, inner)) if line == fence => {
                out.push((std::mem::take(info), std::mem::take(inner)));
                open = None;
            }
            Some((_, _, inner)) => inner.push_str(&format!("{line}\n")),
            None if ticks.len() >= 3 => open = Some((ticks.clone(), line[ticks.len()..].to_owned(), String::new())),
            None if line.starts_with("## ") => out.push((line.to_owned(), String::new())),
            None => {}
        }
    }
    assert!(open.is_none(), "a fence is left open");
    out
}

/// The cases of a file.
pub fn read(text: &str) -> Vec<Case> {
    let mut cases: Vec<Case> = Vec::new();
    for (info, inner) in parts(text) {
        if let Some(title) = info.strip_prefix("## ") {
            cases.push(Case { title: title.to_owned(), ..Case::default() });
            continue;
        }
        let (kind, rest) = info.split_once(' ').unwrap_or((&info, ""));
        // Blocks above the first case and blocks of other languages are prose.
        let Some(case) = cases.last_mut() else { continue };
        match kind {
            "set" | "file" | "gone" => case.changes.push((kind.to_owned(), rest.to_owned(), inner)),
            "fit" => case.fits.extend(inner.lines().map(fit)),
            "issued" => case.issued.extend(inner.lines().map(issued)),
            "also" => case.also = inner,
            "short" => case.short = inner,
            "screen" => case.screen = Some(inner),
            _ => {}
        }
    }
    cases
}

/// `M-01 mud larkenfell/carve-24/2 A PUMA`: code, subject, revision letter, check-word.
fn issued(line: &str) -> Issued {
    let words: Vec<&str> = line.split(' ').collect();
    let [code, kind, of, rev, word] = words[..] else { panic!("{line} is no card in force") };
    Issued { code: code.to_owned(), subject: format!("{kind} {of}"), rev: rev.to_owned(), word: word.to_owned() }
}

fn fit(line: &str) -> Fit {
    let mut words = line.split(' ');
    let (face, card) = (words.next().unwrap().to_owned(), words.next().unwrap().to_owned());
    let lang = face.rsplit('/').next().unwrap().to_owned();
    let mut fit = Fit { face, card, lang, pages: 1, lines_over: 0, lines_room: 0, smallest_pt: 28.0, key_pt: 101.0 };
    for word in words {
        let (key, value) = word.split_once('=').unwrap();
        match key {
            "pages" => fit.pages = value.parse().unwrap(),
            "over" => fit.lines_over = value.parse().unwrap(),
            "room" => fit.lines_room = value.parse().unwrap(),
            "smallest" => fit.smallest_pt = value.parse().unwrap(),
            other => panic!("{other} is nothing a face has"),
        }
    }
    fit
}

/// The file as the checks would write it, and every finding of its cases. What the demo says without any change
/// (`clean`) is not said again for each case.
pub fn run(demo: &Folder, clean: &[Finding], name: &str, text: &str, switch: Switch<'_>) -> (String, Vec<Finding>) {
    let mut out = text.to_owned();
    let mut heard = Vec::new();
    let mut from = 0;
    for case in read(text) {
        let heading = format!("## {}\n", case.title);
        from += out[from..].find(&heading).unwrap() + heading.len();
        let folder = case.folder(demo);
        let all = scene::sound_with(&folder, &case.fits, &case.issued, switch);
        heard.extend(all.iter().cloned());
        let (own, others): (Vec<Finding>, Vec<Finding>) = all.into_iter().partition(|f| f.name == name);
        let lines = |file: u32| folder.lines(file);
        let short: String = own.iter().map(|f| finding::short(f, &lines) + "\n").collect();
        let known = |f: &Finding| clean.iter().any(|c| c.name == f.name && c.title == f.title);
        let mut also: Vec<&str> = others.iter().filter(|f| f.accepted.is_none() && !known(f)).map(|f| f.name).collect();
        also.sort_unstable();
        also.dedup();
        let also: String = also.iter().map(|n| format!("{n}\n")).collect();
        let screen = own.first().map(|f| finding::plain(f, &lines, Colour::Off, 120) + "\n").unwrap_or_default();
        let mut said = vec![("short", short)];
        if !also.is_empty() || !case.also.is_empty() {
            said.push(("also", also));
        }
        if case.screen.is_some() {
            said.push(("screen", screen));
        }
        for (kind, new) in said {
            put(&mut out, from, kind, &new, &case.title);
        }
    }
    (out, heard)
}

/// The part of a file that holds one case, as a file of its own.
pub fn alone(text: &str, title: &str) -> String {
    let start = text.find(&format!("## {title}\n")).unwrap();
    let end = text[start..].find("\n## ").map_or(text.len(), |i| start + i + 1);
    text[start..end].trim_end().to_owned() + "\n"
}

/// Puts a text into the next block of a kind below a place.
fn put(out: &mut String, from: usize, kind: &str, new: &str, title: &str) {
    let end = out[from..].find("\n## ").map_or(out.len(), |i| from + i + 1);
    let Some(at) = out[from..end].find(&format!("```{kind}\n")) else {
        // What else a change gives stands behind what it must give.
        assert_eq!(kind, "also", "`{title}` has no ```{kind} for:\n{new}");
        let short = from + out[from..end].find("```short\n").unwrap() + 9;
        let close = short - 1 + out[short - 1..].find("\n```\n").unwrap() + 5;
        out.insert_str(close, &format!("\n```also\n{new}```\n"));
        return;
    };
    let ticks = out[..from + at].chars().rev().take_while(|c| *c == '`').count() + 3;
    let start = from + at + 3 + kind.len() + 1;
    let fence = format!("\n{}\n", "`".repeat(ticks));
    // The closing fence may follow at once: then the block is empty.
    let close = start - 1 + out[start - 1..].find(&fence).unwrap() + 1;
    out.replace_range(start..close, new);
}

/// Lines that differ.
pub fn difference(name: &str, old: &str, new: &str) -> String {
    let missing: Vec<&str> = old.lines().filter(|l| !new.lines().any(|n| n == *l)).collect();
    let added: Vec<&str> = new.lines().filter(|l| !old.lines().any(|o| o == *l)).collect();
    format!("{name}.md\n  expected:\n    {}\n  said:\n    {}", missing.join("\n    "), added.join("\n    "))
}
