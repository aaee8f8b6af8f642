//! The empty tank: the space inside its walls and the walls themselves.

use super::error::{Dimension, GeometryError};
use super::region::Region;
use super::shape::{Shape, check_range};
use super::zone::SphereZone;
use crate::units::{Area, Length, Volume};

/// Where a shape's dimensions are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measured {
    /// From inner face to inner face, and from the floor to the rim.
    Inside,
    /// Over the outer faces, and from the underside to the rim.
    Outside,
}

/// Thickness of what a tank is built of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wall {
    /// Of the sides.
    pub sides: Length,
    /// Of the bottom.
    pub bottom: Length,
}

/// A tank without anything in it. Levels are measured up from the inner floor; one below
/// the floor or above the rim counts as the floor or the rim.
#[derive(Debug, Clone, PartialEq)]
pub struct Vessel {
    shape: Shape,
    wall: Wall,
    inside: Body,
    outside: Body,
}

impl Vessel {
    /// The vessel of a shape, its walls inside or around the dimensions given.
    ///
    /// Walls meet in sharp corners; a curved wall keeps its centre.
    ///
    /// # Errors
    /// Dimensions that no such shape can have, and walls that leave nothing inside.
    ///
    /// # Example
    /// ```
    /// use lentic::geometry::{Measured, Shape, Vessel, Wall};
    /// use lentic::units::{Length, size::Size};
    /// let shape = Shape::Box(Size::parse("60 x 30 x 36 cm")?);
    /// let wall = Wall { sides: Length::from_mm(6.0), bottom: Length::from_mm(6.0) };
    /// let vessel = Vessel::new(&shape, Measured::Outside, wall)?;
    /// assert!((vessel.brimful().litres() - 59.947_776).abs() < 1e-9);
    /// assert!((vessel.shell().cm3() - 4852.224).abs() < 1e-6);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(shape: &Shape, measured: Measured, wall: Wall) -> Result<Self, GeometryError> {
        shape.check()?;
        check_range(Dimension::Bottom.of(wall.bottom))?;
        check_range(Dimension::Wall.of(wall.sides))?;
        let (inside, outside) = match *shape {
            Shape::Bowl {
                diameter,
                base,
                mouth,
            } => {
                let given = SphereZone::new(diameter.m(), base.m(), mouth.m());
                check_range(Dimension::Height.of(Length::from_m(given.height_m())))?;
                bowl_bodies(shape, given, measured, wall)?
            }
            _ => prism_bodies(shape, measured, wall)?,
        };
        Ok(Self {
            shape: *shape,
            wall,
            inside,
            outside,
        })
    }

    /// The shape as given.
    pub const fn shape(&self) -> &Shape {
        &self.shape
    }

    /// The walls.
    pub const fn wall(&self) -> Wall {
        self.wall
    }

    /// From the inner floor to the rim.
    pub fn height(&self) -> Length {
        Length::from_m(self.inside.height_m())
    }

    /// Inner length at the widest place, left to right.
    pub fn length(&self) -> Length {
        Length::from_m(self.inside.span_m().0)
    }

    /// Inner width at the widest place, back to front.
    pub fn width(&self) -> Length {
        Length::from_m(self.inside.span_m().1)
    }

    /// Length over the walls.
    pub fn outer_length(&self) -> Length {
        Length::from_m(self.outside.span_m().0)
    }

    /// From the underside to the rim.
    pub fn outer_height(&self) -> Length {
        Length::from_m(self.outside.height_m())
    }

    /// The inner floor.
    pub fn floor_area(&self) -> Area {
        self.surface(Length::ZERO)
    }

    /// What the tank stands on: its underside.
    pub fn footprint(&self) -> Area {
        Area::from_m2(self.outside.area_m2(0.0))
    }

    /// The surface of water at a level, with nothing rising above it.
    pub fn surface(&self, level: Length) -> Area {
        Area::from_m2(self.inside.area_m2(self.inside.within(level)))
    }

    /// The inner walls below a level.
    pub fn wall_area(&self, level: Length) -> Area {
        Area::from_m2(self.inside.wall_m2(self.inside.within(level)))
    }

    /// Inner volume to the rim.
    pub fn brimful(&self) -> Volume {
        self.volume_below(self.height())
    }

    /// Inner volume below a level.
    ///
    /// # Example
    /// ```
    /// use lentic::geometry::{Measured, Shape, Vessel, Wall};
    /// use lentic::units::{Length, size::Size};
    /// let shape = Shape::Box(Size::parse("60 x 30 x 36 cm")?);
    /// let wall = Wall { sides: Length::from_mm(6.0), bottom: Length::from_mm(6.0) };
    /// let vessel = Vessel::new(&shape, Measured::Inside, wall)?;
    /// assert!((vessel.volume_below(Length::from_cm(30.0)).litres() - 54.0).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn volume_below(&self, level: Length) -> Volume {
        Volume::from_m3(self.inside.volume_m3(self.inside.within(level)))
    }

    /// Volume of walls and bottom.
    pub fn shell(&self) -> Volume {
        Volume::from_m3(self.outside.volume_m3(self.outside.height_m())) - self.brimful()
    }

    pub(super) const fn inside(&self) -> &Body {
        &self.inside
    }

    pub(super) const fn outside(&self) -> &Body {
        &self.outside
    }
}

