//! F16: where the sun stands, and when it rises and sets: for work that ends before dark.

use crate::quantity::expr::{Angle, Clock, Duration, Node, Plain, Worked};
use crate::quantity::num::{Direction, Num};
use crate::quantity::{Dim, Kind, Quantity};

use super::{Answer, OutOfRange, refuse};

/// Beyond it sunset is a matter of days.
const MOST_LATITUDE: f64 = 89.0;
/// Days since 2000-01-01 within which the series hold: the years 1900 to 2100.
const DAYS: (i64, i64) = (-36524, 36889);
/// Angles that wind on for years are kept to 1/10000 of a degree, so that what is printed of them is all of them.
const PLACE: i64 = 10_000;

/// A place under the sun.
#[derive(Clone, Debug)]
pub struct Spot {
    /// North positive.
    pub latitude: Worked<Angle>,
    /// East positive.
    pub longitude: Worked<Angle>,
    /// Civil time less universal time on the day, summer time in it: −6 h in the middle of North America in winter.
    pub zone: Worked<Duration>,
}

/// A decimal of the series: `n` in units of the ninth place.
fn nano(n: i64) -> Node {
    Node::given(n, 1_000_000_000)
}

pub(super) fn radians(degrees: Node) -> Node {
    degrees * Node::pi() / Node::given(180, 1)
}

pub(super) fn degrees(radians: Node) -> Node {
    radians * Node::given(180, 1) / Node::pi()
}

pub(super) fn sin(degrees: Node) -> Node {
    radians(degrees).sin()
}

pub(super) fn cos(degrees: Node) -> Node {
    radians(degrees).cos()
}

/// Kept between −1 and 1, where float noise would leave an arc cosine without a value.
pub(super) fn unit(x: Node) -> Node {
    x.min(Node::given(1, 1)).max(Node::given(-1, 1))
}

/// Days from 2000-01-01 to a day of the calendar, exact.
///
/// Years 1900 to 2100, a month from 1 to 12, a day that the month has. Source: `sun`.
/// ```
/// use hodbook::trade::sun::day_number;
/// assert_eq!(day_number(2000, 3, 1).unwrap().value().si.to_f64(), 60.0);
/// assert!(day_number(2026, 2, 29).is_err());
/// ```
pub fn day_number(year: i16, month: i8, day: i8) -> Answer<Plain> {
    let text = format!("{year:04}-{month:02}-{day:02}");
    let (y, m, d) = (i64::from(year), i64::from(month), i64::from(day));
    let leap = y % 4 == 0 && y % 100 != 0 || y % 400 == 0;
    let length = match m {
        2 => 28 + i64::from(leap),
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => 0,
    };
    if !(1900..=2100).contains(&y) || !(1..=length).contains(&d) {
        let wants = "a day of the calendar from 1900 to 2100, such as 2026-03-02".to_owned();
        return Err(OutOfRange { formula: "F16 century", symbol: "day", value: text, wants });
    }
    // Years begin in March, so that the leap day is their last.
    let (y, m) = if m < 3 { (y - 1, m + 9) } else { (y, m - 3) };
    let days = y * 365 + y.div_euclid(4) - y.div_euclid(100) + y.div_euclid(400) + (153 * m + 2) / 5 + d - 730_426;
    Ok(Worked::new(Node::authored(Quantity::plain(Num::int(days)), None, &text, "day", None)))
}

