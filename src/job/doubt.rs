//! Amounts of the front matter that reading lets pass and that a second reader would ask about.

use super::Text;

/// What is odd about an amount.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Odd {
    /// It lies outside of what the trade knows for its key: from, to, as the field table writes them.
    Size(&'static str, &'static str),
    /// It is a change order's, and many times or a small part of what stands there now: that, as it is written.
    Change(Text),
    /// It is written in the other unit system than its file; true if the file is metric.
    System(bool),
}

/// One amount, and why it is odd.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Doubt {
    /// Its key, as `measures.jug.holds`.
    pub key: String,
    /// Name of the last part of its key.
    pub name: &'static str,
    /// As it is written.
    pub text: Text,
    /// What the key means.
    pub meaning: &'static str,
    /// An amount as the table writes one.
    pub example: &'static str,
    /// Why.
    pub odd: Odd,
}
