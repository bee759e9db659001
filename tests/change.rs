//! The change order beside the demo: not in force, and what it would do if it were.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::disallowed_methods, reason = "a test")]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use hodbook::read;
use hodbook::source::Folder;
use hodbook::tally::{Ask, Tally, Voice};
use hodbook::words::EN;

fn demo() -> Folder {
    Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap()
}

fn said(folder: &Folder, id: &str) -> String {
    let (job, findings) = read::job(folder);
    assert!(findings.is_empty(), "{findings:?}");
    let tally = Tally::of(&job);
    tally.say(id, Ask::Own, Voice { lang: EN, metric: false }).unwrap_or_else(|| panic!("no {id}")).text.replace('\u{a0}', " ")
}

/// The folder with every value of its change orders written at its key.
fn applied(folder: &Folder) -> Folder {
    let (job, _) = read::job(folder);
    assert_eq!(job.changes.len(), 1);
    let mut folder = folder.clone();
    for change in &job.changes {
        for value in &change.values {
            // `surfaces.BF-1.width`: the last key within the entry that the one before it opens.
            let text = folder.at(&value.file.text).unwrap().text.to_string();
            let keys: Vec<&str> = value.key.text.split('.').collect();
            let [.., entry, key] = keys.as_slice() else { panic!("{}", value.key.text) };
            let from = text.find(&format!("  {entry}:\n")).unwrap();
            let at = from + text[from..].find(&format!("    {key}: ")).unwrap();
            let end = at + text[at..].find('\n').unwrap();
            let changed = format!("{}    {key}: {}{}", &text[..at], value.value.text, &text[end..]);
            folder = folder.with_text(&value.file.text, &changed);
        }
    }
    folder
}

/// Every figure as it is printed, days of the plan and all.
fn all_said(folder: &Folder) -> BTreeMap<String, String> {
    let (job, findings) = read::job(folder);
    assert!(findings.is_empty(), "{findings:?}");
    let mut tally = Tally::of(&job);
    tally.days(&job);
    let voice = Voice { lang: EN, metric: false };
    tally.figures().map(|f| (f.id.clone(), tally.say(&f.id, Ask::Own, voice).unwrap().text)).collect()
}

#[test]
fn it_changes_nothing_until_it_stands_in_its_file() {
    assert_eq!(said(&demo(), "brack-ferry/BF-1.width"), "48 ft");
    assert_eq!(said(&demo(), "brack-ferry/BF-1.net_area"), "415.8 ft²");
    let without: Vec<_> =
        demo().files().iter().filter(|f| !f.path.starts_with("changes/")).map(|f| (f.path.clone(), f.text.to_string())).collect();
    assert_eq!(all_said(&Folder::of(without)), all_said(&demo()), "figures of a job with and without the order");
}

#[test]
fn in_force_it_moves_its_own_site_only() {
    let (before, after) = (all_said(&demo()), all_said(&applied(&demo())));
    let moved: BTreeSet<&str> = before.iter().filter(|(id, text)| after.get(*id) != Some(*text)).map(|(id, _)| id.as_str()).collect();
    assert!(moved.len() > 20, "{moved:?}");
    let out: Vec<&&str> = moved.iter().filter(|id| !id.starts_with("brack-ferry")).collect();
    assert!(out.is_empty(), "{out:?}");
    assert!(!moved.iter().any(|id| id.starts_with("brack-ferry/BF-2.") || id.starts_with("brack-ferry/BF-3.")), "{moved:?}");
}

