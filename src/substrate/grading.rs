//! Grain-size curves: the share of a material finer than each size.

use crate::units::{Length, Share};

/// One point of a curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GradingPoint {
    /// The grain size.
    pub size: Length,
    /// The share by mass that is finer.
    pub finer: Share,
}

impl GradingPoint {
    /// A point from millimetres and percent finer.
    pub fn new(size_mm: f64, finer_percent: f64) -> Self {
        Self {
            size: Length::from_mm(size_mm),
            finer: Share::from_percent(finer_percent),
        }
    }
}

/// A grain-size curve: sizes rise from point to point and shares do not fall.
///
/// Between points the percent finer is linear in the logarithm of size. Beyond
/// its ends the curve says nothing, and neither do its methods.
#[derive(Debug, Clone, PartialEq)]
pub struct Grading {
    points: Vec<GradingPoint>,
}

impl Grading {
    /// A curve from its points, fine to coarse; nothing where these are fewer than two, out
    /// of order, or out of range.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::grading::{Grading, GradingPoint};
    /// let points = |shares: [f64; 2]| {
    ///     vec![GradingPoint::new(0.5, shares[0]), GradingPoint::new(2.0, shares[1])]
    /// };
    /// assert!(Grading::new(points([10.0, 90.0])).is_some());
    /// assert!(Grading::new(points([90.0, 10.0])).is_none());
    /// ```
    pub fn new(points: Vec<GradingPoint>) -> Option<Self> {
        // Not-a-number is no size and no share.
        let holds = |point: &GradingPoint| {
            point.size > Length::ZERO
                && point.size.m().is_finite()
                && (0.0..=1.0).contains(&point.finer.fraction())
        };
        let rises =
            |pair: &[GradingPoint]| pair[1].size > pair[0].size && pair[1].finer >= pair[0].finer;
        let is_curve =
            points.len() >= 2 && points.iter().all(holds) && points.windows(2).all(rises);
        is_curve.then_some(Self { points })
    }

    /// The size that this share is finer than, where the curve reaches it.
    ///
    /// # Example
    /// ```
    /// use lentic::{substrate::grading::{Grading, GradingPoint}, units::Share};
    /// let sand = Grading::new(vec![GradingPoint::new(0.25, 0.0), GradingPoint::new(1.0, 100.0)]);
    /// // half-way in the logarithm of size
    /// let middle = sand.and_then(|sand| sand.size_at(Share::from_percent(50.0))).map(|size| size.mm());
    /// assert!(middle.is_some_and(|mm| (mm - 0.5).abs() < 1e-9));
    /// ```
    pub fn size_at(&self, finer: Share) -> Option<Length> {
        let first = self.points.first()?;
        if first.finer == finer {
            return Some(first.size);
        }
        let target = finer.fraction();
        self.points.windows(2).find_map(|pair| {
            let (low, high) = (pair[0].finer.fraction(), pair[1].finer.fraction());
            (low < target && target <= high).then(|| {
                let position = (target - low) / (high - low);
                pair[0].size * (pair[1].size / pair[0].size).powf(position)
            })
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve(points: &[(f64, f64)]) -> Option<Grading> {
        let points = points.iter().map(|&(mm, pct)| GradingPoint::new(mm, pct));
        Grading::new(points.collect())
    }

    #[test]
    fn points_out_of_order_or_range_are_refused() {
        for points in [
            &[(1.0, 5.0)][..],
            &[(2.0, 5.0), (1.0, 95.0)],
            &[(1.0, 50.0), (2.0, 40.0)],
            &[(0.0, 5.0), (1.0, 95.0)],
            &[(1.0, 5.0), (2.0, 105.0)],
            &[(1.0, f64::NAN), (2.0, 95.0)],
        ] {
            assert_eq!(curve(points), None, "{points:?}");
        }
    }

    #[test]
    fn a_flat_stretch_gives_its_finer_end() {
        let gap = curve(&[(0.1, 0.0), (0.2, 40.0), (2.0, 40.0), (4.0, 100.0)]).unwrap();
        let size = gap.size_at(Share::from_percent(40.0)).unwrap();
        assert!((size.mm() - 0.2).abs() < 1e-12);
    }
}
