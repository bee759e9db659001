//! B5: a Spanish text says galón and not which one.

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::{Finding, Severity};
use crate::sound::text::{Piece, Sentence};
use crate::sound::{Check, Ground};
use crate::source::Span;
use crate::words::ES;

/// The check.
pub const CHECK: Check = Check {
    name: "gallon-unmarked",
    ids: &["B5"],
    severities: &[Severity::Hold],
    title: "a Spanish text says galón without EE. UU.",
    manual: include_str!("gallon_unmarked.md"),
    twins: &[("es", include_str!("gallon_unmarked.es.md"))],
    run,
};

const GALLON: &[&str] = &["galón", "galones", "galon"];

fn run(ground: &Ground<'_>) -> Vec<Finding> {
    let mut files: BTreeMap<u32, (Span, BTreeSet<Span>)> = BTreeMap::new();
    for seen in ground.texts().filter(|s| s.voice.lang == ES) {
        for at in seen.sentences().iter().flat_map(bare) {
            let entry = files.entry(at.file).or_insert((at, BTreeSet::new()));
            entry.0 = entry.0.min(at);
            entry.1.insert(at);
        }
    }
    // Once a text: whoever writes it once writes it all along.
    let finding = |(at, all): &(Span, BTreeSet<Span>)| {
        let more = all.len().saturating_sub(1);
        let more = match more {
            0 => String::new(),
            1 => ", and once more in this text".to_owned(),
            more => format!(", and {more} times more in this text"),
        };
        Finding::new(CHECK.name, Severity::Hold, format!("`galón` does not say of which country{more}"))
            .at(*at, "which gallon?")
            .source("NIST Handbook 44, appendix C: the US gallon is 231 cubic inches; the imperial one is a fifth larger (recalled)")
            .help("write `galón (EE. UU.)`, or print the amount by a slot: it says gal")
    };
    files.values().map(finding).collect()
}

/// Places of the word without `(EE. UU.)` behind it. A quart, `cuarto de galón`, is a name.
fn bare(sentence: &Sentence) -> Vec<Span> {
    let word = |i: Option<usize>| match i.and_then(|i| sentence.pieces.get(i)) {
        Some(Piece::Word(word, _)) => word.as_str(),
        _ => "",
    };
    let mut out = Vec::new();
    for (i, piece) in sentence.pieces.iter().enumerate() {
        let Piece::Word(said, Some(at)) = piece else { continue };
        let quart = word(i.checked_sub(1)) == "de" && matches!(word(i.checked_sub(2)), "cuarto" | "cuartos");
        let marked = [i + 1, i + 2].iter().any(|k| matches!(word(Some(*k)), "ee" | "eeuu" | "eua" | "estadounidense" | "estadounidenses"));
        if GALLON.contains(&said.as_str()) && !quart && !marked {
            out.push(*at);
        }
    }
    out
}
