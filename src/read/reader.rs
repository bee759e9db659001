//! Walks a tree with a field table. Every fault becomes a finding at the author's characters; what is sound
//! is handed on.

use crate::finding::{Finding, Severity};
use crate::job::Text;
use crate::source::{File, Span};
use crate::words::Lang;

use super::doubt::Amount;
use super::field::{Field, Need, Want};
use super::group::{Group, Item, all};
use super::near;
use super::yaml::{Entry, Tree, Value};

/// A scalar with its places.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scalar<'a> {
    pub text: &'a str,
    pub from: Option<u32>,
    pub at: Span,
}

impl Scalar<'_> {
    /// A part of the text as a place in the file; all of the scalar if its letters are not the file's.
    pub fn part(&self, range: &std::ops::Range<usize>) -> Span {
        let shift = |n: usize| self.from.and_then(|f| u32::try_from(n).ok().map(|n| f + n));
        match (shift(range.start), shift(range.end)) {
            (Some(start), Some(end)) if end > start => Span { start, end, ..self.at },
            _ => self.at,
        }
    }

    pub fn text(&self) -> Text {
        // A block scalar ends with a line end that nobody wants on paper.
        Text { text: self.text.trim_end_matches('\n').to_owned(), at: self.at }
    }
}

/// Reads one file.
pub struct Reader<'a> {
    /// The file.
    pub file: &'a File,
    /// What was found.
    pub findings: Vec<Finding>,
    /// Every amount that was read.
    pub(super) amounts: Vec<Amount>,
}

