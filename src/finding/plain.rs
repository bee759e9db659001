//! The long form: the author's lines with carets, then the arithmetic, the source and what would pass.

use std::ops::Range;

use annotate_snippets::renderer::{AnsiColor, DecorStyle, Effects, Renderer, Style};
use annotate_snippets::{AnnotationKind, Group, Level, Snippet, normalize_untrusted_str};

use super::{BOM, Finding, Lines, Severity, floor};
use crate::source::Span;

/// Whether the terminal gets colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Colour {
    /// No escape codes at all.
    Off,
    /// Escape codes.
    On,
}

fn style(colour: AnsiColor) -> Style {
    colour.on_default().effects(Effects::BOLD)
}

/// One renderer for each severity: STOP and HOLD differ in colour, and in the word for those who see none.
fn renderer(severity: Severity, colour: Colour, width: usize) -> Renderer {
    let base = match colour {
        Colour::Off => Renderer::plain(),
        Colour::On => {
            let tint = match severity {
                Severity::Stop => AnsiColor::BrightRed,
                Severity::Hold => AnsiColor::BrightMagenta,
                Severity::Warn => AnsiColor::BrightYellow,
                Severity::Note => AnsiColor::BrightGreen,
            };
            Renderer::styled().error(style(tint)).note(Style::new().effects(Effects::BOLD))
        }
    };
    base.decor_style(DecorStyle::Ascii).term_width(width)
}

/// The finding drawn for a terminal of `width` columns, without a line end.
pub fn plain(finding: &Finding, lines: &Lines<'_>, colour: Colour, width: usize) -> String {
    // A title may hold what the author typed; an escape code in it must not reach the terminal.
    let title = normalize_untrusted_str(&finding.title);
    let title = Level::ERROR.with_name(finding.severity.word()).primary_title(title).id(finding.name);
    let mut group = Group::with_title(title);
    for snippet in snippets(finding, lines) {
        group = group.element(snippet);
    }
    let derived = finding.derived.join("\n");
    let accepted = finding.accepted.as_ref().map(|a| normalize_untrusted_str(&format!("by {}: {}", a.by, a.because)));
    let accepted = accepted.unwrap_or_default();
    for (name, text) in [("derived", &derived), ("source", &finding.source), ("help", &finding.help), ("accepted", &accepted)] {
        if !text.is_empty() {
            group = group.element(Level::NOTE.with_name(name).message(text.as_str()));
        }
    }
    renderer(finding.severity, colour, width).render(&[group])
}

type Mark<'f> = (Span, &'f str, AnnotationKind);

/// One snippet a file: the finding's own first.
fn snippets<'f, 'l: 'f>(finding: &'f Finding, lines: &Lines<'l>) -> Vec<Snippet<'f, annotate_snippets::Annotation<'f>>> {
    let own = finding.at.iter().map(|(s, l)| (*s, l.as_str(), AnnotationKind::Primary));
    let others = finding.related.iter().map(|(s, l)| (*s, l.as_str(), AnnotationKind::Context));
    let marks: Vec<Mark<'f>> = own.chain(others).collect();
    let mut files: Vec<u32> = Vec::new();
    for (span, _, _) in &marks {
        if !files.contains(&span.file) {
            files.push(span.file);
        }
    }
    let mut out = Vec::new();
    for file in files {
        let Some((path, text)) = lines(file) else { continue };
        let own: Vec<&Mark<'f>> = marks.iter().filter(|(s, _, _)| s.file == file).collect();
        let (from, to) = window(text, &own);
        let shown = text.get(from..to).unwrap_or("");
        let before = text.get(..from).unwrap_or("").bytes().filter(|b| *b == b'\n').count();
        let mut snippet = Snippet::source(shown).path(path).line_start(before + 1);
        for (span, label, kind) in own {
            let annotation = kind.span(range(text, *span, from));
            snippet = snippet.annotation(if label.is_empty() { annotation } else { annotation.label(*label) });
        }
        out.push(snippet);
    }
    out
}

/// The lines from the first mark to the last: the drawing reads all it is given, and a book is long. Leaves out
/// a byte order mark, which has no width on screen and must not be counted by the carets.
fn window(text: &str, marks: &[&Mark<'_>]) -> (usize, usize) {
    let first = marks.iter().map(|(s, _, _)| floor(text, s.start)).min().unwrap_or(0);
    let last = marks.iter().map(|(s, _, _)| floor(text, s.start)).max().unwrap_or(0);
    let mut from = text.get(..first).and_then(|t| t.rfind('\n')).map_or(0, |i| i + 1);
    if from == 0 && text.starts_with(BOM) {
        from = BOM.len_utf8();
    }
    let to = text.get(last..).and_then(|t| t.find('\n')).map_or(text.len(), |i| last + i + 1);
    (from, to.max(from))
}

/// The span in the text shown, on character bounds, at most to the end of its first line.
fn range(text: &str, span: Span, skip: usize) -> Range<usize> {
    let start = floor(text, span.start).max(skip);
    let end = floor(text, span.end).max(start);
    let first = text.get(start..end).unwrap_or("").lines().next().map_or(0, str::len);
    start - skip..start + first - skip
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "---\nstart: 1 gal 2 qt\nlimit: 1 gal 1 qt\n---\n";

    fn finding() -> Finding {
        Finding::new("start-over-limit", Severity::Hold, "start water is 1 gal 2 qt, over the limit of 1 gal 1 qt")
            .at(Span { file: 0, start: 11, end: 21 }, "start water")
            .related(Span { file: 0, start: 29, end: 39 }, "the limit")
            .derived("1 gal 2 qt = 6 qt")
            .derived("6 qt > 5 qt")
            .source("common practice, no source")
            .help("start with at most 1 gal 1 qt")
    }

    #[test]
    fn footers_follow_the_lines() {
        let want = "\
HOLD[start-over-limit]: start water is 1 gal 2 qt, over the limit of 1 gal 1 qt
 --> mixes/m.md:2:8
  |
2 | start: 1 gal 2 qt
  |        ^^^^^^^^^^ start water
3 | limit: 1 gal 1 qt
  |        ---------- the limit
  |
  = derived: 1 gal 2 qt = 6 qt
             6 qt > 5 qt
  = source: common practice, no source
  = help: start with at most 1 gal 1 qt";
        let lines = |_| Some(("mixes/m.md", TEXT));
        assert_eq!(plain(&finding(), &lines, Colour::Off, 100), want);
        let coloured = plain(&finding(), &lines, Colour::On, 100);
        assert!(coloured.contains("\u{1b}[1m\u{1b}[95mHOLD[start-over-limit]"), "{coloured:?}");
    }

    #[test]
    fn a_finding_without_a_place_is_whole() {
        let finding = Finding::new("a", Severity::Note, "b").help("c");
        assert_eq!(plain(&finding, &|_| None, Colour::Off, 100), "NOTE[a]: b\n |\n = help: c");
    }
}
