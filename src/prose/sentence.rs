//! A rendered text as a reader takes it in: sentences with their words and printed values, steps, table rows.

use crate::source::Span;

use super::block::{Block, BlockKind, Inline};

/// One piece of a sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Piece {
    /// A word, lower case, with its place if an author typed it.
    Word(String, Option<Span>),
    /// A printed value, by its index in the document.
    Value(usize),
    /// A mark that parts clauses: comma, colon, semicolon, dash, bracket.
    Mark,
}

impl Piece {
    /// The place of a typed word.
    pub fn place(&self) -> Option<Span> {
        if let Piece::Word(_, at) = self { *at } else { None }
    }
}

/// A sentence, or a row of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sentence {
    /// Number of the step it stands in, if any.
    pub step: Option<u64>,
    /// Its pieces in order. A row holds the words of its table's head first.
    pub pieces: Vec<Piece>,
}

impl Sentence {
    /// Its words, one space between, values as `#`.
    pub fn words(&self) -> String {
        self.said().collect::<Vec<_>>().join(" ")
    }

    /// Its words in order, values as `#`, marks left out.
    fn said(&self) -> impl Iterator<Item = &str> {
        self.pieces.iter().filter_map(|p| match p {
            Piece::Word(w, _) => Some(w.as_str()),
            Piece::Value(_) => Some("#"),
            Piece::Mark => None,
        })
    }

    /// Printed values in it.
    pub fn values(&self) -> impl Iterator<Item = usize> {
        self.pieces.iter().filter_map(|p| if let Piece::Value(i) = p { Some(*i) } else { None })
    }

    /// True if one of these phrases stands in it, word for word, over marks too.
    pub fn says(&self, phrases: &[&str]) -> bool {
        let words: Vec<&str> = self.said().collect();
        let stands = |from: usize, phrase: &str| phrase.split(' ').enumerate().all(|(k, part)| words.get(from + k) == Some(&part));
        (0..words.len()).any(|from| phrases.iter().any(|phrase| stands(from, phrase)))
    }

    /// The word at a place, or nothing for a value or a mark.
    pub fn word(&self, at: usize) -> Option<&str> {
        match self.pieces.get(at) {
            Some(Piece::Word(word, _)) => Some(word.as_str()),
            _ => None,
        }
    }

    /// True if the word at a place is one of these.
    pub fn is(&self, at: usize, words: &[&str]) -> bool {
        self.word(at).is_some_and(|w| words.contains(&w))
    }

    /// True if one of these words stands in it.
    pub fn has(&self, words: &[&str]) -> bool {
        (0..self.pieces.len()).any(|at| self.is(at, words))
    }

    /// True if a phrase, words parted by spaces, begins at a place; no mark stands inside it.
    pub fn starts(&self, at: usize, phrase: &str) -> bool {
        phrase.split(' ').enumerate().all(|(k, w)| self.word(at + k) == Some(w))
    }

    /// Place of a word in the author's file.
    pub fn place(&self, at: usize) -> Option<Span> {
        self.pieces.get(at).and_then(Piece::place)
    }

    /// True if a place lies in it: between its first and its last word.
    pub fn holds(&self, at: Span) -> bool {
        self.pieces.iter().any(|p| matches!(p, Piece::Word(_, Some(s)) if s.file == at.file && s.start < at.end && at.start < s.end))
    }
}

/// The sentences of some blocks in reading order.
pub(super) fn sentences(blocks: &[Block]) -> Vec<Sentence> {
    let mut reader = Reader { out: Vec::new(), open: Vec::new(), step: None };
    reader.blocks(blocks);
    reader.out
}

/// The sentences of a text outside a body: a title, a signal word.
pub fn sentences_in(text: &crate::job::Text) -> Vec<Sentence> {
    let mut reader = Reader { out: Vec::new(), open: Vec::new(), step: None };
    reader.text(&text.text, Some(text.at), true);
    reader.close();
    reader.out
}

struct Reader {
    out: Vec<Sentence>,
    open: Vec<Piece>,
    step: Option<u64>,
}

impl Reader {
    fn blocks(&mut self, blocks: &[Block]) {
        for block in blocks {
            self.block(block);
            self.close();
        }
    }