/// Time of sunset: `sunset = down(noon + 4 × H, 1)`, the upper edge of the sun on a level horizon, refraction in it;
/// `noon` and `H` from the low-precision series for longitude, obliquity and equation of time, taken at sunset itself.
///
/// Latitude −89° to 89°, longitude −180° to 180°, `zone` within 4 h of the sun's own time, a day of
/// [`day_number`]. Where the sun does not rise or does not set that day there is no time. A little after midnight is
/// more than 24 h. Hills and walls make it dark sooner. Source: `sun`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sun::{Spot, day_number, sunset}};
/// let (latitude, longitude) = (Worked::read("0 °").unwrap(), Worked::read("0 °").unwrap());
/// let spot = Spot { latitude, longitude, zone: Worked::read("0 min").unwrap() };
/// let clock = sunset(&day_number(2026, 3, 20).unwrap(), &spot).unwrap();
/// assert_eq!(clock.in_unit("min"), 18.0 * 60.0 + 10.0);
/// ```
pub fn sunset(day: &Worked<Plain>, spot: &Spot) -> Answer<Clock> {
    let clock = event(day, spot, &event(day, spot, &midday(), false)?, false)?;
    Ok(Worked::new(clock.named("sunset_exact").rounded(Direction::Down, 1, 1).formula("F16 sunset", "sunset")))
}

/// Time of sunrise: `sunrise = up(noon − 4 × H, 1)`; all else as [`sunset`]. A little before midnight is below 0.
///
/// Source: `sun`.
/// ```
/// use hodbook::{quantity::expr::Worked, trade::sun::{Spot, day_number, sunrise}};
/// let (latitude, longitude) = (Worked::read("0 °").unwrap(), Worked::read("0 °").unwrap());
/// let spot = Spot { latitude, longitude, zone: Worked::read("0 min").unwrap() };
/// let clock = sunrise(&day_number(2026, 3, 20).unwrap(), &spot).unwrap();
/// assert_eq!(clock.in_unit("min"), 6.0 * 60.0 + 5.0);
/// ```
pub fn sunrise(day: &Worked<Plain>, spot: &Spot) -> Answer<Clock> {
    let clock = event(day, spot, &event(day, spot, &midday(), true)?, true)?;
    Ok(Worked::new(clock.named("sunrise_exact").rounded(Direction::Up, 1, 1).formula("F16 sunrise", "sunrise")))
}

pub(super) fn midday() -> Worked<Clock> {
    Worked::new(Node::given(720, 1).dressed("min"))
}

fn event(day: &Worked<Plain>, spot: &Spot, guess: &Worked<Clock>, rises: bool) -> Answer<Clock> {
    let sun = position(day, spot, guess)?;
    let arc = Node::given(4, 1) * half_day(&sun, spot)?.named("H");
    let noon = sun.noon.named("noon").bare("min");
    let clock = if rises { (noon - arc).formula("F16 sun rises", "clock") } else { (noon + arc).formula("F16 sun sets", "clock") };
    Ok(Worked::new(clock.dressed("min")))
}

/// What the sun is doing at a moment.
pub(super) struct Sun {
    /// Declination, in degrees.
    pub declination: Worked<Plain>,
    /// When it is highest.
    pub noon: Worked<Clock>,
}

