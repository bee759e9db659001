//! Damaged files: nothing panics, and one file's damage never hides another file's findings.

use std::path::Path;

use crate::finding::{Colour, json, plain, short};
use crate::source::Folder;

fn demo() -> Folder {
    Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap()
}

/// The demo without its long files, for the tests that read it some thousand times.
fn small() -> Folder {
    let demo = demo();
    let long = ["glossary", "chapters", "procedures", "cautions", "handbook"];
    let keep = |path: &str| !long.iter().any(|l| path.starts_with(l));
    Folder::of(demo.files().iter().filter(|f| keep(&f.path)).map(|f| (f.path.clone(), f.text.clone())))
}

/// Reads, draws everything, and checks that every place lies in its file.
fn survives(folder: &Folder) -> Vec<(&'static str, Option<u32>)> {
    let (_, findings) = super::job(folder);
    let lines = |file| folder.lines(file);
    for finding in &findings {
        for (span, _) in finding.at.iter().chain(&finding.related) {
            let file = folder.file(span.file).unwrap();
            assert!(span.start <= span.end && span.end as usize <= file.text.len(), "{finding:?}");
            assert!(file.text.is_char_boundary(span.start as usize) && file.text.is_char_boundary(span.end as usize), "{finding:?}");
        }
        assert!(!finding.title.is_empty() && !finding.title.ends_with('.') && !finding.title.contains("invalid"), "{finding:?}");
        assert!(plain(finding, &lines, Colour::Off, 100).contains(finding.name));
        assert!(!short(finding, &lines).contains('\n'), "{finding:?}");
    }
    json(&findings, &lines).to_string();
    findings.iter().map(|f| (f.name, f.at.as_ref().map(|(s, _)| s.file))).collect()
}

/// The front matter of a file, and a byte more.
fn front(text: &str) -> usize {
    text.get(3..).and_then(|t| t.find("\n---")).map_or(text.len(), |i| i + 8).min(text.len())
}

/// A small generator with a fixed seed: the same damage in every run.
struct Dice(u64);

impl Dice {
    fn roll(&mut self, sides: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % sides.max(1)
    }
}

#[test]
fn a_file_cut_anywhere_keeps_the_findings_of_others() {
    let demo = demo();
    let card = demo.at("cards/mud.md").unwrap().text.replacen("copies: 2", "copies: 0", 1);
    for path in ["mixes/scratch-15.md", "sites/larkenfell.md", "company.md", "records/lf-engineer.md", "cards/ladder.es.md"] {
        let text = demo.at(path).unwrap().text.clone();
        let sown = Folder::of([("cards/mud.md", card.as_str()), (path, &text)]);
        let other = sown.at("cards/mud.md").unwrap().id;
        for cut in (0..front(&text)).filter(|i| text.is_char_boundary(*i)) {
            let seen = survives(&sown.with_text(path, &text[..cut]));
            assert!(seen.contains(&("value-out-of-range", Some(other))), "{path} cut at {cut}: {seen:?}");
        }
    }
}

#[test]
fn flipped_bytes_and_moved_pieces_do_not_panic() {
    let demo = demo();
    let mut dice = Dice(7);
    let bits: Vec<&str> =
        "{ } [ ] : , - # & * ! | > ' \" % @ ` ? ~ \t \n --- ... 0 99999999999999999999 1/0 -1 é \u{feff} °".split(' ').collect();
    let mut seen: Vec<&str> = Vec::new();
    for file in demo.files() {
        // Three files of each folder are enough: the rest have the same keys.
        seen.push(file.folder());
        if seen.iter().filter(|f| **f == file.folder()).count() > 3 {
            continue;
        }
        let end = front(&file.text);
        for _ in 0..40 {
            let mut text = file.text.to_string();
            for _ in 0..=dice.roll(2) {
                let mut at = dice.roll(end.min(text.len()));
                while !text.is_char_boundary(at) {
                    at -= 1;
                }
                match dice.roll(3) {
                    0 => text.insert_str(at, bits[dice.roll(bits.len())]),
                    1 if at < text.len() => drop(text.remove(at)),
                    _ => {
                        let tail = text.split_off(at);
                        text.push_str(bits[dice.roll(bits.len())]);
                        text.push_str(&tail.chars().skip(dice.roll(12)).collect::<String>());
                    }
                }
            }
            survives(&demo.with_text(&file.path, &text));
        }
    }
}

#[test]
fn any_scalar_of_the_demo_may_hold_anything() {
    let demo = small();
    let long = "9".repeat(5000);
    let values =
        ["", "~", "[]", "{}", "[[a]]", "{a: {b: c}}", "0", "-3 ft", "1e400 in", "1/0 in", "NaN", "\"\\x1b[31m 1 ft\"", "|\n   x", &long];
    for path in ["company.md", "mixes/carve-24.md", "sites/larkenfell.md", "cards/mud.md", "cards/mud.es.md"] {
        let text = demo.at(path).unwrap().text.clone();
        for (at, _) in text[..front(&text)].match_indices(": ") {
            let rest = &text[at + 2..];
            let end = rest.find(['\n', ',', '}']).unwrap_or(rest.len());
            for value in values {
                survives(&demo.with_text(path, &format!("{}: {value}{}", &text[..at], &rest[end..])));
            }
        }
    }
}

#[test]
fn a_byte_order_mark_and_line_ends_of_another_system_change_nothing() {
    let demo = demo();
    let mut other = demo.clone();
    for file in demo.files() {
        other = other.with_text(&file.path, &format!("\u{feff}{}", file.text.replace('\n', "\r\n")));
    }
    assert_eq!(survives(&other), []);
    let (job, _) = super::job(&other);
    assert_eq!(
        job.sites.iter().find(|s| s.id == "larkenfell").unwrap().surfaces[0].openings[3].left.as_ref().unwrap().in_unit("in"),
        150.0
    );
}
