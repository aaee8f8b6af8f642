//! Grain-size curves: the share of a material finer than each size.

use crate::units::{Length, Share};
use thiserror::Error;

/// The sieve on which soils with stones are regraded, mm (ASTM E11 No. 4).
const REGRADING_SIEVE_MM: f64 = 4.75;
/// Upper ends of clay, silt and sand, mm (USDA texture classes).
const CLAY_MM: f64 = 0.002;
const SILT_MM: f64 = 0.05;
const SAND_MM: f64 = 2.0;
/// Shares finer than the two sieves that name a product: judgement.
const UNDERSIZE_PERCENT: f64 = 5.0;
const OVERSIZE_PERCENT: f64 = 95.0;

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
///
/// # Example
/// ```
/// use lentic::substrate::grading::Grading;
/// use lentic::units::Share;
/// let grit = Grading::from_mesh("20/40")?;
/// let d15 = grit.size_at(Share::from_percent(15.0)).map(|size| size.mm());
/// assert!(d15.is_some_and(|mm| (mm - 0.459).abs() < 0.001));
/// # Ok::<(), lentic::substrate::grading::GradingError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Grading {
    points: Vec<GradingPoint>,
}

/// Why points make no grain-size curve.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum GradingError {
    /// Fewer than two points.
    #[error("a grain-size curve needs at least 2 points, found {found}")]
    TooFewPoints {
        /// How many there were.
        found: usize,
    },
    /// A size that is not above zero.
    #[error("grain size {mm} mm is not above 0 mm")]
    Size {
        /// The size.
        mm: f64,
    },
    /// A share outside 0 to 100 %.
    #[error("{percent} % finer is outside 0 to 100 %")]
    Finer {
        /// The share.
        percent: f64,
    },
    /// A point that is not coarser than the one before, or holds less.
    #[error(
        "the point {mm} mm, {percent} % does not follow the one before; list sizes from fine to coarse"
    )]
    Order {
        /// The size of the later point.
        mm: f64,
        /// Its share finer.
        percent: f64,
    },
    /// A text that names no pair of sieves.
    #[error(
        "cannot read \"{text}\" as a mesh range; write two ASTM E11 numbers, for example 20/40"
    )]
    Mesh {
        /// The text.
        text: String,
    },
}

impl Grading {
    /// A curve from its points, fine to coarse.
    ///
    /// # Errors
    /// Fewer than two points, or points out of range or order.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::grading::{Grading, GradingPoint};
    /// let points = |shares: [f64; 2]| {
    ///     vec![GradingPoint::new(0.5, shares[0]), GradingPoint::new(2.0, shares[1])]
    /// };
    /// assert!(Grading::new(points([10.0, 90.0])).is_ok());
    /// assert!(Grading::new(points([90.0, 10.0])).is_err());
    /// ```
    pub fn new(points: Vec<GradingPoint>) -> Result<Self, GradingError> {
        if points.len() < 2 {
            return Err(GradingError::TooFewPoints {
                found: points.len(),
            });
        }
        points.iter().try_for_each(check_point)?;
        points.windows(2).try_for_each(check_order)?;
        Ok(Self { points })
    }

    /// The curve of a product sold between two sieves, taken as 5 % under the
    /// finer and 95 % under the coarser (judgement; real bags vary).
    ///
    /// # Errors
    /// Sizes out of range or order.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::grading::Grading;
    /// use lentic::units::Length;
    /// let sand = Grading::between_sieves(Length::from_mm(1.0), Length::from_mm(2.0))?;
    /// // half-way in the logarithm: 1 x 2
    /// let middle = sand.size_at(lentic::units::Share::from_percent(50.0)).map(|size| size.mm());
    /// assert!(middle.is_some_and(|mm| (mm - 2.0_f64.sqrt()).abs() < 1e-9));
    /// # Ok::<(), lentic::substrate::grading::GradingError>(())
    /// ```
    pub fn between_sieves(finer: Length, coarser: Length) -> Result<Self, GradingError> {
        Self::new(vec![
            GradingPoint::new(finer.mm(), UNDERSIZE_PERCENT),
            GradingPoint::new(coarser.mm(), OVERSIZE_PERCENT),
        ])
    }

    /// The curve of a product named by mesh, such as "20/40".
    ///
    /// # Errors
    /// A text that is not two different ASTM E11 numbers.
    ///
    /// # Example
    /// ```
    /// use lentic::{substrate::grading::Grading, units::Length};
    /// let grit = Grading::from_mesh("12/20")?;
    /// // sieve 20 opens 0.850 mm (astm_e11), and 5 % is taken as finer
    /// let finer = grit.passing(Length::from_mm(0.850)).map(|share| share.percent());
    /// assert!(finer.is_some_and(|percent| (percent - 5.0).abs() < 1e-9));
    /// # Ok::<(), lentic::substrate::grading::GradingError>(())
    /// ```
    pub fn from_mesh(text: &str) -> Result<Self, GradingError> {
        let (coarser, finer) = super::sieve::range(text).ok_or_else(|| GradingError::Mesh {
            text: text.to_owned(),
        })?;
        Self::between_sieves(finer, coarser)
    }

