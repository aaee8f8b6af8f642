//! Whether a cap's grains are too coarse or too fine for the soil below.

use crate::finding::Status;
use crate::substrate::filter::{DESIGN_RATIO, Soil, TESTED_RATIO};
use crate::units::{Length, Share};

/// Up to this D15 a cap is no more than watched over any soil, mm: common
/// practice, no source (gravel of 2 to 4 mm leaks but is used, 4 to 8 mm fails).
const COARSEST_USABLE_MM: f64 = 2.8;
/// Sand with a finer d10 packs, mm: common practice, no source (play and masonry sand).
const LOOSE_D10_MM: f64 = 0.25;
/// Most fines in a filter, percent under 0.075 mm (USDA SCS 1986).
const MOST_FINES_PERCENT: f64 = 5.0;

/// The D15 sizes at which a cap's hold on the soil weakens.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoarseLimits {
    /// The filter rule itself, made for seepage.
    pub rule: Length,
    /// Where tests still held, 8/5 of the rule; a tank has almost no seepage.
    pub watch_above: Length,
    /// Where practice and tests both end.
    pub act_above: Length,
}

impl CoarseLimits {
    /// The limits over a soil.
    pub fn over(soil: &Soil) -> Self {
        let rule = soil.coarsest_cap();
        let watch_above = rule * (TESTED_RATIO / DESIGN_RATIO);
        Self {
            rule,
            watch_above,
            act_above: watch_above.max(Length::from_mm(COARSEST_USABLE_MM)),
        }
    }

    /// Judges a cap by its D15.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::filter::Soil;
    /// use lentic::substrate::verdict::{CoarseLimits, Coarseness};
    /// use lentic::units::Length;
    /// let limits = CoarseLimits::over(&Soil::Organic);
    /// assert_eq!(limits.judge(Length::from_mm(0.46)), Coarseness::HoldsSoil);
    /// assert_eq!(limits.judge(Length::from_mm(5.4)), Coarseness::LosesSoil);
    /// ```
    ///
    /// # Source
    /// The filter rule with the ratio that tests held to (`terzaghi_peck_mesri_1996`); the upper
    /// end is common practice.
    ///
    /// # Limits
    /// Made for seepage: a fail says that soil may come through, not that it will.
    pub fn judge(&self, d15: Length) -> Coarseness {
        if d15 <= self.watch_above {
            Coarseness::HoldsSoil
        } else if d15 <= self.act_above {
            Coarseness::LeaksLonger
        } else {
            Coarseness::LosesSoil
        }
    }
}

/// How a cap holds soil back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Coarseness {
    /// It does.
    HoldsSoil,
    /// Usable, but clouds and leaks for longer.
    LeaksLonger,
    /// Soil sifts and stirs through it.
    LosesSoil,
}

impl Coarseness {
    /// The status of this verdict.
    pub const fn status(self) -> Status {
        match self {
            Self::HoldsSoil => Status::Ok,
            Self::LeaksLonger => Status::Watch,
            Self::LosesSoil => Status::Act,
        }
    }
}

/// The sizes at which a cap gets too fine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FineLimits {
    /// The filter rule's least D15 over this soil.
    pub d15_least: Length,
    /// The least d10 of a sand that stays loose.
    pub d10_loose: Length,
    /// The most that may pass 0.075 mm.
    pub fines_most: Share,
}

impl FineLimits {
    /// The limits over a soil.
    pub fn over(soil: &Soil) -> Self {
        Self {
            d15_least: soil.finest_cap(),
            d10_loose: Length::from_mm(LOOSE_D10_MM),
            fines_most: Share::from_percent(MOST_FINES_PERCENT),
        }
    }

    /// Judges a cap by its d10, its D15 and, where known, what passes 0.075 mm.
    ///
    /// # Source
    /// Least D15 and fines by the filter rules (`nrcs_neh633_ch26`, `scs_1986`); packing is
    /// common practice.
    ///
    /// # Example
    /// ```
    /// use lentic::finding::Status;
    /// use lentic::substrate::{filter::Soil, verdict::FineLimits};
    /// use lentic::units::Length;
    /// let limits = FineLimits::over(&Soil::Organic);
    /// let mm = Length::from_mm;
    /// assert_eq!(limits.judge(mm(0.44), mm(0.46), None).status(), Status::Ok);
    /// assert_eq!(limits.judge(mm(0.02), mm(0.03), None).status(), Status::Act);
    /// ```
    pub fn judge(&self, d10: Length, d15: Length, fines: Option<Share>) -> Fineness {
        if d15 < self.d15_least {
            Fineness::Seals
        } else if fines.is_some_and(|share| share > self.fines_most) {
            Fineness::Silty
        } else if d10 < self.d10_loose {
            Fineness::Packs
        } else {
            Fineness::Loose
        }
    }
}

/// How open a cap's pores are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fineness {
    /// Water and gas pass.
    Loose,
    /// Packs; gas leaves in bursts.
    Packs,
    /// Holds more fines than a filter may.
    Silty,
    /// Finer than a filter over this soil may be.
    Seals,
}

impl Fineness {
    /// The status of this verdict.
    pub const fn status(self) -> Status {
        match self {
            Self::Loose => Status::Ok,
            Self::Packs => Status::Watch,
            Self::Silty | Self::Seals => Status::Act,
        }
    }
}
