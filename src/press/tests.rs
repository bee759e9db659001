//! What the press promises: one face one page, overflow told face by face, sizes
//! of the distance class on the page, same bytes, backs behind their fronts.

use super::payload::{Block, Book, Face, Inline, Paper, Run, Shape, Side, Tab};
use super::sheet::Grid;
use super::*;

fn run(json: &str) -> Run {
    serde_json::from_str(json).expect("a sample run")
}

fn mud() -> Run {
    run(include_str!("samples/mud.json"))
}

fn set(run: &Run) -> Pressed {
    match cards(run, None) {
        Ok(p) => p,
        Err(e) => panic!("{e:?}"),
    }
}

fn holds_law(name: &str, run: &Run) {
    let pressed = set(run);
    assert_eq!(pressed.pages, run.faces.len(), "{name}: one face, one page");
    for f in &pressed.faces {
        assert!(f.fits(), "{name}: {f:#?}");
        assert!(f.smallest_pt >= run.distance.least_line() - 0.01, "{name}: {} pt", f.smallest_pt);
    }
}

#[test]
fn every_sample_fits_at_the_size_of_its_distance() {
    holds_law("mud", &mud());
    holds_law("mud, proof", &run(include_str!("samples/mud-proof.json")));
    holds_law("ladder", &run(include_str!("samples/ladder.json")));
    holds_law("pocket", &run(include_str!("samples/pocket.json")));
    holds_law("log", &run(include_str!("samples/log.json")));
    holds_law("safety", &run(include_str!("samples/safety.json")));
    holds_law("pocket, proof", &run(include_str!("samples/pocket-proof.json")));
    holds_law("log, proof", &run(include_str!("samples/log-proof.json")));
    holds_law("coat", &run(include_str!("samples/coat.json")));
}

#[test]
fn key_number_reaches_its_size() {
    for (json, least) in [(include_str!("samples/mud.json"), 72.0), (include_str!("samples/pocket.json"), 28.0)] {
        for f in set(&run(json)).faces {
            assert!(f.numeral_pt >= least, "{}: {} pt", f.id, f.numeral_pt);
        }
    }
}

#[test]
fn pages_have_the_size_of_the_paper() {
    let pressed = set(&run(include_str!("samples/ladder.json")));
    for page in pressed.doc.pages() {
        assert!((page.frame.width().to_pt() - 1224.0).abs() < 0.01);
        assert!((page.frame.height().to_pt() - 792.0).abs() < 0.01);
    }
}

#[test]
fn the_face_that_overflows_is_named_and_counted() {
    let pressed = set(&run(include_str!("samples/too-long.json")));
    let over: Vec<_> = pressed.overflowing().map(|f| (f.id.as_str(), f.pages)).collect();
    assert_eq!(over, [("M-09/en", 2)]);
    let lines = pressed.faces[1].lines_over;
    assert!((6..=9).contains(&lines), "about seven lines over, told {lines}");
    // The face after it is still found on its own page.
    assert_eq!(pressed.faces[2].page, 3);
}

#[test]
fn a_value_too_wide_for_its_paper_is_told() {
    let mut run = mud();
    let wide = Inline::value(&"3\u{a0}gal\u{a0}".repeat(12), "x");
    run.faces[0].blocks.truncate(1);
    run.faces[0].blocks.push(Block::para(vec![wide]));
    let pressed = set(&run);
    assert!(!pressed.faces[0].outside.is_empty());
}

#[test]
fn printed_values_are_on_the_page() {
    let pressed = set(&mud());
    for f in &pressed.faces {
        for value in ["3 gal 1 qt", "12.3 L", "27.1 lb", "4 gal", "40 min"] {
            assert!(f.shows(value), "{}: {value} in {}", f.id, f.text);
        }
        assert!(!f.shows("3 gal 2 qt"));
    }
    // A stacked fraction still reads as one.
    let coat = set(&run(include_str!("samples/coat.json")));
    assert!(coat.faces[0].shows("1 3/4 in"), "{}", coat.faces[0].text);
}

#[test]
fn author_text_is_never_markup() {
    let mut run = mud();
    let nasty = "#panic() *bold* $x$ `raw` @ref <label> // \\ [ ] { } = h";
    run.faces[0].blocks = vec![Block::para(vec![Inline::text(nasty)])];
    let flat: String = set(&run).faces[0].text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains(nasty), "{flat}");
}

#[test]
fn same_input_same_bytes() {
    let (a, b) = (cards(&mud(), Some(b"{}")), cards(&mud(), Some(b"{}")));
    assert!(a.is_ok_and(|a| b.is_ok_and(|b| a.pdf == b.pdf)));
}

#[test]
fn threads_set_the_same_bytes() {
    let run = mud();
    let all: Vec<Vec<u8>> = std::thread::scope(|s| {
        let jobs: Vec<_> = (0..2).map(|_| s.spawn(|| set(&run).pdf)).collect();
        jobs.into_iter().map(|j| j.join().expect("a worker")).collect()
    });
    assert_eq!(all[0], all[1]);
}

