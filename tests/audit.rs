//! The typed-number audit scored on labelled sentences, a file for each language: every seeded fault found, and at
//! most two of a hundred sentences without one reported.
//!
//! `cargo test --release --test audit -- --nocapture` prints the score and what differs from the labels.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout, clippy::disallowed_methods, reason = "a test")]

use std::fs;
use std::path::Path;

use hodbook::finding::Finding;
use hodbook::job::{Body, Distance};
use hodbook::prose::{Options, Prepared};
use hodbook::read;
use hodbook::sound::{self, Ground, Role, Seen};
use hodbook::source::Folder;
use hodbook::tally::{Subject, Tally, Voice, mix_of, scopes};
use hodbook::words::Lang;

/// A label and the check that must report what carries it.
const LABELS: &[(&str, &str)] =
    &[("d", "typed-number-differs"), ("u", "typed-number-unlinked"), ("w", "typed-water"), ("o", "typed-number")];

/// A marked amount: bytes in the body, its label.
struct Mark {
    start: u32,
    end: u32,
    label: String,
}

/// One labelled sentence.
struct Labelled {
    text: String,
    start: u32,
    end: u32,
    marks: Vec<Mark>,
}

fn at(n: usize) -> u32 {
    u32::try_from(n).unwrap()
}

/// The sentences of a file as paragraphs of one body, and where each and its marks stand there.
fn labelled(file: &str) -> (String, Vec<Labelled>) {
    let mut body = String::new();
    let mut all = Vec::new();
    for line in file.lines().filter_map(|l| l.strip_prefix("- ")) {
        let start = body.len();
        let mut marks = Vec::new();
        let mut rest = line;
        while let Some(bar) = LABELS.iter().filter_map(|(l, _)| rest.find(&format!("|{l}]"))).min() {
            let open = rest[..bar].rfind('[').unwrap();
            body.push_str(&rest[..open]);
            let from = body.len();
            body.push_str(&rest[open + 1..bar]);
            marks.push(Mark { start: at(from), end: at(body.len()), label: rest[bar + 1..bar + 2].to_owned() });
            rest = &rest[bar + 3..];
        }
        body.push_str(rest);
        all.push(Labelled { text: body[start..].to_owned(), start: at(start), end: at(body.len()), marks });
        body.push_str("\n\n");
    }
    (body, all)
}

/// What the audit's checks find in a body that stands where the demo's mixing procedure does.
fn hear(body: &str, code: &str) -> Vec<Finding> {
    let folder = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
    let (job, findings) = read::job(&folder);
    assert!(findings.is_empty());
    let tally = Tally::of(&job);
    let lang = Lang::find(code).unwrap();
    let site = job.sites.iter().find(|s| s.code.text == "LF").unwrap();
    let subject = Subject::Mix(site, mix_of(&job, "CARVE-24").unwrap());
    let page = job.procedures.iter().find(|p| p.id == "mix-carve").unwrap();
    let edition = page.editions.iter().find(|e| e.lang == code).unwrap();
    let edition = hodbook::job::Edition {
        lang: code.to_owned(),
        title: edition.title.clone(),
        body: Body { file: edition.body.file, offset: 0, text: body.to_owned() },
        follows: None,
    };
    let voice = Voice { lang, metric: false };
    let scope = scopes::scope(&tally, &job, subject, lang);
    let doc = Prepared::new(&edition.body).and_then(|p| p.render(&scope, &tally, voice, Options::default())).unwrap();
    let seen = [Seen {
        document: format!("P04/{code}"),
        role: Role::Procedure(page),
        edition: &edition,
        original: None,
        subject,
        voice,
        scope,
        doc,
        reads: Distance::Hand,
    }];
    let ground = Ground { seen: &seen, ..Ground::of(&job, &tally, (2026, 3, 2)) };
    let checks: Vec<&sound::Check> = LABELS.iter().map(|(_, name)| sound::check(name).unwrap()).collect();
    sound::run_these(&checks, &ground)
}

/// True if a verdict is one that the label allows. What nobody counts by ear is whether some figure of the document
/// happens to equal a typed amount: both are the same finding to the author. Water beside `add` may name the step.
fn agrees(label: &str, said: &str) -> bool {
    match label {
        "d" => said == "d",
        "w" => ["w", "d", "u"].contains(&said),
        _ => ["u", "o"].contains(&said),
    }
}

fn score(code: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/audit/{code}.md"));
    let (body, all) = labelled(&fs::read_to_string(path).unwrap());
    let found: Vec<(u32, u32, &str)> = hear(&body, code)
        .iter()
        .map(|f| {
            let span = f.at.as_ref().unwrap().0;
            (span.start, span.end, LABELS.iter().find(|(_, n)| *n == f.name).unwrap().0)
        })
        .collect();
    let (mut seeded, mut missed, mut otherwise, mut clean, mut alarms) = (0, 0, 0, 0, 0);
    for sentence in &all {
        let here: Vec<_> = found.iter().filter(|(s, e, _)| *s < sentence.end && *e > sentence.start).collect();
        for mark in &sentence.marks {
            seeded += 1;
            match here.iter().find(|(s, e, _)| *s < mark.end && *e > mark.start) {
                None => {
                    missed += 1;
                    println!("{code}: missed ({}): {}", mark.label, sentence.text);
                }
                Some((_, _, label)) if !agrees(&mark.label, label) => {
                    otherwise += 1;
                    println!("{code}: {} said {label}: {}", mark.label, sentence.text);
                }
                Some(_) => {}
            }
        }
        let stray = here.iter().find(|(s, e, _)| !sentence.marks.iter().any(|m| *s < m.end && *e > m.start));
        clean += 1;
        if let Some((s, e, label)) = stray {
            alarms += 1;
            let what = &body[usize::try_from(*s).unwrap()..usize::try_from(*e).unwrap()];
            println!("{code}: false alarm ({label}, `{what}`): {}", sentence.text);
        }
    }
    println!(
        "{code}: {} sentences; {seeded} seeded amounts, {missed} missed, {otherwise} with another verdict than their label; \
         {alarms} of {clean} sentences with a false alarm",
        all.len()
    );
    assert!(all.len() >= 300, "{code}: {} sentences", all.len());
    assert!(all.iter().filter(|s| s.marks.is_empty()).count() >= 100, "{code}: too few sentences without a fault");
    assert_eq!(missed, 0, "{code}: seeded faults missed");
    assert_eq!(otherwise, 0, "{code}: found, with another verdict than the label");
    assert!(alarms * 50 <= clean, "{code}: {alarms} false alarms in {clean} sentences");
}

#[test]
fn english() {
    score("en");
}

#[test]
fn spanish() {
    score("es");
}
