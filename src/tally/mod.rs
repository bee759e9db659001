//! Job and formulas → figures, printed values, the data of drawings.

pub mod figure;
pub mod printed;
pub mod role;
pub mod scope;

use indexmap::IndexMap;

pub use figure::{Basis, Figure};
pub use printed::{Ask, PrintedValue, Voice};
pub use role::Role;
pub use scope::{Scope, Slot};

/// All figures of a run, by id, in the order they were worked.
#[derive(Debug, Default)]
pub struct Tally {
    figures: IndexMap<String, Figure>,
    mark: Option<(i64, i64)>,
}

impl Tally {
    /// A figure by id.
    pub fn figure(&self, id: &str) -> Option<&Figure> {
        self.figures.get(id)
    }

    /// All figures, in working order.
    pub fn figures(&self) -> impl Iterator<Item = &Figure> {
        self.figures.values()
    }

    /// The smallest volume mark on site, as a fraction of a gallon; one cup if no measure is listed.
    pub fn mark(&self) -> (i64, i64) {
        self.mark.unwrap_or((1, 16))
    }

    /// Adds a figure.
    pub fn add(&mut self, figure: Figure) {
        self.figures.insert(figure.id.clone(), figure);
    }
}
