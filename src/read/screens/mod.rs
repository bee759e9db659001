//! Faults sown into the demo, each with the exact screen an author sees.

mod before;
mod change;
mod mix;
mod pages;
mod site;

use std::path::Path;

use crate::finding::{Colour, plain};
use crate::source::Folder;

/// Path, what stands there, what is put in its place, the screen.
type Case = (&'static str, &'static str, &'static str, &'static str);

fn demo() -> Folder {
    Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap()
}

fn screen(folder: &Folder) -> String {
    let (_, findings) = super::job(folder);
    let lines = |file| folder.lines(file);
    findings.iter().map(|f| plain(f, &lines, Colour::Off, 120) + "\n").collect::<Vec<_>>().join("\n")
}

fn check(cases: &[Case]) {
    let demo = demo();
    for (path, from, to, want) in cases {
        let text = &demo.at(path).unwrap().text;
        assert!(text.contains(from), "{path} has no {from:?}");
        let seen = screen(&demo.with_text(path, &text.replacen(from, to, 1)));
        assert_eq!(seen.trim(), want.trim(), "\n{path}: {from:?} to {to:?}\nseen:\n{seen}");
    }
}

#[test]
fn of_a_mix() {
    check(mix::CASES);
}

#[test]
fn of_a_site() {
    check(site::CASES);
}

#[test]
fn of_a_change_order() {
    check(change::CASES);
}

#[test]
fn of_cards_the_book_and_the_company() {
    check(pages::CASES);
}

#[test]
fn all_of_a_run_are_shown() {
    let folder = demo()
        .with_text("cards/drum.es.md", "---\nhodbook: 1\nkind: card\nlanguage: es\nname: x\n---\n")
        .with_text("cards/x.md", "")
        .with_text("sits/a.md", "x");
    let want = "
STOP[twin-without-original]: the twin has no original `cards/drum.md`
 --> cards/drum.es.md:1:1
  |
1 | ---
  | ^^^
  |
  = help: rename it to match its original, or write the original first

STOP[file-empty]: `cards/x.md` is empty
 --> cards/x.md:1:1
  |
1 |
  | ^
  |
  = help: write it, or delete it

NOTE[file-not-read]: `sits/a.md` is not read: no kind of file lives there
 --> sits/a.md:1:1
  |
1 | x
  | ^
  |
  = help: did you mean the folder `sites/`?
";
    assert_eq!(screen(&folder).trim(), want.trim());
}

/// Several faults in one file, and in one list: each is told, in the order of the file.
#[test]
fn every_fault_of_a_file_is_told() {
    let demo = demo();
    let mut text = demo.at("sites/larkenfell.md").unwrap().text.to_string();
    for (from, to) in [
        ("carve: [2026-03-02, 2026-03-03,", "carve: [2026-3-2, 2026-02-30,"),
        ("width: 22 ft", "width: 22 lb"),
        ("diameter: 14 in", "diameter: 14"),
        ("W2: {like: W1", "W2: {like: W1, colour: red"),
        ("rubble: {least: 3/8 in", "rubble: {least: 3/8 gal"),
        ("humidity: 38 %", "humidity: 380 %"),
    ] {
        assert!(text.contains(from), "{from}");
        text = text.replacen(from, to, 1);
    }
    let folder = demo.with_text("sites/larkenfell.md", &text);
    let (job, findings) = super::job(&folder);
    let seen: Vec<&str> = findings.iter().map(|f| f.name).collect();
    let want = ["value-out-of-range", "unit-wrong", "unit-wrong", "unknown-key", "unit-missing", "date-unreadable", "date-unreadable"];
    assert_eq!(seen, want);
    assert!(job.sites.iter().all(|s| s.id != "larkenfell") && job.mixes.len() == 3);
}

#[test]
fn a_name_used_twice_points_at_both() {
    let demo = demo();
    let text = demo.at("mixes/scratch-15.md").unwrap().text.replace("name: SCRATCH-15", "name: CARVE-24");
    let seen = screen(&demo.with_text("mixes/scratch-15.md", &text));
    let want = "STOP[name-taken]: two mixes are called `CARVE-24`";
    assert!(seen.contains(want), "{seen}");
}

#[test]
fn an_escape_code_in_a_file_does_not_reach_the_terminal() {
    let demo = demo();
    let text = demo.at("cards/mud.md").unwrap().text.replacen("tab: yes", "tab: \"\\e[31mred\"", 1);
    let seen = screen(&demo.with_text("cards/mud.md", &text));
    assert!(seen.contains("choice-unknown") && !seen.contains('\u{1b}'), "{seen}");
}
