//! Dimensions that make no tank, and beds that do not fit one.

use crate::units::{
    Length,
    show::{UnitSystem, significant},
};
use thiserror::Error;

/// Something measured on a tank or its bed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dimension {
    /// Along the front.
    Length,
    /// From back to front.
    Width,
    /// From the floor to the rim.
    Height,
    /// Across a round plan, or of a bowl's sphere.
    Diameter,
    /// Of a quarter cylinder.
    Radius,
    /// From back to front at the ends of a bow front.
    WidthEnd,
    /// From back to front in the middle of a bow front.
    WidthMiddle,
    /// How many sides a regular polygon has.
    Sides,
    /// One side of a regular polygon.
    Side,
    /// What the cut takes from the front.
    CutLength,
    /// What the cut takes from the right end.
    CutWidth,
    /// The front of a trapezoid.
    Front,
    /// The back of a trapezoid.
    Back,
    /// Across a bowl's flat floor.
    Base,
    /// Across a bowl's opening.
    Mouth,
    /// Thickness of the walls.
    Wall,
    /// Thickness of the bottom.
    Bottom,
    /// Depth of the soil.
    SoilDepth,
    /// Depth of the cap.
    CapDepth,
}

impl Dimension {
    /// Section and name: `tank.width_end`, `soil.depth`.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Length => "tank.length",
            Self::Width => "tank.width",
            Self::Height => "tank.height",
            Self::Diameter => "tank.diameter",
            Self::Radius => "tank.radius",
            Self::WidthEnd => "tank.width_end",
            Self::WidthMiddle => "tank.width_middle",
            Self::Sides => "tank.sides",
            Self::Side => "tank.side",
            Self::CutLength => "tank.cut_length",
            Self::CutWidth => "tank.cut_width",
            Self::Front => "tank.front",
            Self::Back => "tank.back",
            Self::Base => "tank.base",
            Self::Mouth => "tank.mouth",
            Self::Wall => "tank.wall",
            Self::Bottom => "tank.bottom",
            Self::SoilDepth => "soil.depth",
            Self::CapDepth => "cap.depth",
        }
    }

    /// The dimension with its value.
    pub const fn of(self, value: Length) -> Measure {
        Measure {
            dimension: self,
            value,
        }
    }
}

/// A dimension with its value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measure {
    /// What is measured.
    pub dimension: Dimension,
    /// How long it is.
    pub value: Length,
}

/// The smallest and largest length accepted of a tank (judgement: thin acrylic and a
/// public show tank both lie well inside).
pub const TANK_RANGE: [Length; 2] = [Length::from_m(1e-3), Length::from_m(100.0)];
/// The numbers of sides accepted of a regular polygon (judgement).
pub const SIDE_RANGE: [u32; 2] = [3, 64];

/// Why no tank or bed can have these dimensions.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("{}; {}", self.found(), self.rule())]
pub enum GeometryError {
    /// Nothing, below nothing, or beyond any tank.
    OutOfRange(Measure),
    /// Too few or too many sides.
    SideCount {
        /// Sides asked for.
        sides: u32,
    },
    /// One dimension may be no longer than another, and is.
    Exceeds {
        /// The one that is too long.
        measure: Measure,
        /// The one that bounds it.
        bound: Measure,
    },
    /// A bow front that stands out by more than half its length.
    BowTooDeep {
        /// Width in the middle.
        middle: Measure,
        /// Length, twice the most that the bow may stand out.
        length: Measure,
        /// How far it stands out.
        bow: Length,
    },
    /// Walls that leave nothing between them.
    WallTooThick {
        /// Wall thickness.
        wall: Measure,
        /// The outside dimension it uses up.
        across: Measure,
    },
    /// A bottom that reaches the rim.
    BottomTooThick {
        /// Bottom thickness.
        bottom: Measure,
        /// Outside height.
        height: Measure,
    },
    /// A bowl whose base, wall and bottom cannot belong to two concentric spheres.
    NoFlatFloor {
        /// Bottom thickness.
        bottom: Measure,
        /// Diameter of the base.
        base: Measure,
    },
    /// Four depths that lie on no plane.
    Twisted {
        /// Which layer.
        layer: Dimension,
        /// Back and front added.
        back_front: Length,
        /// Left and right added.
        left_right: Length,
    },
    /// A slope where layers can only be level.
    SlopeInBowl {
        /// Which layer.
        layer: Dimension,
    },
}

