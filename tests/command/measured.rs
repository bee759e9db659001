//! Faces that were measured before: they are taken from the output folder, and a changed one is set again.

use std::collections::BTreeSet;
use std::fs;

use super::{demo, in_job};

/// Lines of the file of measured faces.
fn lines(job: &tempfile::TempDir) -> Vec<String> {
    let text = fs::read_to_string(job.path().join("out/measured.jsonl")).unwrap();
    text.lines().map(str::to_owned).collect()
}

fn digests(lines: &[String]) -> BTreeSet<String> {
    let digest = |line: &String| serde_json::from_str::<serde_json::Value>(line).unwrap()["digest"].as_str().unwrap().to_owned();
    lines.iter().map(digest).collect()
}

fn sound(job: &tempfile::TempDir) -> (Option<i32>, String, String) {
    let out = job.path().join("out");
    in_job(job, &["--out", out.to_str().unwrap(), "--format", "short", "sound"])
}

#[test]
fn a_measured_face_is_not_set_again_until_it_changes() {
    let job = demo();
    let first = sound(&job);
    let faces = lines(&job);
    assert_eq!(first.0, Some(0), "{first:?}");
    assert!(faces.len() > 50, "{}", faces.len());

    // What the file says of a face is believed: one that it calls too long is reported.
    let own = faces.iter().position(|line| line.contains("\"id\":\"M-01/en\"")).unwrap();
    let mut told = faces.clone();
    told[own] = told[own].replace("\"pages\":1", "\"pages\":2").replace("\"lines_over\":0", "\"lines_over\":3");
    assert_ne!(told[own], faces[own]);
    let file = job.path().join("out/measured.jsonl");
    fs::write(&file, told.join("\n") + "\n{\"digest\": torn").unwrap();
    let second = sound(&job);
    assert!(second.1.contains("STOP face-overflows: M-01/en"), "{second:?}");
    assert_eq!(second.0, Some(1));

    // Another date in the footer: the faces of that site are set again, those of the other sites are not.
    let site = job.path().join("sites/brack-ferry.md");
    let text = fs::read_to_string(&site).unwrap();
    let changed = text.replacen("good_until: 2026-04-10", "good_until: 2026-04-11", 1);
    assert_ne!(text, changed);
    fs::write(&site, changed).unwrap();
    let third = sound(&job);
    assert!(!third.1.contains("face-overflows"), "{third:?}");
    let (was, now) = (digests(&faces), digests(&lines(&job)));
    let new = now.difference(&was).count();
    assert!(new > 0 && new < was.len() / 2, "{new} of {} faces are new", now.len());
    assert!(was.intersection(&now).count() > was.len() / 2);

    // Without the file everything is as it was at first.
    fs::write(&site, text).unwrap();
    fs::remove_file(&file).unwrap();
    assert_eq!(sound(&job), first);
}
