//! `cap.coarse`: cap grains against what holds the soil back.

use super::base_soil::filter_soil;
use super::declaration::{About, Judge, Rule};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::source::{Basis, Source};
use crate::substrate::filter::{DESIGN_RATIO, FilterSoil, TESTED_RATIO};
use crate::units::Length;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::CapCoarse,
    about: About::Cap,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::LayBed],
    steps: |design, _| steps(design),
    explanation: Explanation {
        asks: "Do the cap's grains keep the soil from rising through them?",
        limits: || {
            let times = TESTED_RATIO / DESIGN_RATIO;
            format!(
                "ok up to {times} times the filter limit; act above both {COARSEST_USABLE_MM} mm and {times} times the limit; watch between"
            )
        },
        formula: || {
            "D15(cap) <= limit(soil); limit by the share A of the soil finer than 0.075 mm: A > 85 %: 9 d85, at least 0.2 mm; 40-85 %: 0.7 mm; 15-39 %: (40 - A)/25 (4 d85 - 0.7 mm) + 0.7 mm; under 15 %: 4 d85. Fibrous mixes: 0.7 mm by convention".to_owned()
        },
        symbols: &[
            "D15: size that 15 % of the cap by mass is finer than",
            "d85: the same of the soil at 85 %",
            "A: share of the soil finer than 0.075 mm",
        ],
        range: || {
            format!(
                "derived for water seeping hard through soil; a tank has almost none, so a cap that meets it holds, and one that fails may let soil through when the bed is stirred. The filter limit is published; {} times it joins two sources, and {COARSEST_USABLE_MM} mm is common practice",
                TESTED_RATIO / DESIGN_RATIO
            )
        },
        basis: Basis::Judgement,
        sources: &[
            Source::NrcsNeh633Ch26,
            Source::TerzaghiPeckMesri1996,
            Source::SherardDunnigan1989,
            Source::UsaceFilterManual,
            Source::TerzaghiPeck1948,
            Source::FosterFell2001,
            Source::FhwaHds6,
        ],
    },
};

/// Up to this D15 a cap is no more than watched over any soil, mm: common
/// practice, no source (gravel of 2 to 4 mm leaks but is used, 4 to 8 mm fails).
const COARSEST_USABLE_MM: f64 = 2.8;

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
    pub fn over(soil: &FilterSoil) -> Self {
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
    /// use lentic::substrate::filter::FilterSoil;
    /// use lentic::plan::rule::cap_coarse::{CoarseLimits, Coarseness};
    /// use lentic::units::Length;
    /// let limits = CoarseLimits::over(&FilterSoil::Organic);
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

/// Cap grains against what holds the soil back.
pub(in crate::plan) fn judged(design: &Design) -> Finding {
    let draft = design.draft();
    let limits = CoarseLimits::over(&filter_soil(design));
    let d15 = Length::from_mm(draft.cap.d15_mm().typical);
    let verdict = limits.judge(d15);
    let (cap, soil) = (&draft.cap.material.label, &draft.soil.material.label);
    let size = draft.units.grain(d15);
    let says = match verdict {
        Coarseness::HoldsSoil => format!("{cap} (D15 {size}) holds {soil} down"),
        Coarseness::LeaksLonger => format!(
            "{cap} (D15 {size}) is coarse for {soil}: usable, leaks for longer and clouds when stirred"
        ),
        Coarseness::LosesSoil => {
            format!("{cap} (D15 {size}) is too coarse for {soil}: soil lifts through the gaps")
        }
    };
    let limit = draft.units.grain(limits.watch_above);
    let remedy = match verdict {
        Coarseness::HoldsSoil => None,
        Coarseness::LeaksLonger => Some(format!(
            "leave it unstirred, plant heavily; a finer cap (D15 up to {limit}) would hold better"
        )),
        Coarseness::LosesSoil => Some(format!(
            "take a finer cap, such as filter sand or 20/40 grit (D15 up to {limit})"
        )),
    }
    .map(|says| Remedy {
        says,
        quantity: Some(limits.watch_above.mm()),
        unit: "mm",
    });
    Finding {
        code: Code::CapCoarse,
        status: verdict.status(),
        subject: cap.clone(),
        value: Some(d15.mm()),
        unit: "mm",
        low: None,
        high: Some(limits.watch_above.mm()),
        says,
        remedy,
        basis: Basis::Judgement,
        source: Some(Source::NrcsNeh633Ch26),
    }
}

fn steps(design: &Design) -> Vec<WorkingStep> {
    let times = TESTED_RATIO / DESIGN_RATIO;
    let limits = CoarseLimits::over(&filter_soil(design));
    vec![
        step("D15 of the cap", design.draft().cap.d15_mm().typical, "mm"),
        step("filter limit of the soil", limits.rule.mm(), "mm"),
        step(
            &format!("ok up to {times} times that"),
            limits.watch_above.mm(),
            "mm",
        ),
        step("act above", limits.act_above.mm(), "mm"),
    ]
}
