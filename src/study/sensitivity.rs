//! How much each varied key moves a result.

use super::axis::{Level, Shown};
use super::space::Space;
use crate::numerics::correlation::rank_correlation;

/// Samples are sorted into this many groups of equal size by each key, or into so many
/// that each holds ten.
const MOST_GROUPS: usize = 20;
const LEAST_IN_GROUP: usize = 10;

/// How much one key moves a result.
#[derive(Debug, Clone, PartialEq)]
pub struct KeyInfluence {
    /// The varied key, as its column is called.
    pub key: String,
    /// The share of the result's variance that goes with this key alone, 0 to 1.
    pub variance_share: Option<f64>,
    /// Spearman's rank correlation with the result, where the key has numbers.
    pub rank_correlation: Option<f64>,
}

/// The result and the keys of every row so far.
///
/// The share is the first-order index
///
/// ```text
/// S = Var(E[y | x]) / Var(y)
/// ```
///
/// estimated by the correlation ratio: over the levels of a grid, where it is the main
/// effect itself; over groups of neighbouring samples, where it is lowered by what groups
/// explain by chance, `1 - (1 - S) (n - 1)/(n - k)` for n rows in k groups, and may come
/// out below zero for a key that does nothing.
///
/// # Source
/// Sobol 1993 (`sobol_1993`) for the index; Pearson 1905 (`pearson_1905`) for the
/// correlation ratio and Kelley 1935 (`kelley_1935`) for its correction, all from memory.
#[derive(Debug, Clone)]
pub struct Sensitivity {
    names: Vec<String>,
    sampled: bool,
    keys: Vec<Vec<Shown>>,
    results: Vec<f64>,
}

impl Sensitivity {
    /// Of the keys that a space varies.
    pub fn new(space: &Space) -> Self {
        Self {
            names: space.axes().iter().map(|axis| axis.name.clone()).collect(),
            sampled: space.is_sampled(),
            keys: vec![Vec::new(); space.axes().len()],
            results: Vec::new(),
        }
    }

    /// Takes a row in; one without a result is left out.
    pub fn add(&mut self, levels: &[Level], result: Option<f64>) {
        let Some(result) = result.filter(|result| result.is_finite()) else {
            return;
        };
        if levels.len() != self.keys.len() {
            return;
        }
        for (key, level) in self.keys.iter_mut().zip(levels) {
            key.push(level.shown.clone());
        }
        self.results.push(result);
    }

    /// The influence of each key, strongest first.
    pub fn influences(&self) -> Vec<KeyInfluence> {
        let mut influences: Vec<KeyInfluence> = self
            .names
            .iter()
            .zip(&self.keys)
            .map(|(name, key)| KeyInfluence {
                key: name.clone(),
                variance_share: self.variance_share(key),
                rank_correlation: numbers(key)
                    .and_then(|key| rank_correlation(&key, &self.results)),
            })
            .collect();
        let strength = |influence: &KeyInfluence| influence.variance_share.unwrap_or(0.0);
        influences.sort_by(|a, b| strength(b).total_cmp(&strength(a)));
        influences
    }

    fn variance_share(&self, key: &[Shown]) -> Option<f64> {
        let rows = self.results.len() as f64;
        let groups = self.groups(key);
        let mean = self.results.iter().sum::<f64>() / rows;
        let total: f64 = self.results.iter().map(|y| (y - mean).powi(2)).sum();
        if total <= 0.0 || groups.len() < 2 {
            return None;
        }
        let between: f64 = groups
            .iter()
            .map(|group| {
                let count = group.len() as f64;
                let own = group.iter().map(|row| self.results[*row]).sum::<f64>() / count;
                count * (own - mean).powi(2)
            })
            .sum();
        let share = between / total;
        let free = rows - groups.len() as f64;
        if self.sampled && free > 0.0 {
            Some(1.0 - (1.0 - share) * (rows - 1.0) / free)
        } else {
            Some(share)
        }
    }

