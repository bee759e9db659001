//! Rational arithmetic on machine words, for numbers that fit: nearly all of a wall's do.
//!
//! The big rationals stay what they are everywhere else; these functions give the same results, in lowest terms, or
//! nothing when a number or a product does not fit, and then the big ones work it.

use std::cmp::Ordering;

use num_bigint::BigInt;
use num_integer::Integer;
use num_rational::BigRational;
use num_traits::ToPrimitive;
use num_traits::float::FloatCore;

use super::num::Direction;

/// A fraction in lowest terms with a positive denominator.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Small {
    n: i64,
    d: i64,
}

impl Small {
    /// A big rational that fits.
    pub fn of(r: &BigRational) -> Option<Small> {
        Some(Small { n: r.numer().to_i64()?, d: r.denom().to_i64()? })
    }

    /// The big rational of a fraction in lowest terms.
    fn big(n: i128, d: i128) -> BigRational {
        BigRational::new_raw(BigInt::from(n), BigInt::from(d))
    }

    /// Sum.
    pub fn add(self, other: Small) -> Option<BigRational> {
        let (n, d) = if self.d == other.d {
            (i128::from(self.n) + i128::from(other.n), i128::from(self.d))
        } else {
            let left = i128::from(self.n).checked_mul(i128::from(other.d))?;
            let right = i128::from(other.n).checked_mul(i128::from(self.d))?;
            (left.checked_add(right)?, i128::from(self.d).checked_mul(i128::from(other.d))?)
        };
        let common = gcd(n, d)?;
        Some(Small::big(n / common, d / common))
    }

    /// The number below zero.
    pub fn negated(self) -> Option<Small> {
        Some(Small { n: self.n.checked_neg()?, d: self.d })
    }

    /// One over it; nothing for zero.
    pub fn turned(self) -> Option<Small> {
        match self.n.signum() {
            0 => None,
            1 => Some(Small { n: self.d, d: self.n }),
            _ => Some(Small { n: self.d.checked_neg()?, d: self.n.checked_neg()? }),
        }
    }

    /// Product.
    pub fn mul(self, other: Small) -> Option<BigRational> {
        // Each numerator against the other's denominator: what is left has nothing in common.
        let (a, b) = (self.n.gcd(&other.d), other.n.gcd(&self.d));
        let n = i128::from(self.n / a) * i128::from(other.n / b);
        let d = i128::from(self.d / b) * i128::from(other.d / a);
        Some(Small::big(n, d))
    }

    /// Order.
    pub fn compare(self, other: Small) -> Ordering {
        (i128::from(self.n) * i128::from(other.d)).cmp(&(i128::from(other.n) * i128::from(self.d)))
    }

    /// Rounded to a multiple of a positive measure; nearest means a half goes up.
    pub fn round(self, direction: Direction, measure: Small) -> Option<BigRational> {
        let n = i128::from(self.n) * i128::from(measure.d);
        let d = i128::from(self.d) * i128::from(measure.n);
        let (down, rest) = n.div_mod_floor(&d);
        let up = match direction {
            Direction::Down => false,
            Direction::Up => rest != 0,
            Direction::Nearest => rest.checked_mul(2)? >= d,
        };
        let steps = i64::try_from(down + i128::from(up)).ok()?;
        Small { n: steps, d: 1 }.mul(measure)
    }
}

/// A finite real rounded to a multiple of a positive measure, by its exact binary value; one that stands on a multiple
/// within `tolerance` (relative) is that multiple.
pub(super) fn round_real(x: f64, direction: Direction, measure: Small, tolerance: f64) -> Option<BigRational> {
    if x == 0.0 {
        return Some(Small::big(0, 1));
    }
    let (mantissa, exponent, sign) = x.integer_decode();
    let zeros = mantissa.trailing_zeros();
    let whole = i128::from(mantissa >> zeros) * i128::from(sign);
    let power = i32::from(exponent) + i32::try_from(zeros).ok()?;
    let shift = power.unsigned_abs();
    // Room is left for twice the number in the middle of the work.
    let shifted = |n: i128| (shift < 60).then(|| n.checked_mul(1 << shift)).flatten();
    let n = whole.checked_mul(i128::from(measure.d))?;
    let (n, d) = if power < 0 { (n, shifted(i128::from(measure.n))?) } else { (shifted(n)?, i128::from(measure.n)) };
    let (down, rest) = n.div_mod_floor(&d);
    let nearest = Integer::div_floor(&n.checked_mul(2)?.checked_add(d)?, &d.checked_mul(2)?);
    let off = (n - nearest.checked_mul(d)?).abs().to_f64()? / d.to_f64()?;
    let size = (n.to_f64()? / d.to_f64()?).abs().max(1.0);
    let steps = match direction {
        _ if off <= tolerance * size => nearest,
        Direction::Nearest => nearest,
        Direction::Down => down,
        Direction::Up => down + i128::from(rest != 0),
    };
    Small { n: i64::try_from(steps).ok()?, d: 1 }.mul(measure)
}

