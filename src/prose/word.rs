//! Tera's complaints in our words, at the author's characters.

use std::ops::Range;

use tera::{Error, ErrorKind};

use crate::finding::{Finding, Severity};
use crate::job::Body;
use crate::tally::{Scope, Slot};

use super::check;
use super::near;
use super::offsets::span;
use super::tags::{Piece, Tag, Tok, TokKind, slice};
use super::values::{OPEN, PART, SHUT};

/// Where a template's bytes come from.
#[derive(Clone, Debug, Default)]
pub(super) struct Seams {
    /// Copied runs: template range, start in the body, index of the piece.
    pub copies: Vec<(Range<usize>, usize, usize)>,
    /// Whole tags, with what we put around them: template range, index of the piece.
    pub tags: Vec<(Range<usize>, usize)>,
}

/// One complaint: the finding, and the piece that caused it.
pub(super) struct Complaint {
    pub finding: Finding,
    pub piece: Option<usize>,
}

/// Turns an error of Tera's into a finding.
pub(super) fn complaint(error: &Error, body: &Body, pieces: &[Piece], seams: &Seams, scope: Option<&Scope>) -> Complaint {
    let (message, at, syntax) = match error.kind() {
        ErrorKind::SyntaxError(r) => (r.message().to_owned(), Some(r.span().range.clone()), true),
        ErrorKind::RenderingError(r) => (r.message().to_owned(), Some(r.span().range.clone()), false),
        other => (other.to_string(), None, true),
    };
    let (here, piece) = home(at, body, seams, pieces);
    let offset = usize::try_from(body.offset).unwrap_or(0);
    let place = span(body.file, offset + here.start..offset + here.end);
    let tag = piece.and_then(|i| pieces.get(i)).and_then(|p| if let Piece::Tag(t) = p { Some(t) } else { None });
    let finding = if let Some((name, what, help)) = told(&message) {
        Finding::new(name, Severity::Stop, what).at(place, "here").help(help)
    } else if let (false, Some(tag), Some(scope), true) = (syntax, tag, scope, undefined(&message)) {
        unknown(tag, &here, body, pieces, scope)
    } else {
        let title = format!("this cannot be read as a slot or tag: {}", plain(&message));
        let help = "a slot looks like {{ mix.start_water }}, a condition like {% if batch.loads is one %} … {% endif %}";
        Finding::new("slot-syntax", Severity::Stop, title).at(place, "read up to here").help(help)
    };
    Complaint { finding, piece }
}

fn undefined(message: &str) -> bool {
    message.contains("not defined") || message.contains("undefined")
}

/// A message packed by [`super::values`], if it is one.
fn told(message: &str) -> Option<(&'static str, String, String)> {
    let inner = message.split_once(OPEN)?.1.split_once(SHUT)?.0;
    let mut parts = inner.split(PART);
    let name = match parts.next()? {
        "slot-comparison" => "slot-comparison",
        "slot-unfilled" => "slot-unfilled",
        "comparison-mixed" => "comparison-mixed",
        _ => "comparison-unreadable",
    };
    Some((name, parts.next()?.to_owned(), parts.next()?.to_owned()))
}

fn plain(message: &str) -> String {
    let line = message.lines().next().unwrap_or("").trim_end_matches('.').replace("nvalid", "nreadable");
    let line = line.replace("Inreadable", "unreadable").replace("inreadable", "unreadable");
    let mut chars = line.chars();
    chars.next().map_or_else(|| "it stops too early".to_owned(), |c| c.to_lowercase().chain(chars).collect())
}

/// The body range of a template range, and its piece.
fn home(at: Option<Range<usize>>, body: &Body, seams: &Seams, pieces: &[Piece]) -> (Range<usize>, Option<usize>) {
    let all = body.text.len();
    let Some(at) = at else { return (0..all.min(1), None) };
    let copy = seams.copies.iter().find(|(r, _, _)| r.contains(&at.start));
    let whole = seams.tags.iter().find(|(r, _)| at.start < r.end).or_else(|| seams.tags.last());
    let Some(piece) = copy.map(|(_, _, i)| *i).or_else(|| whole.map(|(_, i)| *i)) else { return (all.saturating_sub(1)..all, None) };
    let tag = match pieces.get(piece) {
        Some(Piece::Tag(t)) => t.range.clone(),
        _ => 0..all,
    };
    let here = copy.map(|(r, start, _)| start + (at.start - r.start)..start + (at.end.clamp(at.start, r.end) - r.start));
    let here = here.filter(|h| body.text.get(h.clone()).is_some_and(|t| !t.is_empty()));
    (here.unwrap_or(tag), Some(piece))
}

fn unknown(tag: &Tag, here: &Range<usize>, body: &Body, pieces: &[Piece], scope: &Scope) -> Finding {
    let bound = check::bindings(&body.text, pieces, tag.range.start);
    let filter = |i: usize| i.checked_sub(1).and_then(|k| tag.toks.get(k)).is_some_and(|t| slice(&body.text, &t.at) == "|");
    let paths = || tag.toks.iter().enumerate().filter(|(i, t)| t.kind == TokKind::Path && !filter(*i)).map(|(_, t)| t);
    let lost = |t: &&Tok| check::resolve(&slice(&body.text, &t.at), scope, &bound).is_none();
    let tok = paths()
        .find(|t| t.at.start <= here.start && here.start < t.at.end && lost(t))
        .or_else(|| paths().find(|t| slice(&body.text, &t.at).contains('.') && lost(t)))
        .or_else(|| paths().next());
    let at = tok.map_or_else(|| tag.inner.clone(), |t| t.at.clone());
    let path = slice(&body.text, &at);
    let offset = usize::try_from(body.offset).unwrap_or(0);
    let (name, group, names) = missing(&path, scope, &bound);
    let typed: Vec<&str> = names.iter().map(String::as_str).collect();
    let title = match group.as_str() {
        "" => format!("no slot is called `{name}` here"),
        group => format!("`{group}` has no `{name}`"),
    };
    Finding::new("slot-unknown", Severity::Stop, title)
        .at(span(body.file, offset + at.start..offset + at.end), format!("made for {}", scope.subject))
        .help(near::help(&name, &typed))
}

/// The first missing name of a path, the group it was looked for in, and the names of that group.
fn missing(path: &str, scope: &Scope, bound: &[(String, String, bool)]) -> (String, String, Vec<String>) {
    let mut group = String::new();
    for name in path.split('.') {
        let next = if group.is_empty() { name.to_owned() } else { format!("{group}.{name}") };
        if check::resolve(&next, scope, bound).is_none() {
            let holder = if group.is_empty() { Some(&scope.root) } else { check::resolve(&group, scope, bound) };
            let mut names: Vec<String> = match holder {
                Some(Slot::Map(map)) => map.iter().map(|(name, _)| name.clone()).collect(),
                _ => Vec::new(),
            };
            if group.is_empty() {
                names.extend(bound.iter().map(|(name, _, _)| name.clone()));
            }
            return (name.to_owned(), group, names);
        }
        group = next;
    }
    (path.to_owned(), String::new(), Vec::new())
}
