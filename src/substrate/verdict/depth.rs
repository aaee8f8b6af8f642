//! Whether soil and cap are too thin or too deep.

use crate::finding::Status;
use crate::units::{Length, Volume};

/// Tanks smaller than this take thinner caps: common practice, no source.
const SMALL_TANK_L: f64 = 20.0;
/// Cap thickness under which soil gets out, mm, and under which it may: common
/// practice, no source.
const CAP_THIN_MM: (f64, f64) = (15.0, 25.0);
/// The same in small tanks: common practice, no source.
const SMALL_CAP_THIN_MM: (f64, f64) = (10.0, 15.0);
/// The thickest sand cap in tests on lake sediment, mm (Kim et al. 2007).
const CAP_DEEP_WATCH_MM: f64 = 80.0;
/// A cap that buries its soil, mm: common practice, no source.
const CAP_DEEP_ACT_MM: f64 = 100.0;
/// What a cap deeper than that is brought back to, mm: judgement.
const CAP_DEEP_AIM_MM: f64 = 75.0;
/// A cap is deep for its soil from this thickness and multiple on: judgement.
const CAP_OVER_SOIL_MM: f64 = 50.0;
const CAP_OVER_SOIL_TIMES: f64 = 3.0;
/// The most of a tank's height that a bed should take: judgement.
const BED_SHARE_OF_HEIGHT: f64 = 1.0 / 3.0;
/// Soil too shallow to feed rooted plants for long, mm: common practice, no source.
const SOIL_THIN_MM: f64 = 10.0;
/// Soil deep enough to be watched, and to be mended first, mm: common practice, no source.
const SOIL_DEEP_MM: (f64, f64) = (50.0, 75.0);
/// Rich mixes (compost, fertilised) are watched from here, mm: common practice, no source.
const RICH_SOIL_DEEP_MM: f64 = 30.0;
/// Thicknesses closer than this count as equal, mm: conversions round.
const ROUNDING_MM: f64 = 1e-6;

/// Whether a thickness is under a limit by more than rounding.
fn under(value: Length, limit: Length) -> bool {
    value.mm() < limit.mm() - ROUNDING_MM
}

/// The thicknesses at which a cap is too thin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CapDepthLimits {
    /// Too thin under this: mend it first.
    pub act_under: Length,
    /// Sound from this on.
    pub watch_under: Length,
}

impl CapDepthLimits {
    /// The limits in a tank of this volume.
    ///
    /// # Source
    /// Common practice, no source.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::verdict::CapDepthLimits;
    /// use lentic::units::Volume;
    /// let limits = CapDepthLimits::in_tank(Volume::from_litres(60.0));
    /// assert!((limits.act_under.mm() - 15.0).abs() < 1e-9); // common practice
    /// assert!((limits.watch_under.mm() - 25.0).abs() < 1e-9);
    /// ```
    pub fn in_tank(volume: Volume) -> Self {
        let (act_mm, watch_mm) = if volume.litres() < SMALL_TANK_L {
            SMALL_CAP_THIN_MM
        } else {
            CAP_THIN_MM
        };
        Self {
            act_under: Length::from_mm(act_mm),
            watch_under: Length::from_mm(watch_mm),
        }
    }

    /// Judges a cap at its thinnest place.
    ///
    /// # Example
    /// ```
    /// use lentic::finding::Status;
    /// use lentic::substrate::verdict::CapDepthLimits;
    /// use lentic::units::{Length, Volume};
    /// let limits = CapDepthLimits::in_tank(Volume::from_litres(60.0));
    /// let status = |mm| limits.judge(Length::from_mm(mm)).status();
    /// assert_eq!([status(14.0), status(20.0), status(25.0)], [Status::Act, Status::Watch, Status::Ok]);
    /// ```
    pub fn judge(&self, thinnest: Length) -> Thickness {
        let missing = self.watch_under - thinnest;
        if under(thinnest, self.act_under) {
            Thickness::TooThin { missing }
        } else if under(thinnest, self.watch_under) {
            Thickness::Thin { missing }
        } else {
            Thickness::Enough
        }
    }
}

/// Whether a cap is thick enough.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Thickness {
    /// It is.
    Enough,
    /// Sound for now.
    Thin {
        /// What to add at the thinnest place.
        missing: Length,
    },
    /// Soil shows and gets out.
    TooThin {
        /// What to add at the thinnest place.
        missing: Length,
    },
}