fn prism_bodies(
    shape: &Shape,
    measured: Measured,
    wall: Wall,
) -> Result<(Body, Body), GeometryError> {
    let measures = shape.measures();
    // Every shape but the bowl, which is not asked here, lists its height last.
    let height = measures.last().map_or(Length::ZERO, |last| last.value);
    let (wall_m, bottom_m) = (wall.sides.m(), wall.bottom.m());
    let (inner_growth_m, outer_growth_m, inner_m, outer_m) = match measured {
        Measured::Inside => (0.0, wall_m, height.m(), height.m() + bottom_m),
        Measured::Outside => (-wall_m, 0.0, height.m() - bottom_m, height.m()),
    };
    if inner_m <= 0.0 {
        return Err(GeometryError::BottomTooThick {
            bottom: Dimension::Bottom.of(wall.bottom),
            height: Dimension::Height.of(height),
        });
    }
    let body = |growth_m, height_m| {
        let plan = shape.outline(growth_m)?;
        Some(Body::Prism { plan, height_m })
    };
    body(inner_growth_m, inner_m)
        .zip(body(outer_growth_m, outer_m))
        .ok_or_else(|| wall_too_thick(shape, wall))
}

fn bowl_bodies(
    shape: &Shape,
    given: SphereZone,
    measured: Measured,
    wall: Wall,
) -> Result<(Body, Body), GeometryError> {
    let (wall_m, bottom_m) = (wall.sides.m(), wall.bottom.m());
    let sign = match measured {
        Measured::Inside => 1.0,
        Measured::Outside => -1.0,
    };
    if given.radius_m + sign * wall_m <= given.rim_m {
        return Err(wall_too_thick(shape, wall));
    }
    let other =
        given
            .moved(sign * wall_m, sign * bottom_m)
            .ok_or_else(|| GeometryError::NoFlatFloor {
                bottom: Dimension::Bottom.of(wall.bottom),
                base: Dimension::Base.of(match *shape {
                    Shape::Bowl { base, .. } => base,
                    _ => Length::ZERO,
                }),
            })?;
    Ok(match measured {
        Measured::Inside => (Body::Zone(given), Body::Zone(other)),
        Measured::Outside => (Body::Zone(other), Body::Zone(given)),
    })
}

/// Names the shortest dimension of the plan.
fn wall_too_thick(shape: &Shape, wall: Wall) -> GeometryError {
    let sides = Dimension::Wall.of(wall.sides);
    let across = shape
        .measures()
        .into_iter()
        .filter(|measure| {
            use Dimension::{CutLength, CutWidth, Height};
            !matches!(measure.dimension, CutLength | CutWidth | Height)
        })
        .min_by(|a, b| a.value.m().total_cmp(&b.value.m()))
        .unwrap_or(sides);
    GeometryError::WallTooThick {
        wall: sides,
        across,
    }
}

/// The space inside one of a tank's two surfaces.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Body {
    /// Straight walls on a plan.
    Prism { plan: Region, height_m: f64 },
    /// Part of a sphere.
    Zone(SphereZone),
}

impl Body {
    pub(super) fn height_m(&self) -> f64 {
        match self {
            Self::Prism { height_m, .. } => *height_m,
            Self::Zone(zone) => zone.height_m(),
        }
    }

    /// The level, or the floor or rim where it lies beyond them.
    pub(super) fn within(&self, level: Length) -> f64 {
        level.m().min(self.height_m()).max(0.0)
    }

    /// Length and width at the widest place.
    fn span_m(&self) -> (f64, f64) {
        match self {
            Self::Prism { plan, .. } => {
                let extents = plan.extents();
                (extents.length_m(), extents.width_m())
            }
            Self::Zone(zone) => (zone.widest_m(), zone.widest_m()),
        }
    }

    fn area_m2(&self, level_m: f64) -> f64 {
        match self {
            Self::Prism { plan, .. } => plan.area_m2(),
            Self::Zone(zone) => zone.area_m2(level_m),
        }
    }

    fn wall_m2(&self, level_m: f64) -> f64 {
        match self {
            Self::Prism { plan, .. } => plan.perimeter_m() * level_m,
            Self::Zone(zone) => zone.wall_m2(level_m),
        }
    }

    fn volume_m3(&self, level_m: f64) -> f64 {
        match self {
            Self::Prism { plan, .. } => plan.area_m2() * level_m,
            Self::Zone(zone) => zone.volume_m3(level_m),
        }
    }
}
