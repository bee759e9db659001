//! The checks against literate cases: every file of `tests/corpus/` is prose with changes to the demo job and the
//! findings they must give, to the character.
//!
//! A case is a heading of level two and the fenced blocks below it:
//!
//! - `set PATH`: lines `old -> new`, each old text once in the file; `->` alone at the end deletes it.
//! - `file PATH`: a whole file in its place; `gone PATH`, left empty, takes the file away.
//! - `fit`: faces as the press measured them, `M-01/en mud pages=1 over=5 room=21 smallest=28`.
//! - `issued`: cards in force, `M-01 mud larkenfell/carve-24/2 A PUMA`.
//! - `also`: names of other findings that the change gives, and no more than these.
//! - `short`: the findings of the check, a line each; empty for a near miss.
//! - `screen`: the first finding as a terminal shows it.
//!
//! `CORPUS=name,name` runs only those files. `UPDATE_CORPUS=1 cargo test --release --test corpus` writes what the checks say today into the files: read the
//! difference before you keep it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::disallowed_methods,
    reason = "a test"
)]

#[path = "corpus/cases.rs"]
mod cases;
#[path = "corpus/scene.rs"]
mod scene;

use std::fs;
use std::path::{Path, PathBuf};

use hodbook::finding::{Finding, Severity};
use hodbook::sound::{self, CHECKS};
use hodbook::source::{Folder, side_by_side};
use scene::Switch;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).to_path_buf()
}

fn demo() -> Folder {
    Folder::open(&root().join("content")).unwrap()
}

#[test]
fn the_clean_demo_has_nothing_to_stop_or_hold() {
    let folder = demo();
    let found = scene::sound(&folder, &[], Switch::AsIs);
    let lines = |file: u32| folder.lines(file);
    let grave: Vec<String> = found
        .iter()
        .filter(|f| f.severity <= Severity::Hold)
        .map(|f| hodbook::finding::plain(f, &lines, hodbook::finding::Colour::Off, 120))
        .collect();
    assert!(grave.is_empty(), "{}", grave.join("\n\n"));
    // Two textures have a panel on record; a book that hid the others would have measured nothing.
    let (unmeasured, other): (Vec<_>, Vec<_>) = found.iter().partition(|f| f.name == "fill-unmeasured");
    let about: Vec<&str> = unmeasured.iter().filter_map(|f| f.about.as_deref()).collect();
    assert_eq!(about, ["bark", "rubble", "log", "rock", "flat-worn", "pier-rock"]);
    let warned: Vec<String> = other.iter().map(|f| hodbook::finding::short(f, &lines)).collect();
    assert!(warned.is_empty(), "{}", warned.join("\n"));
}

/// Corpus files with their check's name, those of `CORPUS` only if it is set.
fn files() -> Vec<(PathBuf, String)> {
    let only: Option<Vec<String>> = std::env::var("CORPUS").ok().map(|names| names.split(',').map(str::to_owned).collect());
    let all = cases::files(&root().join("tests/corpus")).into_iter().map(|path| {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        (path, name)
    });
    all.filter(|(_, name)| only.as_ref().is_none_or(|only| only.contains(name))).collect()
}

