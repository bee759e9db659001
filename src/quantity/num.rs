//! Numbers: exact where the trade counts, real where geometry forces it.

use std::cmp::Ordering;
use std::fmt;

use num_bigint::BigInt;
use num_integer::Integer;
use num_rational::BigRational;
use num_traits::{One, Signed, ToPrimitive, Zero};

use super::small::{self, Small};

/// A number that is either an exact rational or a finite `f64`.
///
/// Exact with exact stays exact; anything with a real gives a real. A real becomes exact again only
/// through [`Num::round`], which keeps the slack so that a knife-edge can be seen.
#[derive(Clone, Debug)]
pub enum Num {
    /// An exact rational, always in lowest terms.
    Exact(BigRational),
    /// A finite `f64`.
    Real(f64),
}

/// Which way a number is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Direction {
    /// Towards minus infinity: limits, start water, place-by times.
    Down,
    /// Towards plus infinity: purchases, weights, minimums.
    Up,
    /// To the nearest, a half going up: figures that nobody acts on unrounded.
    Nearest,
}

/// Relative tolerance under which a value counts as standing on a measure, so that float noise
/// never buys half a load and never takes a cup away.
pub const TOLERANCE: f64 = 1e-9;

impl Num {
    /// The exact integer `n`.
    pub fn int(n: i64) -> Num {
        Num::Exact(BigRational::from_integer(BigInt::from(n)))
    }

    /// The exact fraction `n / d`. `d` must not be zero; a zero `d` gives zero's caller a panic-free `n / 1`.
    pub fn frac(n: i64, d: i64) -> Num {
        let d = if d == 0 { 1 } else { d };
        Num::Exact(BigRational::new(BigInt::from(n), BigInt::from(d)))
    }

    /// A real number, or `None` if it is not finite.
    pub fn real(x: f64) -> Option<Num> {
        x.is_finite().then_some(Num::Real(x))
    }

    /// The nearest `f64`.
    pub fn to_f64(&self) -> f64 {
        match self {
            Num::Exact(r) => r.to_f64().unwrap_or(f64::MAX),
            Num::Real(x) => *x,
        }
    }

    /// The exact value, if this number is exact.
    pub fn exact(&self) -> Option<&BigRational> {
        match self {
            Num::Exact(r) => Some(r),
            Num::Real(_) => None,
        }
    }

    /// True if the number is exactly zero.
    pub fn is_zero(&self) -> bool {
        match self {
            Num::Exact(r) => r.is_zero(),
            Num::Real(x) => *x == 0.0,
        }
    }

    /// True if the number is below zero.
    pub fn is_negative(&self) -> bool {
        match self {
            Num::Exact(r) => r.is_negative(),
            Num::Real(x) => *x < 0.0,
        }
    }

    fn both(&self, other: &Num, exact: fn(&BigRational, &BigRational) -> BigRational, real: fn(f64, f64) -> f64) -> Num {
        match (self, other) {
            (Num::Exact(a), Num::Exact(b)) => Num::Exact(exact(a, b)),
            _ => Num::Real(real(self.to_f64(), other.to_f64())),
        }
    }

    /// Sum.
    pub fn add(&self, other: &Num) -> Num {
        self.both(other, |a, b| fits(a, b).and_then(|(a, b)| a.add(b)).unwrap_or_else(|| a + b), |a, b| a + b)
    }

    /// Difference.
    pub fn sub(&self, other: &Num) -> Num {
        self.both(other, |a, b| fits(a, b).and_then(|(a, b)| a.add(b.negated()?)).unwrap_or_else(|| a - b), |a, b| a - b)
    }

    /// Product.
    pub fn mul(&self, other: &Num) -> Num {
        self.both(other, |a, b| fits(a, b).and_then(|(a, b)| a.mul(b)).unwrap_or_else(|| a * b), |a, b| a * b)
    }

