//! A value known as a range.

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::result::plain;

plain! { Number: Band; }

/// A value with the range it plausibly lies in.
///
/// In embedded tables it is written as `[low, typical, high]`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "[f64; 3]")]
pub struct Band {
    /// The low end.
    pub low: f64,
    /// The value to use where one number is needed.
    pub typical: f64,
    /// The high end.
    pub high: f64,
}

/// Three numbers that do not rise.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("[{}, {}, {}] does not rise from low over typical to high", .0[0], .0[1], .0[2])]
pub struct UnorderedBand([f64; 3]);

impl Band {
    /// A band from three rising numbers; see [`Band::is_ordered`].
    pub const fn new(low: f64, typical: f64, high: f64) -> Self {
        Self { low, typical, high }
    }

    /// A value taken as known.
    pub const fn exact(value: f64) -> Self {
        Self::new(value, value, value)
    }

    /// Whether the three numbers are finite and rise or stay level.
    pub fn is_ordered(self) -> bool {
        self.low <= self.typical
            && self.typical <= self.high
            && self.low.is_finite()
            && self.high.is_finite()
    }

    /// Whether `value` lies in the band, ends included.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// let porosity = Band::new(0.35, 0.40, 0.45);
    /// assert!(porosity.contains(0.45) && !porosity.contains(0.46));
    /// ```
    pub fn contains(self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }

    /// The band in another unit: each number times a positive `factor`.
    #[must_use]
    pub fn scaled(self, factor: f64) -> Self {
        Self::new(self.low * factor, self.typical * factor, self.high * factor)
    }
}

impl TryFrom<[f64; 3]> for Band {
    type Error = UnorderedBand;

    fn try_from(values: [f64; 3]) -> Result<Self, UnorderedBand> {
        let [low, typical, high] = values;
        let band = Self::new(low, typical, high);
        if band.is_ordered() {
            Ok(band)
        } else {
            Err(UnorderedBand(values))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_that_does_not_rise_is_refused() {
        for values in [[2.0, 1.0, 3.0], [1.0, 3.0, 2.0], [f64::NAN, 1.0, 2.0]] {
            assert!(Band::try_from(values).is_err(), "{values:?}");
        }
        assert!(Band::try_from([0.0, 1.0, f64::INFINITY]).is_err());
        assert_eq!(Band::try_from([1.0, 1.0, 1.0]), Ok(Band::exact(1.0)));
    }

    #[test]
    fn a_band_changes_unit_as_a_whole() {
        assert_eq!(
            Band::new(1.0, 2.0, 4.0).scaled(0.5),
            Band::new(0.5, 1.0, 2.0)
        );
    }
}
