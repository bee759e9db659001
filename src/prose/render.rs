//! A body with its slots filled: the one way from Markdown to a [`Doc`].

use std::collections::BTreeSet;
use std::sync::Arc;

use tera::{Context, Tera};

use crate::finding::{Finding, Severity};
use crate::job::Body;
use crate::tally::scope::Group;
use crate::tally::{Scope, Slot, Tally, Voice};

use super::block::Doc;
use super::check;
use super::fill::{Out, Print};
use super::markdown;
use super::offsets::{Offsets, span};
use super::tags::{Piece, Tag, TagKind, TokKind, cut, slice};
use super::values::{self, ASKS, OPEN, PART, SHUT};
use super::word::{self, Seams};

/// First of the private characters that stand for slot output while Markdown is parsed.
pub(super) const HOLDER: u32 = 0xF_0000;
/// Slots one body may fill; there are no more private characters in the plane.
const MOST_SLOTS: usize = 60_000;
const NAME: &str = "body";
/// Mistakes shown for one body before we stop looking for more.
const MOST_MISTAKES: usize = 20;

/// Choices of one rendering.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Options {
    /// Number of the first write-in box, less one: a face made of several bodies numbers its boxes through.
    pub boxes_before: u32,
}

/// A body cut, checked and parsed once, for any number of scopes.
#[derive(Debug)]
pub struct Prepared {
    body: Body,
    pieces: Vec<Piece>,
    tera: Tera,
    seams: Seams,
    /// Names that its tags mention, each once.
    names: BTreeSet<String>,
    /// Those of them that a tag compares or changes.
    read: BTreeSet<String>,
    /// Names of loops and of `set`.
    bound: BTreeSet<String>,
}

/// Fills a body once. Use [`Prepared`] when the same body is filled for several scopes.
///
/// # Errors
/// Every finding of the body that can be told at once; a body with findings gives no document.
pub fn render(body: &Body, scope: &Scope, tally: &Tally, voice: Voice, options: Options) -> Result<Doc, Vec<Finding>> {
    Prepared::new(body)?.render(scope, tally, voice, options)
}

impl Prepared {
    /// Cuts, checks and parses a body.
    ///
    /// # Errors
    /// Findings that need no scope: torn tags, syntax, unknown filters, arithmetic.
    pub fn new(body: &Body) -> Result<Prepared, Vec<Finding>> {
        let (pieces, torn) = cut(&body.text);
        let offset = usize::try_from(body.offset).unwrap_or(0);
        let mut found: Vec<Finding> = torn
            .iter()
            .map(|t| {
                let at = span(body.file, offset + t.at.start..offset + t.at.end);
                Finding::new("tag-torn", Severity::Stop, t.what).at(at, "opened here").help(t.help)
            })
            .collect();
        if let Some((at, c)) = body.text.char_indices().find(|(_, c)| unprintable(*c)) {
            // Nothing else is told: with these in it, no other message can be trusted to show.
            let place = span(body.file, offset + at..offset + at + c.len_utf8());
            let title = format!("the character U+{:04X} cannot be printed", u32::from(c));
            let finding = Finding::new("character-unprintable", Severity::Stop, title).at(place, "here").help("take it out");
            return Err(vec![finding]);
        }
        found.extend(check::tags(body, &pieces));
        let mut skipped = BTreeSet::new();
        loop {
            let (template, seams) = template(body, &pieces, &skipped);
            let mut tera = values::tera();
            let Err(error) = tera.add_raw_template(NAME, &template) else {
                if found.is_empty() {
                    let names = names(body, &pieces, |_| true);
                    let read = names_read(body, &pieces);
                    let bound = check::bindings(&body.text, &pieces, body.text.len()).into_iter().map(|(name, ..)| name).collect();
                    return Ok(Prepared { body: body.clone(), pieces, tera, seams, names, read, bound });
                }
                return Err(found);
            };
            let complaint = word::complaint(&error, body, &pieces, &seams, None);
            // What the checks above have told, Tera need not tell again. Unknown names it tells without a place.
            if complaint.piece.is_none() && !found.is_empty() {
                return Err(found);
            }
            let known = found.iter().any(|f| match (&f.at, &complaint.finding.at) {
                (Some((a, _)), Some((b, _))) => complaint.piece.is_some_and(|p| same_piece(&pieces, p, offset, *a)) || a == b,
                _ => false,
            });
            if !known {
                found.push(complaint.finding);
            }
            let slot = complaint.piece.filter(|p| matches!(pieces.get(*p), Some(Piece::Tag(t)) if t.kind == TagKind::Slot));
            match slot {
                Some(p) if found.len() < MOST_MISTAKES && skipped.insert(p) => {}
                _ => return Err(found),
            }
        }
    }

