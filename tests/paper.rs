//! The demo's papers, read back with a library that has nothing to do with the typesetter; and two runs that must
//! give the same bytes.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::disallowed_methods,
    reason = "a test"
)]

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;
use std::process::{Command, Output};
use std::sync::OnceLock;

use kit::paper::{Paper, bare};

/// A folder with a copy of the demo job and room for its paper.
struct Desk {
    dir: tempfile::TempDir,
}

impl Desk {
    fn new() -> Desk {
        let dir = tempfile::tempdir().unwrap();
        kit::copy_demo(&dir.path().join("content"));
        Desk { dir }
    }

    fn run(&self, words: &[&str]) -> Output {
        Command::new(env!("CARGO_BIN_EXE_hodbook")).args(words).current_dir(self.dir.path()).output().unwrap()
    }

    fn path(&self, below: &str) -> PathBuf {
        self.dir.path().join(below)
    }

    /// Lines of the register.
    fn entered(&self) -> usize {
        fs::read_to_string(self.path("content/records/register.jsonl")).unwrap().lines().count()
    }

    /// Code of what the register says of a subject, such as `mud larkenfell/carve-24/2`: codes move when a batch is added.
    fn code(&self, subject: &str) -> String {
        let register = fs::read_to_string(self.path("content/records/register.jsonl")).unwrap();
        let mut entries = register.lines().map(|l| serde_json::from_str::<serde_json::Value>(l).unwrap());
        let found = entries.find(|e| e["subject"] == subject).unwrap_or_else(|| panic!("{subject} was not entered"));
        found["code"].as_str().unwrap().to_owned()
    }

    fn edit(&self, file: &str, old: &str, new: &str) {
        let path = self.path(file);
        let text = fs::read_to_string(&path).unwrap();
        assert_eq!(text.matches(old).count(), 1, "`{old}` must stand once in {file}");
        fs::write(path, text.replace(old, new)).unwrap();
    }

    fn pdfs(&self, below: &str) -> BTreeMap<String, Vec<u8>> {
        let mut found = BTreeMap::new();
        for folder in ["cards", "runs", "book"] {
            let Ok(entries) = fs::read_dir(self.path(below).join(folder)) else { continue };
            for entry in entries {
                let path = entry.unwrap().path();
                found.insert(format!("{folder}/{}", path.file_name().unwrap().to_string_lossy()), fs::read(path).unwrap());
            }
        }
        found
    }
}

/// The demo, issued once for all tests of this file.
fn demo() -> &'static Desk {
    static DEMO: OnceLock<Desk> = OnceLock::new();
    DEMO.get_or_init(|| {
        let desk = Desk::new();
        let out = desk.run(&["issue"]);
        assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stdout));
        desk
    })
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

#[test]
fn every_printed_value_is_on_its_page() {
    let mut values = 0;
    for (name, _) in demo().pdfs("out") {
        let paper = Paper::open(&demo().path("out").join(&name)).unwrap();
        let attached = paper.attached("printed-values.json").unwrap_or_else(|| panic!("{name} has no values attached"));
        let json: serde_json::Value = serde_json::from_slice(&attached).unwrap();
        let pages: Vec<String> = (1..=paper.sizes().len()).map(|n| paper.bare_text(u32::try_from(n).unwrap())).collect();
        for value in json["values"].as_array().unwrap() {
            let shown = bare(value["text"].as_str().unwrap());
            let face = value["face"].as_str().unwrap();
            // A single card has one page a face; runs and books are searched whole.
            let page = match name.strip_prefix("cards/") {
                Some(_) if face.ends_with("/es") => &pages[1..],
                Some(_) => &pages[..1],
                None => &pages[..],
            };
            assert!(page.iter().any(|p| p.contains(&shown)), "{name}: {face} does not show {}", value["text"]);
            values += 1;
        }
    }
    assert!(values > 800, "only {values} values");
}