    /// The rows with the same level; of samples with numbers, neighbours.
    fn groups(&self, key: &[Shown]) -> Vec<Vec<usize>> {
        let mut rows: Vec<usize> = (0..key.len()).collect();
        rows.sort_by(|a, b| order(&key[*a], &key[*b]));
        if self.sampled && numbers(key).is_some() {
            let groups = (rows.len() / LEAST_IN_GROUP).clamp(1, MOST_GROUPS);
            let size = rows.len().div_ceil(groups).max(1);
            return rows.chunks(size).map(<[usize]>::to_vec).collect();
        }
        rows.chunk_by(|a, b| key[*a] == key[*b])
            .map(<[usize]>::to_vec)
            .collect()
    }
}

fn numbers(key: &[Shown]) -> Option<Vec<f64>> {
    let number = |shown: &Shown| match shown {
        Shown::Number(number) => Some(*number),
        Shown::Text(_) => None,
    };
    key.iter().map(number).collect()
}

fn order(one: &Shown, other: &Shown) -> std::cmp::Ordering {
    match (one, other) {
        (Shown::Number(one), Shown::Number(other)) => one.total_cmp(other),
        (Shown::Text(one), Shown::Text(other)) => one.cmp(other),
        (Shown::Number(_), Shown::Text(_)) => std::cmp::Ordering::Less,
        (Shown::Text(_), Shown::Number(_)) => std::cmp::Ordering::Greater,
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;
    use crate::numerics::sobol::Sobol;

    fn of(sampled: bool, rows: &[(Vec<f64>, f64)]) -> Sensitivity {
        let keys = rows.first().map_or(0, |(key, _)| key.len());
        let column = |key: usize| rows.iter().map(move |(x, _)| Shown::Number(x[key]));
        Sensitivity {
            names: (1..=keys).map(|key| format!("x{key}")).collect(),
            sampled,
            keys: (0..keys).map(|key| column(key).collect()).collect(),
            results: rows.iter().map(|(_, y)| *y).collect(),
        }
    }

    fn share(sensitivity: &Sensitivity, key: &str) -> f64 {
        let influences = sensitivity.influences();
        let found = influences.iter().find(|influence| influence.key == key);
        found.and_then(|found| found.variance_share).unwrap()
    }

    #[test]
    fn on_a_grid_the_shares_of_a_sum_are_those_of_its_parts() {
        // Var(x1) and 4 Var(x2) with equal variances: 1/5 and 4/5
        let rows: Vec<(Vec<f64>, f64)> = (0..9)
            .map(|point| (f64::from(point / 3), f64::from(point % 3)))
            .map(|(x1, x2)| (vec![x1, x2], x1 + 2.0 * x2))
            .collect();
        let sensitivity = of(false, &rows);
        assert!((share(&sensitivity, "x1") - 0.2).abs() < 1e-12);
        assert!((share(&sensitivity, "x2") - 0.8).abs() < 1e-12);
        assert_eq!(sensitivity.influences()[0].key, "x2");
    }

    #[test]
    fn samples_give_the_first_order_indices_of_the_ishigami_function() {
        // Ishigami and Homma 1990 (`ishigami_homma_1990`) with a = 7, b = 0.1. By its variances, from memory:
        // V1 = (1 + b pi^4/5)^2/2, V2 = a^2/8, V = V1 + V2 + 8 b^2 pi^8/225
        let (a, b) = (7.0_f64, 0.1_f64);
        let first = (1.0 + b * PI.powi(4) / 5.0).powi(2) / 2.0;
        let second = a * a / 8.0;
        let whole = first + second + 8.0 * b * b * PI.powi(8) / 225.0;
        let points = Sobol::new(2);
        let rows: Vec<(Vec<f64>, f64)> = (0..4096)
            .map(|index| {
                let x: Vec<f64> = (0..3)
                    .map(|key| (2.0 * points.coordinate(index, key) - 1.0) * PI)
                    .collect();
                let y = x[0].sin() + a * x[1].sin().powi(2) + b * x[2].powi(4) * x[0].sin();
                (x, y)
            })
            .collect();
        let sensitivity = of(true, &rows);
        for (key, expected) in [("x1", first / whole), ("x2", second / whole), ("x3", 0.0)] {
            let found = share(&sensitivity, key);
            assert!(
                (found - expected).abs() < 0.02,
                "{key}: {found} for {expected}"
            );
        }
    }
}
