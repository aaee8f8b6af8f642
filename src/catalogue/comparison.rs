//! What the models were held against: published observations and the predictions beside
//! them.

use std::sync::OnceLock;

use serde::{Deserialize, Serialize};

use super::row;
use crate::source::Band;

/// A prediction beside what was observed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ObservedComparison {
    /// Folder of the set-up in `tests/validation/`.
    pub case: String,
    /// Path of the result, with the day or the hour.
    pub quantity: String,
    /// The quantity and the set-up in words.
    pub what: String,
    /// Sections of results that it is about.
    pub sections: Vec<String>,
    /// Of all the numbers.
    pub unit: String,
    /// Observed value with its range.
    pub observed: [f64; 3],
    /// 10, 50 and 90 % of the members.
    pub predicted: [f64; 3],
    /// Whether it is compared as a ratio; as a difference where not.
    pub is_ratio: bool,
    /// Whether a number was set with the observation in view: shown, not counted.
    pub in_view: bool,
}

/// All of them, as the test of the models last recorded them.
pub fn comparisons() -> &'static [ObservedComparison] {
    static COMPARISONS: OnceLock<Vec<ObservedComparison>> = OnceLock::new();
    COMPARISONS.get_or_init(|| row::read(include_str!("data/observed.toml")))
}

impl ObservedComparison {
    /// What the members predict.
    pub const fn band(&self) -> Band {
        let [low, typical, high] = self.predicted;
        Band::new(low, typical, high)
    }

    /// The value observed.
    pub const fn observed(&self) -> f64 {
        let [_, value, _] = self.observed;
        value
    }

    /// Whether the observed value lies within 10 to 90 % of the members.
    pub fn is_inside(&self) -> bool {
        self.band().contains(self.observed())
    }

    /// Whether the observed range shares something with that band.
    pub fn overlaps(&self) -> bool {
        let ([low, _, high], band) = (self.observed, self.band());
        band.low <= high && low <= band.high
    }
}
