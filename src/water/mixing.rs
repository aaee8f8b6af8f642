//! Tap water mixed with soft water, and cold water with hot.

use crate::units::{Share, Temperature};

/// Share of tap water in the mixture that has a wanted hardness or alkalinity; nothing
/// where no mixture of the two has it.
///
/// ```text
/// x = (goal - soft) / (tap - soft)
/// ```
///
/// # Source
/// What is dissolved adds up.
///
/// # Example
/// ```
/// use lentic::water::mixing::tap_share;
/// // 6 of 14 degrees
/// assert!((tap_share(6.0, 0.0, 14.0).unwrap().percent() - 42.857).abs() < 1e-3);
/// assert_eq!(tap_share(2.0, 3.0, 14.0), None);
/// ```
///
/// # Limits
/// Calcite that settles while water stands is left out.
pub fn tap_share(goal: f64, soft: f64, tap: f64) -> Option<Share> {
    let share = (goal - soft) / (tap - soft);
    (0.0..=1.0)
        .contains(&share)
        .then(|| Share::from_fraction(share))
}

/// Share of hot water in a mixture of a wanted temperature; nothing where no mixture has it.
///
/// ```text
/// h = (T - cold) / (hot - cold)
/// ```
///
/// # Source
/// What heat a litre holds adds up.
///
/// # Example
/// ```
/// use lentic::units::Temperature;
/// use lentic::water::mixing::hot_share;
/// let [wanted, cold, hot] = [24.0, 12.0, 60.0].map(Temperature::from_celsius);
/// assert!((hot_share(wanted, cold, hot).unwrap().percent() - 25.0).abs() < 1e-9);
/// ```
///
/// # Limits
/// Water between 0 and 60 C takes up heat alike to 1 %.
pub fn hot_share(wanted: Temperature, cold: Temperature, hot: Temperature) -> Option<Share> {
    tap_share(wanted.celsius(), cold.celsius(), hot.celsius())
}
