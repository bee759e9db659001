//! Every number on paper, followed to the lines somebody typed and the constants somebody published.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "a test")]

#[path = "reference/arithmetic.rs"]
#[allow(dead_code, reason = "shared with the reference rows, which hold one line at a time")]
mod arithmetic;

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;
use std::sync::OnceLock;

use hodbook::quantity::print::derivation;
use hodbook::quantity::{Direction, Kind, Num, Quantity};
use hodbook::read;
use hodbook::source::Folder;
use hodbook::tally::{Ask, Tally, Voice};
use hodbook::words::EN;
use num_rational::BigRational;
use serde_json::Value;

/// Every figure of the three sites, printed or not, those of the planned days too.
fn tally() -> Tally {
    let (job, findings) = read::job(&Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap());
    assert!(findings.is_empty(), "{findings:?}");
    assert_eq!(job.sites.len(), 3);
    let mut tally = Tally::of(&job);
    tally.days(&job);
    tally
}

/// A printed number, exactly as it stands: `34.28214`, `190/9`, `-3`.
fn keyed(text: &str) -> BigRational {
    let whole = |t: &str| -> BigRational {
        let (head, tail) = t.split_once('.').unwrap_or((t, ""));
        let digits: num_bigint::BigInt = format!("{head}{tail}").parse().unwrap_or_else(|_| panic!("no number: {text}"));
        BigRational::new(digits, num_bigint::BigInt::from(10).pow(u32::try_from(tail.len()).unwrap()))
    };
    let text = text.trim_start_matches('(').trim_end_matches(')');
    text.split_once('/').map_or_else(|| whole(text), |(a, b)| whole(a) / whole(b))
}

#[test]
fn every_line_of_every_figure_comes_to_its_result() {
    let (mut faults, mut lines) = (Vec::new(), 0);
    for figure in tally().figures() {
        let Ok(node) = &figure.worked else { continue };
        let derived = derivation("", node);
        lines += derived.len();
        faults.extend(arithmetic::faults(&derived).into_iter().map(|f| format!("{}: {f}", figure.id)));
    }
    assert!(faults.is_empty(), "{} of {lines} lines: {:#?}", faults.len(), faults.iter().take(40).collect::<Vec<_>>());
    assert!(lines > 200_000, "only {lines} lines");
}

#[test]
fn a_line_that_is_off_is_seen() {
    let tally = tally();
    let mut lines = derivation("", tally.figure("larkenfell/LF-1.net_area").unwrap().worked.as_ref().unwrap());
    assert!(arithmetic::faults(&lines).is_empty());
    assert!(lines[0].result.starts_with("217.22"), "{}", lines[0].result);
    lines[0].result = "217.23".to_owned();
    assert_eq!(arithmetic::faults(&lines).len(), 1);
}

/// The number that stands in the derivation, keyed in again and rounded as the figure's role says, gives what is printed.
#[test]
fn every_rounding_follows_from_the_number_printed() {
    let (tally, mut faults, mut count) = (tally(), Vec::new(), 0);
    for figure in tally.figures() {
        let Ok(node) = &figure.worked else { continue };
        let lines = derivation("", node);
        let (of, number) = (node.value(), Num::Exact(keyed(&lines[0].result)));
        let si = match node.unit() {
            // A reading counts from its scale's zero, a difference does not.
            Some(unit) if of.kind == Kind::Reading => Quantity::of(&number, unit).si,
            Some(unit) => number.mul(&Num::Exact(unit.factor())),
            None => number,
        };
        let shown = Quantity { si, ..of.clone() };
        for metric in [false, true] {
            let rule = tally.rule(figure.role, node.value(), metric);
            let number = rule.unit.map_or_else(|| shown.si.clone(), |u| shown.in_unit(u).unwrap());
            let steps = number.exact().unwrap() / rule.measure();
            let steps = match rule.direction {
                Direction::Up => steps.ceil(),
                Direction::Down => steps.floor(),
                Direction::Nearest => (steps + BigRational::new(1.into(), 2.into())).floor(),
            };
            let said = tally.say(&figure.id, Ask::Own, Voice { lang: EN, metric }).unwrap();
            count += 1;
            if said.number.as_ref() != Some(&(steps.clone() * rule.measure())) {
                faults.push(format!(
                    "{}: {} {} is printed {}, keyed in it gives {} steps of {}",
                    figure.id,
                    lines[0].result,
                    lines[0].unit,
                    said.text,
                    steps,
                    rule.measure()
                ));
            }
        }
    }
    assert!(faults.is_empty(), "{} of {count}: {:#?}", faults.len(), faults.iter().take(60).collect::<Vec<_>>());
    assert!(count > 10_000, "only {count} roundings");
}

