//! How deep a layer is asked to lie, and how it comes to lie.

use super::error::{Dimension, GeometryError, TANK_RANGE};
use super::plane::Plane;
use super::region::Extents;
use crate::units::{Length, Volume};

/// Sums of depths that differ by less than this count as equal, m.
const TWIST_M: f64 = 1e-4;

/// Depth of a layer: the same everywhere, or given at the walls.
///
/// A wall's depth is taken at the middle of that side of the rectangle around the
/// plan; between the walls the depth changes evenly. A depth below zero says where
/// the layer would reach if the floor were lower: it runs out before that wall.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LayerDepth {
    /// The same everywhere.
    Uniform(Length),
    /// Sloping from back to front.
    BackToFront {
        /// At the back wall.
        back: Length,
        /// At the front.
        front: Length,
    },
    /// Sloping from left to right.
    LeftToRight {
        /// At the left end.
        left: Length,
        /// At the right end.
        right: Length,
    },
    /// Sloping both ways.
    AllWalls {
        /// At the back wall.
        back: Length,
        /// At the front.
        front: Length,
        /// At the left end.
        left: Length,
        /// At the right end.
        right: Length,
    },
}

impl LayerDepth {
    /// Depth in the middle of the rectangle around the plan.
    pub fn middle(&self) -> Length {
        let depths = self.depths();
        depths.iter().copied().sum::<Length>() / depths.len() as f64
    }

    /// Back and front added, less left and right added, where that is over 0.1 mm:
    /// four such depths lie on no flat surface.
    ///
    /// # Example
    /// ```
    /// use lentic::{geometry::LayerDepth, units::Length};
    /// let cm = Length::from_cm;
    /// let depths = |right| LayerDepth::AllWalls {
    ///     back: cm(6.0), front: cm(2.0), left: cm(5.0), right: cm(right),
    /// };
    /// // 6 + 2 against 5 + 3, and against 5 + 4
    /// assert_eq!(depths(3.0).mismatch(), None);
    /// assert!(depths(4.0).mismatch().is_some_and(|off| (off.cm().abs() - 1.0).abs() < 1e-9));
    /// ```
    pub fn mismatch(&self) -> Option<Length> {
        match *self {
            Self::AllWalls {
                back,
                front,
                left,
                right,
            } => {
                let twist = back + front - left - right;
                (twist.m().abs() > TWIST_M).then_some(twist)
            }
            _ => None,
        }
    }

    /// The one depth of a layer without slope.
    pub fn level(&self) -> Option<Length> {
        let depths = self.depths();
        let first = *depths.first()?;
        depths.iter().all(|depth| *depth == first).then_some(first)
    }

    fn depths(&self) -> Vec<Length> {
        match *self {
            Self::Uniform(depth) => vec![depth],
            Self::BackToFront { back, front } => vec![back, front],
            Self::LeftToRight { left, right } => vec![left, right],
            Self::AllWalls {
                back,
                front,
                left,
                right,
            } => vec![back, front, left, right],
        }
    }

    /// Refuses depths beyond any tank and four that lie on no plane.
    pub(super) fn check(&self, layer: Dimension) -> Result<(), GeometryError> {
        let [_, most] = TANK_RANGE;
        for depth in self.depths() {
            // Written so that a depth that is not a number is refused too.
            let within = depth.m().abs() <= most.m();
            if !within {
                return Err(GeometryError::OutOfRange(layer.of(depth)));
            }
        }
        match *self {
            Self::AllWalls {
                back,
                front,
                left,
                right,
            } if self.mismatch().is_some() => Err(GeometryError::Twisted {
                layer,
                back_front: back + front,
                left_right: left + right,
            }),
            _ => Ok(()),
        }
    }

    /// The thickness over a plan, before anything is cut off.
    pub(super) fn plane(&self, extents: &Extents) -> Plane {
        let rise = |from: Length, to: Length, over_m: f64| (to - from).m() / over_m;
        let to_front = |back, front| rise(back, front, extents.width_m());
        let to_right = |left, right| rise(left, right, extents.length_m());
        let (per_x, per_y) = match *self {
            Self::Uniform(_) => (0.0, 0.0),
            Self::BackToFront { back, front } => (0.0, to_front(back, front)),
            Self::LeftToRight { left, right } => (to_right(left, right), 0.0),
            Self::AllWalls {
                back,
                front,
                left,
                right,
            } => (to_right(left, right), to_front(back, front)),
        };
        let middle = extents.middle();
        Plane {
            origin_m: self.middle().m() - per_x * middle.x_m - per_y * middle.y_m,
            per_x,
            per_y,
        }
    }
}

/// A layer as it lies in the tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// How much of it there is.
    pub volume: Volume,
    /// Its mean thickness over the floor; in a bowl its depth.
    pub mean: Length,
    /// Where it is thinnest.
    pub thinnest: Extreme,
    /// Where it is deepest.
    pub deepest: Extreme,
    /// Steepest slope of its upper surface, degrees from level.
    pub slope_deg: f64,
    /// Part of the floor has none of it.
    pub runs_out: bool,
}

/// The upper surface of a bed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BedTop {
    /// Its lowest place, over the floor.
    pub lowest: Extreme,
    /// Its highest place, over the floor.
    pub highest: Extreme,
    /// Its mean height over the floor.
    pub mean: Length,
    /// Its steepest slope, degrees from level.
    pub slope_deg: f64,
}

/// The least or greatest of a depth, and where it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extreme {
    /// How much.
    pub depth: Length,
    /// Where.
    pub place: FloorPlace,
}

/// A place on the floor, seen from the front.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FloorPlace {
    /// The same everywhere, or nearly everywhere.
    Everywhere,
    /// Along the back wall.
    Back,
    /// Along the front.
    Front,
    /// At the left end.
    Left,
    /// At the right end.
    Right,
    /// In the back left corner.
    BackLeft,
    /// In the back right corner.
    BackRight,
    /// In the front left corner.
    FrontLeft,
    /// In the front right corner.
    FrontRight,
    /// Away from the walls.
    Middle,
}
