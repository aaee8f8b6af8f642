//! Thicknesses told apart no more closely than people lay and read them.

use crate::units::Length;

/// Thicknesses no further apart than this are shown alike, mm.
const SHOWN_MM: f64 = 0.5;
/// An inch counts as the 25 mm that limits are written for: 25.4 over 25, with what
/// conversions round.
const INCH: f64 = 0.4 / 25.0 + 1e-9;

/// Whether a thickness is under another by more than people tell apart.
pub(super) fn under(value: Length, limit: Length) -> bool {
    let tolerance = (limit.mm() * INCH).max(SHOWN_MM);
    value.mm() < limit.mm() - tolerance
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inches_count_as_the_millimetres_that_limits_are_written_for() {
        for (inches, mm) in [(1.0, 25.0), (2.0, 50.0), (3.0, 75.0)] {
            let (inches, mm) = (Length::from_inches(inches), Length::from_mm(mm));
            assert!(!under(mm, inches) && !under(inches, mm));
        }
        assert!(!under(Length::from_mm(24.6), Length::from_mm(25.0)));
        assert!(under(Length::from_mm(24.0), Length::from_mm(25.0)));
    }
}