#[test]
fn papers_have_their_size_their_faces_and_their_language() {
    let tabloid = (792.0, 1224.0);
    let cases: &[(&str, usize, (f64, f64))] = &[
        ("mud brack-ferry/carve-24/1", 2, tabloid),
        ("mud larkenfell/carve-24/3", 2, tabloid),
        ("mud sedge-basin/lite-10m/2", 2, tabloid),
        ("half-load brack-ferry/carve-24", 2, tabloid),
        ("ladder sedge-basin/lite-10m", 2, (1224.0, 792.0)),
        ("batch-log larkenfell/scratch-15/1", 1, (792.0, 612.0)),
        ("pocket brack-ferry", 2, (360.0, 216.0)),
        ("yard-list sedge-basin", 1, (612.0, 792.0)),
        // Three sites' pocket cards, two sheets each, front and back.
        ("runs/3x5-in-landscape-10-mil-matte-hand-long-edge.pdf", 12, (612.0, 792.0)),
    ];
    let mut files = Vec::new();
    for (subject, pages, size) in cases {
        let name = if subject.contains(".pdf") { (*subject).to_owned() } else { format!("cards/{}.pdf", demo().code(subject)) };
        files.push((name, pages, size));
    }
    for (name, pages, size) in files {
        let paper = Paper::open(&demo().path("out").join(&name)).unwrap();
        let sizes = paper.sizes();
        assert_eq!(sizes.len(), *pages, "{name}");
        for (w, h) in sizes {
            let fits = |(a, b): (f64, f64)| (w - a).abs() < 0.5 && (h - b).abs() < 0.5;
            // A press sheet may lie as its cards need it.
            assert!(fits(*size) || (name.starts_with("runs/") && fits((size.1, size.0))), "{name}: {w} × {h}");
        }
    }
    let mud = format!("cards/{}.pdf", demo().code("mud brack-ferry/carve-24/1"));
    for (name, lang) in [(mud.as_str(), "en"), ("book/larkenfell-en.pdf", "en"), ("book/larkenfell-es.pdf", "es")] {
        let paper = Paper::open(&demo().path("out").join(name)).unwrap();
        assert_eq!(paper.language().as_deref(), Some(lang), "{name}");
        assert!(paper.claims_ua_1(), "{name}");
    }
}

/// A card of a metric site says litres first and gallons below, the other sites the other way round.
#[test]
fn a_metric_card_says_litres_first() {
    for (subject, first, second) in
        [("mud sedge-basin/lite-10m/2", "9.20 L", "2 gal 1 qt 1 pt"), ("mud larkenfell/carve-24/2", "3 gal 1 qt", "12.30 L")]
    {
        let paper = Paper::open(&demo().path(&format!("out/cards/{}.pdf", demo().code(subject)))).unwrap();
        for page in [1, 2] {
            let said = paper.bare_text(page);
            let at = |text: &str| said.find(&bare(text)).unwrap_or_else(|| panic!("{subject}, page {page}: no `{text}` in {said}"));
            assert!(at(first) < at(second), "{subject}, page {page}: {second} stands before {first}");
        }
    }
}

/// What a change order would bring is on no paper while it is not in force; what stands now is.
#[test]
fn nothing_of_a_change_order_is_on_paper() {
    let mut now = 0;
    for name in demo().pdfs("out").keys() {
        let paper = Paper::open(&demo().path("out").join(name)).unwrap();
        for page in 1..=paper.sizes().len() {
            let said = paper.bare_text(u32::try_from(page).unwrap());
            for coming in ["459.8 ft²", "88 1/2 loads", "grows by four feet", "crece cuatro pies"] {
                assert!(!said.contains(&bare(coming)), "{name}, page {page}: {coming}");
            }
            now += usize::from(said.contains(&bare("415.8 ft²")));
        }
    }
    assert!(now >= 2, "the wall as it stands is on {now} pages");
}

#[test]
fn the_same_input_gives_the_same_bytes_and_enters_nothing_twice() {
    let desk = Desk::new();
    assert!(desk.run(&["issue"]).status.success());
    let first = desk.pdfs("out");
    assert_eq!(first, demo().pdfs("out"), "two folders, one job");
    let register = fs::read(desk.path("content/records/register.jsonl")).unwrap();
    let count = |folder: &str| first.keys().filter(|k| k.starts_with(folder)).count();
    assert_eq!(count("cards/"), text(&register).lines().count(), "a card of the run was not entered, or the other way round");
    let sites =
        fs::read_dir(desk.path("content/sites")).unwrap().filter(|e| !e.as_ref().unwrap().path().to_string_lossy().ends_with(".es.md"));
    assert_eq!(count("book/"), 2 * sites.count());
    assert!((3..=12).contains(&count("runs/")), "{} runs", count("runs/"));
    let again = desk.run(&["issue"]);
    assert!(text(&again.stderr).contains("0 entered in the register"), "{}", text(&again.stderr));
    assert_eq!(desk.pdfs("out"), first);
    assert_eq!(fs::read(desk.path("content/records/register.jsonl")).unwrap(), register);
}

#[test]
fn a_proof_enters_nothing() {
    let desk = Desk::new();
    let out = desk.run(&["issue", "--proof", "M-02"]);
    assert!(out.status.success());
    assert!(!desk.path("content/records/register.jsonl").exists());
    assert_eq!(desk.pdfs("out/proof").keys().collect::<Vec<_>>(), ["cards/M-02.pdf", "runs/tabloid-10-mil-matte-wall-long-edge.pdf"]);
}

