//! Which characters no embedded face can show.
//!
//! A missing glyph prints as an empty box, so it is asked for before typesetting,
//! where the caller still knows the author's line.

use super::world;

/// The characters of `s` that no embedded face has, each once, in order.
/// Line ends, spaces and marks that only steer the line break are never missing.
pub fn missing(s: &str) -> Vec<char> {
    let mut out = Vec::new();
    for c in s.chars() {
        if !out.contains(&c) && !steers(c) && !shown(c) {
            out.push(c);
        }
    }
    out
}

fn shown(c: char) -> bool {
    world::faces().iter().any(|f| f.info().coverage.contains(u32::from(c)))
}

fn steers(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{ad}' | '\u{200b}'..='\u{200d}' | '\u{2060}' | '\u{feff}')
}
