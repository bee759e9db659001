//! What a problem is and how it is drawn. No trade words here.

use crate::source::Span;

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

    /// Names a figure it speaks of.
    #[must_use]
    pub fn figure(mut self, id: impl Into<String>) -> Finding {
        self.figures.push(id.into());
        self
    }
}
