//! A table of comma-separated values as records of cells that know their places.

use crate::source::{File, Span};

/// A cell: its letters without quotes and spaces around them, and where they stand.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cell<'a> {
    pub text: &'a str,
    pub at: Span,
}

/// The records of a file, one after the other. Records may differ in length; empty lines are passed over.
pub(super) struct Records<'a> {
    file: &'a File,
    text: &'a str,
    /// Bytes of a byte order mark before the text.
    mark: usize,
    reader: csv::Reader<&'a [u8]>,
    record: csv::StringRecord,
}

impl<'a> Records<'a> {
    pub fn of(file: &'a File) -> Records<'a> {
        let text = file.text.strip_prefix('\u{feff}').unwrap_or(&file.text);
        let reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).from_reader(text.as_bytes());
        Records { file, text, mark: file.text.len() - text.len(), reader, record: csv::StringRecord::new() }
    }
}

impl<'a> Iterator for Records<'a> {
    type Item = Vec<Cell<'a>>;

    fn next(&mut self) -> Option<Vec<Cell<'a>>> {
        // The text is UTF-8 and lengths may differ, so the reader has no fault left to give.
        if !self.reader.read_record(&mut self.record).unwrap_or(false) {
            return None;
        }
        let begin = self.record.position().and_then(|p| usize::try_from(p.byte()).ok()).unwrap_or(self.text.len());
        let rest = self.text.get(begin..).unwrap_or("");
        let mut at = begin + (rest.len() - rest.trim_start_matches(['\r', '\n']).len());
        let mut cells = Vec::with_capacity(self.record.len());
        for field in &self.record {
            let rest = self.text.get(at..).unwrap_or("");
            let (from, to, next) = if rest.starts_with('"') { quoted(rest) } else { (0, field.len(), field.len()) };
            let letters = rest.get(from..to).unwrap_or("");
            let text = letters.trim();
            let start = self.mark + at + from + (letters.len() - letters.trim_start().len());
            cells.push(Cell { text, at: self.file.span(start, start + text.len()) });
            at += next + 1;
        }
        Some(cells)
    }
}

/// Begin and end of the letters between quotes, and where the cell ends; a doubled quote is one of the letters.
fn quoted(rest: &str) -> (usize, usize, usize) {
    let bytes = rest.as_bytes();
    let mut at = 1;
    while let Some(byte) = bytes.get(at) {
        match (byte, bytes.get(at + 1)) {
            (b'"', Some(b'"')) => at += 2,
            (b'"', _) => break,
            _ => at += 1,
        }
    }
    let end = at.min(rest.len());
    // Letters after the closing quote belong to the cell and are dropped with it.
    let tail = rest.get(end..).unwrap_or("").find([',', '\n']).unwrap_or(0);
    (1, end, end + tail)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cells(text: &str) -> Vec<Vec<(String, String)>> {
        let file = File { id: 0, path: "weather/x.csv".into(), text: text.into(), whole: true };
        let said = |c: &Cell<'_>| {
            let (line, column) = file.place(c.at.start);
            assert_eq!(file.slice(c.at), c.text);
            (c.text.to_owned(), format!("{line}:{column}"))
        };
        Records::of(&file).map(|r| r.iter().map(said).collect()).collect()
    }

    #[test]
    fn cells_know_their_places() {
        let got = cells("\u{feff}time, air (°F)\r\n\r\n\"a, b\",74\r\n,\" x\"\"y \",\n");
        let at = |rows: &[&[(&str, &str)]]| -> Vec<Vec<(String, String)>> {
            rows.iter().map(|r| r.iter().map(|(t, p)| ((*t).to_owned(), (*p).to_owned())).collect()).collect()
        };
        let want = at(&[
            &[("time", "1:1"), ("air (°F)", "1:7")],
            &[("a, b", "3:2"), ("74", "3:8")],
            &[("", "4:1"), ("x\"\"y", "4:4"), ("", "4:11")],
        ]);
        assert_eq!(got, want);
    }

    #[test]
    fn torn_tables_end() {
        for text in ["", "\n\n", "\"", "a,\"b", "\"a\"b,c", ",,,", "é,\"ñ\"\r", "a\rb\rc"] {
            assert!(cells(text).len() < 5, "{text:?}");
        }
    }
}