    /// The curve of a stone-free mineral soil from its USDA texture; the rest is sand.
    ///
    /// # Errors
    /// Shares that are not within 0 to 100 % together.
    ///
    /// # Source
    /// Classes of the USDA (`usda_soil_survey_2017`): clay to 0.002 mm, silt to 0.05 mm, sand to 2 mm.
    ///
    /// # Example
    /// ```
    /// use lentic::{substrate::grading::Grading, units::{Length, Share}};
    /// let loam = Grading::from_texture(Share::from_percent(20.0), Share::from_percent(40.0))?;
    /// let finer = loam.passing(Length::from_mm(0.05)).map(|share| share.percent());
    /// assert!(finer.is_some_and(|percent| (percent - 60.0).abs() < 1e-9));
    /// # Ok::<(), lentic::substrate::grading::GradingError>(())
    /// ```
    pub fn from_texture(clay: Share, silt: Share) -> Result<Self, GradingError> {
        Self::new(vec![
            GradingPoint::new(CLAY_MM, clay.percent()),
            GradingPoint::new(SILT_MM, (clay + silt).percent()),
            GradingPoint::new(SAND_MM, 100.0),
        ])
    }

    /// The size that this share is finer than, where the curve reaches it.
    ///
    /// # Example
    /// ```
    /// use lentic::{substrate::grading::{Grading, GradingPoint}, units::Share};
    /// let sand = Grading::new(vec![GradingPoint::new(0.25, 0.0), GradingPoint::new(1.0, 100.0)])?;
    /// // half-way in the logarithm of size
    /// let middle = sand.size_at(Share::from_percent(50.0)).map(|size| size.mm());
    /// assert!(middle.is_some_and(|mm| (mm - 0.5).abs() < 1e-9));
    /// # Ok::<(), lentic::substrate::grading::GradingError>(())
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

    /// The share finer than this size; none where the curve does not say.
    ///
    /// # Example
    /// ```
    /// use lentic::{substrate::grading::{Grading, GradingPoint}, units::Length};
    /// let sand = Grading::new(vec![GradingPoint::new(0.25, 10.0), GradingPoint::new(1.0, 90.0)])?;
    /// let finer = sand.passing(Length::from_mm(0.5)).map(|share| share.percent());
    /// assert!(finer.is_some_and(|percent| (percent - 50.0).abs() < 1e-9));
    /// assert_eq!(sand.passing(Length::from_mm(0.1)), None);
    /// # Ok::<(), lentic::substrate::grading::GradingError>(())
    /// ```
    pub fn passing(&self, size: Length) -> Option<Share> {
        let (first, last) = (self.points.first()?, self.points.last()?);
        if size < first.size {
            return (first.finer == Share::ZERO).then_some(Share::ZERO);
        }
        if size >= last.size {
            let whole = last.finer == Share::from_percent(100.0);
            return (whole || size == last.size).then_some(last.finer);
        }
        self.points.windows(2).find_map(|pair| {
            (pair[0].size <= size && size < pair[1].size).then(|| {
                let position = (size / pair[0].size).ln() / (pair[1].size / pair[0].size).ln();
                pair[0].finer + (pair[1].finer - pair[0].finer) * position
            })
        })
    }

    /// Coefficient of uniformity: 1 for grains of one size, over 5 for a broad mix.
    ///
    /// ```text
    /// Cu = d60 / d10
    /// ```
    ///
    /// # Source
    /// By definition, as in soil mechanics.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::grading::Grading;
    /// // in the logarithm from 5 % at 0.425 mm to 95 % at 0.850 mm, 50 % apart: 2^(50/90)
    /// let grit = Grading::from_mesh("20/40")?;
    /// assert!(grit.uniformity().is_some_and(|cu| (cu - 2_f64.powf(50.0 / 90.0)).abs() < 1e-9));
    /// # Ok::<(), lentic::substrate::grading::GradingError>(())
    /// ```
    pub fn uniformity(&self) -> Option<f64> {
        let d60 = self.size_at(Share::from_percent(60.0))?;
        let d10 = self.size_at(Share::from_percent(10.0))?;
        Some(d60 / d10)
    }

