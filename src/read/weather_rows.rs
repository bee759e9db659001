//! Lines of a table of weather: values with their places, and times in order.

use std::cmp::Ordering;

use crate::finding::{Finding, Severity};
use crate::job::Text;
use crate::job::weather::{Daily, Date, Hour, Made, Weather};
use crate::quantity::expr::{Clock, Sort, Worked};
use crate::quantity::parse::{self, Said};
use crate::quantity::{Dim, Kind, Mark, Node, Num, Quantity};
use crate::source::Span;

use super::cells::Cell;
use super::weather::{Found, Table, Want};

/// No one writes a longer number, and digits without end take time.
const LONGEST: usize = 40;
/// Minutes between two lines of a day from which hours are missing; twice that, the plan holds.
const GAP: i64 = 3 * 60;

/// What was read so far.
pub(super) struct Rows<'f> {
    table: Table,
    found: &'f [Found],
    pub weather: Weather,
    last: Option<(Date, i64, Span)>,
}

/// A day, minutes since its midnight, and the cell of the time.
type Moment<'a> = (Date, i64, Cell<'a>);

impl<'f> Rows<'f> {
    pub fn new(table: Table, found: &'f [Found]) -> Rows<'f> {
        let weather = Weather { typical: table == Table::Typical, ..Weather::default() };
        Rows { table, found, weather, last: None }
    }

    /// Takes a line, or says what is wrong with it.
    pub fn add(&mut self, record: &[Cell<'_>], findings: &mut Vec<Finding>) {
        let before = findings.len();
        if let Some(found) = self.found.iter().find(|f| f.column.needed && record.len() <= f.index) {
            let title = format!("the line has {} cells, `{}` is cell {}", record.len(), found.column.head, found.index + 1);
            let at = record.last().map(|c| c.at);
            let finding = Finding::new("line-short", Severity::Stop, title).help("write a cell for every column of the header");
            findings.push(at.into_iter().fold(finding, |f, at| f.at(at, "the last cell")));
            return;
        }
        let Some((date, minutes, cell)) = self.moment(record, findings) else { return };
        let mut amount = |name: &str| self.amount(record, name, (date, minutes), findings);
        let [air, humidity, wind, bags, water, mix, mean, least, rain, wall_air, wall_humidity, wall_wind] =
            ["air", "humidity", "wind", "bags", "water", "mix", "mean", "least", "rain", "wall air", "wall humidity", "wall wind"]
                .map(&mut amount);
        let made = self.made(record, findings);
        if findings.len() > before || !self.in_order((date, minutes, cell), findings) {
            return;
        }
        self.last = Some((date, minutes, cell.at));
        if self.table == Table::Daily {
            if let (Some(mean), Some(least)) = (typed(mean), typed(least)) {
                self.weather.days.push(Daily { date, mean, least, rain: typed(rain) });
            }
        } else if let (Some(air), Some(humidity), Some(wind)) = (typed(air), typed(humidity), typed(wind)) {
            let value = Quantity { si: Num::int(minutes * 60), dim: Dim::TIME, kind: Kind::Clock };
            let unit = crate::quantity::units::find_expr("min");
            let at: Worked<Clock> = Worked::new(Node::authored(value, unit, cell.text, "time", Some(mark(cell.at))));
            let hour = Hour {
                at,
                air,
                humidity,
                wind,
                bags: typed(bags),
                water: typed(water),
                mix: typed(mix),
                rain: typed(rain),
                wall_air: typed(wall_air),
                wall_humidity: typed(wall_humidity),
                wall_wind: typed(wall_wind),
                made,
            };
            self.weather.hours.push((date, hour));
        }
    }

    fn cell<'a>(&self, record: &[Cell<'a>], want: Want) -> Option<Cell<'a>> {
        let found = self.found.iter().find(|f| f.column.want == want)?;
        record.get(found.index).copied()
    }

    fn moment<'a>(&self, record: &[Cell<'a>], findings: &mut Vec<Finding>) -> Option<Moment<'a>> {
        let cell = self.cell(record, Want::Time)?;
        let stop = |name, title: String, cell: Cell<'_>, help: &str| Finding::new(name, Severity::Stop, title).at(cell.at, "").help(help);
        match self.table {
            Table::Daily => {
                let date = iso(cell.text).map(|date| (date, 0, cell));
                if date.is_none() {
                    let title = format!("`{}` is no day of the calendar", cell.text);
                    findings.push(stop("date-unreadable", title, cell, "write year, month and day, such as `2026-03-11`"));
                }
                date
            }
            Table::Hourly => {
                let parts = cell.text.split_once(['T', ' ']);
                let read = parts.and_then(|(date, time)| Some((iso(date)?, clock(time, 23 * 60 + 59)?, cell)));
                if read.is_none() {
                    let title = format!("`{}` is no time of a day", cell.text);
                    findings.push(stop("time-unreadable", title, cell, "write local time like `2026-03-11 07:00`"));
                }
                read
            }
            Table::Typical => {
                let time = self.cell(record, Want::TimeOfDay)?;
                let Some(date) = american(cell.text) else {
                    let title = format!("`{}` is no day of the calendar", cell.text);
                    findings.push(stop("date-unreadable", title, cell, "a typical year has days like `03/11/1998`"));
                    return None;
                };
                let Some(minutes) = clock(time.text, 24 * 60) else {
                    let title = format!("`{}` is no time of day", time.text);
                    findings.push(stop("time-unreadable", title, time, "a typical year has times from `01:00` to `24:00`"));
                    return None;
                };
                Some((date, minutes, time))
            }
        }
    }

    /// When the line's forecast was made; nothing for a reading, and where the table does not say.
    fn made(&self, record: &[Cell<'_>], findings: &mut Vec<Finding>) -> Option<Made> {
        let cell = self.cell(record, Want::Made).filter(|c| !c.text.is_empty())?;
        let parts = cell.text.split_once(['T', ' ']);
        let read = parts.and_then(|(date, time)| Some((iso(date)?, clock(time, 23 * 60 + 59)?)));
        let Some((date, minutes)) = read else {
            let title = format!("`{}` is no time of a day", cell.text);
            let help = "write the local time at which the forecast was made, like `2026-03-11 05:30`; leave it empty for a reading";
            findings.push(Finding::new("time-unreadable", Severity::Stop, title).at(cell.at, "").help(help));
            return None;
        };
        Some(Made { date, minutes, said: Text { text: cell.text.to_owned(), at: cell.at } })
    }

    /// An amount of a column; nothing if the table has no such column, its cell is free and empty, or it is wrong.
    fn amount(&self, record: &[Cell<'_>], name: &str, moment: (Date, i64), findings: &mut Vec<Finding>) -> Option<Node> {
        let found = self.found.iter().find(|f| f.column.name == name)?;
        let (Want::Amount(dim, kind, low, high), Some(unit)) = (found.column.want, found.unit) else { return None };
        let cell = record.get(found.index).copied().filter(|c| !c.text.is_empty() || found.column.needed)?;
        let mut stop = |name, title: String, help: String| {
            findings.push(Finding::new(name, Severity::Stop, title).at(cell.at, "").help(help));
            None
        };
        let example = format!("write a number of {}, without the unit", unit.symbol());
        if cell.text.is_empty() {
            return stop("value-empty", format!("`{name}` has no value"), example);
        }
        if cell.text.len() > LONGEST {
            return stop("value-too-long", format!("`{name}` is {} bytes long, at most {LONGEST} are read", cell.text.len()), example);
        }
        let Ok(number) = parse::plain(cell.text) else {
            return stop("number-unreadable", format!("`{name}` is `{}`, a number is wanted", cell.text), example);
        };
        let value = Quantity::of(&number, unit);
        let end = |text: &str| match parse::read(text) {
            Ok(Said::Amount(q, _)) => Some(q),
            _ => None,
        };
        let is = |limit: &str, side| end(limit).and_then(|l| value.compare(&l)) == Some(side);
        if is(low, Ordering::Less) || is(high, Ordering::Greater) {
            let title = format!("`{name}` is {} {}, outside {low} to {high}", cell.text, unit.symbol());
            return stop("value-out-of-range", title, "correct it, or leave the line out".to_owned());
        }
        debug_assert!(value.dim == dim && value.kind == kind);
        let (Date { year, month, day }, (hours, minutes)) = (moment.0, (moment.1 / 60, moment.1 % 60));
        let key = match self.table {
            Table::Daily => format!("{name} of {year:04}-{month:02}-{day:02}"),
            _ => format!("{name} of {year:04}-{month:02}-{day:02} {hours:02}:{minutes:02}"),
        };
        Some(Node::authored(value, Some(unit), cell.text, &key, Some(mark(cell.at))))
    }

    /// True if the line comes after the one before it. Gaps are told, and the line is kept.
    fn in_order(&self, (date, minutes, cell): Moment<'_>, findings: &mut Vec<Finding>) -> bool {
        let Some((last, before, at)) = self.last else { return true };
        // The months of a typical year come from different years.
        let key = |d: Date| if self.table == Table::Typical { Date { year: 0, ..d } } else { d };
        let tell = |name, severity, title: String, help: &str| {
            Finding::new(name, severity, title).at(cell.at, "here").related(at, "the line before").help(help)
        };
        match (key(date), minutes).cmp(&(key(last), before)) {
            Ordering::Equal => {
                findings.push(tell("time-twice", Severity::Stop, format!("`{}` is there twice", cell.text), "keep one of the two lines"));
                false
            }
            Ordering::Less => {
                let title = format!("`{}` comes after a later time", cell.text);
                findings.push(tell("time-out-of-order", Severity::Stop, title, "put the lines in order of time"));
                false
            }
            Ordering::Greater => {
                let hours = minutes - before;
                if self.table == Table::Daily && tomorrow(last) != Some(date) {
                    let title = "days are missing: a night of frost may be one of them".to_owned();
                    findings.push(tell("days-missing", Severity::Hold, title, "write a line for every day"));
                } else if self.table != Table::Daily && key(date) == key(last) && hours > GAP {
                    let severity = if hours > 2 * GAP { Severity::Hold } else { Severity::Warn };
                    let title = format!("no weather for {} h {:02} min: the line before stands for all of it", hours / 60, hours % 60);
                    findings.push(tell("hours-missing", severity, title, "write a line at least every 3 h of a working day"));
                }
                true
            }
        }
    }
}

fn typed<S: Sort>(node: Option<Node>) -> Option<Worked<S>> {
    node.map(Worked::new)
}

fn mark(at: Span) -> Mark {
    Mark { file: at.file, start: at.start, end: at.end }
}

fn civil(year: i16, month: i8, day: i8) -> Option<Date> {
    jiff::civil::Date::new(year, month, day).ok().map(|_| Date { year, month, day })
}

fn tomorrow(date: Date) -> Option<Date> {
    let next = jiff::civil::Date::new(date.year, date.month, date.day).ok()?.tomorrow().ok()?;
    Some(Date { year: next.year(), month: next.month(), day: next.day() })
}

/// Digits only, as many as wanted: `+7` and `７` are none.
fn digits<T: std::str::FromStr>(text: &str, count: std::ops::RangeInclusive<usize>) -> Option<T> {
    let good = count.contains(&text.len()) && text.bytes().all(|b| b.is_ascii_digit());
    if good { text.parse().ok() } else { None }
}

fn iso(text: &str) -> Option<Date> {
    let mut parts = text.split('-');
    let (year, month, day) = (digits(parts.next()?, 4..=4)?, digits(parts.next()?, 2..=2)?, digits(parts.next()?, 2..=2)?);
    if parts.next().is_some() { None } else { civil(year, month, day) }
}

fn american(text: &str) -> Option<Date> {
    let mut parts = text.split('/');
    let (month, day, year) = (digits(parts.next()?, 1..=2)?, digits(parts.next()?, 1..=2)?, digits(parts.next()?, 4..=4)?);
    if parts.next().is_some() { None } else { civil(year, month, day) }
}

fn clock(text: &str, most: i64) -> Option<i64> {
    let (hours, minutes) = text.split_once(':')?;
    let (hours, minutes) = (digits::<i64>(hours, 1..=2)?, digits::<i64>(minutes, 2..=2)?);
    Some(hours * 60 + minutes).filter(|all| minutes < 60 && *all <= most)
}
