//! Soil and cap as they lie in a tank, with the water over them.

use super::error::{Dimension, GeometryError};
use super::layer::{BedTop, Extreme, FloorPlace, Layer, LayerDepth};
use super::pile::Pile;
use super::vessel::{Body, Vessel};
use super::zone::SphereZone;
use crate::units::{Area, Length, Volume};

/// Two layers in a tank: nothing lies below the floor or above the rim.
///
/// Levels are measured as those of a [`Vessel`]. Volumes over a sloped bed are exact:
/// the plan is divided where a layer runs out or the pile meets the rim or the level,
/// and over each part the thickness is linear, so its volume is area times thickness
/// at the centroid.
#[derive(Debug, Clone, PartialEq)]
pub struct Bed {
    /// The lower layer.
    pub soil: Layer,
    /// The layer on it.
    pub cap: Layer,
    /// The upper surface of both.
    pub top: BedTop,
    pub(super) form: BedShape,
}

/// What holds the bed.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum BedShape {
    /// Straight walls.
    Pile(Pile),
    /// A bowl, filled level to two heights over the floor.
    Bowl {
        zone: SphereZone,
        soil_m: f64,
        top_m: f64,
    },
}

impl Bed {
    /// Lays soil and cap in a vessel, each as deep as asked for where there is room.
    ///
    /// # Errors
    /// A slope in a bowl, four depths on no plane, a depth beyond any tank.
    ///
    /// # Example
    /// ```
    /// use lentic::geometry::{Bed, LayerDepth, Measured, FloorPlace, Shape, Vessel, Wall};
    /// use lentic::units::{Length, size::Size};
    /// let cm = Length::from_cm;
    /// let shape = Shape::Box(Size::parse("60 x 30 x 36 cm")?);
    /// let wall = Wall { sides: cm(0.6), bottom: cm(0.6) };
    /// let vessel = Vessel::new(&shape, Measured::Inside, wall)?;
    /// let slope = LayerDepth::BackToFront { back: cm(8.0), front: cm(3.0) };
    /// let bed = Bed::new(&vessel, slope, LayerDepth::Uniform(cm(4.0)))?;
    /// assert!((bed.soil.volume.litres() - 9.9).abs() < 1e-9);
    /// assert_eq!(bed.soil.deepest.place, FloorPlace::Back);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn new(vessel: &Vessel, soil: LayerDepth, cap: LayerDepth) -> Result<Self, GeometryError> {
        soil.check(Dimension::SoilDepth)?;
        cap.check(Dimension::CapDepth)?;
        match vessel.inside() {
            Body::Prism { plan, height_m } => {
                let extents = plan.extents();
                let pile = Pile::new(plan, soil.plane(&extents), cap.plane(&extents), *height_m);
                Ok(Self {
                    soil: pile.soil(),
                    cap: pile.cap(),
                    top: pile.top(),
                    form: BedShape::Pile(pile),
                })
            }
            Body::Zone(zone) => {
                let soil_m = vessel.inside().within(level(soil, Dimension::SoilDepth)?);
                let cap_m = level(cap, Dimension::CapDepth)?.m().max(0.0);
                let top_m = vessel.inside().within(Length::from_m(soil_m + cap_m));
                Ok(Self::in_bowl(*zone, soil_m, top_m))
            }
        }
    }

    fn in_bowl(zone: SphereZone, soil_m: f64, top_m: f64) -> Self {
        let everywhere = |depth_m| Extreme {
            depth: Length::from_m(depth_m),
            place: FloorPlace::Everywhere,
        };
        let layer = |low_m: f64, high_m: f64| Layer {
            volume: Volume::from_m3(zone.volume_m3(high_m) - zone.volume_m3(low_m)),
            mean: Length::from_m(high_m - low_m),
            thinnest: everywhere(high_m - low_m),
            deepest: everywhere(high_m - low_m),
            slope_deg: 0.0,
            runs_out: false,
        };
        Self {
            soil: layer(0.0, soil_m),
            cap: layer(soil_m, top_m),
            top: BedTop {
                lowest: everywhere(top_m),
                highest: everywhere(top_m),
                mean: Length::from_m(top_m),
                slope_deg: 0.0,
            },
            form: BedShape::Bowl {
                zone,
                soil_m,
                top_m,
            },
        }
    }

    /// Both layers together.
    pub fn volume(&self) -> Volume {
        self.soil.volume + self.cap.volume
    }

    /// The plan area of the bed's surface.
    pub fn area(&self) -> Area {
        Area::from_m2(match &self.form {
            BedShape::Pile(pile) => pile.area_m2(),
            BedShape::Bowl { zone, top_m, .. } => zone.area_m2(*top_m),
        })
    }

    /// Soil below a level.
    pub fn soil_below(&self, level: Length) -> Volume {
        Volume::from_m3(match &self.form {
            BedShape::Pile(pile) => pile.soil_below_m3(level.m()),
            BedShape::Bowl { zone, soil_m, .. } => zone.volume_m3(level.m().clamp(0.0, *soil_m)),
        })
    }

    /// Soil and cap below a level.
    pub fn volume_below(&self, level: Length) -> Volume {
        Volume::from_m3(match &self.form {
            BedShape::Pile(pile) => pile.below_m3(level.m()),
            BedShape::Bowl { zone, top_m, .. } => zone.volume_m3(level.m().clamp(0.0, *top_m)),
        })
    }

    /// Cap below a level.
    pub fn cap_below(&self, level: Length) -> Volume {
        self.volume_below(level) - self.soil_below(level)
    }

    /// Free water over the bed when it stands at a level.
    ///
    /// # Example
    /// ```
    /// use lentic::geometry::{Bed, LayerDepth, Measured, Shape, Vessel, Wall};
    /// use lentic::units::{Length, size::Size};
    /// let cm = Length::from_cm;
    /// let shape = Shape::Box(Size::parse("60 x 30 x 36 cm")?);
    /// let wall = Wall { sides: cm(0.6), bottom: cm(0.6) };
    /// let vessel = Vessel::new(&shape, Measured::Inside, wall)?;
    /// let bed = Bed::new(&vessel, LayerDepth::Uniform(cm(3.0)), LayerDepth::Uniform(cm(4.0)))?;
    /// // 26 cm of water over 7 cm of bed on 18 dm2
    /// assert!((bed.water_below(cm(33.0)).litres() - 18.0 * 2.6).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn water_below(&self, level: Length) -> Volume {
        Volume::from_m3(match &self.form {
            BedShape::Pile(pile) => pile.water_m3(level.m()),
            BedShape::Bowl { zone, top_m, .. } => {
                let level_m = level.m().clamp(*top_m, zone.height_m().max(*top_m));
                zone.volume_m3(level_m) - zone.volume_m3(*top_m)
            }
        })
    }

    /// The plan area over which the bed stands above a level.
    pub fn area_above(&self, level: Length) -> Area {
        Area::from_m2(match &self.form {
            BedShape::Pile(pile) => pile.area_above_m2(level.m()),
            BedShape::Bowl { zone, top_m, .. } if *top_m > level.m() => zone.area_m2(*top_m),
            BedShape::Bowl { .. } => 0.0,
        })
    }

    /// Whether some of the bed stands above a level.
    pub fn rises_above(&self, level: Length) -> bool {
        self.top.highest.depth > level
    }

    /// Whether the bed is heaped to the rim somewhere.
    pub fn meets_rim(&self) -> bool {
        let rim_m = match &self.form {
            BedShape::Pile(pile) => pile.rim_m(),
            BedShape::Bowl { zone, .. } => zone.height_m(),
        };
        self.top.highest.depth.m() >= rim_m * (1.0 - 1e-9)
    }

    /// Cap material that brings the cap to at least a depth everywhere.
    ///
    /// # Example
    /// ```
    /// use lentic::geometry::{Bed, LayerDepth, Measured, Shape, Vessel, Wall};
    /// use lentic::units::{Length, size::Size};
    /// let cm = Length::from_cm;
    /// let shape = Shape::Box(Size::parse("60 x 30 x 36 cm")?);
    /// let wall = Wall { sides: cm(0.6), bottom: cm(0.6) };
    /// let vessel = Vessel::new(&shape, Measured::Inside, wall)?;
    /// let bed = Bed::new(&vessel, LayerDepth::Uniform(cm(3.0)), LayerDepth::Uniform(cm(1.0)))?;
    /// // another 1.5 cm on 18 dm2
    /// assert!((bed.cap_short_of(cm(2.5)).litres() - 18.0 * 0.15).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn cap_short_of(&self, depth: Length) -> Volume {
        Volume::from_m3(match &self.form {
            BedShape::Pile(pile) => pile.cap_short_of_m3(depth.m()),
            BedShape::Bowl {
                zone,
                soil_m,
                top_m,
            } => {
                let wanted_m = (soil_m + depth.m()).clamp(*top_m, zone.height_m().max(*top_m));
                zone.volume_m3(wanted_m) - zone.volume_m3(*top_m)
            }
        })
    }

    /// Cap material lying beyond a depth.
    pub fn cap_beyond(&self, depth: Length) -> Volume {
        Volume::from_m3(match &self.form {
            BedShape::Pile(pile) => pile.cap_beyond_m3(depth.m()),
            BedShape::Bowl {
                zone,
                soil_m,
                top_m,
            } => {
                let kept_m = (soil_m + depth.m()).clamp(*soil_m, *top_m);
                zone.volume_m3(*top_m) - zone.volume_m3(kept_m)
            }
        })
    }
}

/// The depth of a layer that must be level.
fn level(depth: LayerDepth, layer: Dimension) -> Result<Length, GeometryError> {
    depth.level().ok_or(GeometryError::SlopeInBowl { layer })
}
