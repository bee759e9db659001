#![allow(clippy::disallowed_methods, reason = "a test reads what it compares")]
use jiff::civil::{Date, date};

use super::*;
use crate::source::Kept;
use crate::words::EN;

const ON: Date = date(2026, 3, 2);

fn draft(code: &str, subject: &str, text: &str) -> Draft {
    Draft {
        subject: subject.to_owned(),
        card: "mud".to_owned(),
        code: code.to_owned(),
        languages: vec!["en".to_owned(), "es".to_owned()],
        copies: 2,
        hung: Some("by the water barrel".to_owned()),
        holder: None,
        good_until: Some(date(2026, 3, 31)),
        values: vec![Said::sentence(&format!("{code}/en"), EN, "block 1", text)],
        leaves: vec![Leaf { key: "water.start".into(), text: "1 gal 2 qt".into(), file: "mixes/carve-24.md".into(), line: 9 }],
    }
}

fn read(store: &dyn Store) -> Register {
    Register::read(&store.read().unwrap(), 0).0
}

/// Issues drafts as `work` would.
fn issue(store: &dyn Store, drafts: &[Draft]) -> Vec<Assigned> {
    let register = read(store);
    let run = assign(&register, drafts, ON, "0.1.0").unwrap();
    commit(store, &register, &run).unwrap();
    run
}

fn kept() -> (tempfile::TempDir, Kept) {
    let folder = tempfile::tempdir().unwrap();
    let kept = Kept::new(folder.path().join("records/register.jsonl"));
    (folder, kept)
}

#[test]
fn first_issue_and_identical_rerun() {
    let (folder, kept) = kept();
    let drafts = [draft("M-01", "mud a/1", "3 gal 1 qt"), draft("M-02", "mud a/2", "4 gal")];
    let run = issue(&kept, &drafts);
    let marks: Vec<_> = run.iter().map(|a| (a.entry.rev.as_str(), a.entry.shape.as_str(), a.entry.word.as_str())).collect();
    assert_eq!(marks, [("A", "circle", "PIANO"), ("A", "circle", "CACTUS")]);
    let before = Store::read(&kept).unwrap();
    assert_eq!(before.iter().filter(|b| **b == b'\n').count(), 2);

    let again = issue(&kept, &drafts);
    assert!(again.iter().all(|a| a.change == Change::Same));
    assert_eq!(again[1].entry, run[1].entry);
    assert_eq!(Store::read(&kept).unwrap(), before);
    let names: Vec<_> = std::fs::read_dir(folder.path().join("records")).unwrap().map(|f| f.unwrap().file_name()).collect();
    assert_eq!(names.len(), 2, "the register and its lock, no litter: {names:?}");
}

#[test]
fn a_changed_value_is_a_new_revision() {
    let (_folder, kept) = kept();
    let old = issue(&kept, &[draft("M-01", "mud a/1", "3 gal 1 qt"), draft("M-02", "mud a/2", "4 gal")]);
    let new = issue(&kept, &[draft("M-01", "mud a/1", "3 gal"), draft("M-02", "mud a/2", "4 gal")]);
    assert_eq!((new[0].change, new[1].change), (Change::Revised, Change::Same));
    let entry = &new[0].entry;
    assert_eq!((entry.rev.as_str(), entry.shape.as_str(), entry.word.as_str()), ("B", "square", "MANGO"));
    assert_eq!(entry.previous.as_ref(), Some(&old[0].entry.digest));
    let register = read(&kept);
    let list: Vec<_> = issued(register.entries()).into_iter().map(|i| format!("{} {} {}", i.code, i.rev, i.word)).collect();
    assert_eq!(list, ["M-01 B MANGO", "M-02 A CACTUS"]);
}

#[test]
fn a_new_date_is_a_new_revision_and_new_copies_are_not() {
    let (_folder, kept) = kept();
    let mut card = draft("M-01", "mud a/1", "3 gal");
    issue(&kept, std::slice::from_ref(&card));
    card.copies = 3;
    let run = issue(&kept, std::slice::from_ref(&card));
    assert_eq!((run[0].change, run[0].entry.rev.as_str(), run[0].entry.copies), (Change::Rehung, "A", 3));
    card.good_until = Some(date(2026, 4, 30));
    let run = issue(&kept, &[card]);
    assert_eq!((run[0].change, run[0].entry.rev.as_str()), (Change::Revised, "B"));
    assert_eq!(in_force(read(&kept).entries()).len(), 1);
}

