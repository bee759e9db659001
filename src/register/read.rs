//! Reading the whole register. A line that cannot be read is a finding; the rest still counts.

use crate::finding::{Finding, Severity};
use crate::source::Span;

use super::entry::{Entry, FORMAT, digest};

/// The register as read.
#[derive(Clone, Debug, Default)]
pub struct Register {
    entries: Vec<Entry>,
    bytes: Vec<u8>,
    unread: Vec<String>,
    newer: bool,
}

impl Register {
    /// Reads the file's bytes; empty bytes are an empty register. `file` is the number findings point into.
    ///
    /// Bytes and not text: a tail torn by a full disk may end inside a letter.
    pub fn read(bytes: &[u8], file: u32) -> (Register, Vec<Finding>) {
        let mut register = Register { bytes: bytes.to_vec(), ..Register::default() };
        let mut findings = Vec::new();
        let mut start = 0;
        for (i, raw) in bytes.split_inclusive(|b| *b == b'\n').enumerate() {
            let place = Span { file, start: narrow(start), end: narrow(start + raw.trim_ascii_end().len()) };
            start += raw.len();
            let torn = raw.last() != Some(&b'\n');
            register.line(raw, torn, i + 1, place, &mut findings);
        }
        (register, findings)
    }

    fn line(&mut self, raw: &[u8], torn: bool, number: usize, place: Span, findings: &mut Vec<Finding>) {
        let text = String::from_utf8_lossy(raw);
        if text.trim().is_empty() {
            return;
        }
        match entry(&text) {
            Ok(entry) => {
                if torn {
                    findings.push(torn_tail(number, "the line is whole and counts", place));
                }
                if entry.kind == super::Event::Issued && entry.digest != digest(&entry.values) {
                    findings.push(edited(&entry, number, place));
                }
                self.entries.push(entry);
                return;
            }
            Err(Unread::Newer(format)) => {
                self.newer = true;
                findings.push(newer(format, number, place));
            }
            Err(Unread::Broken(_)) if torn => findings.push(torn_tail(number, "the line is cut short and does not count", place)),
            Err(Unread::Broken(why)) => findings.push(broken(&why, number, place)),
        }
        self.unread.push(text.into_owned());
    }

    /// Every entry that could be read, oldest first.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The bytes it was read from: what a commit must still find in the file.
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }

    /// True if some line is of a newer format: this version must not write.
    pub fn is_newer(&self) -> bool {
        self.newer
    }

    /// True if a line that could not be read names this code or word. Such a card may hang somewhere.
    pub fn maybe_names(&self, name: &str) -> bool {
        let quoted = format!("\"{name}\"");
        self.unread.iter().any(|line| line.contains(&quoted))
    }
}

enum Unread {
    Newer(u64),
    Broken(String),
}

fn entry(text: &str) -> Result<Entry, Unread> {
    let value: serde_json::Value = serde_json::from_str(text).map_err(|e| Unread::Broken(plain(&e)))?;
    match value.get("format").and_then(serde_json::Value::as_u64) {
        Some(format) if format > u64::from(FORMAT) => return Err(Unread::Newer(format)),
        Some(1) => {}
        _ => return Err(Unread::Broken("no `format: 1`".to_owned())),
    }
    // From the text and not from `value`: only so are doubled keys seen.
    serde_json::from_str(text).map_err(|e| Unread::Broken(plain(&e)))
}

/// The parser's message without its place: the finding has a better one.
fn plain(error: &serde_json::Error) -> String {
    let text = error.to_string();
    text.rsplit_once(" at line ").map_or(text.clone(), |(message, _)| message.to_owned())
}

fn narrow(at: usize) -> u32 {
    u32::try_from(at).unwrap_or(u32::MAX)
}

fn torn_tail(number: usize, effect: &str, place: Span) -> Finding {
    Finding::new("register-tail-torn", Severity::Warn, format!("line {number} of the register has no line end: {effect}"))
        .at(place, "the file stops here")
        .source("how the register is written: whole files only, so something else cut it")
        .help("restore the line from a copy of the folder, or issue the card again; the next issue leaves what is here untouched")
}

fn broken(why: &str, number: usize, place: Span) -> Finding {
    Finding::new("register-line-unreadable", Severity::Hold, format!("line {number} of the register cannot be read: {why}"))
        .at(place, "this card is not known")
        .source("form of the register, format 1")
        .help("restore the line from a copy of the folder; its code and check-word are kept free of other cards meanwhile")
}

fn newer(format: u64, number: usize, place: Span) -> Finding {
    Finding::new(
        "register-format-newer",
        Severity::Stop,
        format!("line {number} of the register is format {format}; this version reads up to {FORMAT}"),
    )
    .at(place, "written by a newer Hodbook")
    .source("form of the register, format 1")
    .help("issue with the newer version; this one would lose what it cannot read, so it writes nothing")
}

fn edited(entry: &Entry, number: usize, place: Span) -> Finding {
    let now = digest(&entry.values);
    let title =
        format!("line {number} of the register: {} rev {} says digest {}, its values give {now}", entry.code, entry.rev, entry.digest);
    Finding::new("register-line-edited", Severity::Warn, title)
        .at(place, "changed since it was issued")
        .source("form of the register, format 1")
        .help("compare with the footer of the printed card; the paper is right, the line is not")
}
