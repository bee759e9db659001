//! Every mutant of the front matter of a folder, in the order of its files and lines.

use std::fmt;

use hodbook::quantity::Dim;
use hodbook::quantity::units::find_expr;
use hodbook::source::Folder;

/// How a line was broken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// One digit of a number is another.
    Digit,
    /// A unit is another unit.
    Unit,
    /// A key lacks a letter.
    Key,
    /// The line is gone.
    Deleted,
    /// The line stands twice.
    Twice,
}

/// One file of the folder, broken in one place.
pub struct Mutant {
    /// How.
    pub kind: Kind,
    /// The file.
    pub path: String,
    /// Its text.
    pub text: String,
    /// Lines where a finding about it may point, counted from 1.
    pub lines: Vec<usize>,
    /// For people: what the line was and is.
    pub what: String,
    /// True for a swapped unit of water, mass or thickness.
    pub measured: bool,
}

impl fmt::Display for Mutant {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?} {}:{} {}", self.kind, self.path, self.lines.first().unwrap_or(&0), self.what)
    }
}

/// A unit and what a slip of the pen makes of it.
const SWAPS: &[(&str, &[&str])] = &[
    ("gal", &["qt", "L"]),
    ("qt", &["pt", "gal"]),
    ("pt", &["qt", "cup"]),
    ("cup", &["pt", "gal"]),
    ("L", &["gal", "mL"]),
    ("mL", &["L"]),
    ("lb", &["kg", "oz"]),
    ("kg", &["lb", "g"]),
    ("in", &["ft", "mm"]),
    ("ft", &["in", "m"]),
    ("mm", &["in", "cm"]),
    ("m", &["ft", "cm"]),
    ("min", &["h", "s"]),
    ("h", &["min"]),
    ("days", &["h"]),
    ("°F", &["°C"]),
    ("°C", &["°F"]),
    ("lb/ft2", &["lb/ft3"]),
    ("ft2/h", &["ft2/gal"]),
    ("lb/gal", &["kg/L"]),
    ("ft3", &["ft2"]),
];

/// Every mutant.
pub fn all(folder: &Folder) -> Vec<Mutant> {
    let mut out = Vec::new();
    for file in folder.files().iter().filter(|f| f.path.ends_with(".md") && f.text.starts_with("---\n")) {
        let lines: Vec<&str> = file.text.split_inclusive('\n').collect();
        let Some(end) = lines.iter().skip(1).position(|l| *l == "---\n").map(|n| n + 1) else { continue };
        for at in 1..end {
            let line = lines[at].trim_end_matches('\n');
            if line.trim().is_empty() || line.trim_start().starts_with('#') {
                continue;
            }
            let with = |new: &str| -> String {
                lines.iter().enumerate().map(|(i, l)| if i == at { new.to_owned() } else { (*l).to_owned() }).collect()
            };
            let mut push = |kind, new: Option<String>, here: Vec<usize>, measured| {
                let text = with(&new.as_ref().map_or(String::new(), |n| format!("{n}\n")));
                let what = match kind {
                    Kind::Deleted => format!("`{}` is gone", line.trim()),
                    Kind::Twice => format!("`{}` stands twice", line.trim()),
                    _ => format!("`{}` is `{}`", line.trim(), new.as_deref().unwrap_or("").trim()),
                };
                out.push(Mutant { kind, path: file.path.clone(), text, lines: here, what, measured });
            };
            for new in digits(line) {
                push(Kind::Digit, Some(new), vec![at + 1], false);
            }
            for (new, measured) in units(line) {
                push(Kind::Unit, Some(new), vec![at + 1], measured);
            }
            for new in keys(line) {
                push(Kind::Key, Some(new), vec![at + 1], false);
            }
            push(Kind::Deleted, None, parents(&lines, at), false);
            push(Kind::Twice, Some(format!("{line}\n{line}")), vec![at + 1, at + 2], false);
        }
    }
    out
}