    /// The body's document in one scope.
    ///
    /// # Errors
    /// Every finding of this scope: unknown names, unfilled figures, comparisons of unlike things, Markdown we do not print.
    pub fn render(&self, scope: &Scope, tally: &Tally, voice: Voice, options: Options) -> Result<Doc, Vec<Finding>> {
        let mut found = check::figures(&self.body, &self.pieces, scope);
        let mut context = Context::new();
        let apart = self.names_apart(scope);
        if let Slot::Map(map) = &scope.root {
            // A scope holds a site's every figure; a text names a few of them.
            for (name, slot) in map.iter() {
                if let Some(slot) = self.mentioned(name, slot) {
                    context.insert_value(name.clone(), values::value(&slot, tally, apart));
                }
            }
        }
        let mut skipped = BTreeSet::new();
        let mut retry: Option<(Tera, Seams)> = None;
        let marks = loop {
            let (tera, seams) = retry.as_ref().map_or((&self.tera, &self.seams), |(t, s)| (t, s));
            let error = match tera.render(NAME, &context) {
                Ok(marks) => break marks,
                Err(error) => error,
            };
            let complaint = word::complaint(&error, &self.body, &self.pieces, seams, Some(scope));
            found.push(complaint.finding);
            let slot = complaint.piece.filter(|p| matches!(self.pieces.get(*p), Some(Piece::Tag(t)) if t.kind == TagKind::Slot));
            match slot {
                Some(p) if found.len() < MOST_MISTAKES && skipped.insert(p) => {}
                _ => return Err(distinct(found)),
            }
            let (text, seams) = template(&self.body, &self.pieces, &skipped);
            let mut tera = values::tera();
            if tera.add_raw_template(NAME, &text).is_err() {
                return Err(distinct(found));
            }
            retry = Some((tera, seams));
        };
        let (text, offsets, outs) = self.assemble(&marks, &mut found);
        let printing = Print { body: &self.body, scope, tally, voice, outs: &outs };
        let (doc, more) = markdown::parse(&printing, &text, &offsets, options.boxes_before);
        found.extend(more);
        if found.is_empty() { Ok(doc) } else { Err(distinct(found)) }
    }

    /// What of a group the tags of the body can reach; nothing if none of them names it.
    fn mentioned(&self, name: &str, slot: &Slot) -> Option<Slot> {
        let after = |path: &'_ String| {
            let rest = path.strip_prefix(name)?;
            (!rest.starts_with(|c: char| c.is_alphanumeric() || c == '_')).then(|| rest.to_owned())
        };
        let paths: Vec<String> = self.names.iter().filter_map(after).collect();
        let Slot::Map(map) = slot else { return (!paths.is_empty()).then(|| slot.clone()) };
        let whole = paths.iter().any(|rest| !rest.starts_with('.'));
        if paths.is_empty() || whole {
            return whole.then(|| slot.clone());
        }
        let named = |key: &String| paths.iter().any(|p| p.split('.').nth(1) == Some(key));
        let own = map.iter().filter(|(key, _)| named(key)).map(|(key, slot)| (key.clone(), slot.clone())).collect();
        Some(Slot::Map(Arc::new(Group { own, below: Vec::new() })))
    }

    /// True if the proper names of a scope can be printed apart from the words: no tag looks at their letters.
    pub(super) fn names_apart(&self, scope: &Scope) -> bool {
        self.read.iter().all(|path| {
            let root = path.split('.').next().unwrap_or(path);
            !self.bound.contains(root) && !reached(path, scope).is_some_and(Slot::has_names)
        })
    }

    /// Dotted names that its tags mention: all that a document of it can depend on.
    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.names.iter().map(String::as_str)
    }

    /// Marks → Markdown with placeholders, its map to the file, and what each placeholder stands for.
    fn assemble(&self, marks: &str, found: &mut Vec<Finding>) -> (String, Offsets, Vec<Out>) {
        let offset = usize::try_from(self.body.offset).unwrap_or(0);
        let mut text = String::new();
        let mut offsets = Offsets::new(self.body.file);
        let mut outs: Vec<Out> = Vec::new();
        for mark in marks.split(SHUT) {
            let Some(mark) = mark.strip_prefix(OPEN) else { continue };
            let mut fields = mark.split(PART);
            let head = fields.next().unwrap_or("");
            let index = head.get(1..).and_then(|n| n.parse::<usize>().ok());
            let Some(piece) = index.and_then(|i| self.pieces.get(i)) else { continue };
            match piece {
                Piece::Text(at) => {
                    text.push_str(self.body.text.get(at.clone()).unwrap_or(""));
                    offsets.copy(at.len(), offset + at.start);
                }
                Piece::Tag(tag) => {
                    let at = offset + tag.range.start..offset + tag.range.end;
                    let holder = u32::try_from(outs.len()).ok().and_then(|n| char::from_u32(HOLDER + n));
                    let (Some(holder), true) = (holder, outs.len() < MOST_SLOTS) else {
                        let title = format!("this body fills more than {MOST_SLOTS} slots");
                        let place = span(self.body.file, at);
                        found.push(Finding::new("body-too-long", Severity::Stop, title).at(place, "the last one").help("loop over less"));
                        break;
                    };
                    let fields: Vec<&str> = fields.collect();
                    let plain = tag.toks.first().map(|t| slice(&self.body.text, &t.at)).unwrap_or_default();
                    let typed = tag.toks.iter().any(|t| t.kind == TokKind::Number);
                    outs.push(Out::read(&fields, span(self.body.file, at.clone()), &plain, typed));
                    text.push(holder);
                    offsets.slot(holder.len_utf8(), at);
                }
            }
        }
        (text, offsets, outs)
    }
}

