//! The points at which tanks are looked at: a full grid, or samples.

use thiserror::Error;

use super::axis::{Axis, Level};
use crate::design::Violation;
use crate::numerics::sobol::Sobol;

/// The most points that are looked at: of quantities alone, most of a day on one core.
const MOST_POINTS: u64 = 1_000_000_000;

/// Points of several axes.
#[derive(Debug, Clone)]
pub struct Space {
    axes: Vec<Axis>,
    points: u64,
    samples: Option<Sobol>,
}

/// Why some axes have no points.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum SpaceError {
    /// A range of which no number of points is known.
    #[error("{key} has no number of points")]
    NoCount {
        /// What is varied.
        key: String,
    },
    /// The same thing is varied twice.
    #[error("{key} is varied twice")]
    Twice {
        /// What is varied.
        key: String,
    },
    /// More points than anyone would wait for.
    #[error("more than {MOST_POINTS} points are asked for")]
    TooMany,
}

impl Space {
    /// The one point of tanks as they are.
    pub const fn as_given() -> Self {
        Self {
            axes: Vec::new(),
            points: 1,
            samples: None,
        }
    }

    /// Every combination of the axes' values; the last axis goes through its own first.
    ///
    /// # Errors
    /// See [`SpaceError`].
    pub fn grid(axes: Vec<Axis>) -> Result<Self, SpaceError> {
        distinct(&axes)?;
        let mut points: u64 = 1;
        for axis in &axes {
            let key = axis.knob.path();
            let count = axis.count().ok_or(SpaceError::NoCount { key })?;
            points = points.checked_mul(count).ok_or(SpaceError::TooMany)?;
        }
        few_enough(points)?;
        Ok(Self {
            axes,
            points,
            samples: None,
        })
    }

    /// Evenly spread samples of the axes' ranges and lists.
    ///
    /// # Errors
    /// See [`SpaceError`].
    pub fn samples(axes: Vec<Axis>, points: u32, seed: u64) -> Result<Self, SpaceError> {
        distinct(&axes)?;
        few_enough(u64::from(points))?;
        Ok(Self {
            axes,
            points: u64::from(points),
            samples: Some(Sobol::new(seed)),
        })
    }

    /// What is varied.
    pub fn axes(&self) -> &[Axis] {
        &self.axes
    }

    /// How many points there are.
    pub const fn points(&self) -> u64 {
        self.points
    }

    /// Whether the points are samples.
    pub const fn is_sampled(&self) -> bool {
        self.samples.is_some()
    }

    /// A value for each axis.
    ///
    /// # Errors
    /// When a number between two good ends is no value of its key.
    pub(super) fn point(&self, index: u64) -> Result<Vec<Level>, Violation> {
        if let Some(samples) = self.samples {
            let level = |(place, axis): (usize, &Axis)| {
                axis.at(samples.coordinate(index as u32, place as u32))
            };
            return self.axes.iter().enumerate().map(level).collect();
        }
        let mut rest = index;
        let mut levels = Vec::with_capacity(self.axes.len());
        for axis in self.axes.iter().rev() {
            let count = axis.count().unwrap_or(1).max(1);
            levels.push(axis.point(rest % count)?);
            rest /= count;
        }
        levels.reverse();
        Ok(levels)
    }
}

fn few_enough(points: u64) -> Result<(), SpaceError> {
    if points > MOST_POINTS {
        return Err(SpaceError::TooMany);
    }
    Ok(())
}

fn distinct(axes: &[Axis]) -> Result<(), SpaceError> {
    for (place, axis) in axes.iter().enumerate() {
        if axes[..place].iter().any(|other| other.knob == axis.knob) {
            return Err(SpaceError::Twice {
                key: axis.knob.path(),
            });
        }
    }
    Ok(())
}