/// Worked by hand from the files, with rings on what is round. The wall grows by 4 × 11 = 44 ft²: 415.79 + 44 = 459.79.
/// Planks are 3/8 + 0.82 × 3/8 = 0.6825 in, wasted by 0.90 × 0.95: (459.79 × 0.6825 ÷ 12) ÷ 0.855 = 30.5856 ft³, 2.927
/// more than before. A load of CARVE-24 gives (24 ÷ 143.52 + 80 ÷ 165.984 + 13.5606 ÷ 62.4) ÷ 0.91 = 0.95222 ft³; the
/// site's mud grows from 81.004 to 83.931 ft³, that is from 85.07 to 88.14 loads: 85 1/2 and 88 1/2, and with the reserve
/// of 5 % from 89.8 to 92.9: 90 and 93 bags. Scratch is 3/8 + 1/8 in over 0.95: 44 × 0.5 ÷ 12 ÷ 0.95 = 1.930 more than
/// 38.844 ft³, by 0.74560 ft³ of a load from 52.10 to 54.69: 52 1/2 and 55, 56 and 58 bags; 90 × 104 + 56 × 85 =
/// 14,120 lb and 93 × 104 + 58 × 85 = 14,602 lb. Joints: 13 × 11 = 143 ft², one less than the 144 that a panel may have.
/// Color on 415.79 × 1.23 + 296.88 × 1.45 + 64.77 × 1.30 = 1026.1 and 1080.2 ft²; × 2 ÷ 150 × 1.08 is 14.78 and 15.56 gal.
#[test]
fn in_force_it_moves_the_wall_its_mud_and_its_bags() {
    let (before, after) = (demo(), applied(&demo()));
    for (id, old, new) in [
        ("brack-ferry/BF-1.width", "48 ft", "52 ft"),
        ("brack-ferry/BF-1.net_area", "415.8 ft²", "459.8 ft²"),
        ("brack-ferry/BF-1.volume", "27.66 ft³", "30.59 ft³"),
        ("brack-ferry/BF-1.panels", "4", "4"),
        ("brack-ferry/BF-1.joints", "3", "3"),
        ("brack-ferry/BF-1.panel_length", "12 ft", "13 ft"),
        ("brack-ferry/carve-24.volume", "81.00 ft³", "83.93 ft³"),
        ("brack-ferry/carve-24.loads", "85 1/2 loads", "88 1/2 loads"),
        ("brack-ferry/carve-24.bags_mortar", "90 bags", "93 bags"),
        ("brack-ferry/carve-24.bags_additive", "90 bags", "93 bags"),
        ("brack-ferry/scratch-15.volume", "38.84 ft³", "40.77 ft³"),
        ("brack-ferry/scratch-15.loads", "52 1/2 loads", "55 loads"),
        ("brack-ferry/scratch-15.bags_mortar", "56 bags", "58 bags"),
        ("brack-ferry.order_weight", "14120 lb", "14602 lb"),
        ("brack-ferry.developed", "1026.1 ft²", "1080.2 ft²"),
        ("brack-ferry.finish_volume", "14.8 gal", "15.6 gal"),
        ("brack-ferry/BF-2.net_area", "296.9 ft²", "296.9 ft²"),
        ("larkenfell/LF-1.net_area", "217.2 ft²", "217.2 ft²"),
    ] {
        assert_eq!([said(&before, id), said(&after, id)], [old, new], "{id}");
    }
}

#[test]
fn one_that_cannot_be_applied_says_so_today() {
    for (from, to, name, says) in [
        ("file: sites/brack-ferry.md", "file: sites/brack-fery.md", "reference-unknown", "no file is called `sites/brack-fery.md`"),
        (
            "key: surfaces.BF-1.width",
            "key: surfaces.BF-1.widht",
            "reference-unknown",
            "`sites/brack-ferry.md` has no key `surfaces.BF-1.widht`",
        ),
        (
            "key: surfaces.BF-1.width",
            "key: surfaces.BF-9.width",
            "reference-unknown",
            "`sites/brack-ferry.md` has no key `surfaces.BF-9.width`",
        ),
        ("value: 52 ft", "value: 52 lb", "unit-wrong", "`52 lb` cannot stand where a length stands now"),
        ("value: 52 ft", "value: 52", "unit-wrong", "`52` is a number without a unit"),
    ] {
        let path = "changes/bf-wider.md";
        let text = demo().at(path).unwrap().text.to_string();
        assert_eq!(text.matches(from).count(), 1, "{from}");
        let folder = demo().with_text(path, &text.replace(from, to));
        let (_, findings) = read::job(&folder);
        let [finding] = findings.as_slice() else { panic!("{to}: {findings:?}") };
        assert_eq!((finding.name, finding.title.as_str()), (name, says));
        assert!(!finding.help.is_empty() && finding.at.is_some(), "{to}");
    }
}
