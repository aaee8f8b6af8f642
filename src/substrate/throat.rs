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
    pub fn passing_ratio(self) -> f64 {
        match self {
            Self::Three => 1.0 / (2.0 / 3f64.sqrt() - 1.0),
            Self::Four => 1.0 / (2f64.sqrt() - 1.0),
        }
    }

    /// Radius of the hole between spheres of this diameter.
    pub fn radius(self, sphere: Length) -> Length {
        sphere / (2.0 * self.passing_ratio())
    }
}
