//! What can be said about a body's tags before they are filled: unknown filters and tests, arithmetic,
//! comparisons that would quietly be false, tags we do not have.

use crate::finding::{Finding, Severity};
use crate::job::Body;
use crate::quantity::parse::{self, Said};
use crate::source::Span;
use crate::tally::{Scope, Slot};

use super::near;
use super::tags::{Piece, Tag, TagKind, Tok, TokKind, slice, unquoted};
use super::values::{FILTERS, TESTS};

const CONTROLS: &[&str] = &["for", "endfor", "if", "elif", "else", "endif", "set", "break", "continue"];
const WORDS: &[&str] = &["and", "or", "not", "in", "is", "if", "else", "elif", "for", "set", "true", "false", "none", "endfor", "endif"];

/// Loops within loops: enough for a surface of a site of a list, few enough that no body runs for ever.
const MOST_LOOPS: usize = 3;

fn stop(name: &'static str, title: impl Into<String>, at: Span, label: &str, help: impl Into<String>) -> Finding {
    Finding::new(name, Severity::Stop, title).at(at, label).help(help)
}

fn place(body: &Body, at: &std::ops::Range<usize>) -> Span {
    let offset = usize::try_from(body.offset).unwrap_or(0);
    super::offsets::span(body.file, offset + at.start..offset + at.end)
}

/// Findings that need no scope.
pub(super) fn tags(body: &Body, pieces: &[Piece]) -> Vec<Finding> {
    let mut found = Vec::new();
    let mut loops = 0_usize;
    for piece in pieces {
        let Piece::Tag(tag) = piece else { continue };
        let first = tag.toks.first().map(|t| slice(&body.text, &t.at)).unwrap_or_default();
        if tag.kind == TagKind::Control {
            control(body, tag, &first, &mut found);
            match first.as_str() {
                "for" => loops += 1,
                "endfor" => loops = loops.saturating_sub(1),
                _ => {}
            }
            if first == "for" && loops > MOST_LOOPS {
                let title = format!("{loops} loops stand within each other, the most is {MOST_LOOPS}");
                found.push(stop("loops-too-deep", title, place(body, &tag.range), "this loop", "loop over one list after another"));
            }
        } else if tag.toks.is_empty() {
            found.push(stop("slot-empty", "a slot with nothing in it", place(body, &tag.range), "names no figure", "name what it prints"));
        }
        names(body, tag, &mut found);
        marks(body, tag, &mut found);
    }
    found
}

fn control(body: &Body, tag: &Tag, first: &str, found: &mut Vec<Finding>) {
    let at = tag.toks.first().map_or(&tag.range, |t| &t.at);
    if !CONTROLS.contains(&first) {
        let title = format!("no tag is called `{first}`");
        found.push(stop("tag-unknown", title, place(body, at), "not a tag of ours", near::help(first, CONTROLS)));
    } else if first == "set" && !tag.toks.iter().any(|t| slice(&body.text, &t.at) == "=") {
        let help = "write {% set name = mix.start_water %}";
        found.push(stop("tag-unknown", "`set` without `=` would swallow text", place(body, &tag.range), "sets no name", help));
    }
    if let Some(t) = tag.toks.iter().find(|t| slice(&body.text, &t.at) == "~") {
        let title = "texts are joined in a tag that prints nothing";
        found.push(stop("slot-joined", title, place(body, &t.at), "joins here", "print the two slots side by side"));
    }
}

fn names(body: &Body, tag: &Tag, found: &mut Vec<Finding>) {
    let text = |t: &Tok| slice(&body.text, &t.at);
    for (i, tok) in tag.toks.iter().enumerate() {
        if tok.kind != TokKind::Path {
            continue;
        }
        let name = text(tok);
        let back = |n: usize| i.checked_sub(n).and_then(|k| tag.toks.get(k)).map(text).unwrap_or_default();
        let (before, earlier) = (back(1), back(2));
        let called = tag.toks.get(i + 1).is_some_and(|t| text(t) == "(");
        if before == "|" {
            if !FILTERS.contains(&name.as_str()) {
                let title = format!("no filter is called `{name}`");
                found.push(stop("filter-unknown", title, place(body, &tok.at), "after `|`", near::help(&name, FILTERS)));
            }
        } else if before == "is" || (before == "not" && earlier == "is") {
            if name == "not" {
                continue;
            }
            if !TESTS.contains(&name.as_str()) {
                let title = format!("no test is called `{name}`");
                found.push(stop("test-unknown", title, place(body, &tok.at), "after `is`", near::help(&name, TESTS)));
            } else if called && matches!(name.as_str(), "over" | "under") {
                limit(body, tag.toks.get(i + 2), found);
            }
        } else if called && !WORDS.contains(&name.as_str()) && name != "fixed" {
            let title = format!("no function is called `{name}`");
            let help = "the only one is `fixed(\"15 min\", because=\"…\")`";
            found.push(stop("function-unknown", title, place(body, &tok.at), "called here", help));
        }
    }
}

