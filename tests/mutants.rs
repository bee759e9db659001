//! The demo's front matter, broken on purpose in every line: a digit changed, a unit swapped, a key misspelt, a line
//! deleted or written twice. Each change must be reported where it stands (a deleted line at its parent key), or move
//! something that is printed; what does neither is a survivor, and listed. Wanted are at most one survivor in fifty.
//!
//! The run is the same every time: nothing is drawn by chance. `MUTANTS=unit` tries the swapped units only.
//! `cargo test --release --test mutants -- --nocapture` prints the counts and the survivors.
//!
//! A hundred of those that only move values are laid down in `target/outside/mutants.jsonl` with what the tool says,
//! for the prediction that another program makes from the files alone.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout, clippy::disallowed_methods, reason = "a test")]

#[path = "mutants/made.rs"]
mod made;
#[path = "mutants/printed.rs"]
mod printed;
#[path = "corpus/scene.rs"]
#[allow(dead_code, reason = "this test needs a part of it")]
mod scene;

use std::collections::BTreeMap;
use std::path::Path;

use hodbook::finding::Finding;
use hodbook::read;
use hodbook::sound::{self, Ground};
use hodbook::source::{Folder, side_by_side};
use hodbook::tally::Tally;
use made::{Kind, Mutant};
use printed::Printed;

/// What became of a mutant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Fate {
    /// A finding at the changed line.
    Reported,
    /// No finding there, and another value is printed.
    Moved,
    /// Neither.
    Survived,
}

/// True if a finding points at the changed line, or for a deleted one at its parent key.
fn points_at(finding: &Finding, folder: &Folder, mutant: &Mutant) -> bool {
    let places = finding.at.iter().chain(&finding.related).map(|(span, _)| *span);
    places
        .filter_map(|span| folder.file(span.file).map(|f| (f, f.place(span.start).0, f.place(span.end).0)))
        .any(|(file, first, last)| file.path == mutant.path && mutant.lines.iter().any(|line| (first..=last).contains(line)))
}

fn fate(demo: &Folder, was: &Printed, mutant: &Mutant) -> Fate {
    let folder = demo.with_text(&mutant.path, &mutant.text);
    let (job, found) = read::job(&folder);
    if found.iter().any(|f| points_at(f, &folder, mutant)) {
        return Fate::Reported;
    }
    let mut tally = Tally::of(&job);
    let moved = found.is_empty() && was.figures != printed::figures(&job, &tally);
    let (seen, broken) = scene::texts(&job, &tally);
    let mut all = sound::run(&Ground { seen: &seen, ..Ground::of(&job, &tally, scene::ON) });
    all.extend(broken);
    scene::settle(&job, &folder, &mut all);
    let new = |f: &&Finding| !was.known.contains(&(f.name.to_owned(), f.title.clone()));
    if all.iter().filter(new).any(|f| points_at(f, &folder, mutant)) {
        return Fate::Reported;
    }
    if moved || was.texts != printed::texts(&job, &tally, &seen) {
        return Fate::Moved;
    }
    drop(seen);
    tally.days(&job);
    if was.days != printed::days(&job, &tally) { Fate::Moved } else { Fate::Survived }
}

#[test]
fn every_mutant_is_reported_or_moves_something() {
    let demo = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
    let every = made::all(&demo);
    assert!(every.len() >= 2_000, "{} mutants", every.len());
    let units = std::env::var("MUTANTS").is_ok_and(|asked| asked == "unit");
    let tried: Vec<Mutant> = every.into_iter().filter(|m| !units || m.kind == Kind::Unit).collect();
    let was = Printed::of(&demo);
    let fates = side_by_side(&tried, |mutant| fate(&demo, &was, mutant));

    let mut counts: BTreeMap<(Kind, Fate), usize> = BTreeMap::new();
    let (mut swaps, mut told) = (0, 0);
    for (mutant, fate) in tried.iter().zip(&fates) {
        *counts.entry((mutant.kind, *fate)).or_default() += 1;
        if *fate == Fate::Survived {
            println!("survived: {mutant}");
        }
        if mutant.measured {
            swaps += 1;
            told += usize::from(*fate == Fate::Reported);
            if *fate != Fate::Reported {
                println!("swap not reported: {mutant}");
            }
        }
    }
    for ((kind, fate), count) in &counts {
        println!("{kind:?} {fate:?}: {count}");
    }
    let survived = fates.iter().filter(|f| **f == Fate::Survived).count();
    println!("{} mutants, {survived} without effect; {told} of {swaps} swapped units of water, mass and thickness reported", tried.len());
    let moved: Vec<&Mutant> = tried.iter().zip(&fates).filter(|(_, f)| **f == Fate::Moved).map(|(m, _)| m).collect();
    printed::lay_down(&demo, &moved);
    // One in fifty at most, and nineteen of twenty.
    assert!(survived * 50 <= tried.len(), "{survived} of {} survive", tried.len());
    assert!(told * 20 >= swaps * 19, "{told} of {swaps} swapped units reported");
}
