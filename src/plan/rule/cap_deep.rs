//! `cap.deep`: cap depth against what roots and gas can cross.

use super::declaration::{About, Judge, Rule};
use super::rounding::under;
use super::{bed_depths, cap_thin};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status};
use crate::source::{Basis, Source};
use crate::units::Length;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::CapDeep,
    about: About::Cap,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::OpenBed],
    steps: |design, _| bed_depths::steps(design),
    explanation: Explanation {
        asks: "Is the cap so deep that roots and gas cannot cross it?",
        limits: || {
            format!(
                "mean depth from {CAP_DEEP_WATCH_MM} mm watch, from {CAP_DEEP_ACT_MM} mm act; also watch over {CAP_OVER_SOIL_MM} mm with over {CAP_OVER_SOIL_TIMES} times the soil, or where the bed is over a third of the tank's height"
            )
        },
        formula: || "mean depth of the cap; mean depth of cap and soil over the height".to_owned(),
        symbols: &[],
        range: || {
            format!(
                "no published limit exists; {CAP_DEEP_WATCH_MM} mm is the thickest sand cap among the lake-sediment tests found, the rest is common practice"
            )
        },
        basis: Basis::Judgement,
        sources: &[Source::Kim2007],
    },
};

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

/// A bed and the tank it lies in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BedDepth {
    /// Mean cap thickness.
    pub cap: Length,
    /// Mean soil thickness.
    pub soil: Length,
    /// Inner height of the tank.
    pub tank_height: Length,
    /// The thinnest cap that is sound there, [`CapDepthLimits::watch_under`](super::cap_thin::CapDepthLimits).
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
    /// use lentic::plan::rule::cap_deep::{BedDepth, CapDepth};
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

/// How the mean depth of the cap stands.
pub(in crate::plan) fn verdict(design: &Design) -> CapDepth {
    let bed = design.bed();
    CapDepth::judge(&BedDepth {
        cap: bed.cap.mean,
        soil: bed.soil.mean,
        tank_height: design.vessel().height(),
        cap_least: cap_thin::limits(design).watch_under,
    })
}

/// Cap depth against what roots and gas can cross.
pub(in crate::plan) fn judged(design: &Design) -> Finding {
    let bed = design.bed();
    let verdict = verdict(design);
    let units = design.draft().units;
    let depth = units.depth(bed.cap.mean);
    let reasons: Vec<String> = verdict
        .reasons
        .iter()
        .map(|reason| match reason {
            DeepReason::Buries { from } => {
                format!("from {} on it buries the soil", units.depth(*from))
            }
            DeepReason::Untested { from } => {
                format!("caps of {} and more were not tested", units.depth(*from))
            }
            DeepReason::OverSoil { most } => {
                format!("over this soil {} is enough", units.depth(*most))
            }
            DeepReason::BedInTank { most } => format!(
                "with the soil it takes over a third of the tank's height ({})",
                units.depth(*most)
            ),
        })
        .collect();
    let says = if reasons.is_empty() {
        format!("the cap is {depth} deep on the mean, within reach of roots")
    } else {
        format!(
            "the cap is {depth} deep on the mean: {}",
            reasons.join("; ")
        )
    };
    let remedy = (verdict.take_off > Length::ZERO).then(|| less_sand(design, verdict.take_off));
    Finding {
        code: Code::CapDeep,
        status: verdict.status(),
        subject: "cap".to_owned(),
        value: Some(bed.cap.mean.mm()),
        unit: "mm",
        low: None,
        high: Some(verdict.limit.mm()),
        says,
        remedy,
        basis: Basis::Judgement,
        source: is_of_tests(verdict.limit).then_some(Source::Kim2007),
    }
}

/// What is left of the cap once that much is taken off, as depths are advised.
pub(in crate::plan) fn advised(design: &Design, take_off: Length) -> Length {
    let least = cap_thin::limits(design).watch_under;
    let units = design.draft().units;
    let left = design.bed().cap.mean - take_off;
    units.down(left).max(least.min(left))
}

/// Whether a limit is the thickness up to which caps were tested.
fn is_of_tests(limit: Length) -> bool {
    !under(limit, Length::from_mm(CAP_DEEP_WATCH_MM))
}

/// The cap brought down to a depth that can be told, never less than it must be.
fn less_sand(design: &Design, depth: Length) -> Remedy {
    let units = design.draft().units;
    let left = advised(design, depth);
    let volume = design.bed().cap_beyond(left);
    Remedy {
        says: format!(
            "take off {} of the cap, down to {}",
            units.bulk_volume(volume),
            units.depth(left)
        ),
        quantity: Some(volume.litres()),
        unit: "L",
    }
}
