//! What a problem is and how it is drawn. No trade words here.

mod count;
mod json;
mod plain;
mod short;

pub use count::count;
pub use json::json;
pub use plain::{Colour, plain};
pub use short::short;

use crate::source::Span;

/// Path and text of a file of the run by its number: what a drawing needs to show the author's lines.
pub type Lines<'a> = dyn Fn(u32) -> Option<(&'a str, &'a str)> + 'a;

impl Severity {
    /// Every severity, worst first.
    pub const ALL: [Severity; 4] = [Severity::Stop, Severity::Hold, Severity::Warn, Severity::Note];

    /// The word on screen and on paper.
    pub fn word(self) -> &'static str {
        match self {
            Severity::Stop => "STOP",
            Severity::Hold => "HOLD",
            Severity::Warn => "WARN",
            Severity::Note => "NOTE",
        }
    }
}

/// Line and column, both from 1, of a byte of a text; columns count characters and skip a byte order mark.
fn place(text: &str, offset: u32) -> (usize, usize) {
    let before = text.get(..floor(text, offset)).unwrap_or("");
    let line = before.bytes().filter(|b| *b == b'\n').count() + 1;
    let start = before.rfind('\n').map_or(0, |i| i + 1);
    (line, before.get(start..).unwrap_or("").chars().filter(|c| *c != BOM).count() + 1)
}

/// The nearest byte at or before `offset` that begins a character of the text.
fn floor(text: &str, offset: u32) -> usize {
    let mut at = (offset as usize).min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

const BOM: char = '\u{feff}';

/// How bad a finding is, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// The paper it touches is not printed.
    Stop,
    /// Printed with a band until a named role accepts it with a reason.
    Hold,
    /// Worth a look.
    Warn,
    /// Good to know.
    Note,
}

/// One finding.
#[derive(Clone, Debug)]
pub struct Finding {
    /// Kebab-case name of what is wrong; the same in code, file, test and manual.
    pub name: &'static str,
    /// Severity.
    pub severity: Severity,
    /// One line, lower case, no full stop, value and limit both shown.
    pub title: String,
    /// Where, with the label under the carets.
    pub at: Option<(Span, String)>,
    /// Related places.
    pub related: Vec<(Span, String)>,
    /// The arithmetic, a line each.
    pub derived: Vec<String>,
    /// Published source, or `common practice, no source`.
    pub source: String,
    /// What would pass.
    pub help: String,
    /// Ids of the figures it speaks of.
    pub figures: Vec<String>,
    /// The value that an acceptance must name, where it is not what stands under the carets.
    pub value: Option<String>,
    /// The one thing it is about, such as a surface's code: what tells two findings of a name in one file apart.
    pub about: Option<String>,
    /// Who accepted it; a finding that is accepted holds nothing up.
    pub accepted: Option<Accepted>,
}

/// An acceptance that holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accepted {
    /// Role.
    pub by: String,
    /// Reason.
    pub because: String,
    /// The value that was accepted; none where what is missing has none.
    pub value: Option<String>,
}

impl Finding {
    /// A finding with a name, a severity and a title; the rest empty.
    pub fn new(name: &'static str, severity: Severity, title: impl Into<String>) -> Finding {
        Finding {
            name,
            severity,
            title: title.into(),
            at: None,
            related: Vec::new(),
            derived: Vec::new(),
            source: String::new(),
            help: String::new(),
            figures: Vec::new(),
            value: None,
            about: None,
            accepted: None,
        }
    }

    /// Points at a place.
    #[must_use]
    pub fn at(mut self, span: Span, label: impl Into<String>) -> Finding {
        self.at = Some((span, label.into()));
        self
    }

    /// Adds a related place.
    #[must_use]
    pub fn related(mut self, span: Span, label: impl Into<String>) -> Finding {
        self.related.push((span, label.into()));
        self
    }

    /// Adds a line of arithmetic.
    #[must_use]
    pub fn derived(mut self, line: impl Into<String>) -> Finding {
        self.derived.push(line.into());
        self
    }

    /// Names the source.
    #[must_use]
    pub fn source(mut self, source: impl Into<String>) -> Finding {
        self.source = source.into();
        self
    }

    /// Says what would pass.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Finding {
        self.help = help.into();
        self
    }

    /// The value that an acceptance must name. Without it that is the text under the carets.
    #[must_use]
    pub fn value(mut self, value: impl Into<String>) -> Finding {
        self.value = Some(value.into());
        self
    }

    /// Says that something is missing: there is no value to accept, only the lack of one.
    #[must_use]
    pub fn absent(self) -> Finding {
        self.value("")
    }

    /// Names the one thing it is about.
    #[must_use]
    pub fn about(mut self, about: impl Into<String>) -> Finding {
        self.about = Some(about.into());
        self
    }

    /// Names a figure it speaks of.
    #[must_use]
    pub fn figure(mut self, id: impl Into<String>) -> Finding {
        self.figures.push(id.into());
        self
    }
}