    /// Quotient, or `None` when the divisor is zero or the quotient is not finite.
    pub fn div(&self, other: &Num) -> Option<Num> {
        if other.is_zero() {
            return None;
        }
        match (self, other) {
            (Num::Exact(a), Num::Exact(b)) => {
                let small = fits(a, b).and_then(|(a, b)| a.mul(b.turned()?));
                Some(Num::Exact(small.unwrap_or_else(|| a / b)))
            }
            _ => Num::real(self.to_f64() / other.to_f64()),
        }
    }

    /// Rounds to a whole multiple of `measure` (positive) in a direction.
    ///
    /// A value within [`TOLERANCE`] (relative) of a multiple is that multiple whichever the direction.
    /// Returns the exact rounded value; the slack is the caller's subtraction. A zero or negative measure
    /// returns the value as it is (a real is then taken at its exact binary value).
    pub fn round(&self, direction: Direction, measure: &BigRational) -> BigRational {
        let small = Small::of(measure).filter(|_| measure.is_positive()).and_then(|measure| match self {
            Num::Exact(r) => Small::of(r)?.round(direction, measure),
            Num::Real(x) => small::round_real(*x, direction, measure, TOLERANCE),
        });
        if let Some(rounded) = small {
            return rounded;
        }
        let value = match self {
            Num::Exact(r) => r.clone(),
            Num::Real(x) => BigRational::from_float(*x).unwrap_or_else(BigRational::zero),
        };
        if !measure.is_positive() {
            return value;
        }
        let ratio = &value / measure;
        let half = BigRational::new(BigInt::one(), BigInt::from(2));
        let nearest = (&ratio + &half).floor();
        let stands = match self {
            Num::Exact(_) => ratio.is_integer(),
            Num::Real(_) => {
                let off = (&ratio - &nearest).to_f64().unwrap_or(1.0).abs();
                let size = ratio.to_f64().unwrap_or(1.0).abs().max(1.0);
                off <= TOLERANCE * size
            }
        };
        let steps = match direction {
            _ if stands => nearest,
            Direction::Nearest => nearest,
            Direction::Down => ratio.floor(),
            Direction::Up => ratio.ceil(),
        };
        steps * measure
    }

    /// Compares by value.
    pub fn compare(&self, other: &Num) -> Ordering {
        match (self, other) {
            (Num::Exact(a), Num::Exact(b)) => fits(a, b).map_or_else(|| a.cmp(b), |(a, b)| a.compare(b)),
            _ => self.to_f64().partial_cmp(&other.to_f64()).unwrap_or(Ordering::Equal),
        }
    }

    /// A short fraction, integer or decimal for an exact number; seven significant digits for a real, and for
    /// an exact number whose fraction nobody could key in.
    pub fn plain(&self) -> String {
        self.digits(7)
    }

    /// As [`Num::plain`], with so many significant digits: where large numbers nearly cancel, seven are too few for a
    /// line to come to its result.
    pub fn digits(&self, count: usize) -> String {
        match self {
            Num::Exact(r) => {
                let text = exact_text(r);
                let keyable = text.len() <= 12 && *r.denom() <= BigInt::from(1000) || !text.contains('/') && text.len() <= 12;
                if keyable { text } else { significant(self.to_f64(), count) }
            }
            Num::Real(x) => significant(*x, count),
        }
    }
}

impl PartialEq for Num {
    fn eq(&self, other: &Num) -> bool {
        match (self, other) {
            (Num::Exact(a), Num::Exact(b)) => a == b,
            (Num::Real(a), Num::Real(b)) => a == b,
            _ => false,
        }
    }
}

/// Both numbers on machine words, if they fit.
fn fits(a: &BigRational, b: &BigRational) -> Option<(Small, Small)> {
    Some((Small::of(a)?, Small::of(b)?))
}

