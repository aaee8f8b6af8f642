//! One thing that is varied, and the values it goes through.

use std::fmt;
use std::sync::Arc;

use crate::design::{Knob, Setting, Violation};

/// Significant digits that a point of a range keeps, so that what is shown is what was used.
const DIGITS: i32 = 9;

/// Reads a number in the unit of its range as the setting of a key.
pub type Read = Arc<dyn Fn(f64) -> Result<Setting, Violation> + Send + Sync>;

/// One thing that is varied.
#[derive(Debug, Clone)]
pub struct Axis {
    /// What is varied.
    pub knob: Knob,
    /// What its column is called: `cap.depth_mm`.
    pub name: String,
    /// The unit of its numbers; empty where they have none.
    pub unit: String,
    /// What it is set to.
    pub levels: Levels,
}

/// The values that a key goes through.
#[derive(Debug, Clone)]
pub enum Levels {
    /// These.
    Listed(Vec<Level>),
    /// Numbers between two ends.
    Range(AxisRange),
}

/// One value, as it is shown and as it is used.
#[derive(Debug, Clone)]
pub struct Level {
    /// In a row.
    pub shown: Shown,
    /// At its key.
    pub setting: Setting,
}

/// How a value is shown.
#[derive(Debug, Clone, PartialEq)]
pub enum Shown {
    /// A number in the unit of its axis.
    Number(f64),
    /// A name, a word, a size.
    Text(String),
}

/// Numbers between two ends.
#[derive(Clone)]
pub struct AxisRange {
    /// One end.
    pub low: f64,
    /// The other.
    pub high: f64,
    /// How points lie between them.
    pub spacing: Spacing,
    /// Points of a grid, both ends included; none where samples are drawn.
    pub points: Option<u32>,
    /// Whether only whole numbers make sense.
    pub whole: bool,
    /// What a number stands for.
    pub read: Read,
}

/// How points lie in a range.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spacing {
    /// By equal steps.
    Even,
    /// By equal ratios.
    Log,
}

impl fmt::Debug for AxisRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}..{}", self.low, self.high)
    }
}

impl AxisRange {
    /// The number at a share of the way from one end to the other.
    pub fn number(&self, share: f64) -> f64 {
        let number = match self.spacing {
            Spacing::Even => self.low + share * (self.high - self.low),
            Spacing::Log => self.low * (self.high / self.low).powf(share),
        };
        if self.whole {
            number.round()
        } else {
            significant(number)
        }
    }

    fn level(&self, share: f64) -> Result<Level, Violation> {
        let number = self.number(share);
        Ok(Level {
            shown: Shown::Number(number),
            setting: (self.read)(number)?,
        })
    }
}

impl Axis {
    /// How many points it has in a grid; none for a range without a number of points.
    pub fn count(&self) -> Option<u64> {
        match &self.levels {
            Levels::Listed(levels) => Some(levels.len() as u64),
            Levels::Range(range) => range.points.map(u64::from),
        }
    }

    /// A point of the grid, counted from 0.
    pub(super) fn point(&self, index: u64) -> Result<Level, Violation> {
        match &self.levels {
            Levels::Listed(levels) => self.listed(levels, index as usize),
            Levels::Range(range) => {
                let steps = range.points.map_or(1, |points| points.saturating_sub(1));
                range.level(index as f64 / f64::from(steps.max(1)))
            }
        }
    }

    /// A point at a share of the way, from 0 up to 1.
    pub(super) fn at(&self, share: f64) -> Result<Level, Violation> {
        match &self.levels {
            Levels::Listed(levels) => {
                let place = (share * levels.len() as f64).floor() as usize;
                self.listed(levels, place.min(levels.len().saturating_sub(1)))
            }
            Levels::Range(range) => range.level(share),
        }
    }

    fn listed(&self, levels: &[Level], place: usize) -> Result<Level, Violation> {
        levels.get(place).cloned().ok_or_else(|| {
            Violation::new(
                "no value",
                "what is varied has at least one value",
                "name a value",
            )
            .at(self.knob.path())
        })
    }
}

/// A number to so many digits that writing and reading it changes nothing.
pub(super) fn significant(number: f64) -> f64 {
    if number == 0.0 || !number.is_finite() {
        return number;
    }
    let magnitude = number.abs().log10().floor() as i32;
    let step = 10_f64.powi(DIGITS - 1 - magnitude);
    (number * step).round() / step
}
