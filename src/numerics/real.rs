//! The scalar a model is written in: one number, eight at once, or a number with its slopes.
//!
//! A model that is generic over [`Real`] runs as plain `f64` for a single tank
//! and as [`Lanes`](super::lanes::Lanes) for eight members of an ensemble,
//! from the same source lines. What is generic over [`Scalar`] alone runs as
//! [`Dual`](super::dual::Dual) too, and gives its slopes with its values.

use std::fmt::Debug;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// Arithmetic shared by one number, by numbers in step and by numbers with slopes.
pub trait Scalar:
    Copy
    + Debug
    + Send
    + Sync
    + Neg<Output = Self>
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Add<f64, Output = Self>
    + Sub<f64, Output = Self>
    + Mul<f64, Output = Self>
    + Div<f64, Output = Self>
    + AddAssign
    + SubAssign
{
    /// The same number in every lane, without slopes.
    fn splat(value: f64) -> Self;

    /// The larger of the two.
    #[must_use]
    fn max(self, other: Self) -> Self;

    /// The smaller of the two.
    #[must_use]
    fn min(self, other: Self) -> Self;

    /// e to this power.
    #[must_use]
    fn exp(self) -> Self;

    /// Natural logarithm.
    #[must_use]
    fn ln(self) -> Self;

    /// Square root.
    #[must_use]
    fn sqrt(self) -> Self;

    /// The first of two where this number is above zero, the second elsewhere.
    #[must_use]
    fn if_positive(self, then: Self, otherwise: Self) -> Self;

    /// One less this number: the share that is left.
    #[must_use]
    fn complement(self) -> Self {
        Self::splat(1.0) - self
    }

    /// This number, or zero where it is negative.
    #[must_use]
    fn positive_part(self) -> Self {
        self.max(Self::splat(0.0))
    }
}

/// Arithmetic shared by one number and by eight numbers in step.
pub trait Real: Scalar {
    /// Whether rows may be exchanged in an elimination. Eight members would
    /// each want another order, so lanes go without.
    const PIVOTS: bool;

    /// Applies a function of one number to each lane.
    #[must_use]
    fn map(self, function: impl Fn(f64) -> f64) -> Self;

    /// The largest lane; not a number if any lane is not a number.
    fn largest(self) -> f64;

    /// Whether it is exactly zero, in every lane.
    fn is_zero(self) -> bool;

    /// Magnitude.
    #[must_use]
    fn abs(self) -> Self {
        self.map(f64::abs)
    }
}

impl Scalar for f64 {
    fn splat(value: f64) -> Self {
        value
    }

    fn max(self, other: Self) -> Self {
        f64::max(self, other)
    }

    fn min(self, other: Self) -> Self {
        f64::min(self, other)
    }

    fn exp(self) -> Self {
        f64::exp(self)
    }

    fn ln(self) -> Self {
        f64::ln(self)
    }

    fn sqrt(self) -> Self {
        f64::sqrt(self)
    }

    fn if_positive(self, then: Self, otherwise: Self) -> Self {
        if self > 0.0 { then } else { otherwise }
    }
}

impl Real for f64 {
    const PIVOTS: bool = true;

    fn map(self, function: impl Fn(f64) -> f64) -> Self {
        function(self)
    }

    fn largest(self) -> f64 {
        self
    }

    fn is_zero(self) -> bool {
        self == 0.0
    }
}
