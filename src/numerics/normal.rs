//! The normal distribution.

/// Share of a standard normal distribution that lies below a number.
///
/// ```text
/// P(x) = 1 - Z(x) (b1 t + b2 t^2 + b3 t^3 + b4 t^4 + b5 t^5),    t = 1/(1 + 0.2316419 x)
/// Z(x) = exp(-x^2/2) / sqrt(2 pi)                                 x >= 0
/// ```
///
/// # Source
/// Abramowitz and Stegun 1964 (`abramowitz_stegun_1964`, from memory), 26.2.17; its error is under 7.5e-8.
///
/// # Example
/// ```
/// use lentic::numerics::normal::share_below;
/// assert!((share_below(1.0) - 0.841_344_7).abs() < 1e-6);
/// ```
pub fn share_below(number: f64) -> f64 {
    const B: [f64; 5] = [
        0.319_381_530,
        -0.356_563_782,
        1.781_477_937,
        -1.821_255_978,
        1.330_274_429,
    ];
    let size = number.abs();
    let t = 1.0 / (1.0 + 0.231_641_9 * size);
    let series = B.iter().rev().fold(0.0, |sum, b| (sum + b) * t);
    let tail = (-size * size / 2.0).exp() / std::f64::consts::TAU.sqrt() * series;
    if number < 0.0 { tail } else { 1.0 - tail }
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
