//! The range of an input in which a formula holds.

use std::fmt;

use crate::units::show;

/// The range of one input in which a formula was fitted or tested.
///
/// The one statement of it: code checks against it, documentation links to it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Validity {
    /// What the input is called, as in "water temperature".
    pub input: &'static str,
    /// Its unit; empty for a plain number.
    pub unit: &'static str,
    /// The lowest value covered.
    pub low: f64,
    /// The highest value covered.
    pub high: f64,
}

/// A value outside the range in which a formula holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutOfRange {
    /// The range left.
    pub validity: Validity,
    /// The value, in the unit of the range.
    pub value: f64,
}

impl Validity {
    /// The range `low` to `high` of `input`, in `unit`.
    pub const fn new(input: &'static str, unit: &'static str, low: f64, high: f64) -> Self {
        Self {
            input,
            unit,
            low,
            high,
        }
    }

    /// What to caution about, if `value` lies outside. The value is never changed.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Validity;
    /// const WATER: Validity = Validity::new("water temperature", "C", 0.0, 40.0);
    /// assert!(WATER.check(40.0).is_none());
    /// assert_eq!(
    ///     WATER.check(45.0).map(|caution| caution.to_string()).as_deref(),
    ///     Some("water temperature 45 C is outside 0 to 40 C"),
    /// );
    /// ```
    pub fn check(self, value: f64) -> Option<OutOfRange> {
        let inside = (self.low..=self.high).contains(&value);
        (!inside).then_some(OutOfRange {
            validity: self,
            value,
        })
    }
}

impl fmt::Display for Validity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let low = show::significant(self.low, 4);
        let high = show::significant(self.high, 4);
        write!(f, "{low} to {}", with_unit(&high, self.unit))
    }
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Validity { input, unit, .. } = self.validity;
        let value = if self.value.is_finite() {
            show::significant(self.value, 4)
        } else {
            self.value.to_string()
        };
        let value = with_unit(&value, unit);
        write!(f, "{input} {value} is outside {}", self.validity)
    }
}

/// A number with its unit, or alone where it has none.
fn with_unit(number: &str, unit: &str) -> String {
    if unit.is_empty() {
        number.to_owned()
    } else {
        format!("{number} {unit}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_ends_belong_to_the_range_and_nothing_beyond_does() {
        let range = Validity::new("porosity", "", 0.3, 0.95);
        assert_eq!(range.check(0.3), None);
        assert_eq!(range.check(0.95), None);
        for value in [0.299, 0.951, f64::NAN] {
            assert!(range.check(value).is_some(), "{value}");
        }
        let caution = range.check(1.2).unwrap();
        assert_eq!(caution.to_string(), "porosity 1.2 is outside 0.3 to 0.95");
        let caution = range.check(f64::NAN).unwrap();
        assert_eq!(caution.to_string(), "porosity NaN is outside 0.3 to 0.95");
    }
}
