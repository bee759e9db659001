//! A text and its twin block by block, as written.

use crate::job::Text;
use crate::prose::{Written, blocks_written};
use crate::sound::Ground;
use crate::sound::runs::Run;
use crate::source::{Span, side_by_side};

use super::twins::{self, Pair};

/// A block with its sentences.
#[derive(Clone, Debug)]
pub struct Told {
    /// The block.
    pub block: Written,
    /// Its sentences.
    pub sentences: Vec<Words>,
}

/// For every pair of texts, its blocks beside those of the twin.
pub type Sides = Vec<Vec<(Told, Told)>>;

/// Every text of a job beside its twin, read once for the checks that ask.
pub(super) fn all<'g>(ground: &'g Ground<'_>) -> impl Iterator<Item = (Pair<'g>, &'g [(Told, Told)])> {
    let read = |block: Written| Told { sentences: sentences(&block), block };
    let blocks = |pair: &Pair<'_>| by_side(pair).into_iter().map(|(a, b)| (read(a), read(b))).collect();
    let sides = ground.sides.get_or_init(|| side_by_side(&twins::pairs(ground.job), blocks));
    twins::pairs(ground.job).into_iter().zip(sides.iter().map(Vec::as_slice))
}

/// Blocks of the original, each with the block of the twin that translates it: steps by their numbers, the rest in
/// order. What has no partner is left out; other checks tell.
fn by_side(pair: &Pair<'_>) -> Vec<(Written, Written)> {
    let (mine, its) = (blocks_written(&pair.original.body), blocks_written(&pair.twin.body));
    if mine.len() == its.len() && mine.iter().map(|b| b.step).eq(its.iter().map(|b| b.step)) {
        return mine.into_iter().zip(its).collect();
    }
    let steps = mine.into_iter().filter(|b| b.step > 0);
    steps.filter_map(|b| its.iter().find(|o| o.step == b.step).cloned().map(|o| (b, o))).collect()
}

/// A sentence of a block: lower-case words with their places.
pub type Words = Vec<(String, Span)>;

/// The sentences of a block: they end at full stops, question marks and exclamation marks.
fn sentences(block: &Written) -> Vec<Words> {
    let run = Run::of(&Text { text: block.text.clone(), at: block.at });
    let mut out: Vec<Words> = vec![Vec::new()];
    for (word, at, gap) in run.words() {
        // A decimal point stands inside its number, with nothing after it.
        if gap.contains(['?', '!', '¿', '¡']) || gap.contains('.') && gap != "." {
            out.push(Vec::new());
        }
        if let Some(open) = out.last_mut() {
            open.push((word.to_lowercase().replace('’', "'"), at));
        }
    }
    out.retain(|s| !s.is_empty());
    out
}

/// The place of a phrase in a block, word for word, its last word perhaps in the plural.
pub(super) fn phrase(words: &[(String, Span)], phrase: &str) -> Option<Span> {
    let lower = phrase.to_lowercase();
    let parts: Vec<&str> = lower.split_whitespace().collect();
    let last = parts.len().checked_sub(1)?;
    let same = |n: usize, word: &str, part: &str| {
        word == part || n == last && (word.strip_prefix(part).is_some_and(|end| matches!(end, "s" | "es")))
    };
    let at = |i: usize| parts.iter().enumerate().all(|(n, part)| words.get(i + n).is_some_and(|(w, _)| same(n, w, part)));
    let start = (0..words.len()).find(|i| at(*i))?;
    let (first, end) = (words.get(start)?.1, words.get(start + last)?.1);
    Some(Span { end: end.end.max(first.end), ..first })
}
