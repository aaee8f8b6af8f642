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
/// Spearman 1904 (`spearman_1904`).
///
/// # Example
/// ```
/// use lentic::numerics::correlation::rank_correlation;
/// let rho = rank_correlation(&[1.0, 2.0, 3.0, 4.0], &[1.0, 10.0, 100.0, 1000.0]);
/// assert_eq!(rho, Some(1.0));
/// ```
pub fn rank_correlation(x: &[f64], y: &[f64]) -> Option<f64> {
    Ranking::of(x).correlation(&Ranking::of(y))
}

/// The ranks of a series, to be held against those of several others.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranking {
    /// Ranks less their mean.
    centred: Vec<f64>,
    /// Sum of their squares.
    square: f64,
}

impl Ranking {
    /// Ranks a series.
    pub fn of(values: &[f64]) -> Self {
        let centred = centred_ranks(values);
        Self {
            square: product(&centred, &centred),
            centred,
        }
    }

    /// As [`rank_correlation`] of the two series.
    pub fn correlation(&self, other: &Self) -> Option<f64> {
        if self.centred.len() != other.centred.len() || self.centred.len() < 3 {
            return None;
        }
        let spread = (self.square * other.square).sqrt();
        (spread > 0.0).then(|| product(&self.centred, &other.centred) / spread)
    }
}

fn product(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// Ranks less their mean, ties sharing the mean of their ranks.
fn centred_ranks(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|&a, &b| values[a].total_cmp(&values[b]));
    let middle = values.len().saturating_sub(1) as f64 / 2.0;
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