/// Derivations of every figure that was worked, as the command prints them.
fn trees() -> &'static [Value] {
    static TREES: OnceLock<Vec<Value>> = OnceLock::new();
    TREES.get_or_init(|| {
        let job = concat!(env!("CARGO_MANIFEST_DIR"), "/content");
        let words = ["--job", job, "--format", "json", "plumb", "--all"];
        let out = Command::new(env!("CARGO_BIN_EXE_hodbook")).args(words).output().unwrap();
        assert!(out.status.success());
        String::from_utf8(out.stdout).unwrap().lines().map(|l| serde_json::from_str(l).unwrap()).collect()
    })
}

#[test]
fn every_printed_value_ends_in_what_was_typed_or_published() {
    let content = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/content"));
    let (mut typed, mut published) = (0, 0);
    let trees = trees();
    let listed: BTreeSet<String> = trees.iter().map(|t| t["figure"].as_str().unwrap().to_owned()).collect();
    let tally = tally();
    let (worked, missing): (Vec<_>, Vec<_>) = tally.figures().partition(|f| f.worked.is_ok());
    assert_eq!(listed, worked.iter().map(|f| f.id.clone()).collect(), "a figure is not listed");
    assert_eq!(listed.len(), trees.len(), "a figure is listed twice");
    assert!(missing.iter().all(|f| f.worked.as_ref().is_err_and(|why| !why.is_empty())), "a figure is missing without a reason");
    for site in ["brack-ferry/", "larkenfell/", "sedge-basin/"] {
        assert!(listed.iter().filter(|f| f.starts_with(site)).count() > 250, "{site}");
    }
    for tree in trees {
        let figure = tree["figure"].as_str().unwrap();
        let lines = tree["lines"].as_array().unwrap();
        assert!(!lines.is_empty(), "{figure} has no derivation");
        for line in lines {
            let rests: Vec<usize> =
                line["rests_on"].as_array().unwrap().iter().map(|n| usize::try_from(n.as_u64().unwrap()).unwrap()).collect();
            assert!(rests.iter().all(|n| *n < lines.len()), "{figure} points out of its lines");
            if !rests.is_empty() {
                continue;
            }
            if let Some(text) = line["authored"]["text"].as_str() {
                let path = line["path"].as_str().unwrap_or_else(|| panic!("{figure}: `{text}` has no file"));
                let file = std::fs::read_to_string(content.join(path)).unwrap();
                let row = usize::try_from(line["line"].as_u64().unwrap()).unwrap();
                let column = usize::try_from(line["column"].as_u64().unwrap()).unwrap();
                let from: String = file.lines().nth(row - 1).unwrap().chars().skip(column - 1).collect();
                assert!(from.trim_start_matches('"').starts_with(text), "{figure}: {path}:{row}:{column} holds `{from}`, not `{text}`");
                typed += 1;
            } else {
                // A leaf that nobody typed: a published constant, a definition, or arithmetic of the formula's own numbers.
                let source = line["source"].as_str().unwrap_or("");
                let own = line["symbols"].as_str().is_some_and(|s| !s.is_empty());
                assert!(!source.is_empty() || own, "{figure}: {} = {} comes from nowhere", line["symbol"], line["result"]);
                published += 1;
            }
        }
    }
    assert!(typed > 500 && published > 20, "{typed} typed, {published} published");
}

#[test]
fn both_unit_systems_round_the_same_way() {
    for tree in trees() {
        let ways: Vec<&str> = ["us", "metric"].iter().filter_map(|s| tree["printed"][s]["direction"].as_str()).collect();
        assert_eq!(ways.len(), 2, "{}", tree["figure"]);
        assert_eq!(ways[0], ways[1], "{}", tree["figure"]);
    }
}
