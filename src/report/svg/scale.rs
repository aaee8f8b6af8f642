//! How long a length of a tank is in its drawings, which each show it by a bar.

use super::bounds::Bounds;
use super::ends::differs_across;
use crate::geometry::Spot;
use crate::plan::Drawing;
use crate::units::Length;

/// How large a view is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::report) enum DrawingSize {
    /// Across the column of the drawing, its letters larger on a phone.
    Large,
    /// Beside another.
    Small,
}

impl DrawingSize {
    /// The most pixels that a tank takes across, with labels on one side and on both.
    const fn most_across(self) -> [f64; 2] {
        match self {
            Self::Large => [322.0, 250.0],
            Self::Small => [146.0, 104.0],
        }
    }

    /// The most pixels that a tank takes up.
    const fn most_up(self) -> f64 {
        match self {
            Self::Large => 350.0,
            Self::Small => 150.0,
        }
    }

    /// From one line of labels to the next, px.
    pub(super) const fn line(self) -> f64 {
        match self {
            Self::Large => 19.0,
            Self::Small => 13.0,
        }
    }
}

/// Pixels for a length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::report) struct Scale {
    px_per_m: f64,
    size: DrawingSize,
}

impl Scale {
    /// The scale at which the views of a tank that are drawn in a size fit: that from the
    /// front alone where it is large.
    pub(in crate::report) fn of(drawing: &Drawing, size: DrawingSize) -> Self {
        let outlines: &[&Vec<Spot>] = match size {
            DrawingSize::Large => &[&drawing.front.outer],
            DrawingSize::Small => &[&drawing.side.outer, &drawing.above.outer],
        };
        let frames = outlines.iter().map(|outline| Bounds::of(outline));
        let across_m = frames
            .clone()
            .map(|frame| frame.across_m())
            .fold(0.0, f64::max);
        let up_m = frames.map(|frame| frame.up_m()).fold(0.0, f64::max);
        let differs = match size {
            DrawingSize::Large => differs_across(&drawing.front),
            DrawingSize::Small => drawing.is_sloped(),
        };
        let most_across = size.most_across()[usize::from(differs)];
        Self {
            px_per_m: (most_across / across_m).min(size.most_up() / up_m),
            size,
        }
    }

    /// The scale at which all of several tanks fit beside their names.
    pub(in crate::report) fn common<'a>(drawings: impl Iterator<Item = &'a Drawing>) -> Self {
        let smallest = drawings.map(|drawing| Self::of(drawing, DrawingSize::Small).px_per_m);
        Self {
            px_per_m: smallest.fold(f64::INFINITY, f64::min),
            size: DrawingSize::Small,
        }
    }

    pub(super) fn px(self, length: Length) -> f64 {
        length.m() * self.px_per_m
    }

    pub(super) const fn px_per_m(self) -> f64 {
        self.px_per_m
    }

    pub(super) const fn size(self) -> DrawingSize {
        self.size
    }

    pub(super) const fn line(self) -> f64 {
        self.size.line()
    }
}
