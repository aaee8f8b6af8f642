//! Evenly spread points in many dimensions.

use sobol_burley::NUM_DIMENSIONS;

/// Points in one scrambled sequence; later points come from further scrambles.
pub const BLOCK: u32 = 1 << 16;

/// A reproducible sequence of points in the unit cube.
///
/// The points of a seed are the same on every machine and for any order of
/// asking. Beyond [`BLOCK`] points, and beyond 256 dimensions, sequences with
/// other scrambles follow: still a fair sample, no longer one even net.
///
/// # Source
/// Burley 2020 (`burley_2020`), hash-based Owen
/// scrambling of the Sobol sequence.
///
/// # Example
/// ```
/// use lentic::numerics::sobol::Sobol;
/// let points = Sobol::new(7);
/// // of the first four points, one lies in each quarter
/// let mut quarters = [0; 4];
/// for index in 0..4 {
///     quarters[(points.coordinate(index, 0) * 4.0) as usize] += 1;
/// }
/// assert_eq!(quarters, [1; 4]);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sobol {
    seed: u64,
}

impl Sobol {
    /// The sequence of a seed.
    pub fn new(seed: u64) -> Self {
        Self { seed }
    }

    /// One coordinate of one point, strictly between 0 and 1.
    pub fn coordinate(&self, index: u32, dimension: u32) -> f64 {
        let stretch = u64::from(index / BLOCK) << 32 | u64::from(dimension / NUM_DIMENSIONS);
        let scramble = (mixed(self.seed ^ mixed(stretch)) >> 32) as u32;
        let raw = sobol_burley::sample(index % BLOCK, dimension % NUM_DIMENSIONS, scramble);
        // the generator gives 24 bits from 0 upwards; the middle of each cell
        // keeps clear of both ends
        f64::from(raw) + 0.5 / f64::from(1 << 24)
    }
}

/// Scatters 64 bits so that neighbours have nothing in common.
///
/// # Source
/// Steele, Lea and Flood 2014 (`steele_2014`), the finaliser of
/// `SplitMix64`.
fn mixed(seed: u64) -> u64 {
    let mut bits = seed.wrapping_add(0x9e37_79b9_7f4a_7c15);
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^ (bits >> 31)
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "these results must be exact")]
mod tests {
    use super::*;

    /// Whether the first 256 points of a range fill 256 equal slices once each.
    fn one_in_each_slice(points: Sobol, start: u32, dimension: u32) -> bool {
        let mut seen = [0; 256];
        for index in start..start + 256 {
            let place = points.coordinate(index, dimension);
            assert!(place > 0.0 && place < 1.0);
            seen[(place * 256.0) as usize] += 1;
        }
        seen == [1; 256]
    }

    #[test]
    fn every_dimension_is_evenly_filled() {
        for dimension in [0, 1, 17, 75, 255, 256, 300] {
            assert!(one_in_each_slice(Sobol::new(1), 0, dimension));
        }
    }

    #[test]
    fn points_beyond_a_block_are_even_too_and_not_a_repetition() {
        let points = Sobol::new(1);
        assert!(one_in_each_slice(points, BLOCK, 3));
        assert!(
            (0..8).all(|index| {
                points.coordinate(index, 3) != points.coordinate(BLOCK + index, 3)
            })
        );
    }

    #[test]
    fn seeds_differ_and_a_seed_repeats_itself() {
        let row = |seed| [0, 1, 2, 3].map(|index| Sobol::new(seed).coordinate(index, 5));
        assert_eq!(row(3), row(3));
        assert_ne!(row(3), row(4));
    }

    #[test]
    fn the_mean_of_a_smooth_function_converges_faster_than_by_chance() {
        // product over 8 dimensions of (1 + (u - 1/2)/2) has mean 1; chance
        // would leave an error near 0.42/sqrt(4096) = 0.0066
        let points = Sobol::new(11);
        let mean = (0..4096)
            .map(|index| {
                (0..8)
                    .map(|dimension| 1.0 + (points.coordinate(index, dimension) - 0.5) / 2.0)
                    .product::<f64>()
            })
            .sum::<f64>()
            / 4096.0;
        assert!((mean - 1.0).abs() < 2e-4, "{mean}");
    }
}
