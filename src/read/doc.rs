//! One file: fence, YAML, format mark, kind, table.

use crate::finding::{Finding, Severity};
use crate::job::{Body, Text};
use crate::source::{self, Fault, File, Front, Span};

use super::doubt::Amount;
use super::group::Group;
use super::kinds::{FORMAT, HEAD, KindOf};
use super::near;
use super::reader::Reader;
use super::yaml::{self, Entry, Tree, Value};

/// One file of a known kind, as far as it could be read.
#[derive(Debug)]
pub(super) struct Doc<'a> {
    pub file: &'a File,
    pub kind: &'static KindOf,
    /// `None` if the front matter could not be read.
    pub group: Option<Group>,
    pub body: Body,
    /// The opening fence, or the start of the file.
    pub open: Span,
    /// Every amount that was read in it.
    pub amounts: Vec<Amount>,
}

impl Doc<'_> {
    /// Title, name or signal word of the original; the file's stem where there is none.
    pub fn title(&self) -> Text {
        let key = self.kind.title.unwrap_or("name");
        let group = self.group.as_ref();
        let words = |g: &Group| g.words(key).and_then(|w| w.into_iter().next()).map(|(_, t)| t);
        group.and_then(|g| g.text(key).or_else(|| words(g))).unwrap_or_else(|| Text { text: self.file.stem().to_owned(), at: self.open })
    }
}

/// A fault of a file as a finding.
pub(super) fn of_fault(fault: &Fault) -> Finding {
    let finding = Finding::new(fault.name, Severity::Stop, fault.what.clone()).help(fault.help.clone());
    match fault.at {
        Some(at) => finding.at(at, ""),
        None => finding,
    }
}

/// Reads one file; whatever is wrong goes to `findings`, and the file is still listed so that others may refer
/// to it without a second complaint.
pub(super) fn read<'a>(file: &'a File, kind: &'static KindOf, findings: &mut Vec<Finding>) -> Doc<'a> {
    let start = file.span(0, 0);
    let mut doc = Doc { file, kind, group: None, body: Body::default(), open: start, amounts: Vec::new() };
    if !file.whole {
        return doc;
    }
    let front = match source::front(file) {
        Ok(front) => front,
        Err(fault) => {
            findings.push(of_fault(&fault));
            return doc;
        }
    };
    let text = file.text.get(front.body..).unwrap_or("").to_owned();
    doc.body = Body { file: file.id, offset: u32::try_from(front.body).unwrap_or(u32::MAX), text };
    doc.open = front.open;
    let mut reader = Reader::new(file);
    doc.group = group(&mut reader, &front, kind);
    findings.append(&mut reader.findings);
    doc.amounts = reader.amounts;
    doc
}

fn group(reader: &mut Reader<'_>, front: &Front, kind: &'static KindOf) -> Option<Group> {
    if tabs(reader, front) {
        return None;
    }
    let tree = match yaml::read(reader.file, front.yaml.start, front.yaml.end) {
        Ok(tree) => tree,
        Err(bad) => {
            reader.stop(bad.name, bad.what, bad.at, "", bad.help);
            return None;
        }
    };
    let Value::Map { entries, .. } = &tree.value else {
        let title = format!("the front matter is {}, keys are wanted", tree.sort());
        reader.stop("sort-wrong", title, tree.at, "", "write `key: value`, one a line");
        return None;
    };
    if !head(reader, entries, front.open, kind) {
        return None;
    }
    let also: Vec<&str> = HEAD.iter().map(|f| f.name).collect();
    match reader.file.language() {
        None => reader.group(&tree, front.open, kind.fields, &also, ""),
        Some(language) => twin(reader, &tree, entries, front.open, kind, language, also),
    }
}

fn tabs(reader: &mut Reader<'_>, front: &Front) -> bool {
    let file = reader.file;
    let mut at = front.yaml.start;
    for line in file.text.get(front.yaml.clone()).unwrap_or("").split_inclusive('\n') {
        let indent = line.len() - line.trim_start_matches([' ', '\t']).len();
        let tab = line.get(..indent).and_then(|i| i.find('\t'));
        if let (Some(tab), false) = (tab, line.trim().is_empty()) {
            let place = file.span(at + tab, at + tab + 1);
            reader.stop("yaml-tab", "a tab indents this line of the front matter", place, "", "indent with spaces");
            return true;
        }
        at += line.len();
    }
    false
}

