//! The command as a shell sees it: exit codes, which stream says what, pipes that close early.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::disallowed_methods,
    reason = "a test"
)]

use std::io::Read;
use std::process::{Command, Output, Stdio};

#[path = "command/day.rs"]
mod day;
#[path = "command/measured.rs"]
mod measured;
#[path = "command/screens.rs"]
mod screens;

fn hodbook(words: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_hodbook"));
    command.args(words).env_remove("NO_COLOR").env_remove("RUST_BACKTRACE");
    command
}

fn run(words: &[&str]) -> (Option<i32>, String, String) {
    let Output { status, stdout, stderr } = hodbook(words).output().unwrap();
    (status.code(), String::from_utf8(stdout).unwrap(), String::from_utf8(stderr).unwrap())
}

#[test]
fn help_and_version_are_products() {
    for words in [&["--help"][..], &["-h"], &["issue", "--help"], &["--version"]] {
        let (code, out, err) = run(words);
        assert_eq!((code, err.as_str()), (Some(0), ""), "{words:?}");
        assert!(!out.is_empty());
    }
    assert_eq!(run(&["--help"]).1, run(&["-h"]).1);
    assert_eq!(run(&["-V"]).1, format!("hodbook {}\n", env!("CARGO_PKG_VERSION")));
}

#[test]
fn wrong_words_end_with_two_and_leave_standard_output_alone() {
    for words in [&[][..], &["isue"], &["plumb"], &["sound", "--deny", "all"], &["--on", "yesterday", "sound"]] {
        let (code, out, err) = run(words);
        assert_eq!((code, out.as_str()), (Some(2), ""), "{words:?}");
        assert!(!err.is_empty());
    }
    assert!(run(&["isue"]).2.contains("'issue'"));
}

#[test]
fn colour_only_where_it_is_wanted() {
    assert!(!run(&["--help"]).1.contains('\x1b'));
    assert!(!run(&["--color", "never", "--help"]).1.contains('\x1b'));
    let names = run(&["man", "isue"]);
    assert_eq!((names.0, names.2.as_str()), (Some(3), "hodbook: no command `isue`; did you mean `issue`?\n"));
}

#[test]
fn a_reader_that_leaves_early_is_no_failure() {
    let mut child = hodbook(&["completions", "zsh"]).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    drop(child.stdout.take());
    let mut err = String::new();
    child.stderr.take().unwrap().read_to_string(&mut err).unwrap();
    assert_eq!((child.wait().unwrap().code(), err.as_str()), (Some(0), ""));
}

/// A folder with a copy of the demo job.
fn demo() -> tempfile::TempDir {
    let dir = tempfile::tempdir().unwrap();
    kit::copy_demo(dir.path());
    dir
}

fn in_job(job: &tempfile::TempDir, words: &[&str]) -> (Option<i32>, String, String) {
    let mut all = vec!["--job", job.path().to_str().unwrap()];
    all.extend(words);
    run(&all)
}

#[test]
fn a_name_that_is_not_there_ends_with_three_and_names_the_nearest() {
    let job = demo();
    for (words, says) in [
        (["takeoff", "larkenfel"], "hodbook: no site `larkenfel`; did you mean `larkenfell`?\n"),
        (["gauge", "carve-25"], "hodbook: no mix `carve-25`; did you mean `carve-24`?\n"),
        (["plumb", "carve-24.yeild"], "hodbook: no figure `carve-24.yeild`; did you mean `carve-24.yield`?\n"),
        (["schema", "mixx"], "hodbook: no kind `mixx`; did you mean `mix`?\n"),
    ] {
        assert_eq!(in_job(&job, &words), (Some(3), String::new(), says.to_owned()), "{words:?}");
    }
    let (code, _, err) = in_job(&job, &["issue", "M-99"]);
    assert_eq!(code, Some(3));
    assert!(err.starts_with("hodbook: no card `M-99`"), "{err}");
}

