//! Thicknesses told apart from what conversions round.

use crate::units::Length;

/// Thicknesses closer than this count as equal, mm: conversions round.
const ROUNDING_MM: f64 = 1e-6;

/// Whether a thickness is under a limit by more than rounding.
pub(super) fn under(value: Length, limit: Length) -> bool {
    value.mm() < limit.mm() - ROUNDING_MM
}
