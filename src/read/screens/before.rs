//! Ids of the trade's list that reading finds by itself: each sown into the demo once.

use super::demo;

/// Id, name of the finding, path, what stands there, what is put in its place.
const SOWN: &[(&str, &str, &str, &str, &str)] = &[
    ("W15", "gallon-not-us", "mixes/carve-24.md", "limit: 2 gal", "limit: 2 imp gal"),
    ("W16", "missing-key", "mixes/carve-24.md", "  limit: 2 gal\n", ""),
    ("Q2", "value-out-of-range", "sites/larkenfell.md", "spring: 2 ft 6 in, rise: 1 ft", "spring: 2 ft 6 in, rise: 0 ft"),
    ("Q8", "missing-key", "sites/larkenfell.md", "    rise: 5 ft 6 in\n    texture: rubble\n", "    rise: 5 ft 6 in\n"),
    (
        "Q8",
        "reference-unknown",
        "sites/larkenfell.md",
        "    rise: 5 ft 6 in\n    texture: rubble\n",
        "    rise: 5 ft 6 in\n    texture: ruble\n",
    ),
    ("Q8", "reference-unknown", "sites/larkenfell.md", "carve: CARVE-24}", "carve: CARVE-25}"),
    ("Q8", "duplicate-key", "sites/larkenfell.md", "  LF-3:\n", "  LF-2:\n"),
];

#[test]
fn ids_that_reading_finds() {
    let demo = demo();
    for (id, name, path, from, to) in SOWN {
        let text = &demo.at(path).unwrap().text;
        assert!(text.contains(from), "{path} has no {from:?}");
        let (_, findings) = crate::read::job(&demo.with_text(path, &text.replacen(from, to, 1)));
        let names: Vec<&str> = findings.iter().map(|f| f.name).collect();
        assert!(names.contains(name), "{id}: {names:?}");
    }
}
