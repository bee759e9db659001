//! The day in whole minutes says what the day's own sheet says.

use std::path::Path;

use super::Tally;
use crate::quantity::expr::{Area, Clock};
use crate::read;
use crate::source::Folder;

fn folder() -> Folder {
    Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap()
}

/// Every planned day of a job, worked both ways.
fn both(folder: &Folder) -> usize {
    let (job, findings) = read::job(folder);
    assert!(findings.is_empty(), "{:?}", findings.iter().map(|f| &f.title).collect::<Vec<_>>());
    let mut tally = Tally::of(&job);
    let outlooks = tally.outlooks(&job).to_vec();
    tally.days(&job);
    assert_eq!(outlooks.len(), tally.sheets().len());
    for (own, sheet) in outlooks.iter().zip(tally.sheets()) {
        let close = |a: f64, b: f64| (a - b).abs() <= 1e-9 * b.abs().max(1.0);
        let area = |name: &str| tally.get::<Area>(&format!("{}.{name}", sheet.prefix)).unwrap().value().si.to_f64();
        for (name, value) in [("area", &own.area), ("limit", &own.limit), ("left", &own.left)] {
            assert!(close(value.si.to_f64(), area(name)), "{} {name}: {} and {}", sheet.prefix, value.si.to_f64(), area(name));
        }
        let rows = sheet.rows.as_ref().unwrap();
        assert_eq!(own.patches.len(), rows.len(), "{}", sheet.prefix);
        for (patch, row) in own.patches.iter().zip(rows) {
            let clock = |name: &str| tally.get::<Clock>(&format!("{}.{name}", row.prefix)).map(|c| c.in_unit("min").round() as i64).ok();
            assert_eq!(clock("water_in"), Some(patch.water_in), "{}", row.prefix);
            assert_eq!(clock("placed"), Some(patch.placed), "{}", row.prefix);
            // Rows that are black on the sheet because the day cannot be carved have times here: they say why.
            if row.black.is_none() {
                let kept = patch.kept.as_ref().unwrap();
                assert_eq!(clock("discard"), Some(kept.discard), "{}", row.prefix);
                assert_eq!(clock("closes"), Some(kept.closes), "{}", row.prefix);
            }
            if rows.iter().all(|r| r.black.is_none()) {
                let kept = patch.kept.as_ref().unwrap();
                assert_eq!((clock("carve_start"), clock("carve_end")), (Some(kept.carve.0), Some(kept.carve.1)), "{}", row.prefix);
                assert_eq!(row.faults.contains(&"fault.stale"), patch.stale(), "{}", row.prefix);
                assert_eq!(row.faults.contains(&"fault.closed"), patch.closed(), "{}", row.prefix);
            }
        }
        assert_eq!(
            rows.iter().any(|r| r.black.as_ref().is_some_and(|why| why.starts_with("it would"))),
            own.patches.iter().any(|p| p.stale() || p.closed()),
            "{}",
            sheet.prefix
        );
    }
    outlooks.len()
}

#[test]
fn the_demo_agrees_with_its_sheets() {
    assert!(both(&folder()) >= 18);
}

#[test]
fn changed_plans_agree_too() {
    for (path, changes) in [
        ("sites/larkenfell.md", &[("crew: same", "crew: split")][..]),
        ("sites/larkenfell.md", &[("  late:", "  breaks: [{from: 9:00, to: 9:15}, {from: 12:00, to: 12:30}]\n  late:")]),
        ("sites/larkenfell.md", &[("spare: 10 %\n  lights", "spare: 0 %\n  lights"), ("batch: 2 loads", "batch: 3 loads")]),
        ("sites/larkenfell.md", &[("spare: 10 %\n  lights", "spare: 0 %\n  lights"), ("mixing: 6 min", "mixing: 25 min")]),
        ("sites/larkenfell.md", &[("placers: 4", "placers: 1")]),
        ("sites/sedge-basin.md", &[("starts: 8:30", "starts: 12:30"), ("ends: 16:30", "ends: 23:00")]),
        ("sites/sedge-basin.md", &[("starts: 8:30", "starts: 15:00"), ("ends: 16:30", "ends: 23:00")]),
        ("sites/brack-ferry.md", &[("starts: 6:00", "starts: 9:10"), ("lights: no", "lights: yes")]),
        ("sites/sedge-basin.md", &[("batch: 2 loads", "batch: 1 load"), ("crew: same", "crew: split"), ("carvers: 5", "carvers: 3")]),
    ] {
        let demo = folder();
        let mut text = demo.at(path).unwrap().text.to_string();
        for (old, new) in changes {
            assert_eq!(text.matches(old).count(), 1, "{old}");
            text = text.replace(old, new);
        }
        both(&demo.with_text(path, &text));
    }
    // Without weather the band stands for every hour.
    let demo = folder();
    let dry = demo.files().iter().filter(|f| f.path != "weather/larkenfell.csv").map(|f| (f.path.clone(), f.text.to_string()));
    both(&Folder::of(dry.collect::<Vec<_>>()));
}
