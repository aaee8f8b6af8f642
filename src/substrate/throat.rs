//! The holes between touching equal spheres.

use crate::units::Length;

/// A hole between spheres of one size that touch in one plane.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Throat {
    /// Three spheres in a triangle: the tightest hole.
    Three,
    /// Four spheres in a square: the widest.
    Four,
}

impl Throat {
    /// Diameter of the packed spheres over that of the largest sphere that
    /// passes between them: 6.4641 for three, 2.4142 for four.
    ///
    /// ```text
    /// three: 1 / (2/sqrt(3) - 1)     four: 1 / (sqrt(2) - 1)
    /// ```
    ///
    /// # Source
    /// Plane geometry. Das, Principles of Geotechnical Engineering, gives 6.5 for three.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::throat::Throat;
    /// assert!((Throat::Three.passing_ratio() - 6.5).abs() < 0.05); // 6.5 as printed
    /// ```
    ///
    /// # Limits
    /// Equal spheres. Angular and mixed grains leave narrower holes: a sand holds back more.
    pub fn passing_ratio(self) -> f64 {
        match self {
            Self::Three => 1.0 / (2.0 / 3f64.sqrt() - 1.0),
            Self::Four => 1.0 / (2f64.sqrt() - 1.0),
        }
    }

    /// Radius of the hole between spheres of this diameter.
    ///
    /// ```text
    /// r = d / (2 ratio)
    /// ```
    ///
    /// # Source
    /// As [`passing_ratio`](Self::passing_ratio).
    ///
    /// # Example
    /// ```
    /// use lentic::{substrate::throat::Throat, units::Length};
    /// // 1 mm / (2 x 6.4641)
    /// assert!((Throat::Three.radius(Length::from_mm(1.0)).mm() - 0.0774).abs() < 1e-4);
    /// ```
    pub fn radius(self, sphere: Length) -> Length {
        sphere / (2.0 * self.passing_ratio())
    }
}
