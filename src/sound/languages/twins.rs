//! Every text with its twins, and how far a twin has fallen behind.

use crate::finding::{Finding, Severity};
use crate::job::{Body, Edition, Job};
use crate::prose::block_digests;
use crate::source::Span;

/// A twin beside its original.
#[derive(Debug)]
pub struct Pair<'a> {
    /// What sort of text: `card`, `procedure` …
    pub sort: &'static str,
    /// Name of the original to print.
    pub name: &'a str,
    /// The original.
    pub original: &'a Edition,
    /// The twin.
    pub twin: &'a Edition,
    /// True for what a crew acts on at once: cards, cautions, and the chapter on safety.
    pub grave: bool,
}

/// Every pair of the job, by kind of file.
pub(super) fn pairs(job: &Job) -> Vec<Pair<'_>> {
    let mut texts: Vec<(&'static str, bool, &[Edition])> = Vec::new();
    texts.extend(job.cards.iter().map(|c| ("card", true, c.editions.as_slice())));
    texts.extend(job.cautions.iter().map(|c| ("caution", true, c.editions.as_slice())));
    // Chapters are told apart by their file: the one on safety is named so by every starter folder.
    texts.extend(job.chapters.iter().map(|c| ("chapter", c.id.contains("safety"), c.editions.as_slice())));
    texts.extend(job.procedures.iter().map(|p| ("procedure", false, p.editions.as_slice())));
    texts.extend(job.mixes.iter().map(|m| ("mix", false, m.editions.as_slice())));
    texts.extend(job.sites.iter().map(|s| ("site", false, s.editions.as_slice())));
    texts.extend(job.company.iter().map(|c| ("company", false, c.editions.as_slice())));
    texts.extend(job.handbook.iter().map(|h| ("handbook", false, h.editions.as_slice())));
    texts.push(("glossary", false, job.glossary_editions.as_slice()));
    let mut out = Vec::new();
    for (sort, grave, editions) in texts {
        let Some((original, twins)) = editions.split_first() else { continue };
        out.extend(twins.iter().map(|twin| Pair { sort, name: &original.title.text, original, twin, grave }));
    }
    out
}

/// The value of `follows:` for a twin that translates this original as it stands.
pub fn follows_for(original: &Body) -> String {
    let digests: Vec<String> = block_digests(original).into_iter().map(|(digest, _)| digest).collect();
    format!("[{}]", digests.join(", "))
}

/// Blocks of the original that a twin does not follow: new or changed ones, and how many are gone.
struct Behind {
    changed: Vec<Span>,
    gone: usize,
}

/// The blocks outside the longest run of blocks that both lists hold in one order.
fn behind(now: &[(String, Span)], follows: &[String]) -> Behind {
    let digest = |i: usize| now.get(i).map(|(d, _)| d.as_str());
    let (rows, columns) = (now.len(), follows.len());
    let mut longest = vec![vec![0_usize; columns + 1]; rows + 1];
    let at = |table: &Vec<Vec<usize>>, i: usize, j: usize| table.get(i).and_then(|r| r.get(j)).copied().unwrap_or(0);
    for i in (0..rows).rev() {
        for j in (0..columns).rev() {
            let same = digest(i) == follows.get(j).map(String::as_str);
            let here = if same { at(&longest, i + 1, j + 1) + 1 } else { at(&longest, i + 1, j).max(at(&longest, i, j + 1)) };
            if let Some(cell) = longest.get_mut(i).and_then(|r| r.get_mut(j)) {
                *cell = here;
            }
        }
    }
    let (mut i, mut j) = (0, 0);
    let mut out = Behind { changed: Vec::new(), gone: 0 };
    while i < rows || j < columns {
        if i < rows && j < columns && digest(i) == follows.get(j).map(String::as_str) {
            (i, j) = (i + 1, j + 1);
        } else if i < rows && at(&longest, i + 1, j) >= at(&longest, i, j + 1) || j >= columns {
            out.changed.extend(now.get(i).map(|(_, span)| *span));
            i += 1;
        } else {
            out.gone += 1;
            j += 1;
        }
    }
    // A changed block counts once: the old digest of it is not a block that is gone besides.
    out.gone = out.gone.saturating_sub(out.changed.len());
    out
}