/// The line of the parent key of a line, or the fence; a deleted list item or block also has its neighbours' lines.
fn parents(lines: &[&str], at: usize) -> Vec<usize> {
    let depth = |l: &str| l.len() - l.trim_start().len();
    let own = depth(lines[at]);
    let parent = (1..at).rev().find(|i| depth(lines[*i]) < own).map_or(1, |i| i + 1);
    // Where the line was a key of a block, the block now hangs on the line before it: that is where YAML breaks.
    vec![parent, at, at + 1]
}

/// One digit changed in each number: the first that is not a leading one of a long number, by a rule and not by chance.
fn digits(line: &str) -> Vec<String> {
    let Some(from) = value_from(line) else { return Vec::new() };
    let bytes = line.as_bytes();
    let mut out = Vec::new();
    let mut i = from;
    while i < bytes.len() {
        if !bytes[i].is_ascii_digit() {
            i += 1;
            continue;
        }
        let start = i;
        while i < bytes.len() && bytes[i].is_ascii_digit() {
            i += 1;
        }
        // A letter before it makes it a code.
        if start > 0 && (bytes[start - 1].is_ascii_alphabetic() || bytes[start - 1] == b'-' && !line.contains("202")) {
            continue;
        }
        let at = start + (i - start) / 2;
        let new = (bytes[at] - b'0' + 3) % 10;
        out.push(format!("{}{new}{}", &line[..at], &line[at + 1..]));
    }
    out
}

/// Each quantity of the line with another unit.
fn units(line: &str) -> Vec<(String, bool)> {
    let Some(from) = value_from(line) else { return Vec::new() };
    let mut out = Vec::new();
    for (unit, others) in SWAPS {
        let mut search = from;
        while let Some(found) = line[search..].find(unit) {
            let at = search + found;
            let end = at + unit.len();
            search = end;
            let before = line[..at].trim_end_matches(' ');
            let number = before.len() < at && before.ends_with(|c: char| c.is_ascii_digit());
            let over = line[end..].starts_with(|c: char| c.is_alphanumeric() || c == '/' || c == '°');
            if !number || over {
                continue;
            }
            let dim = find_expr(unit).map(|u| u.dim());
            // Nothing is nothing in any unit, but for a thermometer's: `0 ft` as `0 in` is no slip.
            if before.rsplit([' ', '[', '"']).next() == Some("0") && dim != Some(Dim::TEMPERATURE) {
                continue;
            }
            let thick = dim == Some(Dim::LENGTH)
                && ["thickness", "least", "most", "mean", "lift", "key", "overhead"].contains(&key_of(&line[..at]));
            let measured = dim == Some(Dim::VOLUME) && *unit != "ft3" || dim == Some(Dim::MASS) || thick;
            for other in *others {
                out.push((format!("{}{other}{}", &line[..at], &line[end..]), measured));
            }
        }
    }
    out
}

/// The last key of a part of a line.
fn key_of(part: &str) -> &str {
    let head = part.rsplit_once(": ").map_or("", |(head, _)| head);
    head.rsplit([' ', '{', ',']).next().unwrap_or("")
}

/// Each key of the line without its middle letter.
fn keys(line: &str) -> Vec<String> {
    let mut out = Vec::new();
    let mut from = 0;
    while let Some(colon) = line[from..].find(':').map(|i| from + i) {
        from = colon + 1;
        let head = &line[..colon];
        let start = head.rfind(|c: char| !(c.is_alphanumeric() || c == '_' || c == '-')).map_or(0, |i| i + 1);
        let ends = line[colon + 1..].is_empty() || line[colon + 1..].starts_with(' ');
        let opens = head[..start].trim_end().is_empty() || head[..start].trim_end().ends_with(['{', ',', '-']);
        if colon - start < 3 || !ends || !opens || line[start..colon].chars().any(|c| c.is_ascii_uppercase()) {
            continue;
        }
        let at = start + (colon - start) / 2;
        out.push(format!("{}{}", &line[..at], &line[at + 1..]));
    }
    out
}

/// Where the value of a line begins: behind its first colon, or its dash.
fn value_from(line: &str) -> Option<usize> {
    let text = line.trim_start();
    let indent = line.len() - text.len();
    if text.starts_with("- ") { Some(indent + 2) } else { line.find(": ").map(|i| i + 2) }
}
