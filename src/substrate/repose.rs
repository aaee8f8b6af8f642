//! How steep sand stands.

use crate::units::Length;

/// What the grains of a cap look like.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GrainShape {
    /// Worn round, as dune, beach and most filter sand.
    Rounded,
    /// Sharp, as crushed rock, slag and blasting grit.
    Angular,
}

impl GrainShape {
    /// The slope above which the cap is warned of, degrees.
    ///
    /// Dry and fully under water alike; only damp sand stands steeper.
    ///
    /// # Source
    /// Rounded grains about 25 (Kleinhans et al. 2011, which gives angular ones
    /// about 40); sand friction 34 +/- 2 from avalanches in a centrifuge, taken
    /// for angular grains to be on the careful side: judgement.
    pub const fn repose_degrees(self) -> f64 {
        match self {
            Self::Rounded => 25.0,
            Self::Angular => 34.0,
        }
    }
}

/// How much higher a slope ends than it begins.
///
/// ```text
/// rise = run tan(slope)
/// ```
///
/// # Source
/// Plane geometry.
///
/// # Example
/// ```
/// use lentic::{substrate::repose::rise, units::Length};
/// // 30 cm x tan 25 degrees
/// assert!((rise(Length::from_cm(30.0), 25.0).cm() - 13.99).abs() < 0.01);
/// ```
pub fn rise(run: Length, slope_degrees: f64) -> Length {
    run * slope_degrees.to_radians().tan()
}

/// The steepness of a slope, degrees.
///
/// ```text
/// slope = atan(rise / run)
/// ```
///
/// # Source
/// Plane geometry.
///
/// # Example
/// ```
/// use lentic::{substrate::repose::slope_degrees, units::Length};
/// let side = Length::from_cm(10.0);
/// assert!((slope_degrees(side, side) - 45.0).abs() < 1e-12);
/// ```
pub fn slope_degrees(rise: Length, run: Length) -> f64 {
    rise.m().atan2(run.m()).to_degrees()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rise_and_slope_undo_each_other() {
        let run = Length::from_cm(30.0);
        let back = slope_degrees(rise(run, 18.0), run);
        assert!((back - 18.0).abs() < 1e-9);
    }
}
