//! Cuts a body into runs of text and tags (`{{ … }}`, `{% … %}`), minding strings, comments and raw parts.
//!
//! White space is settled here, not by Tera: dashes trim, and a control tag or comment alone on its line takes
//! the line with it, so that a loop around table rows does not tear the table.

use std::ops::Range;

/// What a tag does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum TagKind {
    /// `{{ … }}`.
    Slot,
    /// `{% … %}`.
    Control,
}

/// A tag; ranges are bytes of the body.
#[derive(Clone, Debug)]
pub(super) struct Tag {
    pub kind: TagKind,
    /// With its braces.
    pub range: Range<usize>,
    /// Without braces and trimming dashes.
    pub inner: Range<usize>,
    pub toks: Vec<Tok>,
}

/// A piece of a body.
#[derive(Clone, Debug)]
pub(super) enum Piece {
    Text(Range<usize>),
    Tag(Tag),
}

/// What a token of a tag is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum TokKind {
    /// A dotted name, or a keyword.
    Path,
    /// A string, with its quotes.
    Text,
    /// A number.
    Number,
    /// One or two marks, such as `|` or `==`.
    Mark,
}

/// A token of a tag.
#[derive(Clone, Debug)]
pub(super) struct Tok {
    pub kind: TokKind,
    pub at: Range<usize>,
}

/// A tag that cannot be cut: where, and what is missing.
#[derive(Clone, Debug)]
pub(super) struct Torn {
    pub at: Range<usize>,
    pub what: &'static str,
    pub help: &'static str,
}

/// The text of a range; empty if it does not fall on characters.
pub(super) fn slice(text: &str, at: &Range<usize>) -> String {
    text.get(at.clone()).unwrap_or("").to_owned()
}

/// The text between a string token's quotes, escapes resolved as Tera does.
pub(super) fn unquoted(text: &str, at: &Range<usize>) -> String {
    let raw = text.get(at.start + 1..at.end.saturating_sub(1)).unwrap_or("");
    let mut out = String::new();
    let mut chars = raw.chars();
    while let Some(c) = chars.next() {
        match c {
            '\\' => match chars.next() {
                Some('n') => out.push('\n'),
                Some('t') => out.push('\t'),
                Some('r') => out.push('\r'),
                Some(other) => out.push(other),
                None => {}
            },
            other => out.push(other),
        }
    }
    out
}

/// Cuts a body. The pieces cover it in order; torn tags are left as text.
pub(super) fn cut(text: &str) -> (Vec<Piece>, Vec<Torn>) {
    let mut pieces = Vec::new();
    let mut torn = Vec::new();
    let mut from = 0; // start of the text run being gathered
    let mut pos = 0;
    let mut trim_start = false;
    while let Some(at) = text.get(pos..).and_then(|t| t.find('{')).map(|i| pos + i) {
        let rest = text.get(at..).unwrap_or("");
        let (close, kind) = match rest.as_bytes().get(1) {
            Some(b'{') => ("}}", Some(TagKind::Slot)),
            Some(b'%') => ("%}", Some(TagKind::Control)),
            Some(b'#') if !heading_id(rest) => ("#}", None),
            _ => {
                pos = at + 1;
                continue;
            }
        };
        let found = if kind.is_some() { end_of(rest, close) } else { rest.find(close).ok_or("the comment is not closed") };
        let len = match found {
            Ok(len) => len + 2,
            Err(what) => {
                let line = rest.find('\n').unwrap_or(rest.len());
                torn.push(Torn { at: at..at + line, what, help: "close it with the same marks it was opened with" });
                pos = at + 2;
                continue;
            }
        };
        let end = at + len;
        let dash_open = rest.as_bytes().get(2) == Some(&b'-');
        let dash_close = len > 4 && rest.as_bytes().get(len - 3) == Some(&b'-');
        let inner = at + 2 + usize::from(dash_open)..(end - 2 - usize::from(dash_close)).max(at + 2 + usize::from(dash_open));
        let alone = kind != Some(TagKind::Slot) && alone_on_line(text, at, end);
        let mut before = from..at;
        trim(text, &mut before, trim_start, dash_open);
        if alone {
            before.end = before.end.min(line_start(text, at)).max(before.start);
        }
        push_text(&mut pieces, before);
        from = if alone { line_end(text, end) } else { end };
        trim_start = dash_close;
        pos = from;
        let Some(kind) = kind else { continue };
        let toks = lex(text, inner.clone());
        let first = toks.first().map(|t| slice(text, &t.at));
        if kind == TagKind::Control && first.as_deref() == Some("raw") {
            match raw_end(text, from) {
                Some((stop, after)) => {
                    push_text(&mut pieces, from..stop);
                    (from, pos) = (after, after);
                }
                None => torn.push(Torn { at: at..end, what: "the raw part is not closed", help: "end it with {% endraw %}" }),
            }
            continue;
        }
        pieces.push(Piece::Tag(Tag { kind, range: at..end, inner, toks }));
    }
    let mut last = from..text.len();
    trim(text, &mut last, trim_start, false);
    push_text(&mut pieces, last);
    (pieces, torn)
}

