//! Which cap grains hold back which soil: granular filter criteria.
//!
//! All of them were made for seepage under a high gradient. A still tank has
//! almost none, so a pass is dependable and a fail means that soil may be
//! stirred or sifted through, not that it will be.

use crate::units::{Length, Share};

/// The sieve that divides fines from sand, mm (ASTM E11 No. 200).
pub const FINES_SIEVE_MM: f64 = 0.075;
/// D15 of the cap over d85 of a sandy soil: the design rule (Terzaghi & Peck
/// 1948, 4 to 5).
pub const DESIGN_RATIO: f64 = 5.0;
/// The largest such ratio that never failed in tests; the design rule allows
/// for layers that segregate when placed (Terzaghi, Peck & Mesri 1996).
pub const TESTED_RATIO: f64 = 8.0;
/// Coarsest D15 over fibrous organic mixes, mm. Judgement: no criterion covers
/// them; their d85 is bark, by which plain gravel would pass.
pub const ORGANIC_COARSEST_MM: f64 = 0.7;
/// D15 of a cap is never asked to be finer than this, mm (NEH 633 ch. 26).
pub const FINEST_MM: f64 = 0.1;
/// Coarsest D15 over silty soil, mm (NEH 633 ch. 26, from memory).
const SILTY_COARSEST_MM: f64 = 0.7;
/// Coarsest D15 over clay and silt is at least this, mm (NEH 633 ch. 26).
const CLAY_LEAST_MM: f64 = 0.2;

/// D15 of the cap over d15 of a mineral soil, so that gas and water pass (NEH 633 ch. 26, 1994;
/// from memory).
pub const DRAINAGE_RATIO: f64 = 4.0;

/// Fines are told apart to this, %.
const ROUNDING_PERCENT: f64 = 1e-6;

/// A mineral soil as a filter sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BaseSoil {
    /// Share finer than 0.075 mm, after regrading on 4.75 mm.
    pub fines: Share,
    /// The size 85 % is finer than, after regrading.
    pub d85: Length,
    /// The size 15 % is finer than, before regrading.
    pub d15: Length,
}

impl BaseSoil {
    /// Its category by fines.
    pub fn category(&self) -> BaseCategory {
        BaseCategory::of(self.fines)
    }

    /// The coarsest D15 of a cap that holds this soil back.
    ///
    /// ```text
    /// fines > 85 %      9 d85, at least 0.2 mm
    /// fines 40-85 %     0.7 mm
    /// fines 15-40 %     (40 - fines)/25 (4 d85 - 0.7 mm) + 0.7 mm, 4 d85 at least 0.7 mm
    /// fines < 15 %      4 d85
    /// ```
    ///
    /// # Source
    /// USDA NRCS National Engineering Handbook part 633, chapter 26 (1994,
    /// revised 2017), after Sherard & Dunnigan; the two middle rows from memory.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::filter::BaseSoil;
    /// use lentic::units::{Length, Share};
    /// let silty_sand = BaseSoil {
    ///     fines: Share::from_percent(30.0),
    ///     d85: Length::from_mm(0.9),
    ///     d15: Length::from_mm(0.02),
    /// };
    /// assert!((silty_sand.coarsest_cap().mm() - 1.86).abs() < 1e-9);
    /// ```
    pub fn coarsest_cap(&self) -> Length {
        let d85_mm = self.d85.mm();
        Length::from_mm(match self.category() {
            BaseCategory::ClayAndSilt => (9.0 * d85_mm).max(CLAY_LEAST_MM),
            BaseCategory::Silty => SILTY_COARSEST_MM,
            BaseCategory::SiltySand => {
                let sandiness = (40.0 - self.fines.percent()) / 25.0;
                let sand_mm = (4.0 * d85_mm).max(SILTY_COARSEST_MM);
                sandiness * (sand_mm - SILTY_COARSEST_MM) + SILTY_COARSEST_MM
            }
            BaseCategory::CleanSand => 4.0 * d85_mm,
        })
    }

    /// The finest D15 of a cap that still drains freely over this soil: 0.1 mm
    /// or a multiple of d15, whichever is larger.
    ///
    /// # Source
    /// The rule for drainage, [`DRAINAGE_RATIO`].
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::filter::BaseSoil;
    /// use lentic::units::{Length, Share};
    /// let silty = BaseSoil {
    ///     fines: Share::from_percent(60.0),
    ///     d85: Length::from_mm(0.5),
    ///     d15: Length::from_mm(0.05),
    /// };
    /// assert!((silty.finest_cap().mm() - 4.0 * 0.05).abs() < 1e-12);
    /// ```
    pub fn finest_cap(&self) -> Length {
        (self.d15 * DRAINAGE_RATIO).max(Length::from_mm(FINEST_MM))
    }
}

/// Soils by the share finer than 0.075 mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum BaseCategory {
    /// Category 1: over 85 %.
    ClayAndSilt,
    /// Category 2: 40 to 85 %.
    Silty,
    /// Category 3: 15 to under 40 %.
    SiltySand,
    /// Category 4: under 15 %.
    CleanSand,
}

impl BaseCategory {
    /// The category of a soil with these fines.
    ///
    /// # Source
    /// USDA NRCS National Engineering Handbook part 633, chapter 26 (`nrcs_neh633_ch26`), which
    /// leaves the percent between 39 and 40 to neither side: it is category 3 here.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::filter::BaseCategory;
    /// use lentic::units::Share;
    /// assert_eq!(BaseCategory::of(Share::from_percent(92.0)).number(), 1);
    /// assert_eq!(BaseCategory::of(Share::from_percent(10.0)).number(), 4);
    /// ```
    pub fn of(fines: Share) -> Self {
        // Regrading divides, so a soil of exactly 40 % may come out a hair below.
        match (fines.percent() / ROUNDING_PERCENT).round() * ROUNDING_PERCENT {
            percent if percent > 85.0 => Self::ClayAndSilt,
            percent if percent >= 40.0 => Self::Silty,
            percent if percent >= 15.0 => Self::SiltySand,
            _ => Self::CleanSand,
        }
    }

    /// Its number in the handbook.
    pub const fn number(self) -> u8 {
        match self {
            Self::ClayAndSilt => 1,
            Self::Silty => 2,
            Self::SiltySand => 3,
            Self::CleanSand => 4,
        }
    }
}

/// What lies under the cap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FilterSoil {
    /// A mineral soil, judged by its grains.
    Mineral(BaseSoil),
    /// A fibrous mix of peat, bark or compost, judged by convention.
    Organic,
}

impl FilterSoil {
    /// The coarsest D15 of a cap by the filter rule or, for organic mixes, by convention.
    pub fn coarsest_cap(&self) -> Length {
        match self {
            Self::Mineral(base) => base.coarsest_cap(),
            Self::Organic => Length::from_mm(ORGANIC_COARSEST_MM),
        }
    }

    /// The finest D15 of a cap; organic mixes ask only for the general 0.1 mm.
    pub fn finest_cap(&self) -> Length {
        match self {
            Self::Mineral(base) => base.finest_cap(),
            Self::Organic => Length::from_mm(FINEST_MM),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_limit_does_not_jump_where_categories_meet() {
        let at = |percent: f64| {
            let base = BaseSoil {
                fines: Share::from_percent(percent),
                d85: Length::from_mm(0.9),
                d15: Length::from_mm(0.01),
            };
            base.coarsest_cap().mm()
        };
        assert!((at(40.0) - at(39.999)).abs() < 1e-3);
        assert!((at(15.0) - at(14.999)).abs() < 1e-3);
    }
}