#[test]
fn codes_are_for_ever_and_gaps_wait_for_their_subject() {
    let (_folder, kept) = kept();
    let all = [("mud a/1", "M"), ("ladder a", "L"), ("mud a/2", "M"), ("mud a/3", "M")];
    assert_eq!(codes(&read(&kept), &all), ["M-01", "L-01", "M-02", "M-03"]);
    issue(&kept, &[draft("M-02", "mud a/2", "x")]);
    assert_eq!(codes(&read(&kept), &all), ["M-01", "L-01", "M-02", "M-03"]);
    assert_eq!(codes(&read(&kept), &[("mud b/1", "M"), ("mud a/2", "K")]), ["M-01", "M-02"]);
}

#[test]
fn a_torn_tail_is_reported_and_survived() {
    let (_folder, kept) = kept();
    issue(&kept, &[draft("M-01", "mud a/1", "3 gal ½"), draft("M-02", "mud a/2", "4 gal ½")]);
    let whole = Store::read(&kept).unwrap();
    let second = whole.iter().position(|b| *b == b'\n').unwrap() + 1;
    for cut in second..whole.len() {
        let (register, findings) = Register::read(&whole[..cut], 7);
        assert!(!register.entries().is_empty(), "cut at {cut}");
        // Cut exactly between two lines nothing is torn; without its line end the last line is whole.
        let names: Vec<_> = findings.iter().map(|f| f.name).collect();
        assert_eq!(names, if cut == second { vec![] } else { vec!["register-tail-torn"] }, "cut at {cut}");
    }
    let cut = second + 60;
    assert!(kept.swap(&whole, &whole[..cut]).unwrap());
    let run = issue(&kept, &[draft("M-03", "mud a/3", "5 gal")]);
    assert_eq!(run[0].change, Change::First);
    let text = Store::read(&kept).unwrap();
    assert_eq!(&text[..cut], &whole[..cut], "nothing that was there is lost");
    let (register, findings) = Register::read(&text, 7);
    assert_eq!(register.entries().len(), 2);
    assert_eq!(findings[0].name, "register-line-unreadable");
    assert!(findings[0].title.starts_with("line 2 of the register cannot be read: "), "{}", findings[0].title);
    assert_eq!(findings[0].at.as_ref().unwrap().0.start as usize, second);
}

#[test]
fn an_unreadable_line_keeps_its_code_and_word() {
    let bytes = br#"{"format":1,"kind":"issued","code":"M-01","word":"PIANO","date":"2 March"}
"#;
    let (register, findings) = Register::read(bytes, 0);
    assert_eq!(findings.len(), 1);
    assert_eq!(codes(&register, &[("mud a/1", "M")]), ["M-02"]);
    let run = assign(&register, &[draft("M-02", "mud a/1", "x")], ON, "0.1.0").unwrap();
    assert_eq!(run[0].entry.word, "CACTUS");
}

#[test]
fn a_newer_register_is_read_around_and_never_written() {
    let (_folder, kept) = kept();
    issue(&kept, &[draft("M-01", "mud a/1", "x")]);
    let old = Store::read(&kept).unwrap();
    let mut new = old.clone();
    new.extend_from_slice(b"{\"format\":2,\"what\":[\"M-09\"]}\n");
    assert!(kept.swap(&old, &new).unwrap());
    let (register, findings) = Register::read(&new, 0);
    assert_eq!((findings[0].name, register.entries().len()), ("register-format-newer", 1));
    let run = assign(&register, &[draft("M-02", "mud a/2", "y")], ON, "0.1.0").unwrap();
    assert_eq!(commit(&kept, &register, &run), Err(Refusal::Newer));
    assert_eq!(Store::read(&kept).unwrap(), new);
}

#[test]
fn an_edited_line_is_noticed() {
    let (_folder, kept) = kept();
    issue(&kept, &[draft("M-01", "mud a/1", "3 gal")]);
    let text = String::from_utf8(Store::read(&kept).unwrap()).unwrap().replace("3 gal", "4 gal");
    let (_, findings) = Register::read(text.as_bytes(), 0);
    assert_eq!(findings[0].name, "register-line-edited");
}

