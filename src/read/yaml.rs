//! YAML as a tree of our own in which every key and value knows its place, and scalars stay as typed.

use std::borrow::Cow;

use serde_yaml::granit_parser::{Event, Options, Parser, ScalarStyle, StructureStyle};

use crate::source::{File, Span};

/// Nodes that one front matter may hold, aliases followed.
const MOST_NODES: usize = 60_000;
/// Depth that one front matter may have; the format needs six.
const MOST_DEPTH: usize = 48;

/// A value with its place.
#[derive(Clone, Debug)]
pub struct Tree {
    /// Its place; for a block map or list, the first key or item.
    pub at: Span,
    /// What it is.
    pub value: Value,
}

/// A scalar, list or map.
#[derive(Clone, Debug)]
pub enum Value {
    /// Nothing was written.
    Nothing,
    /// A scalar as typed, quotes taken off. `from` is the byte in the file where the text itself starts, if it
    /// stands there letter by letter (no escapes, no folded lines).
    Scalar {
        /// The text.
        text: String,
        /// Where it starts, if it is verbatim.
        from: Option<u32>,
    },
    /// A list.
    List(Vec<Tree>),
    /// A map; duplicate keys are kept, in order.
    Map {
        /// The entries.
        entries: Vec<Entry>,
        /// True for `{…}`.
        flow: bool,
    },
}

/// A key with its value.
#[derive(Clone, Debug)]
pub struct Entry {
    /// The key.
    pub key: String,
    /// Its place.
    pub key_at: Span,
    /// The value.
    pub value: Tree,
}

impl Tree {
    /// What a person would call it.
    pub fn sort(&self) -> &'static str {
        match &self.value {
            Value::Nothing => "nothing",
            Value::Scalar { .. } => "a text",
            Value::List(_) => "a list",
            Value::Map { .. } => "a map of keys",
        }
    }
}

/// Why the YAML could not be read.
#[derive(Debug)]
pub struct Bad {
    /// Name of the finding.
    pub name: &'static str,
    /// Place.
    pub at: Span,
    /// What is wrong.
    pub what: String,
    /// What would pass.
    pub help: String,
}

type Events<'a> = std::iter::Peekable<std::vec::IntoIter<(Event<'a>, Span)>>;

struct Builder<'a> {
    file: &'a File,
    anchors: Vec<(usize, Tree)>,
    nodes: usize,
}

/// Reads the YAML between bytes `from` and `to` of a file.
///
/// # Errors
/// The first fault at which reading had to stop.
pub fn read(file: &File, from: usize, to: usize) -> Result<Tree, Bad> {
    let text = file.text.get(from..to).unwrap_or("");
    let events = events(file, text, from)?;
    let mut builder = Builder { file, anchors: Vec::new(), nodes: 0 };
    let mut events = events.into_iter().peekable();
    if events.peek().is_none() {
        return Ok(Tree { at: file.span(from, from), value: Value::Map { entries: Vec::new(), flow: false } });
    }
    let tree = builder.tree(&mut events, 0)?;
    match events.next() {
        None => Ok(tree),
        Some((_, at)) => Err(Bad {
            name: "yaml-unreadable",
            at,
            what: "a second set of keys begins here".to_owned(),
            help: "close the front matter with a line that holds only `---`".to_owned(),
        }),
    }
}

fn events<'a>(file: &File, text: &'a str, from: usize) -> Result<Vec<(Event<'a>, Span)>, Bad> {
    let mut options = Options::default();
    options.flow_nesting_limit = MOST_DEPTH;
    options.block_nesting_limit = MOST_DEPTH;
    let mut parser = Parser::new_from_str_with_options(text, options);
    let mut events = Vec::new();
    while let Some(next) = parser.next_event() {
        match next {
            Ok((event, span)) => {
                let at = |m: &serde_yaml::granit_parser::Marker| m.byte_offset().unwrap_or(0).min(text.len());
                let (start, mut end) = (at(&span.start), at(&span.end));
                if let Event::Scalar(_, ScalarStyle::Plain, ..) = &event {
                    end = start + text.get(start..end).map_or(0, |t| t.trim_end().len());
                }
                let place = file.span(from + start, from + end);
                match event {
                    Event::StreamStart | Event::StreamEnd | Event::DocumentStart(..) | Event::DocumentEnd => {}
                    other => events.push((other, place)),
                }
            }
            Err(error) => {
                let start = offset(text, error.marker().line(), error.marker().col());
                let end = start + text.get(start..).and_then(|t| t.chars().next()).filter(|c| *c != '\n').map_or(0, char::len_utf8);
                return Err(Bad {
                    name: "yaml-unreadable",
                    at: file.span(from + start, from + end),
                    what: format!("the front matter cannot be read here: {}", reason(&error.info())),
                    help: "check the indentation, the quotes and the brackets above this place".to_owned(),
                });
            }
        }
        if events.len() > MOST_NODES {
            return Err(too_large(file.span(from, from)));
        }
    }
    Ok(events)
}