#[test]
fn a_single_card_is_its_own_document() {
    let pressed = set(&mud());
    let one = single(&pressed, &[1], "Mud card, Spanish", Some(b"{\"values\":[]}"));
    let bytes = one.unwrap_or_else(|e| panic!("{e:?}"));
    assert!(bytes.starts_with(b"%PDF"));
    assert!(bytes.len() < pressed.pdf.len());
    assert!(single(&pressed, &[7], "none", None).is_err());
}

#[test]
fn pocket_cards_go_four_up_with_mirrored_backs() {
    let grid = Grid::best(SheetPaper::LETTER, (216.0, 360.0)).expect("a grid");
    assert_eq!((grid.columns, grid.rows), (2, 2));
    // Turned over the long edge, left and right change places and the rows stay.
    let backs: Vec<_> = (0..4).map(|n| grid.behind(n)).collect();
    assert_eq!(backs, [1, 0, 3, 2]);
    // Held against the light, a back covers its front.
    let lying = Grid { sheet: (792.0, 612.0), card: (360.0, 216.0), columns: 2, rows: 2 };
    assert_eq!((0..4).map(|n| lying.behind(n)).collect::<Vec<_>>(), [2, 3, 0, 1]);
}

#[test]
fn press_sheets_hold_every_copy() {
    let run = run(include_str!("samples/pocket.json"));
    let pair = Pair { front: 0, back: Some(1), copies: 4 };
    let four = sheets(&run, &[pair], SheetPaper::LETTER, "Pocket cards", None);
    let again = sheets(&run, &[pair], SheetPaper::LETTER, "Pocket cards", None);
    match (four, again) {
        (Ok(a), Ok(b)) => assert!(a == b && a.starts_with(b"%PDF")),
        (a, b) => panic!("{:?} {:?}", a.err(), b.err()),
    }
}

#[test]
fn glyphs_that_no_face_has_are_found_once_each() {
    assert_eq!(missing("3 gal 1 qt, 68 °F, ñ á ¿ ¡ ½ ⅜ ☐ ✓ ⚠ № ≤ −"), Vec::<char>::new());
    assert_eq!(missing("soft\u{ad}hyphen\u{200b}\n\tend"), Vec::<char>::new());
    assert_eq!(missing("水 and 水 and \u{10ffff}"), ['水', '\u{10ffff}']);
}

#[test]
fn a_missing_glyph_stops_the_document() {
    let mut run = mud();
    run.faces[0].blocks = vec![Block::para(vec![Inline::text("水")])];
    let errors = cards(&run, None).err().unwrap_or_default();
    assert!(errors.iter().any(|e| e.message.contains('水')), "{errors:?}");
}

#[test]
fn packages_and_other_files_are_refused() {
    for bad in ["#import \"@preview/a:1.0.0\": b", "#read(\"/etc/hostname\")"] {
        let mut t = Templates::embedded();
        t.replace("cards.typ", bad);
        assert!(cards_with(&t, &mud(), None).is_err(), "{bad}");
    }
}

#[test]
fn a_skipped_heading_level_is_closed_up() {
    let mut run = mud();
    run.faces[0].blocks = vec![Block::heading(4, "Deep"), Block::heading(1, "High"), Block::heading(6, "Deeper")];
    assert!(cards(&run, None).is_ok());
}

#[test]
fn a_card_kind_needs_no_template() {
    let face = Face {
        id: "Z-01/en".into(),
        lang: "en".into(),
        title: "Bark".into(),
        tab: Some(Tab { letter: "A".into(), shape: Shape::Cross, word: "MANGO".into(), side: Side::Right }),
        notch: true,
        blocks: vec![Block::heading(2, "Tools in order"), Block::Rule, Block::para(vec![Inline::text("Comb, then brush.")])],
        ..Face::default()
    };
    let paper = Paper::new("letter", 215.9, 279.4);
    holds_law("new kind", &Run::new(paper, payload::Distance::Wall, "Bark", "en", [2026, 3, 2], vec![face]));
}

#[test]
fn the_book_has_pages_contents_and_index() {
    let json = include_str!("samples/book.json");
    let sample: Book = serde_json::from_str(json).expect("a sample book");
    let bound = book(&sample, Some(b"{}")).unwrap_or_else(|e| panic!("{e:?}"));
    assert!(bound.pages >= 7);
    assert_eq!(bound.overlaps, []);
    let contents = &bound.texts[1];
    assert!(contents.contains("Wall LF-1, fireplace gable"), "{contents}");
    assert!(bound.texts.last().is_some_and(|t| t.contains("start water")));
    let again = book(&sample, Some(b"{}")).map(|b| b.pdf).unwrap_or_default();
    assert_eq!(bound.pdf, again);
}