impl Thickness {
    /// The status of this verdict.
    pub const fn status(self) -> Status {
        match self {
            Self::Enough => Status::Ok,
            Self::Thin { .. } => Status::Watch,
            Self::TooThin { .. } => Status::Act,
        }
    }
}

/// A bed and the tank it lies in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BedDepth {
    /// Mean cap thickness.
    pub cap: Length,
    /// Mean soil thickness.
    pub soil: Length,
    /// Inner height of the tank.
    pub tank_height: Length,
    /// The thinnest cap that is sound there, [`CapDepthLimits::watch_under`].
    pub cap_least: Length,
}

/// What makes a cap too deep.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DeepReason {
    /// It buries the soil.
    Buries {
        /// From here on.
        from: Length,
    },
    /// Thicker than any cap that was tested on lake sediment.
    Untested {
        /// From here on.
        from: Length,
    },
    /// Much for the soil below.
    OverSoil {
        /// The most over this soil.
        most: Length,
    },
    /// The bed takes much of the tank's height.
    BedInTank {
        /// The most for soil and cap together.
        most: Length,
    },
}

impl DeepReason {
    /// The status of this reason.
    pub const fn status(self) -> Status {
        match self {
            Self::Buries { .. } => Status::Act,
            Self::Untested { .. } | Self::OverSoil { .. } | Self::BedInTank { .. } => Status::Watch,
        }
    }
}

/// Whether a cap is too deep, why, and what to take off.
#[derive(Debug, Clone, PartialEq)]
pub struct CapDepth {
    /// Every reason that holds, gravest first; none where the depth is sound.
    pub reasons: Vec<DeepReason>,
    /// The depth from which the first reason holds.
    pub limit: Length,
    /// What to take off; zero where the depth is sound, and where the soil alone
    /// fills its share of the tank and the cap is no thicker than it must be.
    pub take_off: Length,
}

impl CapDepth {
    /// Judges the mean depth of a cap.
    ///
    /// # Source
    /// 80 mm is the thickest sand cap in tests on lake sediment (Kim et al. 2007, `kim_2007`);
    /// the other limits are common practice and judgement.
    ///
    /// # Example
    /// ```
    /// use lentic::finding::Status;
    /// use lentic::substrate::verdict::{BedDepth, CapDepth};
    /// use lentic::units::Length;
    /// let mm = Length::from_mm;
    /// let bed = |cap| BedDepth {
    ///     cap: mm(cap), soil: mm(30.0), tank_height: mm(500.0), cap_least: mm(25.0),
    /// };
    /// assert_eq!(CapDepth::judge(&bed(40.0)).status(), Status::Ok);
    /// assert_eq!(CapDepth::judge(&bed(100.0)).status(), Status::Act);
    /// ```
    ///
    /// # Limits
    /// Depth alone is no danger sign: a bed without oxygen at its foot is usual.
    pub fn judge(bed: &BedDepth) -> Self {
        let reasons: Vec<DeepReason> = [thickness_reason(bed), soil_reason(bed), tank_reason(bed)]
            .into_iter()
            .flatten()
            .collect();
        let target = reasons
            .iter()
            .map(|reason| target(*reason, bed))
            .fold(bed.cap, Length::min);
        let take_off = (bed.cap - target.max(bed.cap_least)).max(Length::ZERO);
        let limit = over_soil_limit(bed)
            .min(in_tank_limit(bed) - bed.soil)
            .min(Length::from_mm(CAP_DEEP_WATCH_MM))
            .max(Length::ZERO);
        Self {
            reasons,
            limit,
            take_off,
        }
    }

    /// The status of this verdict.
    pub fn status(&self) -> Status {
        let statuses = self.reasons.iter().map(|reason| reason.status());
        statuses.max().unwrap_or(Status::Ok)
    }
}

/// Whether the cap is deep in itself.
fn thickness_reason(bed: &BedDepth) -> Option<DeepReason> {
    let (watch, act) = (
        Length::from_mm(CAP_DEEP_WATCH_MM),
        Length::from_mm(CAP_DEEP_ACT_MM),
    );
    if under(bed.cap, watch) {
        None
    } else if under(bed.cap, act) {
        Some(DeepReason::Untested { from: watch })
    } else {
        Some(DeepReason::Buries { from: act })
    }
}

