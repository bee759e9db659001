//! Weather of a site: hour by hour, and the means and least temperatures of days.

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

impl Weather {
    /// Hours of a day in order; none if the files do not have it. Of a typical year, the same month and day, and
    /// February 28 for a 29.
    pub fn day(&self, date: Date) -> Vec<Hour> {
        let leap = self.typical && (date.month, date.day) == (2, 29);
        let wanted = if leap { Date { day: 28, ..date } } else { date };
        let same = |d: &Date| (d.month, d.day) == (wanted.month, wanted.day) && (self.typical || d.year == wanted.year);
        self.hours.iter().filter(|(d, _)| same(d)).map(|(_, hour)| hour.clone()).collect()
    }

    /// Means and least temperatures of days, in order.
    pub fn daily(&self) -> &[Daily] {
        &self.days
    }
}
