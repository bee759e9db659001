//! Weather of a site: hour by hour, and the means and least temperatures of days.

use crate::job::Text;
use crate::quantity::Worked;
use crate::quantity::expr::{Clock, Share, Speed, Temperature};

/// A day of the calendar, in the order of the calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Date {
    /// Year.
    pub year: i16,
    /// Month, 1 to 12.
    pub month: i8,
    /// Day of the month.
    pub day: i8,
}

/// What was read, or forecast, at a time of a day.
#[derive(Clone, Debug)]
pub struct Hour {
    /// Local civil time; 24:00 where a typical year ends its day with it.
    pub at: Worked<Clock>,
    /// Air.
    pub air: Worked<Temperature>,
    /// Relative humidity.
    pub humidity: Worked<Share>,
    /// Wind.
    pub wind: Worked<Speed>,
    /// Bags, where they were measured.
    pub bags: Option<Worked<Temperature>>,
    /// Mixing water, where it was measured.
    pub water: Option<Worked<Temperature>>,
    /// The mix itself, where it was measured.
    pub mix: Option<Worked<Temperature>>,
    /// Chance of rain in the hour, where a forecast gives one.
    pub rain: Option<Worked<Share>>,
    /// Air at the wall, read by hand.
    pub wall_air: Option<Worked<Temperature>>,
    /// Humidity at the wall, read by hand.
    pub wall_humidity: Option<Worked<Share>>,
    /// Wind at the wall, read by hand.
    pub wall_wind: Option<Worked<Speed>>,
    /// When the forecast of this line was made; nothing for a reading.
    pub made: Option<Made>,
}

/// When a forecast was made: a day and minutes since its midnight.
#[derive(Clone, Debug)]
pub struct Made {
    /// The day.
    pub date: Date,
    /// Minutes since midnight.
    pub minutes: i64,
    /// The cell.
    pub said: Text,
}

impl Hour {
    /// True if somebody read the air, the humidity or the wind at the wall.
    pub fn read_at_wall(&self) -> bool {
        self.wall_air.is_some() || self.wall_humidity.is_some() || self.wall_wind.is_some()
    }

    /// Air, humidity and wind as the wall feels them: by hand where they were read there, else by the forecast.
    pub fn at_wall(&self) -> (&Worked<Temperature>, &Worked<Share>, &Worked<Speed>) {
        (
            self.wall_air.as_ref().unwrap_or(&self.air),
            self.wall_humidity.as_ref().unwrap_or(&self.humidity),
            self.wall_wind.as_ref().unwrap_or(&self.wind),
        )
    }
}

/// A day's temperatures.
#[derive(Clone, Debug)]
pub struct Daily {
    /// The day.
    pub date: Date,
    /// Its mean.
    pub mean: Worked<Temperature>,
    /// Its least: freezing looks at this one.
    pub least: Worked<Temperature>,
    /// Chance of rain, where a forecast gives one.
    pub rain: Option<Worked<Share>>,
}

/// The weather files of a site.
#[derive(Clone, Debug, Default)]
pub struct Weather {
    /// File name of the site.
    pub site: String,
    /// Hours in order, each with its day.
    pub hours: Vec<(Date, Hour)>,
    /// True if the hours are a typical year's: then their years mean nothing, and what is worked from them is not
    /// a forecast.
    pub typical: bool,
    /// Days in order.
    pub days: Vec<Daily>,
}

impl Date {
    /// Days since 1970-01-01.
    pub fn count(self) -> i64 {
        crate::quantity::date::count(self.year, self.month, self.day)
    }

    /// The day as `2026-03-02`.
    pub fn iso(self) -> String {
        crate::quantity::date::iso(self.year, self.month, self.day)
    }
}

impl Weather {
    /// Hours of a day in order; none if the files do not have it. Of a typical year, the same month and day, and
    /// February 28 for a 29.
    pub fn day(&self, date: Date) -> Vec<Hour> {
        self.lines(date).cloned().collect()
    }

    /// The same without copies.
    pub fn lines(&self, date: Date) -> impl Iterator<Item = &Hour> {
        self.numbered(date).map(|(_, hour)| hour)
    }

    /// The same with the number of each line in `hours`. The lines of a year that is no typical one are in order: a day
    /// is found by halves.
    pub fn numbered(&self, date: Date) -> impl Iterator<Item = (usize, &Hour)> {
        let leap = self.typical && (date.month, date.day) == (2, 29);
        let wanted = if leap { Date { day: 28, ..date } } else { date };
        let (start, end) = if self.typical {
            (0, self.hours.len())
        } else {
            (self.hours.partition_point(|(d, _)| *d < wanted), self.hours.partition_point(|(d, _)| *d <= wanted))
        };
        let lines = (start..).zip(self.hours.get(start..end).unwrap_or(&[]));
        lines.filter(move |(_, (d, _))| (d.month, d.day) == (wanted.month, wanted.day)).map(|(n, (_, hour))| (n, hour))
    }

    /// Means and least temperatures of days, in order.
    pub fn daily(&self) -> &[Daily] {
        &self.days
    }
}