pub(super) fn position(day: &Worked<Plain>, spot: &Spot, clock: &Worked<Clock>) -> Result<Sun, OutOfRange> {
    in_range(day, spot)?;
    let plain = Worked::<Plain>::new;
    let minutes = clock.named("clock").bare("min") - spot.zone.named("zone").bare("min");
    let days = day.named("day") - Node::given(1, 2) + minutes / Node::given(1440, 1);
    let t = plain((days / Node::given(36525, 1)).formula("F16 century", "T"));
    let t = || t.named("T");
    let l = Node::given(28_046_646, 100_000) + t() * (Node::given(3_600_076_983, 100_000) + nano(303_200) * t());
    let l = plain(l.rounded(Direction::Nearest, 1, PLACE).formula("F16 mean longitude", "L"));
    let m = Node::given(35_752_911, 100_000) + t() * (Node::given(3_599_905_029, 100_000) - nano(153_700) * t());
    let m = plain(m.rounded(Direction::Nearest, 1, PLACE).formula("F16 mean anomaly", "M"));
    let e = nano(16_708_634) - t() * (nano(42_037) + Node::given(1267, 10_000_000_000) * t());
    let e = plain(e.formula("F16 eccentricity", "e"));
    let (l, m, e) = (|| l.named("L"), || m.named("M"), || e.named("e"));
    let times = |n: i64, x: Node| Node::given(n, 1) * x;
    let centre = sin(m()) * (nano(1_914_602_000) - t() * (nano(4_817_000) + nano(14_000) * t()))
        + sin(times(2, m())) * (nano(19_993_000) - nano(101_000) * t())
        + sin(times(3, m())) * nano(289_000);
    let c = plain(centre.formula("F16 centre", "C_sun"));
    let node = plain(
        (nano(125_040_000_000) - nano(1_934_136_000_000) * t()).rounded(Direction::Nearest, 1, PLACE).formula("F16 moon's node", "omega"),
    );
    let omega = || node.named("omega");
    let lambda = l() + c.named("C_sun") - nano(5_690_000) - nano(4_780_000) * sin(omega());
    let lambda = plain(lambda.rounded(Direction::Nearest, 1, PLACE).formula("F16 apparent longitude", "lambda"));
    let seconds = nano(21_448_000_000) - t() * (nano(46_815_000_000) + t() * (nano(590_000) - nano(1_813_000) * t()));
    let eps = Node::given(23, 1) + Node::given(26, 60) + seconds / Node::given(3600, 1) + nano(2_560_000) * cos(omega());
    let eps = plain(eps.formula("F16 obliquity", "eps"));
    let declination = degrees((sin(eps.named("eps")) * sin(lambda.named("lambda"))).asin());
    let declination = plain(declination.formula("F16 declination", "delta"));
    let half = || eps.named("eps") / Node::given(2, 1);
    let y = plain((sin(half()) / cos(half())).pow(Node::given(2, 1)).formula("F16 tangent", "y"));
    let y = || y.named("y");
    let equation = y() * sin(times(2, l())) - times(2, e()) * sin(m()) + times(4, e()) * y() * sin(m()) * cos(times(2, l()))
        - y() * y() * sin(times(4, l())) / Node::given(2, 1)
        - Node::given(5, 4) * e() * e() * sin(times(2, m()));
    let equation = plain((Node::given(4, 1) * degrees(equation)).formula("F16 equation of time", "E"));
    let noon = Node::given(720, 1) - Node::given(4, 1) * spot.longitude.named("longitude").bare("°") - equation.named("E")
        + spot.zone.named("zone").bare("min");
    Ok(Sun { declination, noon: Worked::new(noon.dressed("min").formula("F16 noon", "noon")) })
}

/// Degrees that the sky turns from noon to sunset.
pub(super) fn half_day(sun: &Sun, spot: &Spot) -> Answer<Plain> {
    let (phi, delta) = (|| spot.latitude.named("phi").bare("°"), || sun.declination.named("delta"));
    let h0 = Quantity { si: Num::frac(-5, 6), dim: Dim::NONE, kind: Kind::Plain };
    let h0 = Node::constant(h0, None, "h_0", "34 minutes of arc of refraction and 16 of the sun's half disc, in degrees");
    let cosine = (sin(h0) - sin(phi()) * sin(delta())) / (cos(phi()) * cos(delta()));
    let cosine: Worked<Plain> = Worked::new(cosine.formula("F16 cosine of the half day", "cos_H"));
    let x = cosine.value().si.to_f64();
    if !(-1.0..=1.0).contains(&x) {
        let wants = if x > 1.0 { "a day on which the sun rises there" } else { "a day on which the sun sets there" };
        return Err(refuse("F16 half day", "phi", &spot.latitude, wants));
    }
    Ok(Worked::new(degrees(cosine.named("cos_H").acos()).formula("F16 half day", "H")))
}