/// Dotted names in the tags of a body.
fn names(body: &Body, pieces: &[Piece], which: impl Fn(&Tag) -> bool) -> BTreeSet<String> {
    let tags = pieces.iter().filter_map(|p| if let Piece::Tag(tag) = p { Some(tag) } else { None }).filter(|tag| which(tag));
    let paths = tags.flat_map(|t| &t.toks).filter(|tok| tok.kind == TokKind::Path);
    let mut names: BTreeSet<String> = paths.filter_map(|tok| body.text.get(tok.at.clone())).map(str::to_owned).collect();
    // Drawn bags carry the mass of one, which nobody names.
    if names.contains("bags") {
        names.extend(["mix.mortar_bag".to_owned(), "mix.additive_bag".to_owned()]);
    }
    names
}

/// Names in tags that compare texts or change them.
fn names_read(body: &Body, pieces: &[Piece]) -> BTreeSet<String> {
    let reads = |tag: &Tag| {
        let words: Vec<&str> = tag.toks.iter().filter_map(|t| body.text.get(t.at.clone())).collect();
        let each = words.first() == Some(&"for") && words.len() == 4;
        let changed = |pair: &[&str]| matches!(pair, ["|", filter] if !values::keeps(filter));
        let joined = |word: &&str| ["==", "!=", "~", "in", "<", ">", "[", "else"].contains(word);
        !each && words.len() > 1 && (words.iter().any(joined) || words.windows(2).any(changed))
    };
    names(body, pieces, reads)
}

fn same_piece(pieces: &[Piece], piece: usize, offset: usize, at: crate::source::Span) -> bool {
    let start = usize::try_from(at.start).unwrap_or(0);
    matches!(pieces.get(piece), Some(Piece::Tag(t)) if (offset + t.range.start..offset + t.range.end).contains(&start))
}

/// Control characters, and the private ones we put in ourselves.
fn unprintable(c: char) -> bool {
    (c.is_control() && !matches!(c, '\n' | '\r' | '\t')) || (HOLDER..HOLDER + 0x1_0000).contains(&u32::from(c))
}

/// A loop repeats its mistakes; the author needs each of them once.
fn distinct(found: Vec<Finding>) -> Vec<Finding> {
    let mut out: Vec<Finding> = Vec::new();
    for f in found {
        if !out.iter().any(|o| o.name == f.name && o.at == f.at && o.title == f.title) {
            out.push(f);
        }
    }
    out
}

/// The template Tera gets: a mark for each run of text, each slot through our last filter, every tag copied.
///
/// Tera knows named arguments only, so the first text of `fixed`, `over` and `under` gets its name here.
fn template(body: &Body, pieces: &[Piece], skipped: &BTreeSet<usize>) -> (String, Seams) {
    let mut out = String::new();
    let mut seams = Seams::default();
    for (i, piece) in pieces.iter().enumerate() {
        let tag = match piece {
            Piece::Text(_) => {
                out.push_str(&format!("{OPEN}L{i}{SHUT}"));
                continue;
            }
            Piece::Tag(_) if skipped.contains(&i) => continue,
            Piece::Tag(tag) => tag,
        };
        let slot = tag.kind == TagKind::Slot;
        let opened = out.len();
        out.push_str(if slot { "{{ (" } else { "{%" });
        let mut from = tag.inner.start;
        let copy = |from: usize, to: usize, out: &mut String, seams: &mut Seams| {
            let start = out.len();
            out.push_str(body.text.get(from..to).unwrap_or(""));
            seams.copies.push((start..out.len(), from, i));
        };
        for three in tag.toks.windows(3) {
            let [name, open, first] = three else { continue };
            let key = match slice(&body.text, &name.at).as_str() {
                "fixed" => "text=",
                "over" | "under" => "limit=",
                _ => continue,
            };
            if slice(&body.text, &open.at) == "(" && first.kind == TokKind::Text {
                copy(from, first.at.start, &mut out, &mut seams);
                out.push_str(key);
                from = first.at.start;
            }
        }
        copy(from, tag.inner.end, &mut out, &mut seams);
        out.push_str(if slot { ")" } else { "%}" });
        if slot {
            out.push_str(&format!(" | slot(n={i}) }}}}"));
        }
        seams.tags.push((opened..out.len(), i));
    }
    (out, seams)
}

/// The ask of a filter's name.
pub(super) fn ask(name: &str) -> crate::tally::Ask {
    ASKS.iter().find(|(n, _)| *n == name).map_or(crate::tally::Ask::Own, |(_, ask)| *ask)
}

/// What a path leads to, as far as it leads; names of loops lead nowhere.
pub(super) fn reached<'s>(path: &str, scope: &'s Scope) -> Option<&'s Slot> {
    let mut slot = Some(&scope.root);
    let mut last = None;
    for name in path.split('.') {
        slot = match slot {
            Some(Slot::Map(map)) => map.get(name),
            _ => return last,
        };
        last = slot.or(last);
    }
    last
}