/// The parser's reason in our words: lower case, one line, and no thing is called invalid.
fn reason(info: &str) -> String {
    info.lines().next().unwrap_or("").to_lowercase().replace("an invalid", "a misplaced").replace("invalid", "misplaced")
}

/// Byte offset of a line (from 1) and column (from 0, in characters).
fn offset(text: &str, line: usize, column: usize) -> usize {
    let start = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum::<usize>();
    let rest = text.get(start..).unwrap_or("");
    start + rest.chars().take(column).take_while(|c| *c != '\n').map(char::len_utf8).sum::<usize>()
}

fn too_large(at: Span) -> Bad {
    Bad {
        name: "yaml-too-large",
        at,
        what: format!("the front matter holds more than {MOST_NODES} values, aliases followed, or is deeper than {MOST_DEPTH}"),
        help: "write the values out, without `&` and `*`".to_owned(),
    }
}

impl Builder<'_> {
    fn count(&mut self, nodes: usize, at: Span) -> Result<(), Bad> {
        self.nodes += nodes;
        if self.nodes > MOST_NODES { Err(too_large(at)) } else { Ok(()) }
    }

    fn tree(&mut self, events: &mut Events<'_>, depth: usize) -> Result<Tree, Bad> {
        let Some((event, at)) = events.next() else {
            return Ok(Tree { at: self.file.span(0, 0), value: Value::Nothing });
        };
        self.count(1, at)?;
        if depth > MOST_DEPTH {
            return Err(too_large(at));
        }
        let tag = match &event {
            Event::Scalar(.., tag) | Event::SequenceStart(.., tag) | Event::MappingStart(.., tag) => tag.as_ref(),
            _ => None,
        };
        if let Some(tag) = tag {
            return Err(Bad {
                name: "yaml-unreadable",
                at,
                what: format!("the tag `{}` means nothing here", tag.original()),
                help: "remove the tag; quote the text if it begins with `!`".to_owned(),
            });
        }
        let (tree, anchor) = match event {
            Event::Scalar(text, style, anchor, _) => (self.scalar(text, style, at), anchor),
            Event::SequenceStart(_, anchor, _) => {
                let mut items = Vec::new();
                let mut end = at.end;
                while let Some((next, last)) = events.peek() {
                    end = last.end;
                    if matches!(next, Event::SequenceEnd) {
                        events.next();
                        break;
                    }
                    items.push(self.tree(events, depth + 1)?);
                }
                (Tree { at: Span { end: end.max(at.end), ..at }, value: Value::List(items) }, anchor)
            }
            Event::MappingStart(style, anchor, _) => (self.map(events, depth, at, style == StructureStyle::Flow)?, anchor),
            Event::Alias(id) => {
                let found = self.anchors.iter().find(|(a, _)| *a == id).map(|(_, t)| t.clone());
                let tree = found.unwrap_or(Tree { at, value: Value::Nothing });
                let (nodes, deep) = size(&tree);
                self.count(nodes, at)?;
                if depth + deep > MOST_DEPTH {
                    return Err(too_large(at));
                }
                return Ok(tree);
            }
            _ => (Tree { at, value: Value::Nothing }, 0),
        };
        if anchor > 0 {
            self.anchors.push((anchor, tree.clone()));
        }
        Ok(tree)
    }

    fn map(&mut self, events: &mut Events<'_>, depth: usize, at: Span, flow: bool) -> Result<Tree, Bad> {
        let mut entries: Vec<Entry> = Vec::new();
        let mut end = at.end;
        while let Some((next, last)) = events.peek() {
            end = last.end;
            if matches!(next, Event::MappingEnd) {
                events.next();
                break;
            }
            let key = self.tree(events, depth + 1)?;
            let Value::Scalar { text, .. } = key.value else {
                return Err(Bad {
                    name: "yaml-unreadable",
                    at: key.at,
                    what: format!("a key is one word, here it is {}", key.sort()),
                    help: "write `key: value`".to_owned(),
                });
            };
            let value = self.tree(events, depth + 1)?;
            entries.push(Entry { key: text, key_at: key.at, value });
        }
        // A block map ends where the next thing starts; its first key is the better place to point at.
        let at = match entries.first() {
            Some(first) if !flow => first.key_at,
            _ => Span { end: end.max(at.end), ..at },
        };
        Ok(Tree { at, value: Value::Map { entries, flow } })
    }

    fn scalar(&self, text: Cow<'_, str>, style: ScalarStyle, at: Span) -> Tree {
        let raw = self.file.slice(at);
        if style == ScalarStyle::Plain && (raw.is_empty() || raw == "~") {
            return Tree { at, value: Value::Nothing };
        }
        let inner = match style {
            ScalarStyle::Plain => Some(0),
            ScalarStyle::SingleQuoted | ScalarStyle::DoubleQuoted => Some(1),
            _ => None,
        };
        let from = inner.filter(|i| raw.get(*i..i + text.len()) == Some(&*text));
        let from = from.and_then(|i| u32::try_from(i).ok()).map(|i| at.start + i);
        Tree { at, value: Value::Scalar { text: text.into_owned(), from } }
    }
}