fn in_range(day: &Worked<Plain>, spot: &Spot) -> Result<(), OutOfRange> {
    let outside = |x: f64, most: f64| !(-most..=most).contains(&x);
    let (latitude, longitude) = (spot.latitude.in_unit("°"), spot.longitude.in_unit("°"));
    if outside(latitude, MOST_LATITUDE) {
        return Err(refuse("F16 half day", "phi", &spot.latitude, "-89° to 89°, north positive, such as `41.2 °`"));
    }
    if outside(longitude, 180.0) {
        return Err(refuse("F16 noon", "longitude", &spot.longitude, "-180° to 180°, east positive, such as `-96.1 °`"));
    }
    let own = 4.0 * longitude;
    if outside(spot.zone.in_unit("min") - own, 240.0) {
        let wants = format!("the civil time there, within 240 min of the sun's own, {own:.0} min");
        return Err(refuse("F16 noon", "zone", &spot.zone, wants));
    }
    let number = day.value().si.to_f64();
    if number < DAYS.0 as f64 || number > DAYS.1 as f64 {
        return Err(refuse("F16 century", "day", day, "days since 2000-01-01 in the years 1900 to 2100"));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::super::testing::{holds, q};
    use super::*;

    fn spot(latitude: &str, longitude: &str, zone: &str) -> Spot {
        Spot { latitude: q(latitude), longitude: q(longitude), zone: q(zone) }
    }

    // The outside check holds a grid of places and days to another library; these are the edges.
    #[test]
    fn days_of_the_calendar() {
        for (date, days) in [((2000, 1, 1), 0), ((1999, 12, 31), -1), ((2026, 3, 2), 9557), ((1900, 1, 1), -36524), ((2100, 12, 31), 36889)]
        {
            let (y, m, d) = date;
            assert_eq!(day_number(y, m, d).unwrap().value().si, Num::int(days), "{date:?}");
        }
        for (y, m, d) in
            [(2026, 2, 29), (1900, 2, 29), (2026, 13, 1), (2026, 0, 1), (2026, 4, 31), (1899, 12, 31), (2026, 1, 0), (i16::MIN, 1, 1)]
        {
            assert!(day_number(y, m, d).unwrap_err().wants.contains("2026-03-02"));
        }
    }

    #[test]
    fn noon_of_the_equation_of_time() {
        // Equation of time -14.2 min in February, +16.5 min in November: the year's extremes, from memory.
        let noon = |month, day| position(&day_number(2026, month, day).unwrap(), &spot("0 °", "0 °", "0 min"), &midday()).unwrap().noon;
        holds(&noon(2, 11), "min", "734.2");
        holds(&noon(11, 3), "min", "703.5");
        let june = position(&day_number(2026, 6, 21).unwrap(), &spot("0 °", "0 °", "0 min"), &midday()).unwrap();
        holds(&june.declination, "", "23.44");
    }

    #[test]
    fn summer_time_moves_the_clock_and_not_the_sun() {
        let day = day_number(2026, 6, 21).unwrap();
        let at = |zone| sunset(&day, &spot("41.2 °", "-96.1 °", zone)).unwrap().in_unit("min");
        assert_eq!(at("-5 h") - at("-6 h"), 60.0);
    }

    #[test]
    fn polar_days_have_words() {
        let (june, december) = (day_number(2026, 6, 21).unwrap(), day_number(2026, 12, 21).unwrap());
        let north = spot("70 °", "20 °", "1 h");
        assert_eq!(sunset(&june, &north).unwrap_err().wants, "a day on which the sun sets there");
        assert_eq!(sunrise(&december, &north).unwrap_err().wants, "a day on which the sun rises there");
        assert!(sunset(&june, &spot("65 °", "20 °", "1 h")).is_ok());
    }

    #[test]
    fn out_of_range() {
        let day = day_number(2026, 6, 21).unwrap();
        let refused = |s: Spot| sunset(&day, &s).unwrap_err().symbol;
        assert_eq!(refused(spot("90 °", "0 °", "0 min")), "phi");
        assert_eq!(refused(spot("40 °", "181 °", "12 h")), "longitude");
        assert_eq!(refused(spot("40 °", "-96 °", "6 h")), "zone");
        let far: Worked<Plain> = q("40000");
        assert_eq!(sunset(&far, &spot("40 °", "0 °", "0 min")).unwrap_err().symbol, "day");
    }
}