/// The finding of a twin that does not follow its original as it stands.
pub(super) fn out_of_date(pair: &Pair<'_>, name: &'static str, severity: Severity) -> Option<Finding> {
    let now = block_digests(&pair.original.body);
    let (follows, at) = pair.twin.follows.as_ref()?;
    if now.iter().map(|(d, _)| d).eq(follows.iter()) {
        return None;
    }
    let full = follows_for(&pair.original.body);
    let sort = pair.sort;
    let help = format!("read the lines again in both languages; when the twin is right, write `follows: {full}`");
    if follows.is_empty() {
        let title = format!("the twin of the {sort} `{}` follows 0 of its {}", pair.name, blocks(now.len()));
        return Some(Finding::new(name, severity, title).at(*at, "says nothing of what it translates").source(SOURCE).help(help));
    }
    let behind = behind(&now, follows);
    let changed = format!("{} of {} changed", behind.changed.len(), blocks(now.len()));
    let what = match (behind.changed.len(), behind.gone) {
        (0, 0) => "its blocks stood in another order".to_owned(),
        (0, gone) => format!("{} gone", blocks(gone)),
        (_, 0) => changed,
        (_, gone) => format!("{changed}, {gone} gone"),
    };
    let title = format!("the twin of the {sort} `{}` follows an older text: {what}", pair.name);
    // An acceptance names the English that was read, so that the next change of it is not accepted unread.
    let unread: Vec<&str> = now.iter().filter(|(_, span)| behind.changed.contains(span)).map(|(d, _)| d.as_str()).collect();
    let unread = if unread.is_empty() { full } else { unread.join(" ") };
    let mut finding = Finding::new(name, severity, title).at(*at, "followed these").source(SOURCE).help(help).value(unread);
    for span in &behind.changed {
        finding = finding.related(*span, format!("changed: {}", first_words(&pair.original.body, *span)));
    }
    Some(finding)
}

const SOURCE: &str = "house rule: a twin is compared by content, never by the clock";

fn blocks(n: usize) -> String {
    if n == 1 { "1 block".to_owned() } else { format!("{n} blocks") }
}

/// The first words of a block, for a label.
fn first_words(body: &Body, span: Span) -> String {
    let start = usize::try_from(span.start.saturating_sub(body.offset)).unwrap_or(0);
    let end = usize::try_from(span.end.saturating_sub(body.offset)).unwrap_or(0);
    let text = body.text.get(start..end).unwrap_or("");
    let words: Vec<&str> = text.split_whitespace().take(5).collect();
    let more = if text.split_whitespace().count() > 5 { " …" } else { "" };
    format!("{}{more}", words.join(" "))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn body(text: &str) -> Body {
        Body { file: 0, offset: 0, text: text.to_owned() }
    }

    #[test]
    fn names_what_changed_and_counts_what_is_gone() {
        let follows: Vec<String> = block_digests(&body("one\n\ntwo\n\nthree\n\nfour")).into_iter().map(|(d, _)| d).collect();
        let case = |text: &str| {
            let b = body(text);
            let found = behind(&block_digests(&b), &follows);
            (found.changed.iter().map(|s| first_words(&b, *s)).collect::<Vec<_>>(), found.gone)
        };
        assert_eq!(case("one\n\ntwo\n\nthree\n\nfour"), (vec![], 0));
        assert_eq!(case("one\n\n2\n\nthree\n\nfour"), (vec!["2".to_owned()], 0));
        assert_eq!(case("zero\n\none\n\ntwo\n\nthree\n\nfour"), (vec!["zero".to_owned()], 0));
        assert_eq!(case("one\n\nthree\n\nfour"), (vec![], 1));
        assert_eq!(case("one\n\n2\n\nfour"), (vec!["2".to_owned()], 1));
    }
}
