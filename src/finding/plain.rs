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
    for (name, text) in [("derived", &derived), ("source", &finding.source), ("help", &finding.help)] {
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
        // The byte order mark has no width on screen, so the carets must not count it.
        let skip = if text.starts_with(BOM) { BOM.len_utf8() } else { 0 };
        let shown = text.get(skip..).unwrap_or("");
        let mut snippet = Snippet::source(shown).path(path);
        for (span, label, kind) in marks.iter().filter(|(s, _, _)| s.file == file) {
            let annotation = kind.span(range(text, *span, skip));
            snippet = snippet.annotation(if label.is_empty() { annotation } else { annotation.label(*label) });
        }
        out.push(snippet);
    }
    out
}

/// The span in the text shown, on character bounds, at most to the end of its first line.
fn range(text: &str, span: Span, skip: usize) -> Range<usize> {
    let start = floor(text, span.start).max(skip);
    let end = floor(text, span.end).max(start);
    let first = text.get(start..end).unwrap_or("").lines().next().map_or(0, str::len);
    start - skip..start + first - skip
}
