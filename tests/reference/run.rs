//! One run over rows: who said what, and did we.

use hodbook::quantity::expr::{Sort, Worked};
use hodbook::quantity::{num, print, units};

use crate::arithmetic;

/// How a row came into the table of reference facts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// Its number was read in the source.
    Found,
    /// Its number was worked out from definitions that were read.
    Computed,
    /// Its number was recalled; check it before leaning on it.
    Memory,
}

struct Row {
    id: &'static str,
    how: How,
    rule: bool,
}

/// Rows met so far, and what is said of those that their sources dispute.
#[derive(Default)]
pub struct Run(Vec<Row>, Vec<(&'static str, &'static str)>);

impl Run {
    /// A row with numbers.
    pub fn row(&mut self, id: &'static str, source: &'static str, how: How) {
        self.add(id, source, how, false);
    }

    /// A row that states a rule; its cases are ours, one on each side.
    pub fn rule(&mut self, id: &'static str, source: &'static str, how: How) {
        self.add(id, source, how, true);
    }

    fn add(&mut self, id: &'static str, source: &'static str, how: How, rule: bool) {
        assert!(!source.is_empty(), "{id} has no source");
        self.0.push(Row { id, how, rule });
    }

    /// Says of the row last met that its sources disagree or that it is misprinted, and what is done about it.
    pub fn disputed(&mut self, what: &'static str) {
        let row = self.0.last().expect("a row before its dispute");
        self.1.push((row.id, what));
    }

    /// Rows disputed, and what is done about each.
    pub fn disputes(&self) -> &[(&'static str, &'static str)] {
        &self.1
    }

    /// Takes another run's rows.
    pub fn join(&mut self, other: Run) {
        self.0.extend(other.0);
        self.1.extend(other.1);
    }

    /// Rows with numbers.
    pub fn values(&self) -> usize {
        self.0.iter().filter(|r| !r.rule).count()
    }

    /// Rows that state a rule.
    pub fn rules(&self) -> usize {
        self.0.iter().filter(|r| r.rule).count()
    }

    /// Rows recalled.
    pub fn recalled(&self) -> usize {
        self.0.iter().filter(|r| r.how == How::Memory).count()
    }

    /// A row counts once.
    pub fn no_row_twice(&self) {
        for (i, row) in self.0.iter().enumerate() {
            assert!(!self.0.iter().take(i).any(|r| r.id == row.id), "{} is counted twice", row.id);
        }
    }
}

/// Reads an input.
pub fn q<S: Sort>(text: &str) -> Worked<S> {
    Worked::read(text).unwrap()
}

/// A result's number in `unit`, to as many decimals as `like` has.
pub fn digits<S: Sort>(worked: &Worked<S>, unit: &str, like: &str) -> String {
    let places = like.split_once('.').map_or(0, |(_, digits)| digits.len());
    let number = match units::find_expr(unit) {
        Some(unit) => worked.value().in_unit(unit).unwrap(),
        None => worked.value().si.clone(),
    };
    number.exact().map_or_else(|| format!("{:.places$}", number.to_f64()), |r| num::decimal(r, places))
}

/// Holds a result to a printed number, and its printed arithmetic to its result.
pub fn gives<S: Sort>(worked: &Worked<S>, unit: &str, printed: &str) {
    assert_eq!(digits(worked, unit, printed), printed, "{} {unit}", worked.value().si.to_f64());
    arithmetic::follows(&print::derivation("", worked.node()));
}

/// Holds a result to a number within a tolerance, both in `unit`, and its printed arithmetic to its result.
pub fn near<S: Sort>(worked: &Worked<S>, unit: &str, value: f64, tolerance: f64) {
    let got = if unit.is_empty() { worked.value().si.to_f64() } else { worked.in_unit(unit) };
    assert!((got - value).abs() <= tolerance, "{got} {unit}, not {value} ± {tolerance}");
    arithmetic::follows(&print::derivation("", worked.node()));
}
