//! The fence between front matter and body.

use std::ops::Range;

use super::{Fault, File, Span};

/// Where the two parts of a file stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Front {
    /// The opening `---`.
    pub open: Span,
    /// Bytes of the YAML between the fences.
    pub yaml: Range<usize>,
    /// First byte of the body.
    pub body: usize,
}

/// Splits a file at its fences: the first line is `---` (after a byte order mark, if there is one), the next
/// line that is `---` or `...` ends the front matter.
///
/// # Errors
/// The fault, with its place, when either fence is missing.
pub fn front(file: &File) -> Result<Front, Fault> {
    let text: &str = &file.text;
    let start = if text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
    let mut at = start;
    let mut yaml = None;
    for line in text.get(start..).unwrap_or("").split_inclusive('\n') {
        let bare = line.trim_end();
        match yaml {
            None if bare == "---" => yaml = Some(at + line.len()),
            None => break,
            Some(from) if bare == "---" || bare == "..." => {
                let open = file.span(start, start + 3);
                return Ok(Front { open, yaml: from..at, body: at + line.len() });
            }
            Some(_) => {}
        }
        at += line.len();
    }
    let (end, name, what, help) = if yaml.is_some() {
        (3, "front-matter-open", "the front matter has no end", "close it with a line that holds only `---`")
    } else {
        let first = text.get(start..).and_then(|t| t.lines().next()).map_or(0, str::len);
        let help = "begin the file with a line `---`, then `hodbook: 1` and `kind:`, then `---` again";
        (first, "front-matter-missing", "the file does not begin with front matter", help)
    };
    Err(Fault { name, path: file.path.clone(), at: Some(file.span(start, start + end)), what: what.into(), help: help.into() })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn split(text: &str) -> Result<(String, String), &'static str> {
        let file = File { id: 0, path: "company.md".into(), text: text.into(), whole: true };
        let front = front(&file).map_err(|f| f.name)?;
        Ok((text[front.yaml].to_owned(), text[front.body..].to_owned()))
    }

    #[test]
    fn fences() {
        assert_eq!(split("---\na: 1\n---\nbody"), Ok(("a: 1\n".into(), "body".into())));
        assert_eq!(split("\u{feff}---\r\na: 1\r\n...\r\nbody"), Ok(("a: 1\r\n".into(), "body".into())));
        assert_eq!(split("---\n---"), Ok((String::new(), String::new())));
        assert_eq!(split("# title\n"), Err("front-matter-missing"));
        assert_eq!(split("---\na: 1\n"), Err("front-matter-open"));
        assert_eq!(split(""), Err("front-matter-missing"));
    }
}
