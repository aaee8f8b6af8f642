//! A sphere cut flat below and above: the space inside a bowl.

use std::f64::consts::PI;

/// The part of a sphere between two heights over its centre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SphereZone {
    pub(super) radius_m: f64,
    pub(super) floor_m: f64,
    pub(super) rim_m: f64,
}

impl SphereZone {
    /// From the sphere and the circles it is cut at, the first below its centre.
    pub(super) fn new(diameter_m: f64, base_m: f64, mouth_m: f64) -> Self {
        let height_m =
            |circle_m: f64| ((diameter_m - circle_m) * (diameter_m + circle_m)).sqrt() / 2.0;
        Self {
            radius_m: diameter_m / 2.0,
            floor_m: -height_m(base_m),
            rim_m: height_m(mouth_m),
        }
    }

    /// The concentric zone with another wall and floor and the same rim; none where the
    /// sphere does not reach the floor or the rim.
    pub(super) fn moved(&self, growth_m: f64, floor_growth_m: f64) -> Option<Self> {
        let moved = Self {
            radius_m: self.radius_m + growth_m,
            floor_m: self.floor_m - floor_growth_m,
            rim_m: self.rim_m,
        };
        // Equal thickness keeps a pointed base pointed; rounding must not refuse it.
        let reach_m = moved.radius_m * (1.0 + 1e-12);
        let fits =
            moved.floor_m >= -reach_m && moved.floor_m < moved.rim_m && moved.rim_m < reach_m;
        fits.then_some(moved)
    }

    pub(super) fn height_m(&self) -> f64 {
        self.rim_m - self.floor_m
    }

    /// Radius of the circle at a level over the floor.
    pub(super) fn reach_m(&self, level_m: f64) -> f64 {
        let z = self.floor_m + level_m;
        ((self.radius_m - z) * (self.radius_m + z)).max(0.0).sqrt()
    }

    /// Area of the circle at a level over the floor.
    pub(super) fn area_m2(&self, level_m: f64) -> f64 {
        let z = self.floor_m + level_m;
        PI * ((self.radius_m - z) * (self.radius_m + z)).max(0.0)
    }

    /// Area of the curved wall below a level over the floor: 2 pi R h.
    pub(super) fn wall_m2(&self, level_m: f64) -> f64 {
        2.0 * PI * self.radius_m * level_m
    }

    /// Diameter at the widest place.
    pub(super) fn widest_m(&self) -> f64 {
        let z = 0.0_f64.clamp(self.floor_m, self.rim_m.max(self.floor_m));
        2.0 * ((self.radius_m - z) * (self.radius_m + z)).max(0.0).sqrt()
    }

    /// Volume between the floor and a level over it.
    ///
    /// ```text
    /// V = pi (R2 (z2 - z1) - (z2^3 - z1^3)/3)
    /// ```
    ///
    /// `z` from the centre of the sphere.
    ///
    /// # Source
    /// CRC Standard Mathematical Tables, spherical zone (from memory).
    pub(super) fn volume_m3(&self, level_m: f64) -> f64 {
        let (low, high) = (self.floor_m, self.floor_m + level_m);
        let square = self.radius_m * self.radius_m;
        PI * level_m * (square - (low * low + low * high + high * high) / 3.0)
    }
}
