//! The corners of an outline.

use super::field::Field;
use super::group::{Item, all};
use super::reader::Reader;
use super::yaml::{Entry, Tree, Value};

/// More corners than anyone measures: an outline of them all takes time to judge.
const MOST_CORNERS: usize = 60;

impl Reader<'_> {
    /// `[[0 ft, 0 ft], [4 ft, 0 ft], …]`; how they go around is the formulas' to judge.
    pub(super) fn corners(&mut self, field: &'static Field, entry: &Entry, path: &str) -> Option<Item> {
        let items = self.listed(field, entry)?;
        let mut corners = Vec::new();
        for (i, item) in items.iter().enumerate() {
            let Value::List(pair) = &item.value else {
                let title = format!("corner {} is {}, two lengths are wanted", i + 1, item.sort());
                self.stop("sort-wrong", title, item.at, field.meaning, format!("write it like `{}`", field.example));
                return None;
            };
            let [x, y] = pair.as_slice() else {
                let title = format!("corner {} has {} values, two are wanted", i + 1, pair.len());
                self.stop("sort-wrong", title, item.at, field.meaning, "write how far to the right, then how high: `[4 ft, 0 ft]`");
                return None;
            };
            let mut length = |tree: &Tree, name: &str| {
                let scalar = self.scalar(field, tree, item.at)?;
                self.length(field, scalar, &format!("{path}.{}.{name}", i + 1))
            };
            corners.push(length(x, "x").zip(length(y, "y")));
        }
        let corners = all(corners)?;
        if !(3..=MOST_CORNERS).contains(&corners.len()) {
            let title = format!(
                "`{}` has {} corners, {}",
                field.name,
                corners.len(),
                if corners.len() < 3 { "3 are the least" } else { "too many" }
            );
            self.stop(
                "value-out-of-range",
                title,
                entry.value.at,
                field.meaning,
                format!("write 3 to {MOST_CORNERS}, in the order of a walk around the face"),
            );
            return None;
        }
        Some(Item::Corners(corners))
    }
}
