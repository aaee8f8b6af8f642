//! How much soil is too little and how much too much.

use super::rounding::under;
use crate::design::Design;
use crate::finding::Status;
use crate::units::{Length, UnitSystem};

/// Soil too shallow to feed rooted plants for long, mm: common practice, no source.
pub(super) const SOIL_THIN_MM: f64 = 10.0;

/// Soil deep enough to be watched, and to be mended first, mm: common practice, no source.
pub(super) const SOIL_DEEP_MM: (f64, f64) = (50.0, 75.0);

/// Rich mixes (compost, fertilised) are watched from here, mm: common practice, no source.
pub(super) const RICH_SOIL_DEEP_MM: f64 = 30.0;

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

    /// The deepest soil that is advised, as depths are advised.
    pub(super) fn most(&self, units: UnitSystem) -> Length {
        let most = units.down(self.watch);
        let is_watched = matches!(self.judge(most, most), SoilDepth::Deep);
        if is_watched {
            units.down(most - Length::from_mm(1.0))
        } else {
            most
        }
    }

    /// Judges soil by its mean and its deepest place.
    ///
    /// # Example
    /// ```
    /// use lentic::finding::Status;
    /// use lentic::plan::rule::soil_depth::{Richness, SoilDepthLimits};
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

pub(super) fn limits(design: &Design) -> SoilDepthLimits {
    SoilDepthLimits::of(if design.draft().soil.material.rich {
        Richness::Rich
    } else {
        Richness::Plain
    })
}

pub(super) fn verdict(design: &Design) -> SoilDepth {
    let soil = &design.bed().soil;
    limits(design).judge(soil.mean, soil.deepest.depth)
}
