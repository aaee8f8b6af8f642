//! Correlation by rank.

/// Rank correlation of two series of equal length: 1 where one always rises
/// with the other, -1 where it always falls.
///
/// ```text
/// rho = cov(rank x, rank y) / (sd(rank x) sd(rank y)),  ties share the mean of their ranks
/// ```
///
/// Nothing for fewer than three pairs, unequal lengths or a series that does
/// not vary.
///
/// # Source
/// Spearman 1904, *American Journal of Psychology* 15:72.
///
/// # Example
/// ```
/// use lentic::numerics::correlation::rank_correlation;
/// let rho = rank_correlation(&[1.0, 2.0, 3.0, 4.0], &[1.0, 10.0, 100.0, 1000.0]);
/// assert_eq!(rho, Some(1.0));
/// ```
pub fn rank_correlation(x: &[f64], y: &[f64]) -> Option<f64> {
    if x.len() != y.len() || x.len() < 3 {
        return None;
    }
    let (x, y) = (centred_ranks(x), centred_ranks(y));
    let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    let spread = (product(&x, &x) * product(&y, &y)).sqrt();
    (spread > 0.0).then(|| product(&x, &y) / spread)
}

/// Ranks less their mean, ties sharing the mean of their ranks.
fn centred_ranks(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|&a, &b| values[a].total_cmp(&values[b]));
    let middle = (values.len() - 1) as f64 / 2.0;
    let mut ranks = vec![0.0; values.len()];
    let mut first = 0;
    for tied in order.chunk_by(|&a, &b| values[a].total_cmp(&values[b]).is_eq()) {
        let rank = first as f64 + (tied.len() - 1) as f64 / 2.0;
        for &place in tied {
            ranks[place] = rank - middle;
        }
        first += tied.len();
    }
    ranks
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_ties_it_agrees_with_the_sum_of_squared_rank_differences() {
        // rho = 1 - 6 sum d^2 / (n (n^2 - 1)); d = 0 0 -1 -1 2, n = 5
        let rho = rank_correlation(&[1.0, 2.0, 3.0, 4.0, 5.0], &[10.0, 20.0, 40.0, 50.0, 30.0]);
        assert!((rho.unwrap() - (1.0 - 6.0 * 6.0 / 120.0)).abs() < 1e-12);
    }

    #[test]
    fn ties_share_their_ranks() {
        // ranks 0 1.5 1.5 3 against 0 1 2 3: covariance 4.5, squares 4.5 and 5
        let rho = rank_correlation(&[1.0, 2.0, 2.0, 3.0], &[1.0, 2.0, 3.0, 4.0]);
        assert!((rho.unwrap() - 4.5 / (4.5_f64 * 5.0).sqrt()).abs() < 1e-12);
    }

    #[test]
    fn a_series_that_does_not_vary_has_no_correlation() {
        assert_eq!(rank_correlation(&[1.0, 1.0, 1.0], &[1.0, 2.0, 3.0]), None);
        assert_eq!(rank_correlation(&[1.0, 2.0], &[1.0, 2.0]), None);
        assert_eq!(rank_correlation(&[1.0, 2.0, 3.0], &[1.0, 2.0]), None);
    }
}
