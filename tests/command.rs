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