impl<'a> Reader<'a> {
    /// A reader of a file.
    pub fn new(file: &'a File) -> Reader<'a> {
        Reader { file, findings: Vec::new(), amounts: Vec::new() }
    }

    /// Adds a STOP at a place.
    pub fn stop(&mut self, name: &'static str, title: impl Into<String>, at: Span, label: impl Into<String>, help: impl Into<String>) {
        self.findings.push(Finding::new(name, Severity::Stop, title).at(at, label).help(help));
    }

    /// Reads a map by a table. `also` are keys that someone else reads. `path` is the key path so far, `at` the
    /// place to point at for what is missing.
    pub fn group(&mut self, tree: &Tree, at: Span, fields: &'static [Field], also: &[&str], path: &str) -> Option<Group> {
        let Value::Map { entries, .. } = &tree.value else {
            let keys: Vec<&str> = fields.iter().map(|f| f.name).collect();
            let name = said(path);
            let title = format!("{name} is {}, keys are wanted", tree.sort());
            self.stop("sort-wrong", title, tree.at, "", format!("its keys are {}", near::listed(&keys)));
            return None;
        };
        self.duplicates(entries);
        let meant = self.unknown(entries, fields, also);
        let mut group = Group { at, items: Vec::new(), faulty: meant.clone() };
        for field in fields {
            if let Some(entry) = entries.iter().find(|e| e.key == field.name) {
                let below = join(path, field.name);
                let read = self.item(field, entry, entries, &below);
                match read {
                    Some(item) => group.items.push((field.name, item)),
                    None => group.faulty.push(field.name),
                }
            }
        }
        for field in fields {
            let entry = entries.iter().find(|e| e.key == field.name);
            match (field.need, entry) {
                (Need::Always, None) if !meant.contains(&field.name) => self.missing(field, at, path, ""),
                (Need::When(key, values) | Need::WhenElseFree(key, values) | Need::FreeWhen(key, values), entry) => {
                    let said = group.text(key).map(|t| t.text);
                    let known = fields.iter().any(|f| f.name == key);
                    let (must, only) = (!matches!(field.need, Need::FreeWhen(..)), known && !matches!(field.need, Need::WhenElseFree(..)));
                    match (said, entry) {
                        (Some(v), None) if must && values.contains(&v.as_str()) && !meant.contains(&field.name) => {
                            self.missing(field, at, path, &format!(", which a {v} needs"));
                        }
                        (Some(v), Some(entry)) if only && !values.contains(&v.as_str()) => {
                            let title = format!("a {v} has no `{}`", field.name);
                            let help = format!("`{}` belongs to {}", field.name, near::listed(values));
                            self.stop("key-out-of-place", title, entry.key_at, format!("`{key}` is {v}"), help);
                        }
                        _ => {}
                    }
                }
                _ => {}
            }
        }
        Some(group)
    }

    fn duplicates(&mut self, entries: &[Entry]) {
        for (i, entry) in entries.iter().enumerate() {
            if let Some(first) = entries.iter().take(i).find(|e| e.key == entry.key) {
                let finding = Finding::new("duplicate-key", Severity::Stop, format!("`{}` is written twice", entry.key))
                    .at(entry.key_at, "the second time")
                    .related(first.key_at, "the first time")
                    .help("keep one of them");
                self.findings.push(finding);
            }
        }
    }

    /// Reports keys that no row has; gives the rows that were probably meant, so that they are not reported as
    /// missing too.
    fn unknown(&mut self, entries: &[Entry], fields: &'static [Field], also: &[&str]) -> Vec<&'static str> {
        let mut meant = Vec::new();
        for entry in entries {
            let key = entry.key.as_str();
            let known = also.contains(&key) || fields.iter().any(|f| f.name == key || is_words_key(f, key));
            if known {
                continue;
            }
            let left = fields.iter().filter(|f| !entries.iter().any(|e| e.key == f.name)).map(|f| f.name);
            let near = near::nearest(key, left).or_else(|| near::nearest(key, fields.iter().map(|f| f.name)));
            meant.extend(near);
            let help = match near {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("the keys here are {}", near::listed(&fields.iter().map(|f| f.name).collect::<Vec<_>>())),
            };
            self.stop("unknown-key", format!("no key is called `{key}` here"), entry.key_at, "", help);
        }
        meant
    }

    fn missing(&mut self, field: &Field, at: Span, path: &str, why: &str) {
        let within = if path.is_empty() { String::new() } else { format!(" from {}", said(path)) };
        let title = format!("`{}` is missing{within}{why}", field.name);
        let example = example(field);
        self.stop("missing-key", title, at, "here", format!("add `{example}`: {}", field.meaning));
    }

    fn item(&mut self, field: &'static Field, entry: &Entry, entries: &[Entry], path: &str) -> Option<Item> {
        let tree = &entry.value;
        match field.want {
            Want::Group(fields) => {
                let at = if matches!(tree.value, Value::Map { flow: true, .. }) { tree.at } else { entry.key_at };
                self.group(tree, at, fields, &[], path).map(Item::Group)
            }
            Want::Map(example, fields) => self.map(field, example, fields, entry, path),
            Want::List(fields) => {
                let items = self.listed(field, entry)?;
                self.twice(field, items);
                let mut groups = Vec::new();
                for (i, item) in items.iter().enumerate() {
                    groups.push(self.group(item, item.at, fields, &[], &format!("{path}.{}", i + 1)));
                }
                all(groups).map(Item::List)
            }
            Want::Texts | Want::Languages => {
                let items = self.listed(field, entry)?;
                // Texts may stand twice: two blocks of one wording have one digest.
                if matches!(field.want, Want::Languages) {
                    self.twice(field, items);
                }
                let mut texts = Vec::new();
                for item in items {
                    let scalar = self.scalar(field, item, entry.key_at);
                    let good = scalar.filter(|s| !matches!(field.want, Want::Languages) || self.language(s.text, s.at));
                    texts.push(good.map(|s| s.text()));
                }
                all(texts).map(|texts| Item::Texts(texts, tree.at))
            }
            Want::Choices(words) => {
                let mut texts = Vec::new();
                for item in self.listed(field, entry)? {
                    let chosen = self.scalar(field, item, entry.key_at).and_then(|s| self.choice(field, s, words));
                    texts.push(chosen);
                }
                all(texts).map(|texts| Item::Texts(texts, tree.at))
            }
            Want::Corners => self.corners(field, entry, path),
            Want::Lengths => {
                let items = self.listed(field, entry)?;
                let mut lengths = Vec::new();
                for (i, item) in items.iter().enumerate() {
                    let scalar = self.scalar(field, item, entry.key_at);
                    lengths.push(scalar.and_then(|s| self.length(field, s, &format!("{path}.{}", i + 1))));
                }
                all(lengths).map(Item::Lengths)
            }
            Want::Dates => {
                let items = self.listed(field, entry)?;
                self.twice(field, items);
                let mut days = Vec::new();
                for item in items {
                    let scalar = self.scalar(field, item, entry.key_at);
                    days.push(scalar.and_then(|s| self.date(s)));
                }
                all(days).map(Item::Days)
            }
            Want::Words => {
                let mut words = vec![("en".to_owned(), self.scalar(field, tree, entry.key_at)?.text())];
                for other in entries.iter().filter(|e| is_words_key(field, &e.key)) {
                    let code = other.key.rsplit('_').next().unwrap_or_default();
                    if let Some(scalar) = self.scalar(field, &other.value, other.key_at) {
                        words.push((code.to_owned(), scalar.text()));
                    }
                }
                Some(Item::Words(words))
            }
            _ => {
                let scalar = self.scalar(field, tree, entry.key_at)?;
                self.value(field, scalar, path)
            }
        }
    }

    fn map(&mut self, field: &Field, example: &str, fields: &'static [Field], entry: &Entry, path: &str) -> Option<Item> {
        let Value::Map { entries, .. } = &entry.value.value else {
            let title = format!("`{}` is {}, named entries are wanted", field.name, entry.value.sort());
            self.stop("sort-wrong", title, entry.key_at, field.meaning, format!("write each under its own name, such as `{example}:`"));
            return None;
        };
        self.duplicates(entries);
        let mut read = Vec::new();
        for one in entries {
            let below = join(path, &one.key);
            let group = self.like(one, entries).and_then(|tree| {
                let flow = matches!(tree.value, Value::Map { flow: true, .. });
                let at = if flow { one.value.at } else { one.key_at };
                self.group(&tree, at, fields, &[], &below)
            });
            read.push(group.map(|g| (Text { text: one.key.clone(), at: one.key_at }, g)));
        }
        all(read).map(Item::Map)
    }

    /// `W2: {like: W1, left: 12 ft}`: the keys of W1, with those of W2 in their place.
    fn like(&mut self, one: &Entry, siblings: &[Entry]) -> Option<Tree> {
        let Value::Map { entries, flow } = &one.value.value else { return Some(one.value.clone()) };
        let Some(like) = entries.iter().find(|e| e.key == "like") else { return Some(one.value.clone()) };
        let Value::Scalar { text, .. } = &like.value.value else {
            self.stop("sort-wrong", "`like` names one entry beside this one", like.key_at, "", "write it like `like: W1`");
            return None;
        };
        let others: Vec<&Entry> = siblings.iter().filter(|s| s.key != one.key && !has_like(s)).collect();
        let Some(model) = others.iter().find(|s| s.key == *text) else {
            let names: Vec<&str> = others.iter().map(|s| s.key.as_str()).collect();
            let title = format!("`{}` is like `{text}`, which is not beside it", one.key);
            self.stop(
                "reference-unknown",
                title,
                like.value.at,
                "an entry without a `like` of its own is wanted",
                near::help(text, &names),
            );
            return None;
        };
        let Value::Map { entries: base, .. } = &model.value.value else { return Some(one.value.clone()) };
        let mut merged: Vec<Entry> = base.iter().filter(|b| !entries.iter().any(|e| e.key == b.key)).cloned().collect();
        merged.extend(entries.iter().filter(|e| e.key != "like").cloned());
        Some(Tree { at: one.value.at, value: Value::Map { entries: merged, flow: *flow } })
    }

    pub(super) fn scalar<'t>(&mut self, field: &Field, tree: &'t Tree, key_at: Span) -> Option<Scalar<'t>> {
        match &tree.value {
            Value::Scalar { text, from } if !text.trim().is_empty() => Some(Scalar { text, from: *from, at: tree.at }),
            Value::Scalar { .. } | Value::Nothing => {
                let title = format!("`{}` has no value", field.name);
                self.stop("value-empty", title, key_at, field.meaning, format!("write it like `{}`", example(field)));
                None
            }
            _ => {
                let title = format!("`{}` is {}, one value is wanted", field.name, tree.sort());
                self.stop("sort-wrong", title, tree.at, field.meaning, format!("write it like `{}`", example(field)));
                None
            }
        }
    }