#[test]
fn every_case_says_what_it_says() {
    let demo = demo();
    let update = std::env::var_os("UPDATE_CORPUS").is_some();
    let clean = scene::sound(&demo, &[], Switch::AsIs);
    let files = files();
    let made = side_by_side(&files, |(path, name)| {
        let old = fs::read_to_string(path).unwrap();
        let (new, heard) = cases::run(&demo, &clean, name, &old, Switch::AsIs);
        (old, new, heard)
    });
    let mut wrong = Vec::new();
    let mut heard = 0;
    for ((path, name), (old, new, findings)) in files.iter().zip(made) {
        findings.iter().for_each(worded);
        heard += findings.len();
        if new == old {
            continue;
        }
        if update {
            fs::write(path, &new).unwrap();
        } else {
            wrong.push(cases::difference(name, &old, &new));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(heard > files.len(), "{heard} findings heard");
}

/// A check that is left out, or that always finds something, is noticed by its own cases.
#[test]
fn a_check_switched_off_or_always_on_fails_a_case() {
    let demo = demo();
    let clean = scene::sound(&demo, &[], Switch::AsIs);
    let unnoticed = side_by_side(&files(), |(path, name)| {
        let text = fs::read_to_string(path).unwrap();
        let all = cases::read(&text);
        let differs = |case: Option<&cases::Case>, switch| {
            let text = case.map(|c| cases::alone(&text, &c.title));
            text.is_some_and(|text| cases::run(&demo, &clean, name, &text, switch).0 != text)
        };
        let fires = all.iter().find(|c| !c.short.trim().is_empty());
        let near = all.iter().find(|c| c.short.trim().is_empty());
        let mut unnoticed = Vec::new();
        if !differs(fires, Switch::Off(name)) {
            unnoticed.push(format!("{name} switched off"));
        }
        if !differs(near, Switch::On(name)) {
            unnoticed.push(format!("{name} always on"));
        }
        unnoticed
    });
    assert_eq!(unnoticed.concat(), Vec::<String>::new());
}

/// Titles are drawn in a line: lower case, no full stop, and never a word that blames.
fn worded(f: &Finding) {
    assert!(!f.title.ends_with('.') && !f.title.to_lowercase().contains("invalid"), "{}", f.title);
    let check = sound::check(f.name).unwrap_or_else(|| panic!("{} is no check", f.name));
    assert!(check.severities.contains(&f.severity), "{}", f.name);
    assert!(!f.source.is_empty() && !f.help.is_empty(), "{}", f.title);
}

/// Every id of the trade's list is a check, or found before any check runs, or waits for inputs that do not exist yet:
/// and no id is in two of these.
#[test]
fn every_id_of_the_list_is_kept_somewhere() {
    use hodbook::sound::ids::{BEFORE, LATER, all};
    let checked: Vec<&str> = CHECKS.iter().flat_map(|c| c.ids.iter().copied()).collect();
    let listed: Vec<String> = all().collect();
    assert_eq!(listed.len(), 155);
    let mut lost = Vec::new();
    let mut twice = Vec::new();
    for id in &listed {
        let (check, before) = (checked.contains(&id.as_str()), BEFORE.iter().any(|(i, _, _)| i == id));
        let later = LATER.iter().any(|(i, _)| i == id);
        if !check && !before && !later {
            lost.push(id.as_str());
        }
        if later && (check || before) {
            twice.push(id.as_str());
        }
    }
    assert_eq!((lost, twice), (Vec::<&str>::new(), Vec::<&str>::new()), "lost, and both kept and waiting");
    for id in checked.iter().copied().chain(BEFORE.iter().map(|(id, _, _)| *id)).chain(LATER.iter().map(|(id, _)| *id)) {
        assert!(listed.iter().any(|l| l == id), "{id} is not in the list");
    }
}

/// What is found before any check runs, for the ids of the paper and the languages: a change to the demo, and the
/// finding of reading or rendering that it gives.
#[test]
fn what_is_found_before_any_check() {
    use hodbook::sound::ids::BEFORE;
    let cases = [
        ("unit-missing", "mixes/carve-24.md", "step: 1 cup", "step: 1"),
        ("fraction-ambiguous", "mixes/carve-24.md", "lift: 1 1/2 in", "lift: 11/2 in"),
        ("decimal-comma", "mixes/carve-24.md", "lift: 1 1/2 in", "lift: 1,5 in"),
        ("name-taken", "procedures/mix-carve.md", "code: P04", "code: P03"),
        ("slot-unknown", "procedures/mix-carve.md", "{{ mix.mixing | long }}", "{{ mix.mixinf | long }}"),
        ("fence-unknown", "sites/larkenfell.md", "```elevation", "```elevations"),
        ("markdown-unprinted", "procedures/mix-carve.md", "A damp or lumpy bag", "![a bag](bag.png)"),
        ("gallon-not-us", "mixes/carve-24.md", "limit: 2 gal", "limit: 2 imperial gal"),
    ];
    let demo = demo();
    for (name, path, old, new) in cases {
        assert!(BEFORE.iter().any(|(_, n, _)| *n == name), "{name} is not in the list");
        let text = demo.at(path).unwrap().text.replacen(old, new, 1);
        assert_ne!(text, demo.at(path).unwrap().text.to_string(), "{path} says no {old}");
        let folder = demo.with_text(path, &text);
        let mut found = hodbook::read::job(&folder).1;
        if found.is_empty() {
            let body = scene::body(folder.at(path).unwrap());
            found = scene::torn(&folder, &body);
        }
        assert!(found.iter().any(|f| f.name == name), "{name}: {:?}", found.iter().map(|f| f.name).collect::<Vec<_>>());
    }
}

/// D9: the template sets a write-in box of a WALL card for gloves.
#[test]
fn boxes_at_the_wall_are_tall_enough_for_gloves() {
    let theme = fs::read_to_string(root().join("templates/theme.typ")).unwrap();
    let wall = &theme[theme.find("WALL").unwrap()..];
    let height: String = wall.split("box-h: ").nth(1).unwrap().chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
    assert!(wall[wall.find("box-h: ").unwrap()..].starts_with(&format!("box-h: {height}in")));
    assert!(height.parse::<f64>().unwrap() >= 0.6, "{height}");
}

/// The demo with every fault that the trade's list names gives those ids, and no others.
#[test]
fn the_seeded_job_gives_its_list() {
    let demo = demo();
    let clean = scene::sound(&demo, &[], Switch::AsIs);
    let path = root().join("tests/seeded.md");
    let text = fs::read_to_string(&path).unwrap();
    let case = cases::read(&text).pop().unwrap();
    let folder = case.folder(&demo);
    let lines = |file: u32| folder.lines(file);
    let known = |f: &Finding| clean.iter().any(|c| c.name == f.name && c.title == f.title);
    let found: Vec<Finding> = scene::sound(&folder, &[], Switch::AsIs).into_iter().filter(|f| !known(f)).collect();
    let said: String = found.iter().map(|f| hodbook::finding::short(f, &lines) + "\n").collect();
    if std::env::var_os("UPDATE_CORPUS").is_some() {
        let at = text.rfind("```short\n").unwrap() + 9;
        fs::write(&path, format!("{}{said}```\n", &text[..at])).unwrap();
    }
    let block = |kind: &str| {
        let inner = text.split_once(&format!("```{kind}\n")).unwrap().1.split_once("```").unwrap().0;
        inner.split_whitespace().map(str::to_owned).collect::<std::collections::BTreeSet<String>>()
    };
    let ids: std::collections::BTreeSet<String> =
        found.iter().flat_map(|f| sound::check(f.name).unwrap().ids).map(|id| (*id).to_owned()).collect();
    assert_eq!(ids, block("expected"), "{said}");
    assert!(block("later").iter().all(|id| sound::ids::LATER.iter().any(|(l, _)| l == id)));
    assert_eq!(case.short, said, "set UPDATE_CORPUS=1 and read the difference");
}

#[test]
fn every_check_is_whole() {
    let corpus = root().join("tests/corpus");
    let mut names: Vec<&str> = Vec::new();
    for check in CHECKS {
        assert!(!names.contains(&check.name), "{} stands twice", check.name);
        names.push(check.name);
        assert!(check.name.chars().all(|c| c.is_ascii_lowercase() || c == '-'), "{}", check.name);
        let trade_id = |id: &&str| {
            let (letter, number) = id.split_at(1);
            letter.chars().all(|c| c.is_ascii_uppercase()) && number.parse::<u8>().is_ok()
        };
        assert!(!check.ids.is_empty() && check.ids.iter().all(trade_id), "{} has no trade id", check.name);
        assert_eq!(check.severities.len(), 1, "{}: one name, one severity", check.name);
        let page = sound::manual(check.name).unwrap();
        for part in ["**What it looks for.**", "**Why.**", "**Source and basis.**", "**Example that fires.**", "**What passes.**"] {
            assert!(page.contains(part), "{} lacks {part}", check.name);
        }
        let text = fs::read_to_string(corpus.join(format!("{}.md", check.name))).unwrap_or_else(|_| panic!("{} has no corpus", check.name));
        let all = cases::read(&text);
        assert!(all.iter().any(|c| !c.short.trim().is_empty()), "no case of {} fires", check.name);
        assert!(all.iter().any(|c| c.short.trim().is_empty()), "{} has no near miss", check.name);
        assert!(all.iter().any(|c| c.screen.is_some()), "{} shows no screen", check.name);
    }
    for path in cases::files(&corpus) {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        assert!(names.contains(&name.as_str()), "{name} is the corpus of no check");
    }
}

/// Rewrites `follows:` of every twin of the demo for its original as it stands. Run it after a change of English
/// text, once the Spanish has been read again:
/// `cargo test --release --test corpus -- --ignored fill_follows`
#[test]
#[ignore = "writes into content/"]
fn fill_follows() {
    let folder = demo();
    for file in folder.files().iter().filter(|f| f.path.ends_with(".es.md")) {
        let original = folder.at(&file.path.replace(".es.md", ".md")).unwrap();
        let follows = sound::languages::follows_for(&scene::body(original));
        let at = file.text.find("\nfollows:").unwrap() + 1;
        let end = at + file.text[at..].find('\n').unwrap();
        let text = format!("{}follows: {follows}{}", &file.text[..at], &file.text[end..]);
        fs::write(root().join("content").join(&file.path), text).unwrap();
    }
}
