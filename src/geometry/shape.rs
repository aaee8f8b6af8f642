//! The nine shapes, their dimensions and what those must keep to.

use super::error::{Dimension, GeometryError, Measure, SIDE_RANGE, TANK_RANGE};
use crate::units::{Length, size::Size};

/// A tank's shape with its dimensions, inside or outside the walls alike.
///
/// On the plan x runs from left to right and y from the back wall to the front.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// Four walls at right angles.
    Box(Size),
    /// Upright and round.
    Cylinder {
        /// Across.
        diameter: Length,
        /// From floor to rim.
        height: Length,
    },
    /// A box whose front bulges out in an arc.
    BowFront {
        /// Along the back.
        length: Length,
        /// From back to front at either end.
        width_end: Length,
        /// From back to front in the middle.
        width_middle: Length,
        /// From floor to rim.
        height: Length,
    },
    /// Equal sides, one of them flat at the back.
    RegularPolygon {
        /// How many.
        sides: u32,
        /// How long each is.
        side: Length,
        /// From floor to rim.
        height: Length,
    },
    /// Two walls in the back left corner and a quarter circle between their ends.
    QuarterCylinder {
        /// Length of either wall.
        radius: Length,
        /// From floor to rim.
        height: Length,
    },
    /// A flat back wall and a half circle in front of it.
    HalfCylinder {
        /// Length of the back wall.
        diameter: Length,
        /// From floor to rim.
        height: Length,
    },
    /// A box whose front right corner is cut off.
    CutCorner {
        /// Along the back.
        length: Length,
        /// From back to front on the left.
        width: Length,
        /// What the cut takes from the front.
        cut_length: Length,
        /// What the cut takes from the right.
        cut_width: Length,
        /// From floor to rim.
        height: Length,
    },
    /// Front and back parallel, the ends equally slanted.
    Trapezoid {
        /// Along the front.
        front: Length,
        /// Along the back.
        back: Length,
        /// From back to front.
        width: Length,
        /// From floor to rim.
        height: Length,
    },
    /// A sphere cut flat at the base and, above its widest part, at the mouth.
    Bowl {
        /// Of the sphere.
        diameter: Length,
        /// Across the flat base.
        base: Length,
        /// Across the mouth.
        mouth: Length,
    },
}

impl Shape {
    /// The word in a spec: `bow_front`.
    pub const fn word(&self) -> &'static str {
        match self {
            Self::Box(_) => "box",
            Self::Cylinder { .. } => "cylinder",
            Self::BowFront { .. } => "bow_front",
            Self::RegularPolygon { .. } => "regular_polygon",
            Self::QuarterCylinder { .. } => "quarter_cylinder",
            Self::HalfCylinder { .. } => "half_cylinder",
            Self::CutCorner { .. } => "cut_corner",
            Self::Trapezoid { .. } => "trapezoid",
            Self::Bowl { .. } => "bowl",
        }
    }

    /// Every dimension of the shape, those on the plan first, the height (if any) last.
    pub fn measures(&self) -> Vec<Measure> {
        use Dimension as D;
        match *self {
            Self::Box(size) => vec![
                D::Length.of(size.length),
                D::Width.of(size.width),
                D::Height.of(size.height),
            ],
            Self::Cylinder { diameter, height } | Self::HalfCylinder { diameter, height } => {
                vec![D::Diameter.of(diameter), D::Height.of(height)]
            }
            Self::BowFront {
                length,
                width_end,
                width_middle,
                height,
            } => vec![
                D::Length.of(length),
                D::WidthEnd.of(width_end),
                D::WidthMiddle.of(width_middle),
                D::Height.of(height),
            ],
            Self::RegularPolygon { side, height, .. } => {
                vec![D::Side.of(side), D::Height.of(height)]
            }
            Self::QuarterCylinder { radius, height } => {
                vec![D::Radius.of(radius), D::Height.of(height)]
            }
            Self::CutCorner {
                length,
                width,
                cut_length,
                cut_width,
                height,
            } => vec![
                D::Length.of(length),
                D::Width.of(width),
                D::CutLength.of(cut_length),
                D::CutWidth.of(cut_width),
                D::Height.of(height),
            ],
            Self::Trapezoid {
                front,
                back,
                width,
                height,
            } => vec![
                D::Front.of(front),
                D::Back.of(back),
                D::Width.of(width),
                D::Height.of(height),
            ],
            Self::Bowl {
                diameter,
                base,
                mouth,
            } => vec![
                D::Diameter.of(diameter),
                D::Base.of(base),
                D::Mouth.of(mouth),
            ],
        }
    }

    /// Refuses dimensions that no such shape can have.
    pub(super) fn check(&self) -> Result<(), GeometryError> {
        for measure in self.measures() {
            check_range(measure)?;
        }
        match *self {
            Self::RegularPolygon { sides, .. }
                if !(SIDE_RANGE[0]..=SIDE_RANGE[1]).contains(&sides) =>
            {
                Err(GeometryError::SideCount { sides })
            }
            Self::BowFront {
                length,
                width_end,
                width_middle,
                ..
            } => {
                let middle = Dimension::WidthMiddle.of(width_middle);
                check_bound(Dimension::WidthEnd.of(width_end), middle)?;
                let bow = width_middle - width_end;
                if bow > length * 0.5 {
                    return Err(GeometryError::BowTooDeep {
                        middle,
                        length: Dimension::Length.of(length),
                        bow,
                    });
                }
                Ok(())
            }
            Self::CutCorner {
                length,
                width,
                cut_length,
                cut_width,
                ..
            } => {
                check_bound(
                    Dimension::CutLength.of(cut_length),
                    Dimension::Length.of(length),
                )?;
                check_bound(
                    Dimension::CutWidth.of(cut_width),
                    Dimension::Width.of(width),
                )
            }
            Self::Bowl {
                diameter,
                base,
                mouth,
            } => {
                let diameter = Dimension::Diameter.of(diameter);
                check_bound(Dimension::Base.of(base), diameter)?;
                check_bound(Dimension::Mouth.of(mouth), diameter)
            }
            _ => Ok(()),
        }
    }
}

/// Refuses a length outside [`TANK_RANGE`].
pub(super) fn check_range(measure: Measure) -> Result<(), GeometryError> {
    let [low, high] = TANK_RANGE;
    if measure.value >= low && measure.value <= high {
        Ok(())
    } else {
        Err(GeometryError::OutOfRange(measure))
    }
}

fn check_bound(measure: Measure, bound: Measure) -> Result<(), GeometryError> {
    if measure.value > bound.value {
        Err(GeometryError::Exceeds { measure, bound })
    } else {
        Ok(())
    }
}