/// The deepest cap for its soil.
fn over_soil_limit(bed: &BedDepth) -> Length {
    (bed.soil * CAP_OVER_SOIL_TIMES).max(Length::from_mm(CAP_OVER_SOIL_MM))
}

/// The deepest bed for its tank.
fn in_tank_limit(bed: &BedDepth) -> Length {
    bed.tank_height * BED_SHARE_OF_HEIGHT
}

/// Whether the cap is deep for its soil.
fn soil_reason(bed: &BedDepth) -> Option<DeepReason> {
    let most = over_soil_limit(bed);
    under(most, bed.cap).then_some(DeepReason::OverSoil { most })
}

/// Whether the bed is deep for its tank.
fn tank_reason(bed: &BedDepth) -> Option<DeepReason> {
    let most = in_tank_limit(bed);
    under(most, bed.cap + bed.soil).then_some(DeepReason::BedInTank { most })
}

/// The cap thickness at which a reason no longer holds.
fn target(reason: DeepReason, bed: &BedDepth) -> Length {
    match reason {
        DeepReason::Buries { .. } | DeepReason::Untested { .. } => Length::from_mm(CAP_DEEP_AIM_MM),
        DeepReason::OverSoil { most } => most,
        DeepReason::BedInTank { most } => most - bed.soil,
    }
}

/// How much a soil has to give off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Richness {
    /// Soils and mixes without compost or fertiliser: watched above 50 mm.
    Plain,
    /// Compost and fertilised mixes: watched from 30 mm.
    Rich,
}

/// The thicknesses at which soil is too thin or too deep.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SoilDepthLimits {
    /// Too thin to feed rooted plants for long under this.
    pub note_under: Length,
    /// Watched above this; a rich soil at this depth already.
    pub watch: Length,
    /// Mend it first above this.
    pub act_above: Length,
    /// Which soils these limits are for.
    pub richness: Richness,
}

impl SoilDepthLimits {
    /// The limits of a soil.
    ///
    /// # Source
    /// Common practice, no source.
    pub fn of(richness: Richness) -> Self {
        let (plain_mm, act_mm) = SOIL_DEEP_MM;
        Self {
            note_under: Length::from_mm(SOIL_THIN_MM),
            watch: Length::from_mm(match richness {
                Richness::Plain => plain_mm,
                Richness::Rich => RICH_SOIL_DEEP_MM,
            }),
            act_above: Length::from_mm(act_mm),
            richness,
        }
    }

    /// Judges soil by its mean and its deepest place.
    ///
    /// # Example
    /// ```
    /// use lentic::finding::Status;
    /// use lentic::substrate::verdict::{Richness, SoilDepthLimits};
    /// use lentic::units::Length;
    /// let poor = SoilDepthLimits::of(Richness::Plain);
    /// let status = |mm| poor.judge(Length::from_mm(mm), Length::from_mm(mm)).status();
    /// assert_eq!([status(25.0), status(60.0), status(80.0)], [Status::Ok, Status::Watch, Status::Act]);
    /// ```
    pub fn judge(&self, mean: Length, deepest: Length) -> SoilDepth {
        let watched = match self.richness {
            Richness::Plain => under(self.watch, deepest),
            Richness::Rich => !under(deepest, self.watch),
        };
        if under(self.act_above, deepest) {
            SoilDepth::TooDeep
        } else if watched {
            SoilDepth::Deep
        } else if under(mean, self.note_under) {
            SoilDepth::Thin
        } else {
            SoilDepth::Sound
        }
    }
}

/// Whether soil has a sound depth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SoilDepth {
    /// It has.
    Sound,
    /// Feeds rooted plants for a short time.
    Thin,
    /// Makes much gas and lets go of much.
    Deep,
    /// Too much of both.
    TooDeep,
}

impl SoilDepth {
    /// The status of this verdict.
    pub const fn status(self) -> Status {
        match self {
            Self::Sound => Status::Ok,
            Self::Thin => Status::Note,
            Self::Deep => Status::Watch,
            Self::TooDeep => Status::Act,
        }
    }
}
