//! Lists, and an entry that stands twice in one: somebody copied a line and forgot to change it, or the list says a thing once
//! too often. Both read alike, and what is counted from the list is too much.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use crate::finding::{Finding, Severity};
use crate::source::Span;

use super::field::Field;
use super::reader::{Reader, example};
use super::yaml::{Entry, Tree, Value};

impl Reader<'_> {
    /// The items of a list; anything else is reported.
    pub(super) fn listed<'t>(&mut self, field: &Field, entry: &'t Entry) -> Option<&'t [Tree]> {
        if let Value::List(items) = &entry.value.value {
            return Some(items);
        }
        let title = format!("`{}` is {}, a list is wanted", field.name, entry.value.sort());
        let at = if matches!(entry.value.value, Value::Nothing) { entry.key_at } else { entry.value.at };
        self.stop("sort-wrong", title, at, field.meaning, format!("write it like `{}`", example(field)));
        None
    }

    /// Reports every entry that says the same as one above it.
    pub(super) fn twice(&mut self, field: &Field, items: &[Tree]) {
        let mut known: BTreeMap<String, Span> = BTreeMap::new();
        for item in items {
            let mut said = String::new();
            if !say(item, &mut said) {
                continue;
            }
            match known.get(&said) {
                Some(first) => {
                    let finding = Finding::new("entry-twice", Severity::Stop, format!("an entry of `{}` is written twice", field.name))
                        .at(item.at, "the second time")
                        .related(*first, "the first time")
                        .help("keep one of them, or write in one what differs");
                    self.findings.push(finding);
                }
                None => {
                    known.insert(said, item.at);
                }
            }
        }
    }
}

/// Writes what an entry says, alike for entries that say the same in whatever order their keys stand. False for what was
/// left empty, which has its own finding.
fn say(tree: &Tree, out: &mut String) -> bool {
    match &tree.value {
        Value::Nothing => false,
        Value::Scalar { text, .. } => {
            let _ = write!(out, "{text:?}");
            true
        }
        Value::List(items) => {
            out.push('[');
            let whole = items.iter().all(|item| say(item, out));
            out.push(']');
            whole
        }
        Value::Map { entries, .. } => {
            let mut sorted: Vec<_> = entries.iter().collect();
            sorted.sort_by(|a, b| a.key.cmp(&b.key));
            let whole = sorted.iter().all(|entry| {
                let _ = write!(out, "{:?}:", entry.key);
                say(&entry.value, out)
            });
            out.push(';');
            whole
        }
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use crate::finding::{Finding, short};
    use crate::source::Folder;

    fn found(path: &str, from: &str, to: &str) -> Vec<String> {
        let demo = Folder::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).unwrap();
        let text = &demo.at(path).unwrap().text;
        assert_eq!(text.matches(from).count(), 1, "{from}");
        let folder = demo.with_text(path, &text.replace(from, to));
        let (_, findings) = crate::read::job(&folder);
        findings.iter().map(|f: &Finding| short(f, &|n| folder.lines(n))).collect()
    }

    #[test]
    fn an_entry_written_twice_is_told() {
        let lot = "  - {mix: CARVE-24, material: mortar, lot: S-118, bag: 80 lb, made: 2026-01-12, state: dry}\n";
        let turned = "  - {state: dry, mix: CARVE-24, material: mortar, lot: S-118, bag: 80 lb, made: 2026-01-12}\n";
        for (path, from, to, says) in [
            ("sites/larkenfell.md", lot, format!("{lot}{lot}"), "66:5: STOP entry-twice: an entry of `lots` is written twice"),
            ("sites/larkenfell.md", lot, format!("{lot}{turned}"), "an entry of `lots` is written twice"),
            ("sites/larkenfell.md", "2026-03-04, 2026-03-05]", "2026-03-04, 2026-03-04]".to_owned(), "an entry of `carve`"),
            (
                "company.md",
                "MUD2: {role: mixer tender, languages: [en, es]}",
                "MUD2: {role: mixer tender, languages: [en, en]}".to_owned(),
                "`languages`",
            ),
        ] {
            let found = found(path, from, &to);
            assert!(found.len() == 1 && found[0].contains(says), "{to}: {found:?}");
        }
    }

    #[test]
    fn entries_that_differ_are_let_alone() {
        let (from, to) = ("late: [{by: 30 min}, {by: 60 min}]", "late: [{by: 30 min}, {by: 31 min}]");
        assert_eq!(found("sites/larkenfell.md", from, to), Vec::<String>::new());
    }
}
