//! What every quantity has: a base unit, a table of units, arithmetic.

use super::error::QuantityError;
use super::parse;

/// One unit a quantity may be written in: `base = (value + shift) * factor`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unit {
    /// The spelling shown to people and suggested to them.
    pub name: &'static str,
    /// Base units in one of this unit.
    pub factor: f64,
    /// Added before scaling; not zero for degrees Fahrenheit and kelvin alone.
    pub shift: f64,
    /// Further spellings, lower case, singular, with blanks for underscores.
    pub also: &'static [&'static str],
}

impl Unit {
    /// A unit that is a plain multiple of the base unit.
    pub const fn scaled(name: &'static str, factor: f64, also: &'static [&'static str]) -> Self {
        Self {
            name,
            factor,
            shift: 0.0,
            also,
        }
    }
}

/// A spelling that could mean several units, with those units' names.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ambiguity {
    /// The spelling, lower case and singular.
    pub spelling: &'static str,
    /// What the writer may have meant.
    pub choices: &'static [&'static str],
}

/// A physical quantity held in one base unit.
pub trait Quantity: Copy + Sized {
    /// The quantity's name in a sentence, with its article: "a length".
    const NAME: &'static str;
    /// A value as a person would write it.
    const EXAMPLE: &'static str;
    /// The units it may be written in; the first is the one suggested first.
    const UNITS: &'static [Unit];
    /// Spellings refused because they could mean two things.
    const AMBIGUOUS: &'static [Ambiguity] = &[];
    /// Whether a value below zero makes sense.
    const SIGNED: bool = false;

    /// The quantity from a number of base units.
    fn from_base(value: f64) -> Self;

    /// The number of base units.
    fn base(self) -> f64;

    /// Reads a number with its unit, such as `"2 in"`, `"5cm"` or `"1 1/2 ft3"`.
    ///
    /// # Errors
    /// A text without a number or unit, an unknown or ambiguous unit, a number
    /// that is not finite, or one below zero where that makes no sense.
    ///
    /// # Example
    /// ```
    /// use lentic::units::{Length, Quantity};
    /// assert_eq!(Length::parse("2 inches")?.mm(), 50.8);
    /// # Ok::<(), lentic::units::QuantityError>(())
    /// ```
    fn parse(text: &str) -> Result<Self, QuantityError> {
        parse::quantity(text)
    }
}

/// Declares a quantity: its base accessors, arithmetic and unit table.
macro_rules! quantity {
    (
        $(#[$doc:meta])*
        $name:ident, $phrase:literal, example $example:literal,
        base $from_base:ident / $base:ident,
        $(access $from:ident / $get:ident = $factor:expr;)*
        units [$($unit:expr),+ $(,)?]
        $(, ambiguous [$(($spelling:literal, $choices:expr)),+ $(,)?])?
        $(, signed $signed:literal)?
    ) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            #[doc = concat!("From the base unit (`", stringify!($base), "`).")]
            pub const fn $from_base(value: f64) -> Self {
                Self(value)
            }

            #[doc = concat!("In the base unit (`", stringify!($base), "`).")]
            pub const fn $base(self) -> f64 {
                self.0
            }

            $(
                #[doc = concat!("From `", stringify!($get), "`.")]
                pub fn $from(value: f64) -> Self {
                    Self(value * $factor)
                }

                #[doc = concat!("In `", stringify!($get), "`.")]
                pub fn $get(self) -> f64 {
                    self.0 / $factor
                }
            )*

            /// The smaller of the two.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of the two.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }
        }

        impl $crate::units::Quantity for $name {
            const NAME: &'static str = $phrase;
            const EXAMPLE: &'static str = $example;
            const UNITS: &'static [$crate::units::Unit] = &[$($unit),+];
            $(const AMBIGUOUS: &'static [$crate::units::quantity::Ambiguity] = &[$(
                $crate::units::quantity::Ambiguity { spelling: $spelling, choices: $choices }
            ),+];)?
            $(const SIGNED: bool = $signed;)?

            fn from_base(value: f64) -> Self {
                Self(value)
            }

            fn base(self) -> f64 {
                self.0
            }
        }

        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }

        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                Self(items.map(|item| item.0).sum())
            }
        }
    };
}

pub(crate) use quantity;