    fn block(&mut self, block: &Block) {
        match &block.kind {
            BlockKind::Heading(_, words, _) | BlockKind::Para(words) => self.inlines(words, true),
            BlockKind::Steps(first, items) => {
                let outer = self.step;
                for (number, item) in (*first..).zip(items) {
                    // A list inside a step goes on speaking of that step.
                    self.step = outer.or(Some(number));
                    self.blocks(item);
                }
                self.step = outer;
            }
            BlockKind::List(items) => items.iter().for_each(|item| self.blocks(item)),
            BlockKind::Boxes(boxes) => {
                for (_, words) in boxes {
                    self.inlines(words, true);
                    self.close();
                }
            }
            BlockKind::Table(_, head, rows) => {
                for row in rows {
                    // Head and row are read together: `per load` in the head speaks for every row.
                    for cell in head.iter().chain(row) {
                        self.inlines(cell, false);
                        self.open.push(Piece::Mark);
                    }
                    self.close();
                }
            }
            BlockKind::Quote(_, inner) | BlockKind::Part(_, inner) => self.blocks(inner),
            BlockKind::Rule | BlockKind::Code(_) | BlockKind::Asked(..) => {}
        }
    }

    /// `parted`: a full stop ends the sentence. In a table it does not: the row is what is read as one.
    fn inlines(&mut self, inlines: &[Inline], parted: bool) {
        for inline in inlines {
            match inline {
                Inline::Text(text, at) | Inline::Code(text, at) => self.text(text, *at, parted),
                Inline::Strong(inner) | Inline::Em(inner) | Inline::Link(_, inner) => self.inlines(inner, parted),
                Inline::Value(i) | Inline::Bags(_, _, _, i) => self.open.push(Piece::Value(*i)),
                // Whatever a site is called, a check finds nothing in it.
                Inline::Name(_, at) => self.open.push(Piece::Word("…".to_owned(), Some(*at))),
                Inline::Break => {}
            }
        }
    }

    fn text(&mut self, text: &str, at: Option<Span>, parted: bool) {
        let mut from: Option<usize> = None;
        let chars: Vec<(usize, char)> = text.char_indices().collect();
        for (n, (i, c)) in chars.iter().enumerate() {
            let before = n.checked_sub(1).and_then(|k| chars.get(k)).map(|(_, c)| *c);
            let after = chars.get(n + 1).map(|(_, c)| *c);
            let digits = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
            // A point between digits, a slash in a fraction, an apostrophe and a hyphen stay inside the word.
            let inside = match c {
                '.' | ',' | '/' => digits(before) && digits(after),
                '\'' | '’' | '-' => before.is_some_and(char::is_alphanumeric) && after.is_some_and(char::is_alphanumeric),
                c => c.is_alphanumeric() || matches!(c, '°' | '%' | '"'),
            };
            if inside {
                from.get_or_insert(*i);
                continue;
            }
            self.word(text, from.take(), *i, at);
            match c {
                '.' | '?' | '!' | '¿' | '¡' if parted => self.close(),
                ',' | ';' | ':' | '(' | ')' | '—' | '–' | '·' | '.' | '?' | '!' => self.open.push(Piece::Mark),
                _ => {}
            }
        }
        self.word(text, from, text.len(), at);
    }

    fn word(&mut self, text: &str, from: Option<usize>, to: usize, at: Option<Span>) {
        let Some(word) = from.and_then(|f| text.get(f..to)) else { return };
        let from = from.unwrap_or(0);
        // Text that differs from the file's bytes (an entity, a name from a slot) has only the place of the whole.
        let place = at.map(|s| if s.spans(text.len()) { s.part(from, to) } else { s });
        self.open.push(Piece::Word(word.to_lowercase().replace('’', "'"), place));
    }

    fn close(&mut self) {
        let pieces = std::mem::take(&mut self.open);
        if pieces.iter().any(|p| !matches!(p, Piece::Mark)) {
            self.out.push(Sentence { step: self.step, pieces });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> Vec<String> {
        let at = Span { file: 0, start: 10, end: 10 + u32::try_from(text.len()).unwrap() };
        let block = Block { kind: BlockKind::Para(vec![Inline::Text(text.to_owned(), Some(at))]), at };
        sentences(&[block]).iter().map(Sentence::words).collect()
    }

    #[test]
    fn sentences_end_at_points_not_at_decimals() {
        assert_eq!(words("Mix 1.5 min. Don’t add: wait! ¿Sigue seca? No."), ["mix 1.5 min", "don't add wait", "sigue seca", "no"]);
    }

    #[test]
    fn words_know_their_place() {
        let at = Span { file: 0, start: 10, end: 18 };
        let block = Block { kind: BlockKind::Para(vec![Inline::Text("Add agua".to_owned(), Some(at))]), at };
        let all = sentences(&[block]);
        assert_eq!(all[0].pieces[1], Piece::Word("agua".to_owned(), Some(Span { file: 0, start: 14, end: 18 })));
    }
}