fn limit(body: &Body, tok: Option<&Tok>, found: &mut Vec<Finding>) {
    let Some(tok) = tok.filter(|t| t.kind == TokKind::Text) else { return };
    let said = unquoted(&body.text, &tok.at);
    let (what, help) = match parse::read(&said) {
        Ok(Said::Amount(..)) => return,
        Ok(_) => (format!("`{said}` is not one amount"), "write one amount, such as `5 gal`".to_owned()),
        Err(fault) => (fault.what, fault.help),
    };
    found.push(stop("comparison-unreadable", what, place(body, &tok.at), "compared with this", help));
}

fn marks(body: &Body, tag: &Tag, found: &mut Vec<Finding>) {
    let text = |t: &Tok| slice(&body.text, &t.at);
    let counts = tag.toks.iter().any(|t| text(t).starts_with("loop."));
    let by_number = tag.toks.iter().any(|t| t.kind == TokKind::Number);
    for tok in tag.toks.iter().filter(|t| t.kind == TokKind::Mark) {
        let mark = text(tok);
        match mark.as_str() {
            "+" | "-" | "*" | "/" | "//" | "%" | "**" => {
                let title = format!("`{mark}` in a template: quantities are worked in the tally, never on the page");
                let help = "print a figure that is worked already, or declare `fixed(\"15 min\", because=\"…\")`";
                found.push(stop("slot-arithmetic", title, place(body, &tok.at), "arithmetic here", help));
            }
            "<" | ">" | "<=" | ">=" if !counts => found.push(compare(body, tok, &mark)),
            "==" | "!=" if by_number && !counts => found.push(compare(body, tok, &mark)),
            _ => {}
        }
    }
}

fn compare(body: &Body, tok: &Tok, mark: &str) -> Finding {
    let title = format!("`{mark}` compares no figure: a figure has a unit, a bare number has none");
    let help = "write `is over(\"5 gal\")`, `is under(\"5 gal\")` or `is one`";
    stop("slot-comparison", title, place(body, &tok.at), "compared here", help)
}

/// Loop and `set` names that stand before a byte of the body, with the paths they stand for; last one first.
pub(super) fn bindings(text: &str, pieces: &[Piece], before: usize) -> Vec<(String, String, bool)> {
    let mut out = Vec::new();
    for piece in pieces {
        let Piece::Tag(tag) = piece else { continue };
        if tag.range.start > before {
            break;
        }
        let words: Vec<String> = tag.toks.iter().map(|t| slice(text, &t.at)).collect();
        match words.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
            ["for", name, "in", path, ..] => out.push(((*name).to_owned(), (*path).to_owned(), true)),
            ["set", name, "=", path, ..] => out.push(((*name).to_owned(), (*path).to_owned(), false)),
            _ => {}
        }
    }
    out.reverse();
    out
}

/// The slot at a path as a template sees it, loop names included.
pub(super) fn resolve<'s>(path: &str, scope: &'s Scope, bound: &[(String, String, bool)]) -> Option<&'s Slot> {
    let (root, rest) = path.split_once('.').unwrap_or((path, ""));
    let start = match bound.iter().enumerate().find(|(_, (name, _, _))| name == root) {
        Some((i, (_, to, each))) => {
            let slot = resolve(to, scope, bound.get(i + 1..).unwrap_or(&[]))?;
            match (each, slot) {
                (true, Slot::List(items)) => items.first()?,
                (true, _) => return None,
                (false, slot) => slot,
            }
        }
        None => scope.root.get(root)?,
    };
    if rest.is_empty() { Some(start) } else { start.get(rest) }
}

/// Findings that need the scope: figures compared or joined as if they were texts.
pub(super) fn figures(body: &Body, pieces: &[Piece], scope: &Scope) -> Vec<Finding> {
    let mut found = Vec::new();
    for piece in pieces {
        let Piece::Tag(tag) = piece else { continue };
        let mark = tag.toks.iter().find(|t| t.kind == TokKind::Mark && ["==", "!=", "~"].contains(&slice(&body.text, &t.at).as_str()));
        let Some(mark) = mark else { continue };
        let bound = bindings(&body.text, pieces, tag.range.start);
        let paths = tag.toks.iter().filter(|t| t.kind == TokKind::Path);
        if let Some(tok) = paths.into_iter().find(|t| matches!(resolve(&slice(&body.text, &t.at), scope, &bound), Some(Slot::Figure(_)))) {
            let (path, mark) = (slice(&body.text, &tok.at), slice(&body.text, &mark.at));
            found.push(if mark == "~" {
                let title = format!("`{path}` is a figure and is joined to a text");
                stop("slot-joined", title, place(body, &tok.at), "a figure", "print the two slots side by side")
            } else {
                compare(body, tok, &mark)
            });
        }
    }
    found
}
