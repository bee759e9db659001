//! How a printed face fitted its paper: measured by the press, judged by the checks.

/// One face of one document after layout.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// Document code and language, such as `M-01/en`.
    pub face: String,
    /// File stem of the card kind.
    pub card: String,
    /// Language code.
    pub lang: String,
    /// Pages the face took; one is right.
    pub pages: usize,
    /// Lines of the class's type size that do not fit, zero if all fit.
    pub lines_over: usize,
    /// Lines the face has room for at its class's size.
    pub lines_room: usize,
    /// Smallest operative type placed, in points.
    pub smallest_pt: f64,
    /// Largest numeral placed, in points.
    pub key_pt: f64,
}