#[test]
fn a_stop_withholds_what_it_touches_and_only_that() {
    let desk = Desk::new();
    assert!(desk.run(&["issue"]).status.success());
    let entered = desk.entered();
    // The amount for one load on a card for every batch size.
    desk.edit("content/cards/mud.md", "```stop\n{{ batch.limit }}", "```stop\n{{ mix.limit }}");
    let out = desk.run(&["--format", "short", "issue"]);
    assert_eq!(out.status.code(), Some(1));
    let found = text(&out.stdout);
    assert!(found.contains("STOP water-not-scaled"), "{found}");
    let left = desk.pdfs("out");
    let subjects = fs::read_to_string(desk.path("content/records/register.jsonl")).unwrap();
    let mut muds = 0;
    for line in subjects.lines() {
        let entry: serde_json::Value = serde_json::from_str(line).unwrap();
        let (subject, code) = (entry["subject"].as_str().unwrap(), entry["code"].as_str().unwrap());
        let mud = subject.starts_with("mud ");
        muds += usize::from(mud);
        assert_eq!(left.contains_key(&format!("cards/{code}.pdf")), !mud, "{subject}");
    }
    assert_eq!(muds, 12);
    assert!(left.contains_key("book/larkenfell-en.pdf"), "the book was withheld too");
    assert_eq!(desk.entered(), entered, "a withheld card was entered");
}

/// A HOLD prints a band until another role accepts it; then the paper says who let it through.
#[test]
fn a_hold_prints_a_band_and_an_acceptance_prints_who() {
    let desk = Desk::new();
    desk.edit("content/mixes/carve-24.md", "\napproved_by: LEAD", "");
    let subject = "mud larkenfell/carve-24/2";
    let page = |desk: &Desk, name: &str, n: u32| Paper::open(&desk.path("out").join(name)).unwrap().bare_text(n);
    assert!(desk.run(&["issue"]).status.success());
    let card = format!("cards/{}.pdf", desk.code(subject));
    let (en, es) = (page(&desk, &card, 1), page(&desk, &card, 2));
    assert!(en.contains(&bare("HOLD, waiting for a name")) && es.contains(&bare("RETENIDO, falta quien responda")), "{en}\n{es}");
    let other = format!("cards/{}.pdf", desk.code("mud larkenfell/scratch-15/2"));
    assert!(!page(&desk, &other, 1).contains(&bare("HOLD, waiting")), "the other mix has nothing to do with it");

    desk.edit(
        "content/mixes/carve-24.md",
        "written_by: TRN\n",
        "written_by: TRN\naccept: {approver-missing: {by: LEAD, because: signed on the panel sheet}}\n",
    );
    assert!(desk.run(&["issue"]).status.success());
    let (en, es) = (page(&desk, &card, 1), page(&desk, &card, 2));
    assert!(!en.contains(&bare("HOLD, waiting")), "{en}");
    assert!(en.contains(&bare("accepted by LEAD: approver-missing")) && es.contains(&bare("aceptado por LEAD: approver-missing")), "{en}");
    let book = Paper::open(&desk.path("out/book/larkenfell-es.pdf")).unwrap();
    let whole: String = (1..=book.sizes().len()).map(|n| book.bare_text(u32::try_from(n).unwrap())).collect();
    assert!(whole.contains(&bare("signed on the panel sheet")), "the book gives the reason");
    assert!(whole.contains(&bare("aceptado por LEAD: approver-missing")), "every page of the book says so");
    let other = page(&desk, &other, 1);
    assert!(!other.contains(&bare("accepted by")), "{other}");
}

#[test]
fn a_changed_number_makes_a_new_revision_of_the_cards_that_say_it() {
    let desk = Desk::new();
    assert!(desk.run(&["issue"]).status.success());
    let entered = desk.entered();
    desk.edit("content/mixes/carve-24.md", "least: 4 min, after_step: 1 min", "least: 4 min, after_step: 2 min");
    assert!(desk.run(&["issue"]).status.success());
    let register = fs::read_to_string(desk.path("content/records/register.jsonl")).unwrap();
    let new: Vec<serde_json::Value> = register.lines().skip(entered).map(|l| serde_json::from_str(l).unwrap()).collect();
    let subjects: Vec<&str> = new.iter().map(|e| e["subject"].as_str().unwrap()).collect();
    let muds =
        ["brack-ferry/carve-24/1", "brack-ferry/carve-24/2", "larkenfell/carve-24/1", "larkenfell/carve-24/2", "larkenfell/carve-24/3"];
    assert_eq!(subjects, muds.map(|m| format!("mud {m}")), "only the mud cards of this mix say how long to mix after a step");
    for entry in &new {
        assert_eq!((entry["rev"].as_str(), entry["shape"].as_str()), (Some("B"), Some("square")));
    }
}

#[test]
fn a_torn_register_is_reported_and_survived() {
    let desk = Desk::new();
    assert!(desk.run(&["issue", "M-01"]).status.success());
    let path = desk.path("content/records/register.jsonl");
    let mut bytes = fs::read(&path).unwrap();
    bytes.extend_from_slice(b"{\"format\":1,\"kind\":\"iss");
    fs::write(&path, bytes).unwrap();
    let out = desk.run(&["--format", "short", "issue", "M-01"]);
    assert!(out.status.success(), "{}", text(&out.stderr));
    assert!(text(&out.stdout).contains("register-tail-torn"), "{}", text(&out.stdout));
}
