//! Whether a sloped cap stays where it was put.

use crate::finding::Status;
use crate::substrate::repose::GrainShape;

/// How a slope stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Slope {
    /// Within the grains' angle of repose; animals still level it in time.
    Stands,
    /// Steeper: it slides.
    Slides,
}

impl Slope {
    /// Judges a slope in degrees against the angle of repose.
    ///
    /// # Source
    /// As [`GrainShape::repose_degrees`].
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::{repose::GrainShape, verdict::Slope};
    /// assert_ne!(Slope::judge(30.0, GrainShape::Rounded), Slope::judge(30.0, GrainShape::Angular));
    /// ```
    ///
    /// # Limits
    /// Animals level any slope in time.
    pub fn judge(degrees: f64, grains: GrainShape) -> Self {
        if degrees > grains.repose_degrees() {
            Self::Slides
        } else {
            Self::Stands
        }
    }

    /// The status of this verdict.
    pub const fn status(self) -> Status {
        match self {
            Self::Stands => Status::Ok,
            Self::Slides => Status::Watch,
        }
    }
}
