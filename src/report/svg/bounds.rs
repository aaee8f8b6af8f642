//! The box around an outline.

use crate::geometry::Spot;

/// The box around some outline, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bounds {
    pub(super) left_m: f64,
    pub(super) right_m: f64,
    pub(super) low_m: f64,
    pub(super) high_m: f64,
}

impl Bounds {
    pub(super) fn of(outline: &[Spot]) -> Self {
        let empty = Self {
            left_m: f64::INFINITY,
            right_m: f64::NEG_INFINITY,
            low_m: f64::INFINITY,
            high_m: f64::NEG_INFINITY,
        };
        outline.iter().fold(empty, |frame, spot| Self {
            left_m: frame.left_m.min(spot.across.m()),
            right_m: frame.right_m.max(spot.across.m()),
            low_m: frame.low_m.min(spot.up.m()),
            high_m: frame.high_m.max(spot.up.m()),
        })
    }

    pub(super) fn across_m(&self) -> f64 {
        self.right_m - self.left_m
    }

    pub(super) fn up_m(&self) -> f64 {
        self.high_m - self.low_m
    }
}
