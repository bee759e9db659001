//! Civil dates as counts of days since 1970-01-01, in the Gregorian calendar. Arithmetic only: zones and clocks are
//! for the reading room.

/// Days from 0000-03-01 to 1970-01-01; years are counted from March, so that a leap day ends its year.
const EPOCH: i64 = 719_468;
/// Days of 400 years, after which the calendar repeats.
const ERA: i64 = 146_097;

/// Year, month and day of a count of days since 1970-01-01; `None` outside the years that a date can hold.
pub fn civil(days: i64) -> Option<(i16, i8, i8)> {
    let from_march = days.checked_add(EPOCH)?;
    let era = from_march.div_euclid(ERA);
    let of_era = from_march.rem_euclid(ERA);
    let year = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let day = of_year - (153 * month + 2) / 5 + 1;
    let (month, turned) = if month < 10 { (month + 3, 0) } else { (month - 9, 1) };
    let year = era.checked_mul(400)?.checked_add(year + turned)?;
    Some((i16::try_from(year).ok()?, i8::try_from(month).ok()?, i8::try_from(day).ok()?))
}

/// Days since 1970-01-01 of a year, month and day: the inverse of [`civil`].
pub fn count(year: i16, month: i8, day: i8) -> i64 {
    let (month, day) = (i64::from(month), i64::from(day));
    let year = i64::from(year) - i64::from(month <= 2);
    let era = year.div_euclid(400);
    let of_era = year.rem_euclid(400);
    let of_year = (153 * (if month > 2 { month - 3 } else { month + 9 }) + 2) / 5 + day - 1;
    era * ERA + of_era * 365 + of_era / 4 - of_era / 100 + of_year - EPOCH
}

/// A day as `2026-03-02`.
pub fn iso(year: i16, month: i8, day: i8) -> String {
    format!("{year:04}-{month:02}-{day:02}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn known_days() {
        for (date, count) in [
            ((1970, 1, 1), 0),
            ((1969, 12, 31), -1),
            ((2000, 2, 29), 11_016),
            ((2026, 3, 2), 20_514),
            ((2100, 3, 1), 47_541),
            ((1, 1, 1), -719_162),
        ] {
            assert_eq!(civil(count), Some(date));
            assert_eq!(super::count(date.0, date.1, date.2), count);
        }
    }

    #[test]
    fn every_day_of_eight_hundred_years_follows_the_one_before() {
        let mut last = civil(-150_000).unwrap();
        for count in -149_999..142_000 {
            let day = civil(count).unwrap();
            let next = (day.0, day.1) == (last.0, last.1) && day.2 == last.2 + 1;
            let month = day.2 == 1 && (day.1 == last.1 + 1 || day.1 == 1 && last.1 == 12 && day.0 == last.0 + 1) && last.2 >= 28;
            assert!(next || month, "{last:?} {day:?}");
            last = day;
        }
    }

    #[test]
    fn years_that_no_date_holds() {
        assert_eq!(civil(i64::MAX), None);
        assert_eq!(civil(20_000_000), None);
    }
}
