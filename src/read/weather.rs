//! `weather/SITE.csv`: the weather of a site, hour by hour or day by day, and typical years as they are published.
//! The header names each column and its unit: `time, air (°F), humidity (%), wind (mph)`.

use crate::finding::{Finding, Severity};
use crate::job::Weather;
use crate::quantity::units::{UnitExpr, find_expr};
use crate::quantity::{Dim, Kind};
use crate::source::{File, Folder, Span};

use super::cells::{Cell, Records};
use super::doc::Doc;
use super::near;
use super::weather_rows::Rows;

const FOLDER: &str = "weather";
/// A table that is wrong everywhere is told about this often.
pub(super) const MOST_FINDINGS: usize = 20;

/// What a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Want {
    /// A day, or a day with its time.
    Time,
    /// A time of day beside a day: typical years.
    TimeOfDay,
    /// A day with its time beside the line's own: when a forecast was made.
    Made,
    /// An amount with a unit in the header, from and to.
    Amount(Dim, Kind, &'static str, &'static str),
}

/// A column of one of the tables.
#[derive(Debug)]
pub(super) struct Column {
    /// Its name for us and in findings.
    pub name: &'static str,
    /// Its name in the header.
    pub head: &'static str,
    pub want: Want,
    pub needed: bool,
    /// The header's cell as an author would write it.
    pub example: &'static str,
}

const fn amount(name: &'static str, head: &'static str, want: Want, needed: bool, example: &'static str) -> Column {
    Column { name, head, want, needed, example }
}

const AIR: Want = Want::Amount(Dim::TEMPERATURE, Kind::Reading, "-60 °C", "60 °C");
const LIQUID: Want = Want::Amount(Dim::TEMPERATURE, Kind::Reading, "0 °C", "100 °C");
const SOLID: Want = Want::Amount(Dim::TEMPERATURE, Kind::Reading, "-60 °C", "90 °C");
const HUMIDITY: Want = Want::Amount(Dim::NONE, Kind::Share, "0 %", "100 %");
const WIND: Want = Want::Amount(Dim::SPEED, Kind::Plain, "0 m/s", "100 m/s");

static HOURLY: &[Column] = &[
    amount("time", "time", Want::Time, true, "time"),
    amount("air", "air", AIR, true, "air (°F)"),
    amount("humidity", "humidity", HUMIDITY, true, "humidity (%)"),
    amount("wind", "wind", WIND, true, "wind (mph)"),
    amount("bags", "bags", SOLID, false, "bags (°F)"),
    amount("water", "water", LIQUID, false, "water (°F)"),
    amount("mix", "mix", SOLID, false, "mix (°F)"),
    amount("rain", "rain", HUMIDITY, false, "rain (%)"),
    amount("wall air", "wall air", AIR, false, "wall air (°F)"),
    amount("wall humidity", "wall humidity", HUMIDITY, false, "wall humidity (%)"),
    amount("wall wind", "wall wind", WIND, false, "wall wind (mph)"),
    amount("made", "made", Want::Made, false, "made"),
];

static DAILY: &[Column] = &[
    amount("date", "date", Want::Time, true, "date"),
    amount("mean", "mean", AIR, true, "mean (°F)"),
    amount("least", "least", AIR, true, "least (°F)"),
    amount("rain", "rain", HUMIDITY, false, "rain (%)"),
];

static TYPICAL: &[Column] = &[
    amount("date", "date", Want::Time, true, "Date (MM/DD/YYYY)"),
    amount("time", "time", Want::TimeOfDay, true, "Time (HH:MM)"),
    amount("air", "dry-bulb", AIR, true, "Dry-bulb (C)"),
    amount("humidity", "rhum", HUMIDITY, true, "RHum (%)"),
    amount("wind", "wspd", WIND, true, "Wspd (m/s)"),
];

/// Which table a file holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Table {
    /// Ours, by the hour.
    Hourly,
    /// Ours, by the day.
    Daily,
    /// A typical year as published: a line on the station, then the header, times to 24:00.
    Typical,
}

