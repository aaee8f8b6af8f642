//! `cap.fine`: cap grains that pack or seal.

use super::base_soil::filter_soil;
use super::declaration::{About, Judge, Rule};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::source::{Basis, Source};
use crate::substrate::filter::{DRAINAGE_RATIO, FINES_SIEVE_MM, FINEST_MM, FilterSoil};
use crate::units::{Length, Share, UnitSystem};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::CapFine,
    about: About::Cap,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::LayBed],
    steps: |design, _| steps(design),
    explanation: Explanation {
        asks: "Is the cap so fine that it packs or seals?",
        limits: || {
            format!(
                "act where D15 is under max({FINEST_MM} mm, {DRAINAGE_RATIO} d15 of a mineral soil) or more than {MOST_FINES_PERCENT} % passes {FINES_SIEVE_MM} mm; watch where d10 is under {LOOSE_D10_MM} mm"
            )
        },
        formula: || format!("D15(cap) >= max({FINEST_MM} mm, {DRAINAGE_RATIO} d15(soil))"),
        symbols: &[
            "D15: size that 15 % of the cap by mass is finer than",
            "d15: the same of the soil",
            "d10: the same of the cap at 10 %",
        ],
        range: || {
            format!(
                "the drainage rule is published; that a finer cap seals a tank's bed is an inference, and the {LOOSE_D10_MM} mm line is common practice"
            )
        },
        basis: Basis::Published,
        sources: &[Source::NrcsNeh633Ch26, Source::Scs1986],
    },
};

/// Sand with a finer d10 packs, mm: common practice, no source (play and masonry sand).
const LOOSE_D10_MM: f64 = 0.25;

/// Most fines in a filter, percent under 0.075 mm (USDA SCS 1986).
const MOST_FINES_PERCENT: f64 = 5.0;

/// Depth that a sand that packs is kept at, mm: practice.
const PACKING_DEPTH_MM: (f64, f64) = (25.0, 35.0);

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
    pub fn over(soil: &FilterSoil) -> Self {
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
    /// use lentic::{plan::rule::cap_fine::FineLimits, substrate::filter::FilterSoil};
    /// use lentic::units::Length;
    /// let limits = FineLimits::over(&FilterSoil::Organic);
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

/// Cap grains that pack or seal.
pub(in crate::plan) fn judged(design: &Design) -> Finding {
    let draft = design.draft();
    let limits = FineLimits::over(&filter_soil(design));
    let d10 = Length::from_mm(draft.cap.d10_mm().typical);
    let d15 = Length::from_mm(draft.cap.d15_mm().typical);
    let fines = draft.cap.material.fines_pct.typical;
    // The keeper's own sieve sizes speak for another sand than the catalogue's.
    let own = draft.cap.grading.d10.is_some();
    let known_fines = (!own).then(|| Share::from_percent(fines));
    let verdict = limits.judge(d10, d15, known_fines);
    let cap = &draft.cap.material.label;
    let units = draft.units;
    let (says, value, low) = match verdict {
        Fineness::Loose => (
            format!(
                "{cap} (d10 {}) stays open for water and gas",
                units.grain(d10)
            ),
            d10,
            limits.d10_loose,
        ),
        Fineness::Packs => (
            format!(
                "{cap} (d10 {}) packs; gas leaves in bursts",
                units.grain(d10)
            ),
            d10,
            limits.d10_loose,
        ),
        Fineness::Silty => (
            format!("{cap} holds {fines:.0} % finer than 0.075 mm: it clouds and seals"),
            d15,
            limits.d15_least,
        ),
        Fineness::Seals => (
            format!(
                "{cap} (D15 {}) is too fine: it seals the soil and clouds the water",
                units.grain(d15)
            ),
            d15,
            limits.d15_least,
        ),
    };
    Finding {
        code: Code::CapFine,
        status: verdict.status(),
        subject: cap.clone(),
        value: Some(value.mm()),
        unit: "mm",
        low: Some(low.mm()),
        high: None,
        says,
        remedy: coarser(verdict.status(), &limits, units),
        basis: match verdict {
            Fineness::Loose | Fineness::Packs => Basis::Practice,
            Fineness::Silty | Fineness::Seals => Basis::Published,
        },
        source: match verdict {
            Fineness::Loose | Fineness::Packs => None,
            Fineness::Silty | Fineness::Seals => Some(Source::NrcsNeh633Ch26),
        },
    }
}

/// A coarser sand, or what to do with one that packs.
fn coarser(status: Status, limits: &FineLimits, units: UnitSystem) -> Option<Remedy> {
    match status {
        Status::Act => Some(Remedy {
            says: format!(
                "take a washed sand with D15 of at least {}, such as filter sand",
                units.grain(limits.d15_least)
            ),
            quantity: Some(limits.d15_least.mm()),
            unit: "mm",
        }),
        Status::Watch => Some(Remedy {
            says: format!(
                "rinse it until clear and keep it {} to {} deep",
                units.depth(Length::from_mm(PACKING_DEPTH_MM.0)),
                units.depth(Length::from_mm(PACKING_DEPTH_MM.1))
            ),
            quantity: Some(PACKING_DEPTH_MM.1),
            unit: "mm",
        }),
        Status::Ok | Status::Note => None,
    }
}

fn steps(design: &Design) -> Vec<WorkingStep> {
    let limits = FineLimits::over(&filter_soil(design));
    let cap = &design.draft().cap;
    vec![
        step("d10 of the cap", cap.d10_mm().typical, "mm"),
        step("loose from d10", limits.d10_loose.mm(), "mm"),
        step("D15 of the cap", cap.d15_mm().typical, "mm"),
        step("least D15 over this soil", limits.d15_least.mm(), "mm"),
        step("passing 0.075 mm", cap.material.fines_pct.typical, "%"),
        step("most that may pass", limits.fines_most.percent(), "%"),
    ]
}
