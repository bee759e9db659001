//! Scalars by the table: amounts, dates, choices, and their limits.

use std::cmp::Ordering;

use crate::job::{Day, Text};
use crate::quantity::parse::{self, Fault, Said};
use crate::quantity::units::UnitExpr;
use crate::quantity::{Dim, Kind, Mark, Node, Num, Quantity};
use crate::source::Span;

use super::doubt::Amount;
use super::field::{Field, Limits, Want};
use super::group::Item;
use super::near;
use super::reader::{Reader, Scalar};

/// Longest text that is tried as a quantity: no one writes longer ones, and digits without end take time.
const LONGEST: usize = 80;

fn mark(at: Span) -> Mark {
    Mark { file: at.file, start: at.start, end: at.end }
}

impl Reader<'_> {
    pub(super) fn value(&mut self, field: &'static Field, scalar: Scalar<'_>, path: &str) -> Option<Item> {
        let number = !matches!(field.want, Want::Text | Want::Choice(_) | Want::Date | Want::Clock | Want::YesNo);
        if number && scalar.text.len() > LONGEST {
            let title = format!("`{}` is {} bytes long, a quantity has at most {LONGEST}", field.name, scalar.text.len());
            self.stop("value-too-long", title, scalar.at, field.meaning, format!("write it like `{}`", field.example));
            return None;
        }
        match field.want {
            Want::Amount(dim, kind) => self.amount(field, scalar, dim, kind, path).map(Item::One),
            Want::Whole | Want::Plain => self.plain(field, scalar, path).map(Item::One),
            Want::Ratio => {
                let read = self.fault(field, scalar, 0, parse::read(scalar.text))?;
                let Said::Ratio(q) = read else {
                    let title = format!("`{}` is no ratio", scalar.text);
                    self.stop("ratio-expected", title, scalar.at, field.meaning, format!("write it like `{}`", field.example));
                    return None;
                };
                self.limits(field, scalar, &q)?;
                Some(Item::One(Node::authored(q, None, scalar.text, path, Some(mark(scalar.at)))))
            }
            Want::Range(dim, kind) => self.range(field, scalar, dim, kind, path),
            Want::TimeAt => self.time_at(field, scalar, path),
            Want::Choice(words) => self.choice(field, scalar, words).map(Item::Text),
            Want::Clock => self.clock(field, scalar, path).map(Item::One),
            Want::Date => self.date(scalar).map(Item::Day),
            Want::YesNo => match scalar.text {
                "yes" | "true" => Some(Item::Yes(true)),
                "no" | "false" => Some(Item::Yes(false)),
                other => {
                    let title = format!("`{}` is `{other}`, `yes` or `no` is wanted", field.name);
                    self.stop("choice-unknown", title, scalar.at, field.meaning, "write `yes` or `no`");
                    None
                }
            },
            _ => Some(Item::Text(scalar.text())),
        }
    }

    /// Turns a fault of the grammar into a finding; `shift` is where the text that was read starts in the scalar.
    fn fault<T>(&mut self, field: &'static Field, scalar: Scalar<'_>, shift: usize, read: Result<T, Fault>) -> Option<T> {
        match read {
            Ok(value) => Some(value),
            Err(fault) => {
                let at = scalar.part(&(fault.at.start + shift..fault.at.end + shift));
                self.stop(fault.name, fault.what, at, format!("`{}`: {}", field.name, field.meaning), fault.help);
                None
            }
        }
    }

    /// A length with its limits, where a field holds several.
    pub(super) fn length(&mut self, field: &'static Field, scalar: Scalar<'_>, path: &str) -> Option<Node> {
        if scalar.text.len() > LONGEST {
            let title = format!("`{}` is {} bytes long, a quantity has at most {LONGEST}", field.name, scalar.text.len());
            self.stop("value-too-long", title, scalar.at, field.meaning, format!("write it like `{}`", field.example));
            return None;
        }
        self.amount(field, scalar, Dim::LENGTH, Kind::Plain, path)
    }

    fn amount(&mut self, field: &'static Field, scalar: Scalar<'_>, dim: Dim, kind: Kind, path: &str) -> Option<Node> {
        let q = self.fault(field, scalar, 0, parse::amount(scalar.text, dim, kind, field.example))?;
        let unit = match parse::read(scalar.text) {
            Ok(Said::Amount(_, unit)) => Some(unit),
            _ => None,
        };
        self.limits(field, scalar, &q)?;
        self.amounts.push(Amount::of(field, path, (scalar.text, scalar.at), &q, unit));
        Some(Node::authored(q, unit, scalar.text, path, Some(mark(scalar.at))))
    }

    fn plain(&mut self, field: &'static Field, scalar: Scalar<'_>, path: &str) -> Option<Node> {
        let n = self.fault(field, scalar, 0, parse::plain(scalar.text))?;
        let whole = n.exact().is_some_and(|exact| exact.is_integer());
        if matches!(field.want, Want::Whole) && !whole {
            let title = format!("`{}` is {}, a whole number is wanted", field.name, scalar.text);
            self.stop("value-out-of-range", title, scalar.at, field.meaning, format!("write it like `{}`", field.example));
            return None;
        }
        let q = Quantity::plain(n);
        self.limits(field, scalar, &q)?;
        self.amounts.push(Amount::of(field, path, (scalar.text, scalar.at), &q, None));
        Some(Node::authored(q, None, scalar.text, path, Some(mark(scalar.at))))
    }

    /// Each end gets its own text and place: `thickness (from)` and `thickness (to)`.
    fn range(&mut self, field: &'static Field, scalar: Scalar<'_>, dim: Dim, kind: Kind, path: &str) -> Option<Item> {
        let read = self.fault(field, scalar, 0, parse::read(scalar.text))?;
        let (Said::Range(low, high), Some((a, b))) = (read, scalar.text.split_once(" to ")) else {
            let title = format!("`{}` is `{}`, a range is wanted", field.name, scalar.text);
            self.stop("range-expected", title, scalar.at, field.meaning, format!("write it like `{}`", field.example));
            return None;
        };
        let start = a.len() + " to ".len();
        self.fault(field, scalar, start, parse::amount(b, dim, kind, field.example))?;
        self.limits(field, scalar, &low)?;
        self.limits(field, scalar, &high)?;
        let unit_of = |text: &str| match parse::read(text) {
            Ok(Said::Amount(_, unit)) => Some(unit),
            _ => None,
        };
        let last = unit_of(b);
        let first = unit_of(a).or(last);
        Some(Item::Two(
            self.part(field, scalar, &(0..a.len()), &format!("{path} (from)"), low, first),
            self.part(field, scalar, &(start..scalar.text.len()), &format!("{path} (to)"), high, last),
        ))
    }

    fn time_at(&mut self, field: &'static Field, scalar: Scalar<'_>, path: &str) -> Option<Item> {
        self.fault(field, scalar, 0, parse::read(scalar.text))?;
        let Some((a, b)) = scalar.text.split_once(" at ") else {
            let title = format!("`{}` is `{}`, a time at a temperature is wanted", field.name, scalar.text);
            let help = format!("say at what temperature it holds, like `{}`", field.example);
            self.stop("reading-missing", title, scalar.at, field.meaning, help);
            return None;
        };
        let start = a.len() + " at ".len();
        let time = self.fault(field, scalar, 0, parse::amount(a, Dim::TIME, Kind::Plain, "50 min"))?;
        let reading = self.fault(field, scalar, start, parse::amount(b, Dim::TEMPERATURE, Kind::Reading, "70 °F"))?;
        self.limits(field, scalar, &time)?;
        let unit_of = |text: &str| match parse::read(text) {
            Ok(Said::Amount(_, unit)) => Some(unit),
            _ => None,
        };
        let read = self.part(field, scalar, &(0..a.len()), path, time, unit_of(a));
        // The reading has a sort of its own: what is likely for the time says nothing of it.
        let place = Some(mark(scalar.part(&(start..scalar.text.len()))));
        Some(Item::Two(read, Node::authored(reading, unit_of(b), b.trim(), &format!("{path} (at)"), place)))
    }

    /// One of two amounts that a scalar holds, with its own text and place.
    fn part(
        &mut self,
        field: &'static Field,
        scalar: Scalar<'_>,
        bytes: &std::ops::Range<usize>,
        key: &str,
        q: Quantity,
        unit: Option<UnitExpr>,
    ) -> Node {
        let (text, at) = (scalar.text.get(bytes.clone()).unwrap_or("").trim(), scalar.part(bytes));
        self.amounts.push(Amount::of(field, key, (text, at), &q, unit));
        Node::authored(q, unit, text, key, Some(mark(at)))
    }

    fn limits(&mut self, field: &'static Field, scalar: Scalar<'_>, q: &Quantity) -> Option<()> {
        let (low, high, open) = match field.limits {
            Limits::Any => return Some(()),
            Limits::Over(low, high) => (low, high, true),
            Limits::From(low, high) => (low, high, false),
        };
        let below = field.amount(low).is_some_and(|l: Num| match q.si.compare(&l) {
            Ordering::Less => true,
            Ordering::Equal => open,
            Ordering::Greater => false,
        });
        let above = field.amount(high).is_some_and(|h: Num| q.si.compare(&h) == Ordering::Greater);
        let limit = match (below, above, open) {
            (false, false, _) => return Some(()),
            (true, _, true) => format!("not more than {low}"),
            (true, _, false) => format!("under {low}"),
            _ => format!("over {high}"),
        };
        let title = format!("`{}` is {}, {limit}", field.name, scalar.text);
        let help = format!("write {}, such as `{}`", field.limits_said(), field.example);
        self.stop("value-out-of-range", title, scalar.at, field.meaning, help);
        None
    }

    /// One of some words.
    pub(super) fn choice(&mut self, field: &'static Field, scalar: Scalar<'_>, words: &[&str]) -> Option<Text> {
        if words.contains(&scalar.text) {
            return Some(scalar.text());
        }
        let title = format!("`{}` is `{}`, one of {} is wanted", field.name, scalar.text, near::listed(words));
        self.stop("choice-unknown", title, scalar.at, field.meaning, near::help(scalar.text, words));
        None
    }

    /// A time of day on the 24-hour clock, held as the time since midnight.
    fn clock(&mut self, field: &'static Field, scalar: Scalar<'_>, path: &str) -> Option<Node> {
        let minutes = scalar.text.split_once(':').and_then(|(hours, minutes)| {
            let digits = |t: &str| t.bytes().all(|b| b.is_ascii_digit());
            let shape = matches!(hours.len(), 1..=2) && minutes.len() == 2 && digits(hours) && digits(minutes);
            let (hours, minutes) = (hours.parse::<i64>().ok()?, minutes.parse::<i64>().ok()?);
            (shape && hours < 24 && minutes < 60).then_some(hours * 60 + minutes)
        });
        let Some(minutes) = minutes else {
            let title = format!("`{}` is `{}`, a time of day is wanted", field.name, scalar.text);
            self.stop(
                "time-unreadable",
                title,
                scalar.at,
                field.meaning,
                format!("write it on the 24-hour clock, like `{}`", field.example),
            );
            return None;
        };
        let unit = crate::quantity::units::find_expr("min");
        let value = Quantity { si: Num::int(minutes * 60), dim: Dim::TIME, kind: Kind::Clock };
        Some(Node::authored(value, unit, scalar.text, path, Some(mark(scalar.at))))
    }

    pub(super) fn date(&mut self, scalar: Scalar<'_>) -> Option<Day> {
        // Only the long ISO form: 3/2/2026 is two days, one in each half of the world.
        let shape = scalar.text.len() == 10 && scalar.text.bytes().all(|b| b.is_ascii_digit() || b == b'-');
        let date = scalar.text.parse::<jiff::civil::Date>().ok().filter(|_| shape);
        match date {
            Some(d) => Some(Day { year: d.year(), month: d.month(), day: d.day(), at: scalar.at }),
            None => {
                let title = format!("`{}` is no date of the calendar", scalar.text);
                self.stop("date-unreadable", title, scalar.at, "", "write year, month and day, such as `2026-03-31`");
                None
            }
        }
    }
}
