//! What the register says of a card that is out: handed to checks that ask.

/// A card in force.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Issued {
    /// Document code such as `M-01`.
    pub code: String,
    /// Subject such as `mud larkenfell/carve-24/2`.
    pub subject: String,
    /// Revision letter.
    pub rev: String,
    /// Check-word.
    pub word: String,
}
