//! The field tables: one row per key of the front matter. The reader, the JSON Schema, the manual page, the
//! starter files and did-you-mean are five readings of the same rows.

use std::collections::BTreeMap;
use std::sync::{PoisonError, RwLock};

use crate::quantity::parse::{self, Said};
use crate::quantity::{Dim, Kind, Num, Quantity};

/// What a key holds.
#[derive(Clone, Copy, Debug)]
pub enum Want {
    /// An amount with a unit.
    Amount(Dim, Kind),
    /// A whole number without a unit.
    Whole,
    /// A plain number without a unit.
    Plain,
    /// `3:1 by mass`.
    Ratio,
    /// Two amounts, `12 mm to 65 mm`.
    Range(Dim, Kind),
    /// A time at a thermometer reading, `50 min at 70 °F`.
    TimeAt,
    /// A text.
    Text,
    /// A text that may be given again in another language under `KEY_es`.
    Words,
    /// One of some words.
    Choice(&'static [&'static str]),
    /// `7:30`, a time of day.
    Clock,
    /// `2026-03-02`.
    Date,
    /// A list of dates.
    Dates,
    /// `yes` or `no`.
    YesNo,
    /// A list of texts.
    Texts,
    /// A list of some words.
    Choices(&'static [&'static str]),
    /// A list of language codes.
    Languages,
    /// A list of corners, each a pair of lengths.
    Corners,
    /// A list of lengths.
    Lengths,
    /// Keys of their own.
    Group(&'static [Field]),
    /// Entries under names that the author chooses; the text is an example of such a name.
    Map(&'static str, &'static [Field]),
    /// A list of groups.
    List(&'static [Field]),
}

/// Limits of a value, written as an author would. Both ends count as allowed unless said.
#[derive(Clone, Copy, Debug)]
pub enum Limits {
    /// Anything of the right sort.
    Any,
    /// More than the first, at most the second.
    Over(&'static str, &'static str),
    /// From the first to the second.
    From(&'static str, &'static str),
}

/// When a key is wanted.
#[derive(Clone, Copy, Debug)]
pub enum Need {
    /// Always.
    Always,
    /// Never demanded.
    Free,
    /// Demanded when another key has one of these values, out of place otherwise.
    When(&'static str, &'static [&'static str]),
    /// Demanded when another key has one of these values, free otherwise.
    WhenElseFree(&'static str, &'static [&'static str]),
    /// Free when another key has one of these values, out of place otherwise.
    FreeWhen(&'static str, &'static [&'static str]),
}

/// One row.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// The key.
    pub name: &'static str,
    /// What it holds.
    pub want: Want,
    /// How it is written.
    pub example: &'static str,
    /// What it means, a line.
    pub meaning: &'static str,
    /// Limits.
    pub limits: Limits,
    /// What the trade knows as its size, where it knows one: an amount outside can be read, and is asked about.
    pub likely: Option<(&'static str, &'static str)>,
    /// When it is wanted.
    pub need: Need,
    /// The format mark that brought it.
    pub since: u32,
}

impl Field {
    /// A row that is always wanted and has no limits.
    pub const fn new(name: &'static str, want: Want, example: &'static str, meaning: &'static str) -> Field {
        Field { name, want, example, meaning, limits: Limits::Any, likely: None, need: Need::Always, since: 1 }
    }

    /// More than `low`, at most `high`.
    #[must_use]
    pub const fn over(mut self, low: &'static str, high: &'static str) -> Field {
        self.limits = Limits::Over(low, high);
        self
    }

    /// From `low` to `high`.
    #[must_use]
    pub const fn from(mut self, low: &'static str, high: &'static str) -> Field {
        self.limits = Limits::From(low, high);
        self
    }

    /// Hardly ever under `low` or over `high`.
    #[must_use]
    pub const fn likely(mut self, low: &'static str, high: &'static str) -> Field {
        self.likely = Some((low, high));
        self
    }

    /// May be left out.
    #[must_use]
    pub const fn free(mut self) -> Field {
        self.need = Need::Free;
        self
    }

    /// Wanted when `key` is one of `values`.
    #[must_use]
    pub const fn when(mut self, key: &'static str, values: &'static [&'static str]) -> Field {
        self.need = Need::When(key, values);
        self
    }

    /// Wanted when `key` is one of `values`, free otherwise.
    #[must_use]
    pub const fn when_else_free(mut self, key: &'static str, values: &'static [&'static str]) -> Field {
        self.need = Need::WhenElseFree(key, values);
        self
    }

    /// May stand when `key` is one of `values`, nowhere else.
    #[must_use]
    pub const fn free_when(mut self, key: &'static str, values: &'static [&'static str]) -> Field {
        self.need = Need::FreeWhen(key, values);
        self
    }

    /// The limits in words, empty if there are none.
    pub fn limits_said(&self) -> String {
        match self.limits {
            Limits::Any => String::new(),
            Limits::Over(low, high) => format!("more than {low} and at most {high}"),
            Limits::From(low, high) => format!("from {low} to {high}"),
        }
    }

    /// The limits and what is likely in words, empty if there are neither.
    pub fn bounds_said(&self) -> String {
        let likely = self.likely.map(|(low, high)| format!("likely {low} to {high}"));
        let parts: Vec<String> = [Some(self.limits_said()), likely].into_iter().flatten().filter(|part| !part.is_empty()).collect();
        parts.join(", ")
    }

    /// An amount of a table as the value that it stands for. Each is read once: every value of every file is held against some.
    pub fn amount(&self, text: &'static str) -> Option<Num> {
        static READ: RwLock<BTreeMap<(&'static str, bool), Option<Num>>> = RwLock::new(BTreeMap::new());
        let plain = matches!(self.want, Want::Whole | Want::Plain);
        if let Some(known) = READ.read().unwrap_or_else(PoisonError::into_inner).get(&(text, plain)) {
            return known.clone();
        }
        let value = match parse::read(text) {
            _ if plain => parse::plain(text).ok(),
            Ok(Said::Amount(q, _) | Said::Ratio(q)) => Some(q.si),
            _ => None,
        };
        READ.write().unwrap_or_else(PoisonError::into_inner).insert((text, plain), value.clone());
        value
    }

    /// True if a value lies outside of what is likely. Nothing at all is not unlikely: it says that there is none.
    pub fn unlikely(&self, q: &Quantity) -> bool {
        self.likely.filter(|_| !q.si.is_zero()).is_some_and(|(low, high)| {
            let under = self.amount(low).is_some_and(|low| q.si.compare(&low).is_lt());
            under || self.amount(high).is_some_and(|high| q.si.compare(&high).is_gt())
        })
    }
}

/// A length.
pub const LENGTH: Want = Want::Amount(Dim::LENGTH, Kind::Plain);
/// A volume.
pub const VOLUME: Want = Want::Amount(Dim::VOLUME, Kind::Plain);
/// A mass.
pub const MASS: Want = Want::Amount(Dim::MASS, Kind::Plain);
/// A mass per volume.
pub const DENSITY: Want = Want::Amount(Dim::DENSITY, Kind::Plain);
/// A mass per area.
pub const AREAL: Want = Want::Amount(Dim::AREAL, Kind::Plain);
/// A time.
pub const TIME: Want = Want::Amount(Dim::TIME, Kind::Plain);
/// An area.
pub const AREA: Want = Want::Amount(Dim::AREA, Kind::Plain);
/// An area per time.
pub const PACE: Want = Want::Amount(Dim::PACE, Kind::Plain);
/// An amount of money.
pub const MONEY: Want = Want::Amount(Dim::MONEY, Kind::Plain);
/// Money per time.
pub const WAGE: Want = Want::Amount(Dim::WAGE, Kind::Plain);
/// Money per area.
pub const PRICE_OF_AREA: Want = Want::Amount(Dim::PRICE_OF_AREA, Kind::Plain);
/// Area per volume.
pub const COVERAGE: Want = Want::Amount(Dim::COVERAGE, Kind::Plain);
/// A temperature reading.
pub const READING: Want = Want::Amount(Dim::TEMPERATURE, Kind::Reading);
/// An angle.
pub const ANGLE: Want = Want::Amount(Dim::NONE, Kind::Angle);
/// Bags.
pub const BAGS: Want = Want::Amount(Dim::NONE, Kind::Bags);
/// A number per time.
pub const FREQUENCY: Want = Want::Amount(Dim::FREQUENCY, Kind::Plain);
/// A strength.
pub const STRENGTH: Want = Want::Amount(Dim::STRESS, Kind::Plain);
/// Loads.
pub const LOADS: Want = Want::Amount(Dim::NONE, Kind::Loads);
/// A share in per cent.
pub const SHARE: Want = Want::Amount(Dim::NONE, Kind::Share);

/// Why a HOLD or WARN is accepted: the entries of `accept`.
pub static ACCEPT: &[Field] = &[
    Field::new("value", Want::Text, "1 gal", "the value that is accepted, as the finding shows it; the acceptance lapses when it moves. Left out where the finding is about something that is not stated").free(),
    Field::new("by", Want::Text, "LEAD", "role that accepts it"),
    Field::new("because", Want::Text, "tried on the panel", "the reason"),
];

/// `accept:` as it stands in every file that is signed.
pub const ACCEPTS: Field = Field::new(
    "accept",
    Want::Map("start-water-low", ACCEPT),
    "",
    "findings of HOLD and WARN that a role has accepted, by name; `NAME/SUBJECT` where several of a name point into the file",
)
.free();

/// Role that wrote a file.
pub const WRITTEN_BY: Field = Field::new("written_by", Want::Text, "EST", "role that wrote it").free();
/// Role that approved a file.
pub const APPROVED_BY: Field = Field::new("approved_by", Want::Text, "LEAD", "role that approved it").free();
