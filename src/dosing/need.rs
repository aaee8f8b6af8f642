//! What plants take in a week.

use crate::design::{Design, FillWater};
use crate::units::{Analyte, Share, Volume};
use crate::water::tap;

/// Content of dry tissue, mg/g (from memory, within two or three times: nitrogen 13 to 50,
/// phosphorus 1 to 6, potassium 8 to 40, magnesium 1 to 5).
const TISSUE: Nutrients = Nutrients {
    nitrogen: 25.0,
    phosphorus: 3.0,
    potassium: 25.0,
    magnesium: 2.5,
};

/// Share of the nitrogen of feed that animals keep: judgement.
const RETAINED: f64 = 0.2;
/// Nitrogen in protein.
const NITROGEN_OF_PROTEIN: f64 = 0.16;
/// Days in a week.
pub(super) const WEEK_D: f64 = 7.0;

/// Nitrogen that a gram of feed brings, g.
pub(super) fn nitrogen_of_feed(protein: Share) -> f64 {
    protein.fraction() * NITROGEN_OF_PROTEIN * (1.0 - RETAINED)
}

/// Amounts of elements in a week, mg.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Nutrients {
    /// Nitrogen.
    pub nitrogen: f64,
    /// Phosphorus.
    pub phosphorus: f64,
    /// Potassium.
    pub potassium: f64,
    /// Magnesium.
    pub magnesium: f64,
}

impl Nutrients {
    fn each(self, other: Self, f: impl Fn(f64, f64) -> f64) -> Self {
        Self {
            nitrogen: f(self.nitrogen, other.nitrogen),
            phosphorus: f(self.phosphorus, other.phosphorus),
            potassium: f(self.potassium, other.potassium),
            magnesium: f(self.magnesium, other.magnesium),
        }
    }

    /// What goes into so many grams of dry tissue.
    pub fn of_growth(dry_g: f64) -> Self {
        Self::default().each(TISSUE, |_, content| content * dry_g)
    }

    /// What goes into tissue with so much nitrogen.
    pub fn with_nitrogen(mg: f64) -> Self {
        Self::of_growth(mg / TISSUE.nitrogen)
    }

    /// What so much tap water brings.
    pub fn of_tap(water: &FillWater, volume: Volume) -> Self {
        let litres = volume.litres();
        let phosphate = water.phosphate.unwrap_or_default();
        Self {
            nitrogen: Analyte::Nitrate.element(water.nitrate).mg_l() * litres,
            phosphorus: Analyte::Phosphate.element(phosphate).mg_l() * litres,
            potassium: tap::potassium(water.potassium).typical * litres,
            magnesium: tap::magnesium(water.magnesium, water.hardness).typical * litres,
        }
    }

    /// What regular water changes bring, and what is fed less what animals keep.
    pub fn of_upkeep(design: &Design) -> Self {
        let (water, feed) = (&design.draft().water, design.draft().feed);
        let changed = water.change.map_or(Volume::ZERO, |change| {
            design.water() * (change.share.fraction() * WEEK_D / change.every.days())
        });
        let of_tap = Self::of_tap(water, changed);
        let fed_mg = feed.mass_per_day.mg() * WEEK_D;
        Self {
            nitrogen: of_tap.nitrogen + fed_mg * nitrogen_of_feed(feed.protein),
            ..of_tap
        }
    }

    /// What is left of it beyond another amount.
    #[must_use]
    pub fn beyond(self, other: Self) -> Self {
        self.each(other, |one, other| (one - other).max(0.0))
    }
}
