//! Which part of dissolved sulfide is the poisonous gas.

use crate::units::Share;

/// First acidity constant of hydrogen sulfide at 25 C (from memory).
const PK1: f64 = 7.0;

/// The share of dissolved sulfide that is undissociated hydrogen sulfide at 25 C.
///
/// ```text
/// 1 / (1 + 10^(pH - 7.0))
/// ```
///
/// # Limits
/// How much sulfide a bed lets go cannot be computed from grain sizes; the oxic
/// layer oxidises what diffuses, and stirring is what frees it.
///
/// # Source
/// Balance of a weak acid; the constant, 7.0 at 25 C, from memory.
///
/// # Example
/// ```
/// use lentic::substrate::sulfide::hydrogen_sulfide_share;
/// // 1 / (1 + 10^-0.5)
/// assert!((hydrogen_sulfide_share(6.5).fraction() - 0.7597).abs() < 1e-4);
/// ```
pub fn hydrogen_sulfide_share(ph: f64) -> Share {
    Share::from_fraction(1.0 / (1.0 + 10f64.powf(ph - PK1)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_is_gas_at_the_acidity_constant_and_a_tenth_of_it_one_unit_above() {
        assert!((hydrogen_sulfide_share(7.0).fraction() - 0.5).abs() < 1e-12);
        assert!((hydrogen_sulfide_share(8.0).fraction() - 1.0 / 11.0).abs() < 1e-12);
    }
}
