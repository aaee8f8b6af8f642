//! How long a length of the tank is in its drawings: one scale for all views of a tank.

use crate::geometry::Spot;
use crate::plan::Drawing;
use crate::units::Length;

/// The most pixels that a view takes across, with labels on one side and on both.
const MOST_ACROSS: [f64; 2] = [200.0, 150.0];
/// The most pixels that a view takes up.
const MOST_UP: f64 = 196.0;

/// Pixels for a length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::report) struct Scale {
    px_per_m: f64,
}

/// The box around some outline, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Frame {
    pub(super) left_m: f64,
    pub(super) right_m: f64,
    pub(super) low_m: f64,
    pub(super) high_m: f64,
}

impl Frame {
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

impl Scale {
    /// The scale at which every view of a tank fits.
    pub(in crate::report) fn of(drawing: &Drawing) -> Self {
        let outlines = [
            &drawing.front.outer,
            &drawing.side.outer,
            &drawing.above.outer,
        ];
        let frames = outlines.map(|outline| Frame::of(outline));
        let across_m = frames.iter().map(Frame::across_m).fold(0.0, f64::max);
        let up_m = frames.iter().map(Frame::up_m).fold(0.0, f64::max);
        let most_across = MOST_ACROSS[usize::from(drawing.is_sloped())];
        Self {
            px_per_m: (most_across / across_m).min(MOST_UP / up_m),
        }
    }

    pub(super) fn px(self, length: Length) -> f64 {
        length.m() * self.px_per_m
    }

    pub(super) const fn px_per_m(self) -> f64 {
        self.px_per_m
    }
}
