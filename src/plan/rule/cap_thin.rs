//! `cap.thin`: cap depth at its thinnest place.

use super::declaration::{About, Judge, Rule};
use super::rounding::under;
use super::sand::more_sand;
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Status, WorkingStep, step};
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::units::{Length, Volume};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::CapThin,
    about: About::Cap,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::AddSand],
    steps: |design, _| steps(design),
    explanation: Explanation {
        asks: "Is the cap deep enough where it is thinnest?",
        limits: || {
            let ((act, watch), (small_act, small_watch)) = (CAP_THIN_MM, SMALL_CAP_THIN_MM);
            format!(
                "act under {act} mm, watch under {watch} mm; in tanks under {SMALL_TANK_L} L under {small_act} mm and {small_watch} mm"
            )
        },
        formula: || {
            "depth at the thinnest place; a layer that isolates needs To + Tb + Ti, with Ti = phi Ds C0 / J".to_owned()
        },
        symbols: &[
            "To: error of placing, 5 mm",
            "Tb: depth that animals stir",
            "Ti: depth that holds diffusion to J",
            "phi: pore share of the cap",
            "Ds: diffusion coefficient in its pores",
            "C0: ammonium in the soil's pore water",
            "J: release that is allowed",
        ],
        range: || {
            "the limits are common practice; the isolation depth is shown beside them and is known to a factor of two".to_owned()
        },
        basis: Basis::Practice,
        sources: &[Source::PalermoEpa1998],
    },
};

/// Tanks smaller than this take thinner caps: common practice, no source.
const SMALL_TANK_L: f64 = 20.0;

/// Cap thickness under which soil gets out, mm, and under which it may: common
/// practice, no source.
const CAP_THIN_MM: (f64, f64) = (15.0, 25.0);

/// The same in small tanks: common practice, no source.
const SMALL_CAP_THIN_MM: (f64, f64) = (10.0, 15.0);

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
    /// use lentic::plan::rule::cap_thin::CapDepthLimits;
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
    /// use lentic::plan::rule::cap_thin::CapDepthLimits;
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

/// The depth limits of the cap in this tank.
pub(in crate::plan) fn limits(design: &Design) -> CapDepthLimits {
    CapDepthLimits::in_tank(design.vessel().brimful())
}

/// Cap depth at its thinnest place.
pub(in crate::plan) fn judged(design: &Design) -> Finding {
    let limits = limits(design);
    let thinnest = design.bed().cap.thinnest;
    let verdict = limits.judge(thinnest.depth);
    let units = design.draft().units;
    let place = words::place(thinnest.place);
    let depth = units.depth(thinnest.depth);
    let says = match verdict.status() {
        Status::Ok => format!("the cap is at least {depth} deep"),
        Status::Act => format!("the cap is too thin {place}: {depth}; soil shows and gets out"),
        _ => format!("the cap is thin {place}: {depth}"),
    };
    let remedy = (verdict.status() != Status::Ok).then(|| more_sand(design, limits.watch_under));
    Finding {
        code: Code::CapThin,
        status: verdict.status(),
        subject: format!("cap {place}"),
        value: Some(thinnest.depth.mm()),
        unit: "mm",
        low: Some(limits.watch_under.mm()),
        high: None,
        says,
        remedy,
        basis: Basis::Practice,
        source: None,
    }
}

fn steps(design: &Design) -> Vec<WorkingStep> {
    let limits = limits(design);
    let bed = design.bed();
    vec![
        step("brimful", design.vessel().brimful().litres(), "L"),
        step("thinnest place", bed.cap.thinnest.depth.mm(), "mm"),
        step("act under", limits.act_under.mm(), "mm"),
        step("watch under", limits.watch_under.mm(), "mm"),
        step(
            "sand to reach that everywhere",
            bed.cap_short_of(limits.watch_under).litres(),
            "L",
        ),
    ]
}
