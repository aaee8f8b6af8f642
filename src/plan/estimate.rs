//! A computed value with what is known of its spread.

use serde::Serialize;

use crate::result::plain;
use crate::source::Band;

plain! { Number: Estimate; }

/// A value, with its band where an ensemble was run.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Estimate {
    /// Of the central numbers alone.
    Exact(f64),
    /// 10, 50 and 90 % of the ensemble.
    Band(Band),
}

impl Estimate {
    /// The band, or its middle alone where no ensemble was drawn.
    pub const fn of(band: Band, members: u32) -> Self {
        if members == 0 {
            Self::Exact(band.typical)
        } else {
            Self::Band(band)
        }
    }

    /// The middle of the band, or the value itself.
    pub const fn typical(self) -> f64 {
        match self {
            Self::Exact(value) => value,
            Self::Band(band) => band.typical,
        }
    }

    /// The band, without width for a single value.
    pub const fn band(self) -> Band {
        match self {
            Self::Exact(value) => Band::exact(value),
            Self::Band(band) => band,
        }
    }
}