    /// True if the code is a language of ours; reported if not.
    pub fn language(&mut self, code: &str, at: Span) -> bool {
        let known = Lang::find(code).is_some();
        if !known {
            let codes: Vec<&str> = Lang::all().map(Lang::code).collect();
            self.stop("language-unknown", format!("there is no dictionary for `{code}`"), at, "", near::help(code, &codes));
        }
        known
    }
}

fn has_like(entry: &Entry) -> bool {
    matches!(&entry.value.value, Value::Map { entries, .. } if entries.iter().any(|e| e.key == "like"))
}

/// True for `name_es` when `name` may be given in other languages.
fn is_words_key(field: &Field, key: &str) -> bool {
    let code = key.strip_prefix(field.name).and_then(|k| k.strip_prefix('_'));
    matches!(field.want, Want::Words) && code.is_some_and(|c| c != "en" && Lang::find(c).is_some())
}

/// `key: value` as an author would add it.
pub fn example(field: &Field) -> String {
    match field.want {
        Want::Group(fields) => format!("{}: {{{}}}", field.name, inner(fields)),
        Want::Map(name, fields) => format!("{}: {{{name}: {{{}}}}}", field.name, inner(fields)),
        Want::List(fields) => format!("{}: [{{{}}}]", field.name, inner(fields)),
        _ => format!("{}: {}", field.name, field.example),
    }
}

/// The keys that an example of a group needs; all of them where none is needed.
fn inner(fields: &[Field]) -> String {
    let example_of = |key: &str| fields.iter().find(|f| f.name == key).map_or("", |f| f.example);
    let wanted = |f: &&Field| match f.need {
        Need::Always => true,
        Need::Free | Need::FreeWhen(..) => false,
        Need::When(key, values) | Need::WhenElseFree(key, values) => values.contains(&example_of(key)),
    };
    let mut shown: Vec<&Field> = fields.iter().filter(wanted).collect();
    if shown.is_empty() {
        shown = fields.iter().collect();
    }
    shown.into_iter().map(example).collect::<Vec<_>>().join(", ")
}

fn join(path: &str, key: &str) -> String {
    if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") }
}

fn said(path: &str) -> String {
    if path.is_empty() { "the front matter".to_owned() } else { format!("`{path}`") }
}
