//! Eight numbers that go through the same arithmetic together.

use std::array;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

use super::elementary;
use super::real::{Real, Scalar};

/// Members of an ensemble that share one time step.
pub const LANES: usize = 8;

/// One number for each of eight members.
///
/// The loops over a fixed-size array become vector instructions by themselves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lanes(pub [f64; LANES]);

impl Lanes {
    /// Whether all are so; every one is asked, which takes no branch.
    fn all(self, is_so: impl Fn(f64) -> bool) -> bool {
        self.0.iter().fold(true, |all, lane| all & is_so(*lane))
    }

    fn zip(self, other: Self, function: impl Fn(f64, f64) -> f64) -> Self {
        Self(array::from_fn(|lane| function(self.0[lane], other.0[lane])))
    }
}

impl Scalar for Lanes {
    fn splat(value: f64) -> Self {
        Self([value; LANES])
    }

    fn max(self, other: Self) -> Self {
        self.zip(other, f64::max)
    }

    fn min(self, other: Self) -> Self {
        self.zip(other, f64::min)
    }

    fn exp(self) -> Self {
        if self.all(elementary::has_plain_exp) {
            self.map(elementary::exp)
        } else {
            self.map(f64::exp)
        }
    }

    fn ln(self) -> Self {
        if self.all(elementary::has_plain_ln) {
            self.map(elementary::ln)
        } else {
            self.map(f64::ln)
        }
    }

    fn sqrt(self) -> Self {
        self.map(f64::sqrt)
    }

    fn if_positive(self, then: Self, otherwise: Self) -> Self {
        let chosen = |lane: usize| self.0[lane].if_positive(then.0[lane], otherwise.0[lane]);
        Self(array::from_fn(chosen))
    }
}

impl Real for Lanes {
    const PIVOTS: bool = false;

    fn map(self, function: impl Fn(f64) -> f64) -> Self {
        Self(self.0.map(function))
    }

    fn largest(self) -> f64 {
        self.0.into_iter().fold(f64::NEG_INFINITY, |worst, lane| {
            if lane > worst || lane.is_nan() {
                lane
            } else {
                worst
            }
        })
    }

    fn is_zero(self) -> bool {
        self.all(|lane| lane == 0.0)
    }
}

impl Neg for Lanes {
    type Output = Self;

    fn neg(self) -> Self {
        self.map(|lane| -lane)
    }
}

/// Writes an operator for lanes with lanes and for lanes with one number.
macro_rules! operator {
    ($operator:ident, $method:ident) => {
        impl $operator for Lanes {
            type Output = Self;

            fn $method(self, other: Self) -> Self {
                self.zip(other, f64::$method)
            }
        }

        impl $operator<f64> for Lanes {
            type Output = Self;

            fn $method(self, other: f64) -> Self {
                self.map(|lane| lane.$method(other))
            }
        }
    };
}

operator!(Add, add);
operator!(Sub, sub);
operator!(Mul, mul);
operator!(Div, div);

impl AddAssign for Lanes {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl SubAssign for Lanes {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "these results must be exact")]
mod tests {
    use super::*;

    #[test]
    fn each_lane_keeps_its_own_number() {
        let numbers = Lanes([1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0]);
        let result = (numbers * 2.0 - numbers) / numbers + 1.0;
        assert_eq!(result, Lanes([2.0; LANES]));
        assert_eq!((-numbers).max(Lanes::splat(-3.5)).0[3], -3.5);
        assert_eq!((-numbers).max(Lanes::splat(-3.5)).0[1], -2.0);
    }

    #[test]
    fn one_bad_lane_spoils_the_largest() {
        let mut numbers = Lanes([1.0; LANES]);
        assert_eq!(numbers.largest(), 1.0);
        numbers.0[2] = f64::NAN;
        assert!(numbers.largest().is_nan());
    }
}