    /// The curve of the part finer than 4.75 mm; itself where nothing is known to be coarser.
    ///
    /// Stones would raise d85 and so allow a cap far too coarse for the fine part.
    ///
    /// # Source
    /// USDA NRCS National Engineering Handbook part 633, chapter 26, step 1.
    ///
    /// # Example
    /// ```
    /// use lentic::{substrate::grading::{Grading, GradingPoint}, units::Length};
    /// let stony = Grading::new(vec![
    ///     GradingPoint::new(0.075, 32.0),
    ///     GradingPoint::new(4.75, 80.0),
    ///     GradingPoint::new(20.0, 100.0),
    /// ])?;
    /// // 32 % of the whole is 40 % of the 80 % under 4.75 mm
    /// let fines = stony.regraded().passing(Length::from_mm(0.075)).map(|share| share.percent());
    /// assert!(fines.is_some_and(|percent| (percent - 40.0).abs() < 1e-9));
    /// # Ok::<(), lentic::substrate::grading::GradingError>(())
    /// ```
    #[must_use]
    pub fn regraded(&self) -> Self {
        let sieve = Length::from_mm(REGRADING_SIEVE_MM);
        let Some(passing) = self.passing(sieve).filter(|share| *share > Share::ZERO) else {
            return self.clone();
        };
        let kept = self.points.iter().filter(|point| point.size < sieve);
        let top = GradingPoint::new(REGRADING_SIEVE_MM, 100.0);
        let points: Vec<GradingPoint> = kept
            .map(|point| GradingPoint {
                size: point.size,
                finer: Share::from_fraction(point.finer / passing),
            })
            .chain([top])
            .collect();
        if points.len() < 2 || passing == Share::from_percent(100.0) {
            return self.clone();
        }
        Self { points }
    }

    /// The finest point of the curve.
    pub fn finest(&self) -> Option<GradingPoint> {
        self.points.first().copied()
    }
}

/// Refuses a point that cannot stand on any curve; not-a-number included.
fn check_point(point: &GradingPoint) -> Result<(), GradingError> {
    let (mm, percent) = (point.size.mm(), point.finer.percent());
    if !(mm > 0.0 && mm.is_finite()) {
        return Err(GradingError::Size { mm });
    }
    if !(0.0..=1.0).contains(&point.finer.fraction()) {
        return Err(GradingError::Finer { percent });
    }
    Ok(())
}

/// Refuses a point that is not coarser than the one before it, or holds less.
fn check_order(pair: &[GradingPoint]) -> Result<(), GradingError> {
    if pair[1].size > pair[0].size && pair[1].finer >= pair[0].finer {
        return Ok(());
    }
    Err(GradingError::Order {
        mm: pair[1].size.mm(),
        percent: pair[1].finer.percent(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve(points: &[(f64, f64)]) -> Result<Grading, GradingError> {
        Grading::new(
            points
                .iter()
                .map(|&(mm, pct)| GradingPoint::new(mm, pct))
                .collect(),
        )
    }

    #[test]
    fn points_out_of_order_or_range_are_refused() {
        assert_eq!(
            curve(&[(1.0, 5.0)]),
            Err(GradingError::TooFewPoints { found: 1 })
        );
        assert!(matches!(
            curve(&[(2.0, 5.0), (1.0, 95.0)]),
            Err(GradingError::Order { .. })
        ));
        assert!(matches!(
            curve(&[(1.0, 50.0), (2.0, 40.0)]),
            Err(GradingError::Order { .. })
        ));
        assert!(matches!(
            curve(&[(0.0, 5.0), (1.0, 95.0)]),
            Err(GradingError::Size { .. })
        ));
        assert!(matches!(
            curve(&[(1.0, 5.0), (2.0, 105.0)]),
            Err(GradingError::Finer { .. })
        ));
        assert!(matches!(
            curve(&[(1.0, f64::NAN), (2.0, 95.0)]),
            Err(GradingError::Finer { .. })
        ));
    }

    #[test]
    fn size_and_share_undo_each_other() {
        let sand = curve(&[(0.15, 5.0), (0.6, 42.5), (2.36, 90.0)]).unwrap();
        for percent in [5.0, 17.0, 42.5, 60.0, 90.0] {
            let size = sand.size_at(Share::from_percent(percent)).unwrap();
            let back = sand.passing(size).unwrap().percent();
            assert!(
                (back - percent).abs() < 1e-9,
                "{percent} came back as {back}"
            );
        }
    }

    #[test]
    fn beyond_its_ends_a_curve_says_nothing() {
        let grit = Grading::from_mesh("20/40").unwrap();
        assert_eq!(grit.size_at(Share::from_percent(2.0)), None);
        assert_eq!(grit.size_at(Share::from_percent(99.0)), None);
        assert_eq!(grit.passing(Length::from_mm(0.075)), None);
        assert_eq!(grit.passing(Length::from_mm(2.0)), None);
    }

    #[test]
    fn a_whole_curve_knows_that_nothing_is_coarser() {
        let loam =
            Grading::from_texture(Share::from_percent(20.0), Share::from_percent(40.0)).unwrap();
        let all = loam.passing(Length::from_mm(4.75)).unwrap();
        assert_eq!(all, Share::from_percent(100.0));
        assert_eq!(loam.regraded(), loam);
    }

    #[test]
    fn a_flat_stretch_gives_its_finer_end() {
        let gap = curve(&[(0.1, 0.0), (0.2, 40.0), (2.0, 40.0), (4.0, 100.0)]).unwrap();
        let size = gap.size_at(Share::from_percent(40.0)).unwrap();
        assert!((size.mm() - 0.2).abs() < 1e-12);
    }

    #[test]
    fn gravel_without_fines_is_left_as_it_is() {
        let gravel = curve(&[(5.0, 0.0), (10.0, 100.0)]).unwrap();
        assert_eq!(gravel.regraded(), gravel);
    }
}
