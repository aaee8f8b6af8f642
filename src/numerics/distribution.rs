//! Distributions of numbers known by their lowest, most likely and highest value.

/// Above this ratio of its ends a range is drawn by its logarithm: a
/// convention, so that half and double count alike.
pub const LOGARITHMIC_ABOVE_RATIO: f64 = 3.0;

/// The value below which the share `probability` of a range lies: triangular,
/// or triangular in the logarithm where the ends are positive and more than
/// [`LOGARITHMIC_ABOVE_RATIO`] apart.
pub fn range_inverse(low: f64, mode: f64, high: f64, probability: f64) -> f64 {
    if low > 0.0 && high / low > LOGARITHMIC_ABOVE_RATIO {
        log_triangular_inverse(low, mode, high, probability)
    } else {
        triangular_inverse(low, mode, high, probability)
    }
}

/// Inverse of the cumulative triangular distribution.
///
/// ```text
/// p <= (m - l)/(h - l):  l + sqrt(p (h - l)(m - l))
/// else:                  h - sqrt((1 - p)(h - l)(h - m))
/// ```
///
/// `l` lowest, `m` most likely and `h` highest value, `p` probability.
///
/// # Source
/// Evans, Hastings and Peacock 2000 (`evans_2000`, from memory); the derivation by integration is two lines.
///
/// # Example
/// ```
/// use lentic::numerics::distribution::triangular_inverse;
/// // a quarter of the mass of 0..1..4 lies below the mode
/// assert_eq!(triangular_inverse(0.0, 1.0, 4.0, 0.25), 1.0);
/// ```
pub fn triangular_inverse(low: f64, mode: f64, high: f64, probability: f64) -> f64 {
    let width = high - low;
    if probability * width <= mode - low {
        low + (probability * width * (mode - low)).sqrt()
    } else {
        high - ((1.0 - probability) * width * (high - mode)).sqrt()
    }
}

/// Inverse of the distribution whose logarithm is triangular; all three values
/// must be positive.
pub fn log_triangular_inverse(low: f64, mode: f64, high: f64, probability: f64) -> f64 {
    triangular_inverse(low.ln(), mode.ln(), high.ln(), probability).exp()
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "these results must be exact")]
mod tests {
    use super::*;

    /// Cumulative triangular distribution, integrated by hand.
    fn share_below(low: f64, mode: f64, high: f64, x: f64) -> f64 {
        if x <= mode {
            (x - low).powi(2) / ((high - low) * (mode - low))
        } else {
            1.0 - (high - x).powi(2) / ((high - low) * (high - mode))
        }
    }

    #[test]
    fn the_inverse_undoes_the_cumulative_distribution() {
        for step in 1..20 {
            let probability = f64::from(step) / 20.0;
            let x = triangular_inverse(1.5, 5.0, 12.0, probability);
            assert!((share_below(1.5, 5.0, 12.0, x) - probability).abs() < 1e-12);
            let y = log_triangular_inverse(0.5, 2.0, 8.0, probability);
            let below = share_below(0.5_f64.ln(), 2.0_f64.ln(), 8.0_f64.ln(), y.ln());
            assert!((below - probability).abs() < 1e-12);
        }
    }

    #[test]
    fn the_ends_and_a_range_without_width_come_out_exactly() {
        assert_eq!(triangular_inverse(1.0, 2.0, 4.0, 0.0), 1.0);
        assert_eq!(triangular_inverse(1.0, 2.0, 4.0, 1.0), 4.0);
        assert_eq!(triangular_inverse(0.0, 0.0, 4.0, 0.75), 2.0);
        assert_eq!(range_inverse(3.0, 3.0, 3.0, 0.3), 3.0);
    }

    #[test]
    fn only_a_wide_positive_range_is_logarithmic() {
        // the median of a symmetric range is its middle, on either scale
        assert_eq!(range_inverse(1.0, 2.0, 3.0, 0.5), 2.0);
        assert!((range_inverse(1.0, 2.0, 4.0, 0.5) - 2.0).abs() < 1e-12);
        assert_eq!(range_inverse(0.0, 1.0, 2.0, 0.5), 1.0);
    }
}