impl Table {
    fn columns(self) -> &'static [Column] {
        match self {
            Table::Hourly => HOURLY,
            Table::Daily => DAILY,
            Table::Typical => TYPICAL,
        }
    }
}

/// A column that was found: where in the record, and in what unit.
pub(super) struct Found {
    pub index: usize,
    pub column: &'static Column,
    pub unit: Option<UnitExpr>,
}

/// Reads every table in `weather/`; the files of one site are joined.
pub(super) fn read(folder: &Folder, docs: &[Doc<'_>], findings: &mut Vec<Finding>) -> Vec<Weather> {
    let sites: Vec<&str> = docs.iter().filter(|d| d.kind.kind == "site" && d.file.language().is_none()).map(|d| d.file.stem()).collect();
    let mut all: Vec<Weather> = Vec::new();
    let mut seen: Vec<(&str, bool, Span)> = Vec::new();
    for file in folder.files().iter().filter(|f| f.folder() == FOLDER && f.path.ends_with(".csv") && f.whole) {
        let start = file.span(0, 0);
        if !sites.contains(&file.stem()) {
            let title = format!("`{}` is the weather of no site: none is called `{}`", file.path, file.stem());
            findings.push(Finding::new("weather-without-site", Severity::Warn, title).at(start, "").help(near::help(file.stem(), &sites)));
            continue;
        }
        let mut own = Vec::new();
        let (table, read) = table(file, &mut own);
        findings.extend(own);
        let daily = table == Table::Daily;
        if let Some((.., first)) = seen.iter().find(|(site, d, _)| *site == file.stem() && *d == daily) {
            let what = if daily { "days" } else { "hours" };
            let title = format!("the {what} of `{}` are in two files", file.stem());
            let finding = Finding::new("weather-twice", Severity::Stop, title).at(start, "the second");
            findings.push(finding.related(*first, "the first").help("join them in one file, or delete one"));
            continue;
        }
        seen.push((file.stem(), daily, start));
        match all.iter_mut().find(|w| w.site == file.stem()) {
            Some(weather) if daily => weather.days = read.days,
            Some(weather) => {
                weather.hours = read.hours;
                weather.typical = read.typical;
            }
            None => all.push(Weather { site: file.stem().to_owned(), ..read }),
        }
    }
    all
}

fn table(file: &File, findings: &mut Vec<Finding>) -> (Table, Weather) {
    let mut records = Records::of(file).peekable();
    let Some(mut head) = records.next() else {
        let help = format!("its first line is `{}`", line(HOURLY, true));
        findings.push(Finding::new("weather-empty", Severity::Warn, "the weather has no lines").at(file.span(0, 0), "").help(help));
        return (Table::Hourly, Weather::default());
    };
    let says = |cells: &[Cell<'_>], head: &str| cells.iter().any(|c| name_and_unit(c.text).0 == head);
    let mut table = if says(&head, "date") && !says(&head, "time") { Table::Daily } else { Table::Hourly };
    if let Some(second) = records.next_if(|second| says(second, "dry-bulb") && says(second, "date")) {
        (head, table) = (second, Table::Typical);
    }
    let Some(found) = columns(&head, table, findings) else { return (table, Weather::default()) };
    let mut rows = Rows::new(table, &found);
    for record in records {
        rows.add(&record, findings);
        if findings.len() > MOST_FINDINGS {
            let at = record.first().map_or(file.span(0, 0), |c| c.at);
            let title = format!("more than {MOST_FINDINGS} lines are wrong; the rest was not read");
            findings.push(Finding::new("weather-unreadable", Severity::Stop, title).at(at, "up to here").help("correct these first"));
            return (table, Weather::default());
        }
    }
    (table, rows.weather)
}

/// `air (°F)` as name and unit; the name in small letters.
fn name_and_unit(cell: &str) -> (String, Option<&str>) {
    match cell.strip_suffix(')').and_then(|c| c.rsplit_once('(')) {
        Some((name, unit)) => (name.trim().to_lowercase(), Some(unit.trim())),
        None => (cell.to_lowercase(), None),
    }
}

fn line(columns: &[Column], all: bool) -> String {
    columns.iter().filter(|c| all || c.needed).map(|c| c.example).collect::<Vec<_>>().join(", ")
}

/// The columns of a header; nothing if one that is needed cannot be used.
fn columns(head: &[Cell<'_>], table: Table, findings: &mut Vec<Finding>) -> Option<Vec<Found>> {
    let known = table.columns();
    let mut found: Vec<(Found, Span)> = Vec::new();
    let mut sound = true;
    for (index, cell) in head.iter().enumerate() {
        let (name, unit) = name_and_unit(cell.text);
        let Some(column) = known.iter().find(|c| c.head == name) else {
            // A typical year has some sixty columns that say nothing about mud.
            if table != Table::Typical && !cell.text.is_empty() {
                let title = format!("the column `{}` is not read", cell.text);
                let names: Vec<&str> = known.iter().map(|c| c.head).collect();
                let help = match near::nearest(&name, names.iter().copied()) {
                    Some(near) => format!("did you mean `{near}`?"),
                    None => format!("the columns are `{}`", line(known, true)),
                };
                findings.push(Finding::new("column-not-read", Severity::Note, title).at(cell.at, "").help(help));
            }
            continue;
        };
        if let Some((_, first)) = found.iter().find(|(f, _)| f.column.head == name) {
            let finding = Finding::new("column-twice", Severity::Stop, format!("there are two columns `{}`", column.head));
            findings.push(finding.at(cell.at, "the second").related(*first, "the first").help("keep one of them"));
            sound = false;
            continue;
        }
        let unit = match column.want {
            Want::Amount(dim, kind, ..) => match unit_of(cell, unit, column, (dim, kind)) {
                Ok(unit) => Some(unit),
                Err(finding) => {
                    findings.push(*finding);
                    sound = false;
                    None
                }
            },
            Want::Time | Want::TimeOfDay | Want::Made => None,
        };
        found.push((Found { index, column, unit }, cell.at));
    }
    let at = match (head.first(), head.last()) {
        (Some(a), Some(b)) => Span { end: b.at.end, ..a.at },
        _ => return None,
    };
    for column in known.iter().filter(|c| c.needed && !found.iter().any(|(f, _)| f.column.head == c.head)) {
        let title = format!("the column `{}` is missing", column.head);
        let semicolons = head.len() == 1 && head.iter().any(|c| c.text.contains(';'));
        let help = if semicolons {
            "separate the cells with commas".to_owned()
        } else {
            format!("the first line names at least `{}`", line(known, false))
        };
        findings.push(Finding::new("column-missing", Severity::Stop, title).at(at, "").help(help));
        sound = false;
        if semicolons {
            break;
        }
    }
    sound.then(|| found.into_iter().map(|(f, _)| f).collect())
}

fn unit_of(cell: &Cell<'_>, unit: Option<&str>, column: &Column, (dim, kind): (Dim, Kind)) -> Result<UnitExpr, Box<Finding>> {
    let Some(text) = unit.filter(|u| !u.is_empty()) else {
        let title = format!("the column `{}` has no unit", cell.text);
        let finding = Finding::new("unit-missing", Severity::Stop, title).at(cell.at, "").help(format!("write `{}`", column.example));
        return Err(Box::new(finding));
    };
    match find_expr(text).filter(|u| u.dim() == dim && u.kind() == kind) {
        Some(unit) => Ok(unit),
        None => {
            let title = format!("`{text}` is no unit of `{}`", column.head);
            let finding = Finding::new("unit-unknown", Severity::Stop, title).at(cell.at, "");
            Err(Box::new(finding.help(format!("write the unit in the header, like `{}`", column.example))))
        }
    }
}