impl GeometryError {
    /// The dimension at fault and the one it disagrees with.
    pub const fn dimensions(&self) -> (Dimension, Option<Dimension>) {
        match *self {
            Self::OutOfRange(measure) => (measure.dimension, None),
            Self::SideCount { .. } => (Dimension::Sides, None),
            Self::Exceeds { measure, bound } => (measure.dimension, Some(bound.dimension)),
            Self::BowTooDeep { middle, length, .. } => (middle.dimension, Some(length.dimension)),
            Self::WallTooThick { wall, across } => (wall.dimension, Some(across.dimension)),
            Self::BottomTooThick { bottom, height } => (bottom.dimension, Some(height.dimension)),
            Self::NoFlatFloor { bottom, base } => (bottom.dimension, Some(base.dimension)),
            Self::Twisted { layer, .. } => (layer, None),
            Self::SlopeInBowl { layer } => (layer, Some(Dimension::Mouth)),
        }
    }

    /// What was found, with its unit.
    pub fn found(&self) -> String {
        match *self {
            Self::OutOfRange(measure) => named(measure),
            Self::SideCount { sides } => format!("{sides} sides"),
            Self::Exceeds { measure, bound } => {
                format!("{} is more than {}", named(measure), named(bound))
            }
            Self::BowTooDeep { bow, length, .. } => {
                format!(
                    "the bow stands out by {} over {}",
                    shown(bow),
                    named(length)
                )
            }
            Self::WallTooThick { wall, across } => {
                format!("{} leaves nothing inside {}", named(wall), named(across))
            }
            Self::BottomTooThick { bottom, height } => {
                format!("{} fills {}", named(bottom), named(height))
            }
            Self::NoFlatFloor { bottom, base } => {
                format!("{} does not go with {}", named(bottom), named(base))
            }
            Self::Twisted {
                back_front,
                left_right,
                ..
            } => format!(
                "back and front add up to {}, left and right to {}",
                shown(back_front),
                shown(left_right)
            ),
            Self::SlopeInBowl { .. } => "a sloped layer in a bowl".to_owned(),
        }
    }

    /// The rule, with its number.
    pub fn rule(&self) -> String {
        let [low, high] = TANK_RANGE.map(shown);
        match *self {
            Self::OutOfRange(measure) if is_depth(measure.dimension) => {
                format!("a depth lies within {high} of the floor")
            }
            Self::OutOfRange(_) => format!("a tank's dimensions lie between {low} and {high}"),
            Self::SideCount { .. } => {
                let [low, high] = SIDE_RANGE;
                format!("a regular polygon has {low} to {high} sides")
            }
            Self::Exceeds { measure, bound } => format!(
                "{} is at most {}",
                word(measure.dimension),
                word(bound.dimension)
            ),
            Self::BowTooDeep { .. } => "a bow stands out by at most half the length".to_owned(),
            Self::WallTooThick { .. } => {
                "the walls leave room between them on every side".to_owned()
            }
            Self::BottomTooThick { .. } => "a bottom is thinner than its tank is high".to_owned(),
            Self::NoFlatFloor { .. } => "a bowl's floor is flat inside and outside".to_owned(),
            Self::Twisted { .. } => {
                "a flat surface has back + front = left + right, to 0.1 mm".to_owned()
            }
            Self::SlopeInBowl { .. } => "layers in a bowl are level".to_owned(),
        }
    }

    /// What would be accepted instead.
    pub fn way_out(&self) -> String {
        match *self {
            Self::OutOfRange(measure) => format!("check the unit of {}", word(measure.dimension)),
            Self::SideCount { .. } => "give another number of sides, or use a cylinder".to_owned(),
            Self::Exceeds { measure, bound } => format!(
                "make {} at most {}, or {} at least {}",
                word(measure.dimension),
                shown(bound.value),
                word(bound.dimension),
                shown(measure.value)
            ),
            Self::BowTooDeep {
                middle,
                length,
                bow,
            } => format!(
                "make width_middle at most {}",
                shown(middle.value - bow + length.value * 0.5)
            ),
            Self::WallTooThick { .. } | Self::BottomTooThick { .. } => {
                "check the unit of the thickness, or give inside dimensions".to_owned()
            }
            Self::NoFlatFloor { .. } => "make the bottom as thick as the wall".to_owned(),
            Self::Twisted { .. } => {
                "give only { back, front } or { left, right }, or mend one of the four".to_owned()
            }
            Self::SlopeInBowl { .. } => "give one depth".to_owned(),
        }
    }
}

const fn is_depth(dimension: Dimension) -> bool {
    matches!(dimension, Dimension::SoilDepth | Dimension::CapDepth)
}

/// The last part of the key.
fn word(dimension: Dimension) -> &'static str {
    let key = dimension.key();
    key.split_once('.').map_or(key, |(_, word)| word)
}

fn named(measure: Measure) -> String {
    format!("{} {}", word(measure.dimension), shown(measure.value))
}

/// Centimetres, or more digits where one decimal would not show the length.
fn shown(length: Length) -> String {
    if length.cm().abs() < 1.0 || length.cm().abs() >= 1e4 {
        format!("{} mm", significant(length.mm(), 3))
    } else {
        UnitSystem::Metric.dimension(length)
    }
}
