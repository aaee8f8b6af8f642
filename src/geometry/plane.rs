//! A linear function over the plan: a flat surface, or the line where it is zero.

/// A place on the plan: x from left to right, y from the back wall to the front.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct PlanPoint {
    pub(super) x_m: f64,
    pub(super) y_m: f64,
}

impl PlanPoint {
    pub(super) const fn new(x_m: f64, y_m: f64) -> Self {
        Self { x_m, y_m }
    }

    pub(super) fn distance_m(self, other: Self) -> f64 {
        (other.x_m - self.x_m).hypot(other.y_m - self.y_m)
    }

    /// The point some way off along a direction.
    pub(super) fn shifted(self, direction: Self, by_m: f64) -> Self {
        Self::new(
            self.x_m + direction.x_m * by_m,
            self.y_m + direction.y_m * by_m,
        )
    }
}

/// A height that changes linearly over the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Plane {
    /// Value at x = y = 0.
    pub(super) origin_m: f64,
    /// Rise to the right.
    pub(super) per_x: f64,
    /// Rise to the front.
    pub(super) per_y: f64,
}

impl Plane {
    /// Zero everywhere.
    pub(super) const FLOOR: Self = Self::level(0.0);
    /// The distance from the y axis.
    pub(super) const X: Self = Self {
        origin_m: 0.0,
        per_x: 1.0,
        per_y: 0.0,
    };
    /// The distance from the x axis.
    pub(super) const Y: Self = Self {
        origin_m: 0.0,
        per_x: 0.0,
        per_y: 1.0,
    };

    /// The same height everywhere.
    pub(super) const fn level(height_m: f64) -> Self {
        Self {
            origin_m: height_m,
            per_x: 0.0,
            per_y: 0.0,
        }
    }

    /// The distance to the left of the line from one point to another.
    pub(super) fn left_of(from: PlanPoint, to: PlanPoint) -> Self {
        let chord_m = from.distance_m(to);
        let per_x = -(to.y_m - from.y_m) / chord_m;
        let per_y = (to.x_m - from.x_m) / chord_m;
        Self {
            origin_m: -(per_x * from.x_m + per_y * from.y_m),
            per_x,
            per_y,
        }
    }

    pub(super) fn at(self, point: PlanPoint) -> f64 {
        self.origin_m + self.per_x * point.x_m + self.per_y * point.y_m
    }

    /// Rise over run along the steepest line.
    pub(super) fn gradient(self) -> f64 {
        self.per_x.hypot(self.per_y)
    }
}

impl std::ops::Add for Plane {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            origin_m: self.origin_m + other.origin_m,
            per_x: self.per_x + other.per_x,
            per_y: self.per_y + other.per_y,
        }
    }
}

impl std::ops::Neg for Plane {
    type Output = Self;
    fn neg(self) -> Self {
        Self {
            origin_m: -self.origin_m,
            per_x: -self.per_x,
            per_y: -self.per_y,
        }
    }
}

impl std::ops::Sub for Plane {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}
