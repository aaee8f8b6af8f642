//! Quantiles of a set of numbers.

/// The quantile `share` (0 to 1) of numbers sorted upwards; nothing if there
/// are none.
///
/// ```text
/// h = (n - 1) share,  quantile = x[floor h] + (h - floor h) (x[floor h + 1] - x[floor h])
/// ```
///
/// # Source
/// Hyndman and Fan 1996 (`hyndman_fan_1996`), definition 7.
///
/// # Example
/// ```
/// use lentic::numerics::quantile::quantile;
/// assert_eq!(quantile(&[1.0, 2.0, 3.0, 4.0], 0.5), Some(2.5));
/// ```
pub fn quantile(sorted: &[f64], share: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let place = last as f64 * share.clamp(0.0, 1.0);
    let below = place.floor() as usize;
    let above = (below + 1).min(last);
    let rest = place - place.floor();
    Some(sorted[below] + rest * (sorted[above] - sorted[below]))
}

/// Several quantiles of numbers in any order; nothing if there are none.
pub fn quantiles<const K: usize>(
    numbers: impl IntoIterator<Item = f64>,
    shares: [f64; K],
) -> Option<[f64; K]> {
    let mut sorted: Vec<f64> = numbers.into_iter().collect();
    if sorted.is_empty() {
        return None;
    }
    sorted.sort_by(f64::total_cmp);
    Some(shares.map(|share| quantile(&sorted, share).unwrap_or(f64::NAN)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn definition_7_agrees_with_its_formula_by_hand() {
        // n = 5: 10 % lies at h = 0.4, 90 % at h = 3.6
        let bands = quantiles([5.0, 1.0, 9.0, 2.0, 4.0], [0.1, 0.5, 0.9]).unwrap();
        for (value, expected) in bands.into_iter().zip([1.4, 4.0, 7.4]) {
            assert!((value - expected).abs() < 1e-12, "{value} for {expected}");
        }
    }

    #[test]
    fn the_ends_are_the_extremes_and_nothing_gives_nothing() {
        assert_eq!(quantile(&[3.0, 8.0], 0.0), Some(3.0));
        assert_eq!(quantile(&[3.0, 8.0], 1.0), Some(8.0));
        assert_eq!(quantile(&[3.0], 0.7), Some(3.0));
        assert_eq!(quantile(&[], 0.5), None);
        assert_eq!(quantiles([], [0.5]), None);
    }
}
