//! Thicknesses told apart no more closely than people lay and read them.

use crate::units::Length;

/// Thicknesses no further apart than this are one, mm: what conversions round.
const ROUNDED_MM: f64 = 1e-6;
/// An inch counts as the 25 mm that limits are written for.
const NOMINAL_INCH_MM: f64 = 25.0;
/// Tapes in inches are read to their quarters.
const QUARTERS: f64 = 4.0;
/// How far from a quarter conversions round.
const CONVERTED: f64 = 1e-6;

/// Whether a thickness is under another by more than people tell apart.
pub(super) fn under(value: Length, limit: Length) -> bool {
    let limits = [limit.mm(), nominal_mm(limit)];
    let is_under = |value_mm: f64| limits.iter().all(|limit| value_mm < limit - ROUNDED_MM);
    is_under(value.mm()) && is_under(nominal_mm(value))
}

/// What quarters of an inch stand for, and any other length as it is.
fn nominal_mm(length: Length) -> f64 {
    let quarters = length.inches() * QUARTERS;
    if (quarters - quarters.round()).abs() < CONVERTED {
        quarters.round() / QUARTERS * NOMINAL_INCH_MM
    } else {
        length.mm()
    }
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
        let least = Length::from_mm(25.0);
        assert!(!under(Length::from_mm(25.0 - 1e-9), least));
        assert!(under(Length::from_mm(24.9), least));
        assert!(under(Length::from_inches(0.75), least));
    }
}