#[test]
fn runs_at_once_never_share_a_code_or_a_word() {
    let (_folder, kept) = kept();
    std::thread::scope(|scope| {
        for i in 0..8 {
            let kept = &kept;
            scope.spawn(move || {
                let subject = format!("mud a/{i}");
                loop {
                    let register = read(kept);
                    let code = codes(&register, &[(&subject, "M")]).remove(0);
                    let run = assign(&register, &[draft(&code, &subject, "x")], ON, "0.1.0").unwrap();
                    match commit(kept, &register, &run) {
                        Ok(true) => break,
                        Err(Refusal::Changed) => {}
                        other => panic!("{other:?}"),
                    }
                }
            });
        }
    });
    let (register, findings) = Register::read(&Store::read(&kept).unwrap(), 0);
    assert!(findings.is_empty(), "{findings:?}");
    let list = issued(register.entries());
    let codes: Vec<_> = list.iter().map(|i| i.code.as_str()).collect();
    assert_eq!(codes, ["M-01", "M-02", "M-03", "M-04", "M-05", "M-06", "M-07", "M-08"]);
    let words: std::collections::BTreeSet<_> = list.iter().map(|i| i.word.as_str()).collect();
    assert_eq!(words.len(), 8);
}

#[test]
fn words_rest_before_they_come_back() {
    let mut bytes = Vec::new();
    let mut drafts = vec![draft("M-01", "mud a/1", "0")];
    let words = check_words::CHECK_WORDS.len();
    for i in 0..words {
        let register = Register::read(&bytes, 0).0;
        drafts[0].values[0].text = i.to_string();
        let run = assign(&register, &drafts, ON, "0.1.0").unwrap();
        assert_eq!(run[0].entry.word, check_words::CHECK_WORDS[i]);
        bytes.extend(run[0].entry.line().unwrap().bytes());
        if i == 5 {
            // Reported as cut: first to come back.
            let cut = Entry { kind: Event::Snipped, ..run[0].entry.clone() };
            bytes.extend(cut.line().unwrap().bytes());
        }
    }
    let register = Register::read(&bytes, 0).0;
    let more: Vec<Draft> = (2..=words).map(|i| draft(&format!("M-{i:02}"), &format!("mud a/{i}"), "x")).collect();
    let run = assign(&register, &more, ON, "0.1.0").unwrap();
    assert_eq!((run[0].entry.word.as_str(), run[1].entry.word.as_str()), (check_words::CHECK_WORDS[5], check_words::CHECK_WORDS[0]));
    let one_more: Vec<Draft> = more.into_iter().chain([draft("M-999", "mud z", "x")]).collect();
    assert_eq!(assign(&register, &one_more, ON, "0.1.0").unwrap_err(), Stuck::NoWordLeft);
}

#[test]
fn revisions_and_shapes() {
    let mut rev = next_rev(None);
    let mut seen = Vec::new();
    for _ in 0..28 {
        seen.push(format!("{rev} {}", assign::shape(&rev)));
        rev = next_rev(Some(&rev));
    }
    assert_eq!((seen[0].as_str(), seen[5].as_str(), seen[6].as_str()), ("A circle", "F cross", "G circle"));
    assert_eq!((seen[25].as_str(), seen[26].as_str(), seen[27].as_str()), ("Z square", "AA triangle", "AB diamond"));
    assert_eq!(next_rev(Some("ZZ")), "AAA");
}

fn next_rev(last: Option<&str>) -> String {
    assign::next_revision(last)
}

#[test]
fn a_lost_card_stays_in_force_and_a_cut_one_does_not() {
    let mut entries: Vec<Entry> = Vec::new();
    for (code, rev, kind) in [
        ("M-01", "A", Event::Issued),
        ("M-01", "B", Event::Issued),
        ("M-01", "A", Event::Snipped),
        ("M-02", "A", Event::Issued),
        ("M-02", "A", Event::Lost),
        ("M-03", "A", Event::Issued),
        ("M-03", "A", Event::Voided),
        ("M-100", "A", Event::Issued),
        ("M-99", "A", Event::Issued),
    ] {
        let run = assign(&Register::default(), &[draft(code, code, "x")], ON, "0.1.0").unwrap();
        entries.push(Entry { kind, rev: rev.to_owned(), ..run[0].entry.clone() });
    }
    let list: Vec<_> = in_force(&entries).into_iter().map(|e| format!("{} {}", e.code, e.rev)).collect();
    assert_eq!(list, ["M-01 B", "M-02 A", "M-99 A", "M-100 A"]);
}