fn push_text(pieces: &mut Vec<Piece>, at: Range<usize>) {
    if at.start < at.end {
        pieces.push(Piece::Text(at));
    }
}

fn trim(text: &str, at: &mut Range<usize>, start: bool, end: bool) {
    let run = text.get(at.clone()).unwrap_or("");
    if start {
        at.start += run.len() - run.trim_start().len();
    }
    if end {
        at.end = at.end.saturating_sub(run.len() - run.trim_end().len()).max(at.start);
    }
}

/// `{#water}` after a heading is its id, not a comment.
fn heading_id(rest: &str) -> bool {
    let name: String = rest.chars().skip(2).take_while(|c| c.is_alphanumeric() || matches!(c, '-' | '_')).collect();
    !name.is_empty() && rest.get(2 + name.len()..).is_some_and(|r| r.starts_with('}'))
}

/// Offset of the closing marks, strings skipped.
fn end_of(rest: &str, close: &str) -> Result<usize, &'static str> {
    let bytes = rest.as_bytes();
    let mut quote: Option<u8> = None;
    let mut i = 2;
    while let Some(&b) = bytes.get(i) {
        match quote {
            Some(_) if b == b'\\' => i += 1,
            Some(q) if b == q => quote = None,
            Some(_) => {}
            None if matches!(b, b'"' | b'\'' | b'`') => quote = Some(b),
            None if rest.as_bytes().get(i..i + 2) == Some(close.as_bytes()) => return Ok(i),
            None => {}
        }
        i += 1;
    }
    Err(if quote.is_some() { "a quote in this slot is not closed" } else { "the slot is not closed" })
}

fn line_start(text: &str, at: usize) -> usize {
    text.get(..at).and_then(|t| t.rfind('\n')).map_or(0, |i| i + 1)
}

fn line_end(text: &str, at: usize) -> usize {
    text.get(at..).and_then(|t| t.find('\n')).map_or(text.len(), |i| at + i + 1)
}

fn alone_on_line(text: &str, start: usize, end: usize) -> bool {
    let blank = |a: usize, b: usize| text.get(a..b).is_some_and(|t| t.chars().all(char::is_whitespace));
    blank(line_start(text, start), start) && blank(end, line_end(text, end))
}

fn raw_end(text: &str, from: usize) -> Option<(usize, usize)> {
    let mut pos = from;
    while let Some(at) = text.get(pos..).and_then(|t| t.find("{%")).map(|i| pos + i) {
        let stop = text.get(at..).and_then(|t| t.find("%}")).map(|i| at + i)?;
        if text.get(at + 2..stop).is_some_and(|t| t.trim_matches('-').trim() == "endraw") {
            return Some((at, stop + 2));
        }
        pos = at + 2;
    }
    None
}

fn lex(text: &str, inner: Range<usize>) -> Vec<Tok> {
    let bytes = text.as_bytes().get(..inner.end).unwrap_or(&[]);
    let mut toks = Vec::new();
    let mut i = inner.start;
    while let Some(&b) = bytes.get(i) {
        let run = |ok: fn(u8) -> bool| i + bytes.get(i..).unwrap_or(&[]).iter().take_while(|b| ok(**b)).count();
        let (kind, end) = match b {
            b if b.is_ascii_whitespace() => {
                i += 1;
                continue;
            }
            b'"' | b'\'' | b'`' => (TokKind::Text, string_end(bytes, i)),
            b if b.is_ascii_digit() => (TokKind::Number, run(|b| b.is_ascii_digit() || b == b'.')),
            // A letter outside ASCII belongs to the name it stands in: Tera refuses it, and we point at all of it.
            b if b.is_ascii_alphabetic() || b == b'_' || b >= 0x80 => {
                (TokKind::Path, run(|b| b.is_ascii_alphanumeric() || matches!(b, b'_' | b'.') || b >= 0x80))
            }
            _ => {
                let two = bytes.get(i..i + 2).unwrap_or(&[]);
                let pair = [&b"=="[..], b"!=", b"<=", b">=", b"//", b"**"].contains(&two);
                (TokKind::Mark, i + 1 + usize::from(pair))
            }
        };
        toks.push(Tok { kind, at: i..end });
        i = end;
    }
    toks
}

fn string_end(bytes: &[u8], start: usize) -> usize {
    let quote = bytes.get(start).copied().unwrap_or(b'"');
    let mut i = start + 1;
    while let Some(&b) = bytes.get(i) {
        i += 1;
        if b == b'\\' {
            i += 1;
        } else if b == quote {
            break;
        }
    }
    i.min(bytes.len())
}
