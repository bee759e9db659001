//! Faults sown into the demo, each with the exact screen an author sees.

use std::path::Path;

use crate::finding::{Colour, plain};
use crate::source::Folder;

fn demo() -> Folder {
    Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap()
}

fn screen(folder: &Folder) -> String {
    let (_, findings) = super::job(folder);
    let lines = |file| folder.lines(file);
    findings.iter().map(|f| plain(f, &lines, Colour::Off, 120) + "\n").collect::<Vec<_>>().join("\n")
}

fn sown(path: &str, from: &str, to: &str) -> String {
    let demo = demo();
    let text = &demo.at(path).unwrap().text;
    assert!(text.contains(from), "{path} has no {from:?}");
    screen(&demo.with_text(path, &text.replacen(from, to, 1)))
}

/// Path, what stands there, what is put in its place.
const CASES: &[(&str, &str, &str)] = &[
    ("mixes/carve-24.md", "  limit: 2 gal\n", "  limt: 2 gal\n"),
    ("mixes/carve-24.md", "  limit: 2 gal\n", ""),
    ("mixes/carve-24.md", "rev: C\n", "rev: C\nrev: D\n"),
    ("mixes/carve-24.md", "lift: 1 1/2 in", "lift: 11/2 in"),
    ("mixes/carve-24.md", "step: 1 cup", "step: 1 lb"),
    ("mixes/carve-24.md", "\"10:3 by mass\"", "\"10:3\""),
    ("mixes/carve-24.md", "open_time: 50 min at 70 °F", "open_time: 50 min"),
    ("mixes/carve-24.md", "open_time: 50 min at 70 °F", "open_time: 50 min at 70 F°"),
    ("mixes/carve-24.md", "hodbook: 1", "hodbook: 2"),
    ("mixes/carve-24.md", "kind: mix", "kind: site"),
    ("mixes/carve-24.md", "air: 9 %", "air: 90 %"),
    ("mixes/carve-24.md", "coat: carve", "coat: crave"),
    ("mixes/carve-24.md", "mixing: {least", "mixing: [least"),
    ("mixes/carve-24.md", "  start: 1 gal", "\tstart: 1 gal"),
    ("mixes/carve-24.md", "---\n", ""),
    ("sites/larkenfell.md", "width: 22 ft", "width: 0 ft"),
    ("sites/larkenfell.md", "width: 22 ft", "width: \"22 gal\""),
    ("sites/larkenfell.md", "eave: 9 ft\n", ""),
    ("sites/larkenfell.md", "shape: gable", "shape: rectangle"),
    ("sites/larkenfell.md", "mixer: pan45, loads: 2", "mixer: pan54, loads: 2"),
    ("sites/larkenfell.md", "texture: log\n", "texture: logs\n"),
    ("sites/larkenfell.md", "{like: W1", "{like: W9"),
    ("sites/larkenfell.md", "good_until: 2026-03-31", "good_until: 3/31/2026"),
    ("sites/larkenfell.md", "zone: America/Chicago", "zone: America/Chicgo"),
    ("sites/larkenfell.md", "68 °F to 74 °F", "74 °F to 68 °F"),
    ("sites/larkenfell.md", "letter: lf-engineer", "letter: lf-enginer"),
    ("sites/larkenfell.md", "crew: [LEAD, MUD", "crew: [LAED, MUD"),
    ("cards/mud.md", "cautions: [eyes, skin, paddle]", "cautions: [eyes, skn, paddle]"),
    ("cards/mud.md", "tab: yes", "tab: maybe"),
    ("cards/mud.es.md", "follows: []", "follows: []\ncopies: 3"),
    ("handbook.md", "chapters/water.md", "../water.md"),
    ("company.md", "languages: [en, es]", "languages: [en, sp]"),
];

#[test]
fn look() {
    for (path, from, to) in CASES {
        println!("#### {path} {from:?} -> {to:?}\n{}", sown(path, from, to));
    }
    let folder = demo()
        .with_text("cards/drum.es.md", "---\nhodbook: 1\nkind: card\nlanguage: es\nname: x\n---\n")
        .with_text("sits/a.md", "x")
        .with_text("cards/x.md", "");
    println!("#### {}", screen(&folder));
}
