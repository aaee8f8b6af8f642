//! A number with its slopes: the closed derivative of whatever is computed with it.

use std::array;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

use super::real::Scalar;

/// A number with its slopes along `K` directions.
///
/// # Source
/// Forward differentiation by the rules of sum, product, quotient and chain; where two
/// numbers are compared, the slopes are those of the one taken.
///
/// # Example
/// ```
/// use lentic::numerics::{dual::Dual, real::Scalar};
/// let [x, y] = [Dual::<2>::along(0, 3.0), Dual::along(1, 0.5)];
/// let z = x * x * y.exp();
/// // 2 x exp(y) and x^2 exp(y)
/// assert!((z.slopes[0] - 6.0 * 0.5_f64.exp()).abs() < 1e-12);
/// assert!((z.slopes[1] - 9.0 * 0.5_f64.exp()).abs() < 1e-12);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dual<const K: usize> {
    /// The number.
    pub value: f64,
    /// Its slope along each direction.
    pub slopes: [f64; K],
}

impl<const K: usize> Dual<K> {
    /// A number that a direction leads along, or one without slopes where there is no such
    /// direction.
    pub fn along(direction: usize, value: f64) -> Self {
        Self::sloping(direction, value, 1.0)
    }

    /// A number with a slope along one direction.
    pub fn sloping(direction: usize, value: f64, slope: f64) -> Self {
        Self {
            value,
            slopes: array::from_fn(|place| if place == direction { slope } else { 0.0 }),
        }
    }

    /// A function of this number, by its value and its slope.
    fn chained(self, value: f64, slope: f64) -> Self {
        Self {
            value,
            slopes: self.slopes.map(|own| own * slope),
        }
    }

    /// A function of two numbers, by its value and its slopes with each.
    fn joined(self, other: Self, value: f64, (with_self, with_other): (f64, f64)) -> Self {
        let slope = |k: usize| self.slopes[k] * with_self + other.slopes[k] * with_other;
        Self {
            value,
            slopes: array::from_fn(slope),
        }
    }
}

impl<const K: usize> Scalar for Dual<K> {
    fn splat(value: f64) -> Self {
        Self {
            value,
            slopes: [0.0; K],
        }
    }

    fn max(self, other: Self) -> Self {
        if other.value > self.value {
            other
        } else {
            self
        }
    }

    fn min(self, other: Self) -> Self {
        if other.value < self.value {
            other
        } else {
            self
        }
    }

    fn exp(self) -> Self {
        let value = self.value.exp();
        self.chained(value, value)
    }

    fn ln(self) -> Self {
        self.chained(self.value.ln(), 1.0 / self.value)
    }

    fn sqrt(self) -> Self {
        let value = self.value.sqrt();
        self.chained(value, 0.5 / value)
    }

    fn if_positive(self, then: Self, otherwise: Self) -> Self {
        if self.value > 0.0 { then } else { otherwise }
    }
}

impl<const K: usize> Neg for Dual<K> {
    type Output = Self;

    fn neg(self) -> Self {
        self.chained(-self.value, -1.0)
    }
}

impl<const K: usize> Add for Dual<K> {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            value: self.value + other.value,
            slopes: array::from_fn(|k| self.slopes[k] + other.slopes[k]),
        }
    }
}

impl<const K: usize> Sub for Dual<K> {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self {
            value: self.value - other.value,
            slopes: array::from_fn(|k| self.slopes[k] - other.slopes[k]),
        }
    }
}

impl<const K: usize> Mul for Dual<K> {
    type Output = Self;

    fn mul(self, other: Self) -> Self {
        let product = self.value * other.value;
        self.joined(other, product, (other.value, self.value))
    }
}

impl<const K: usize> Div for Dual<K> {
    type Output = Self;

    fn div(self, other: Self) -> Self {
        let (quotient, inverse) = (self.value / other.value, 1.0 / other.value);
        self.joined(other, quotient, (inverse, -quotient * inverse))
    }
}

impl<const K: usize> Add<f64> for Dual<K> {
    type Output = Self;

    fn add(self, other: f64) -> Self {
        Self {
            value: self.value + other,
            ..self
        }
    }
}

impl<const K: usize> Sub<f64> for Dual<K> {
    type Output = Self;

    fn sub(self, other: f64) -> Self {
        Self {
            value: self.value - other,
            ..self
        }
    }
}

impl<const K: usize> Mul<f64> for Dual<K> {
    type Output = Self;

    fn mul(self, other: f64) -> Self {
        self.chained(self.value * other, other)
    }
}

impl<const K: usize> Div<f64> for Dual<K> {
    type Output = Self;

    fn div(self, other: f64) -> Self {
        self.chained(self.value / other, 1.0 / other)
    }
}

impl<const K: usize> AddAssign for Dual<K> {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl<const K: usize> SubAssign for Dual<K> {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "these results must be exact")]
mod tests {
    use super::*;

    /// Every operation once, of two numbers.
    fn of<S: Scalar>(x: S, y: S) -> S {
        let mut sum = (x * y - x / y + 2.0) * 3.0 - (-x) / 7.0;
        sum += (y.sqrt() + x.ln()) * x.exp() - 1.5;
        sum -= x.max(y) * x.min(y) + y.complement() + (x - y).if_positive(x, y * y);
        sum
    }

    #[test]
    fn slopes_are_those_of_small_differences() {
        for (x, y) in [(0.4, 1.3), (1.7, 0.6), (2.0, 5.0)] {
            let z = of(Dual::<2>::along(0, x), Dual::along(1, y));
            let step = 1e-6;
            let with_x = (of(x + step, y) - of(x - step, y)) / (2.0 * step);
            let with_y = (of(x, y + step) - of(x, y - step)) / (2.0 * step);
            assert!((z.value - of(x, y)).abs() < 1e-12);
            assert!((z.slopes[0] - with_x).abs() < 1e-7, "{z:?} {with_x}");
            assert!((z.slopes[1] - with_y).abs() < 1e-7, "{z:?} {with_y}");
        }
    }

    #[test]
    fn what_is_cut_off_has_no_slope() {
        let x = Dual::<1>::along(0, -2.0);
        assert_eq!(x.positive_part(), Dual::splat(0.0));
        assert_eq!(Dual::<1>::along(0, 0.0).positive_part().slopes, [1.0]);
    }
}
