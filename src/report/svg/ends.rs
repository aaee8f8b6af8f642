//! How high the bed lies at the ends of a view.

use super::bounds::Bounds;
use crate::geometry::{Elevation, Spot};

/// Depths that differ by less are shown as one, m.
pub(super) const ALIKE_M: f64 = 5e-4;

/// One end of a view.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Left,
    Right,
}

/// Whether the bed is deeper at one end of the view than at the other.
pub(super) fn differs_across(view: &Elevation) -> bool {
    [&view.soil, &view.cap]
        .iter()
        .any(|layer| (end_m(layer, Side::Left) - end_m(layer, Side::Right)).abs() > ALIKE_M)
}

/// Height of an outline's upper edge at one end, m.
pub(super) fn end_m(outline: &[Spot], side: Side) -> f64 {
    let top = Bounds::of(outline).high_m;
    let frame = Bounds::of(outline);
    let end = match side {
        Side::Left => frame.left_m,
        Side::Right => frame.right_m,
    };
    let there = outline
        .iter()
        .filter(|spot| (spot.across.m() - end).abs() < ALIKE_M)
        .map(|spot| spot.up.m());
    // A layer in a bowl is widest below or above its surface, which is level.
    let straight = there.clone().count() > 1;
    if straight {
        there.fold(0.0, f64::max)
    } else {
        top.max(0.0)
    }
}