fn size(tree: &Tree) -> (usize, usize) {
    let below: Vec<(usize, usize)> = match &tree.value {
        Value::List(items) => items.iter().map(size).collect(),
        Value::Map { entries, .. } => entries.iter().map(|e| size(&e.value)).collect(),
        _ => Vec::new(),
    };
    (1 + below.iter().map(|b| b.0).sum::<usize>(), 1 + below.iter().map(|b| b.1).max().unwrap_or(0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(text: &str) -> Result<Tree, Bad> {
        let file = File { id: 0, path: "company.md".into(), text: text.into(), whole: true };
        read(&file, 0, text.len())
    }

    fn only(tree: &Tree) -> (&Span, &Value) {
        let Value::Map { entries, .. } = &tree.value else { panic!("{tree:?}") };
        (&entries[0].value.at, &entries[0].value.value)
    }

    #[test]
    fn scalars_stay_as_typed_with_their_place() {
        for (text, want, at, from) in [
            ("a: 2.50\n", "2.50", 3..7, Some(3)),
            ("a: 007 # seven\n", "007", 3..6, Some(3)),
            ("a: no\r\nb: 1\r\n", "no", 3..5, Some(3)),
            ("a: \"1 gal\"\n", "1 gal", 3..10, Some(4)),
            ("a: 'it''s'\n", "it's", 3..10, None),
            ("ñ: 3/8 in\n", "3/8 in", 4..10, Some(4)),
        ] {
            let tree = parse(text).unwrap();
            let (span, value) = only(&tree);
            assert_eq!((span.start..span.end), at, "{text}");
            let Value::Scalar { text: got, from: place } = value else { panic!("{value:?}") };
            assert_eq!((got.as_str(), *place), (want, from), "{text}");
        }
        assert!(matches!(only(&parse("a:\nb: 1\n").unwrap()).1, Value::Nothing));
    }

    #[test]
    fn flow_maps_point_at_all_of_themselves() {
        let tree = parse("a: {b: 1, c: 2}\n").unwrap();
        assert_eq!((only(&tree).0.start, only(&tree).0.end), (3, 15));
    }

    #[test]
    fn an_alias_bomb_is_refused_at_once() {
        let mut text = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for i in 1..12 {
            let p = i - 1;
            text.push_str(&format!("a{i}: &a{i} [*a{p}, *a{p}, *a{p}, *a{p}, *a{p}, *a{p}, *a{p}, *a{p}, *a{p}]\n"));
        }
        assert_eq!(parse(&text).unwrap_err().name, "yaml-too-large");
        assert!(parse(&"[".repeat(5000)).is_err());
        assert!(parse(&format!("a: {}", "{a: ".repeat(5000))).is_err());
    }

    #[test]
    fn nothing_is_passed_over_in_silence() {
        for text in ["a: !x 1\n", "a: !!str 1\n", "a: 1\n--- # more\nb: 2\n", "[a]: 1\n"] {
            assert_eq!(parse(text).unwrap_err().name, "yaml-unreadable", "{text}");
        }
        let folded = parse("a: >\n  one\n  two\n").unwrap();
        assert!(matches!(only(&folded).1, Value::Scalar { text, from: None } if text == "one two\n"));
    }

    #[test]
    fn errors_have_a_line_and_a_column() {
        let bad = parse("a: 1\nb: [1, 2\nc: 3\n").unwrap_err();
        assert_eq!(bad.name, "yaml-unreadable");
        assert!(bad.at.start >= 5, "{bad:?}");
    }
}
