//! Texts on a terminal: colour if wanted, and nothing an author typed that could steer the terminal.

/// Whether to colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Paint(pub bool);

impl Paint {
    /// Heavy.
    pub fn bold(self, text: &str) -> String {
        self.wrap("1", text)
    }

    /// Light, for places and sources.
    pub fn dim(self, text: &str) -> String {
        self.wrap("2", text)
    }

    fn wrap(self, code: &str, text: &str) -> String {
        if self.0 && !text.is_empty() { format!("\x1b[{code}m{text}\x1b[0m") } else { text.to_owned() }
    }
}

/// Plain spaces for the no-break ones of the paper, and no control characters.
pub fn clean(text: &str) -> String {
    let plain = |c: char| match c {
        '\u{a0}' | '\u{202f}' | '\n' | '\t' => ' ',
        c if c.is_control() || ('\u{202a}'..='\u{202e}').contains(&c) || ('\u{2066}'..='\u{2069}').contains(&c) => '\u{fffd}',
        c => c,
    };
    text.chars().map(plain).collect()
}