/// An exact number as text: an integer, a decimal of at most nine places when it ends, else `a/b`.
pub fn exact_text(r: &BigRational) -> String {
    if r.is_integer() {
        return r.numer().to_string();
    }
    let mut scale = BigInt::one();
    for places in 1..=9 {
        scale *= 10;
        let scaled = r * BigRational::from_integer(scale.clone());
        if scaled.is_integer() {
            return decimal_digits(scaled.numer(), places);
        }
    }
    format!("{}/{}", r.numer(), r.denom())
}

/// A rational as a decimal with exactly `places` digits after the point, rounded to nearest.
///
/// The caller has rounded already; this only writes, so a terminating value is written exactly.
pub fn decimal(r: &BigRational, places: usize) -> String {
    let scale = BigRational::from_integer(num_traits::pow(BigInt::from(10), places));
    let half = BigRational::new(BigInt::one(), BigInt::from(2));
    let scaled = (r * scale + half).floor();
    decimal_digits(scaled.numer(), places)
}

fn decimal_digits(scaled: &BigInt, places: usize) -> String {
    let sign = if scaled.is_negative() { "-" } else { "" };
    let (whole, part) = scaled.abs().div_rem(&num_traits::pow(BigInt::from(10), places));
    if places == 0 {
        return format!("{sign}{whole}");
    }
    let part = part.to_string();
    format!("{sign}{whole}.{}{part}", "0".repeat(places.saturating_sub(part.len())))
}

/// A float with `digits` significant digits, plain notation, no trailing zeros after the point.
pub fn significant(x: f64, digits: usize) -> String {
    if x == 0.0 {
        return "0".to_owned();
    }
    let exponent = format!("{:e}", x).rsplit('e').next().and_then(|e| e.parse::<i32>().ok()).unwrap_or(0);
    let places = usize::try_from(i32::try_from(digits).unwrap_or(7) - 1 - exponent).unwrap_or(0);
    let text = format!("{x:.places$}");
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

impl fmt::Display for Num {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.plain())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn r(n: i64, d: i64) -> BigRational {
        BigRational::new(n.into(), d.into())
    }

    #[test]
    fn rounding_fails_safe_and_forgives_float_noise() {
        let half = r(1, 2);
        assert_eq!(Num::real(34.282).unwrap().round(Direction::Up, &half), r(69, 2));
        assert_eq!(Num::real(20.000_000_000_1).unwrap().round(Direction::Up, &half), r(20, 1));
        assert_eq!(Num::real(19.999_999_999_9).unwrap().round(Direction::Down, &half), r(20, 1));
        assert_eq!(Num::frac(81, 16).round(Direction::Down, &r(1, 16)), r(81, 16));
        assert_eq!(Num::frac(27, 16).round(Direction::Down, &r(1, 4)), r(3, 2));
        assert_eq!(Num::frac(-1, 4).round(Direction::Down, &half), r(-1, 2));
        // An exact value just over a measure is over it: only floats have noise to forgive.
        let hair = BigRational::new(BigInt::from(20_000_000_001_i64), BigInt::from(1_000_000_000_i64));
        assert_eq!(Num::Exact(hair).round(Direction::Up, &half), r(41, 2));
    }

    #[test]
    fn texts() {
        assert_eq!(Num::frac(13, 8).plain(), "1.625");
        assert_eq!(Num::frac(10, 3).plain(), "10/3");
        assert_eq!(Num::real(0.000_123_456_78).unwrap().plain(), "0.0001234568");
        assert_eq!(Num::real(217.220_6).unwrap().plain(), "217.2206");
        assert_eq!(Num::real(1_234_567_890.0).unwrap().plain(), "1234567890");
        assert_eq!(decimal(&r(1, 3), 2), "0.33");
        assert_eq!(decimal(&r(-5, 4), 2), "-1.25");
        assert_eq!(decimal(&r(7, 1), 1), "7.0");
    }

    #[test]
    fn division_by_zero_is_none() {
        assert!(Num::int(1).div(&Num::int(0)).is_none());
        assert!(Num::real(f64::INFINITY).is_none());
    }
}
