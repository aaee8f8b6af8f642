//! What all members of a running tank show together.

use super::member::MemberFigures;
use crate::numerics::quantile::quantiles;
use crate::plan::Estimate;
use crate::source::Band;

/// All members, and how bands are read off them.
pub(super) struct Crowd<'a> {
    pub(super) seen: &'a [MemberFigures],
    pub(super) members: u32,
}

impl Crowd<'_> {
    /// 10, 50 and 90 % of a figure.
    pub(super) fn band(&self, of: impl Fn(&MemberFigures) -> f64) -> Estimate {
        estimate(self.seen.iter().map(of), self.members)
    }

    /// The same of one that some members lack; none where most do.
    pub(super) fn band_of_most(
        &self,
        of: impl Fn(&MemberFigures) -> Option<f64>,
    ) -> Option<Estimate> {
        let found: Vec<f64> = self.seen.iter().filter_map(of).collect();
        (found.len() * 2 > self.seen.len()).then(|| estimate(found, self.members))
    }

    /// What nine members of ten stay over.
    pub(super) fn low(&self, of: impl Fn(&MemberFigures) -> f64) -> f64 {
        self.band(of).band().low
    }

    /// What nine members of ten stay under.
    pub(super) fn high(&self, of: impl Fn(&MemberFigures) -> f64) -> f64 {
        self.band(of).band().high
    }
}

/// 10, 50 and 90 % of some values.
pub(super) fn estimate(values: impl IntoIterator<Item = f64>, members: u32) -> Estimate {
    let [low, typical, high] = quantiles(values, [0.1, 0.5, 0.9]).unwrap_or_default();
    Estimate::of(Band::new(low, typical, high), members)
}