#[test]
fn folders_that_cannot_be_read_end_with_two() {
    let (code, out, err) = run(&["--job", "/no/such/folder", "takeoff"]);
    assert_eq!((code, out.as_str()), (Some(2), ""));
    assert!(err.contains("/no/such/folder"), "{err}");
    let empty = tempfile::tempdir().unwrap();
    assert_eq!(in_job(&empty, &["sound"]).0, Some(2));
    let job = demo();
    let company = job.path().join("company.md");
    let text = std::fs::read_to_string(&company).unwrap();
    std::fs::write(&company, text.replace("hodbook: 1", "hodbook: 2")).unwrap();
    let (code, _, err) = in_job(&job, &["sound"]);
    assert_eq!(code, Some(2));
    assert!(err.starts_with("hodbook: company.md: the file is marked format 2"), "{err}");
}

#[test]
fn a_stop_ends_with_one_in_every_format() {
    let job = demo();
    let mix = job.path().join("mixes/carve-24.md");
    let text = std::fs::read_to_string(&mix).unwrap();
    std::fs::write(&mix, text.replace("limit: 2 gal\n", "limit: 1 gal 2 qt\n")).unwrap();
    let (code, out, err) = in_job(&job, &["--format", "short", "sound"]);
    assert_eq!(code, Some(1));
    // The demo itself warns of textures that no panel has measured, and of nothing else.
    let (warned, stopped): (Vec<&str>, Vec<&str>) = out.lines().partition(|line| line.contains(": WARN fill-unmeasured: "));
    assert_eq!(
        stopped,
        ["mixes/carve-24.md:17:10: STOP start-water-over-limit: start water 1 gal 2 qt 1 pt is over the limit 1 gal 2 qt of CARVE-24"]
    );
    assert_eq!((warned.len(), err.as_str()), (6, "1 STOP, 0 HOLD, 6 WARN, 0 NOTE\n"));
    let (code, out, _) = in_job(&job, &["--format", "json", "sound"]);
    assert_eq!(code, Some(1));
    let json: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!((json["format"].as_i64(), json["findings"][0]["name"].as_str()), (Some(1), Some("start-water-over-limit")));
    let (code, out, _) = in_job(&job, &["takeoff"]);
    assert_eq!(code, Some(0), "{out}");
}

#[test]
fn the_takeoff_of_the_demo() {
    let (code, out, err) = in_job(&demo(), &["--format", "short", "takeoff", "larkenfell"]);
    assert_eq!((code, err.as_str()), (Some(0), ""));
    let rows: Vec<&str> = out.lines().collect();
    assert!(
        rows.contains(&"LF-1\tfireplace gable\t258.5 ft²\t66.6 ft²\t25.3 ft²\t217.2 ft²\t1.23 in\t2 1/4 in\t2\t26.58 ft³\t28 loads\t20.2 lb/ft²\t25.6 lb/ft²"),
        "{out}"
    );
    assert!(rows.contains(&"CARVE-24\t32.01 ft³\t34 loads\t12\t36 bags\t24 lb\t36 bags\t80 lb"), "{out}");
}

#[test]
fn no_color_yields_only_to_the_option() {
    let job = demo();
    let path = job.path().to_str().unwrap();
    let mix = job.path().join("mixes/carve-24.md");
    let text = std::fs::read_to_string(&mix).unwrap();
    std::fs::write(&mix, text.replace("limit: 2 gal\n", "limit: 1 gal 2 qt\n")).unwrap();
    let coloured = |words: &[&str]| {
        let mut all = vec!["--job", path];
        all.extend(words);
        let out = hodbook(&all).env("NO_COLOR", "1").output().unwrap();
        assert_eq!(out.status.code(), Some(1), "{words:?}");
        String::from_utf8(out.stdout).unwrap().contains('\x1b')
    };
    assert!(!coloured(&["sound"]));
    assert!(coloured(&["--color", "always", "sound"]), "the option is the reader's later word");
}

#[test]
fn a_folder_without_a_company_says_so() {
    let job = demo();
    std::fs::remove_file(job.path().join("company.md")).unwrap();
    let (code, out, _) = in_job(&job, &["--format", "short", "sound"]);
    assert_eq!(code, Some(1));
    assert_eq!(out.lines().next(), Some("STOP company-missing: the job folder has no `company.md`"));
}

#[test]
fn a_date_that_no_calendar_has_ends_with_two() {
    let (code, out, err) = in_job(&demo(), &["--on", "2026-02-30", "sound"]);
    assert_eq!((code, out.as_str()), (Some(2), ""));
    assert!(err.contains("'2026-02-30'") && err.contains("year-month-day"), "{err}");
}
