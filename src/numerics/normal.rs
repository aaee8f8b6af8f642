//! The normal distribution.

/// Share of a standard normal distribution that lies below a number.
///
/// ```text
/// P(x) = erfc(-x / sqrt(2)) / 2
/// ```
///
/// # Source
/// By definition of the complementary error function.
///
/// # Example
/// ```
/// use lentic::numerics::normal::share_below;
/// assert!((share_below(1.0) - 0.841_344_7).abs() < 1e-6);
/// ```
pub fn share_below(number: f64) -> f64 {
    libm::erfc(-number * std::f64::consts::FRAC_1_SQRT_2) / 2.0
}

#[cfg(test)]
mod tests {
    use super::share_below;

    #[test]
    fn tabulated_shares_come_out() {
        // tables of the normal distribution, seven figures
        for (number, share) in [
            (0.0, 0.5),
            (1.0, 0.841_344_7),
            (-1.0, 0.158_655_3),
            (1.959_964, 0.975),
            (3.0, 0.998_650_1),
            (-8.0, 0.0),
        ] {
            assert!((share_below(number) - share).abs() < 2e-7, "{number}");
        }
        assert!(share_below(f64::INFINITY) >= 1.0 && share_below(f64::NEG_INFINITY) <= 0.0);
    }
}