fn head(reader: &mut Reader<'_>, entries: &[Entry], open: Span, kind: &'static KindOf) -> bool {
    let get = |key: &str| entries.iter().find(|e| e.key == key);
    let scalar = |e: &Entry| match &e.value.value {
        Value::Scalar { text, .. } => text.clone(),
        _ => String::new(),
    };
    match get("hodbook") {
        None => {
            let help = format!("add `hodbook: {FORMAT}`: the format mark");
            head_missing(reader, entries, "hodbook", open, kind, help);
            return false;
        }
        Some(entry) => match scalar(entry).parse::<u32>() {
            Ok(1..=FORMAT) => {}
            Ok(mark) if mark > FORMAT => {
                let title = format!("the file is marked format {mark}, this program reads format {FORMAT}");
                reader.stop("newer-format", title, entry.value.at, "", "use the newer program that wrote the mark");
                return false;
            }
            _ => {
                let title = format!("the format mark is `{}`, {FORMAT} is wanted", scalar(entry));
                reader.stop("value-out-of-range", title, entry.value.at, "", format!("write `hodbook: {FORMAT}`"));
                return false;
            }
        },
    }
    match get("kind") {
        None => {
            head_missing(reader, entries, "kind", open, kind, format!("add `kind: {}`: {}", kind.kind, kind.meaning));
            false
        }
        Some(entry) if scalar(entry) == kind.kind => true,
        Some(entry) => {
            let all = super::kinds::in_folder(kind.folder);
            let near = near::nearest(&scalar(entry), all.iter().copied());
            let one_of = if kind.folder.is_empty() || all.len() < 2 { format!("a `{}`", kind.kind) } else { near::listed(&all) };
            let place = if kind.folder.is_empty() { format!("`{}`", reader.file.path) } else { format!("a file in `{}/`", kind.folder) };
            let title = format!("the file says it is a `{}`, {place} is {one_of}", scalar(entry));
            let home = super::kinds::of_word(&scalar(entry)).filter(|_| near.is_none());
            let help = match home {
                Some(home) if !home.folder.is_empty() => format!("write `kind: {}`, or move the file to `{}/`", kind.kind, home.folder),
                _ => format!("write `kind: {}`", near.unwrap_or(kind.kind)),
            };
            reader.stop("kind-wrong", title, entry.value.at, "", help);
            false
        }
    }
}

/// A key of the head that is not there; where another key looks like a slip of it, that one is shown.
fn head_missing(reader: &mut Reader<'_>, entries: &[Entry], key: &str, open: Span, kind: &KindOf, help: String) {
    let ours = |e: &&Entry| HEAD.iter().any(|f| f.name == e.key) || kind.fields.iter().chain(kind.twin()).any(|f| f.name == e.key);
    match entries.iter().filter(|e| !ours(e)).find(|e| near::nearest(&e.key, [key]).is_some()) {
        Some(slip) => {
            let title = format!("no key is called `{}` here", slip.key);
            reader.stop("unknown-key", title, slip.key_at, "", format!("did you mean `{key}`?"));
        }
        None => reader.stop("missing-key", format!("`{key}` is missing from the front matter"), open, "here", help),
    }
}

fn twin(
    reader: &mut Reader<'_>,
    tree: &Tree,
    entries: &[Entry],
    open: Span,
    kind: &'static KindOf,
    language: &str,
    mut also: Vec<&str>,
) -> Option<Group> {
    let fields = kind.twin();
    for entry in entries {
        let own = fields.iter().any(|f| f.name == entry.key) || also.contains(&entry.key.as_str());
        if let (false, Some(field)) = (own, kind.fields.iter().find(|f| f.name == entry.key)) {
            let title = format!("a twin holds words only, `{}` is written once, in the original", field.name);
            let original = format!("remove it here; it stands in the file without `.{language}`");
            reader.stop("twin-key", title, entry.key_at, "", original);
            also.push(field.name);
        }
    }
    let group = reader.group(tree, open, fields, &also, "")?;
    let said = group.text("language")?;
    if said.text != language {
        let title = format!("the file name says `{language}`, the front matter says `{}`", said.text);
        reader.stop("language-wrong", title, said.at, "", format!("write `language: {language}`, or rename the file"));
    }
    if !reader.language(language, said.at) {
        return None;
    }
    Some(group)
}