/// The common divisor, at least one; nothing if the numbers are longer than a word and a machine has no quick way.
fn gcd(n: i128, d: i128) -> Option<i128> {
    let (n, d) = (u64::try_from(n.unsigned_abs()).ok()?, u64::try_from(d).ok()?);
    Some(i128::from(n.gcd(&d)).max(1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use num_traits::{One, Zero};

    fn big(n: i64, d: i64) -> BigRational {
        BigRational::new(n.into(), d.into())
    }

    /// Reals against the big rationals of their exact binary values.
    #[test]
    fn reals_round_as_their_big_rationals() {
        let half = big(1, 2);
        let mut worked = 0;
        for x in
            [0.0, 1.0, -1.0, 0.1, 34.282, -2.5, 20.000_000_000_1, 19.999_999_999_9, 1e-7, 123_456.789, 4.35, 1_099_511_627_776.0, 1.0 / 3.0]
        {
            for measure in [big(1, 2), big(1, 16), big(1, 10), big(5, 1), big(28_316_846_592, 1_000_000_000_000)] {
                let value = BigRational::from_float(x).unwrap();
                let steps = &value / &measure;
                let nearest = (&steps + &half).floor();
                let off = (&steps - &nearest).to_f64().unwrap().abs();
                let stands = off <= 1e-9 * steps.to_f64().unwrap().abs().max(1.0);
                for (direction, free) in
                    [(Direction::Down, steps.floor()), (Direction::Up, steps.ceil()), (Direction::Nearest, nearest.clone())]
                {
                    let want = if stands { &nearest } else { &free };
                    if let Some(got) = round_real(x, direction, Small::of(&measure).unwrap(), 1e-9) {
                        assert_eq!(got, want * &measure, "{x} {measure} {direction:?}");
                        worked += 1;
                    }
                }
            }
        }
        assert!(worked > 150, "{worked}");
    }

    /// Every pair of some odd numbers, against the big rationals.
    #[test]
    fn small_and_big_agree() {
        let many: Vec<BigRational> = [
            (0, 1),
            (1, 1),
            (-1, 1),
            (7, 3),
            (-22, 7),
            (231, 1_000_000),
            (45_359_237, 100_000_000),
            (-5, 4),
            (i64::MAX, 1),
            (1, i64::MAX),
            (i64::MAX, i64::MAX - 1),
            (3_785_411_784, 1_000_000_000_000),
            (1, 2),
            (999_999_999_999, 7),
        ]
        .iter()
        .map(|(n, d)| big(*n, *d))
        .collect();
        let half = big(1, 2);
        let mut worked = 0;
        for a in &many {
            for b in &many {
                let (x, y) = (Small::of(a).unwrap(), Small::of(b).unwrap());
                assert_eq!(x.compare(y), a.cmp(b), "{a} {b}");
                let minus = y.negated().and_then(|y| x.add(y));
                let over = y.turned().and_then(|y| x.mul(y));
                for (small, whole) in [(x.add(y), a + b), (minus, a - b), (x.mul(y), a * b)] {
                    if let Some(small) = small {
                        assert_eq!((small.numer(), small.denom()), (whole.numer(), whole.denom()), "{a} {b}");
                        worked += 1;
                    }
                }
                assert_eq!(over.is_none(), b.is_zero());
                if let Some(over) = over {
                    assert_eq!(over, a / b);
                }
                if *b > BigRational::zero() {
                    let steps = a / b;
                    for (direction, want) in
                        [(Direction::Down, steps.floor()), (Direction::Up, steps.ceil()), (Direction::Nearest, (&steps + &half).floor())]
                    {
                        if let Some(small) = x.round(direction, y) {
                            assert_eq!(small, want * b, "{a} {b} {direction:?}");
                            worked += 1;
                        }
                    }
                }
            }
        }
        assert!(worked > 600, "{worked}");
        assert_eq!(Small::of(&(big(i64::MAX, 1) + BigRational::one())), None);
    }
}
