//! `cap.slope`: slope of the bed against the angle of repose, and where it was cut.

use super::declaration::{About, Judge, Rule};
use crate::catalogue::Grains;
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::substrate::repose::GrainShape;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::CapSlope,
    about: About::Cap,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::OpenBed],
    steps: |design, _| steps(design),
    explanation: Explanation {
        asks: "Will the slope stay, and was the bed cut by floor or rim?",
        limits: || {
            format!(
                "watch above {} degrees for rounded grains and {} for angular ones; note where a layer meets the floor or the rim",
                GrainShape::Rounded.repose_degrees(),
                GrainShape::Angular.repose_degrees()
            )
        },
        formula: || "slope = atan |grad z|".to_owned(),
        symbols: &["z: height of the bed's surface"],
        range: || {
            "dry and under water alike; animals flatten a slope with time. Rounded grains were measured to stand at the angle given, angular ones at about 40 degrees: theirs is kept lower by judgement".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[Source::Kleinhans2011],
    },
};

/// How a slope stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Slope {
    /// Within the grains' angle of repose; animals still level it in time.
    Stands,
    /// Steeper: it slides.
    Slides,
}

impl Slope {
    /// Judges a slope in degrees against the angle of repose.
    ///
    /// # Source
    /// As [`GrainShape::repose_degrees`].
    ///
    /// # Example
    /// ```
    /// use lentic::{plan::rule::cap_slope::Slope, substrate::repose::GrainShape};
    /// assert_ne!(Slope::judge(30.0, GrainShape::Rounded), Slope::judge(30.0, GrainShape::Angular));
    /// ```
    ///
    /// # Limits
    /// Animals level any slope in time.
    pub fn judge(degrees: f64, grains: GrainShape) -> Self {
        if degrees > grains.repose_degrees() {
            Self::Slides
        } else {
            Self::Stands
        }
    }

    /// The status of this verdict.
    pub const fn status(self) -> Status {
        match self {
            Self::Stands => Status::Ok,
            Self::Slides => Status::Watch,
        }
    }
}

/// Slope of the bed against the angle of repose, and where a layer was cut.
fn judged(design: &Design) -> Finding {
    let bed = design.bed();
    let shape = match design.draft().cap.material.grains {
        Grains::Angular => GrainShape::Angular,
        Grains::Rounded => GrainShape::Rounded,
    };
    let degrees = bed.top.slope_deg;
    let verdict = Slope::judge(degrees, shape);
    let limit = shape.repose_degrees();
    let cut = cuts(design);
    let status = match verdict.status() {
        Status::Ok if !cut.is_empty() => Status::Note,
        status => status,
    };
    let mut says = match verdict {
        Slope::Stands if degrees == 0.0 => "the bed is level".to_owned(),
        Slope::Stands => format!("the bed slopes by {degrees:.0} degrees and stands"),
        Slope::Slides => format!("the bed slopes by {degrees:.0} degrees: these grains slide"),
    };
    if !cut.is_empty() {
        says = format!("{says}; {}", words::listed(&cut));
    }
    Finding {
        code: Code::CapSlope,
        status,
        subject: "bed".to_owned(),
        value: Some(degrees),
        unit: "degrees",
        low: None,
        high: Some(limit),
        says,
        remedy: (verdict == Slope::Slides).then(|| Remedy {
            says: format!("flatten it to {limit:.0} degrees or hold it with stones"),
            quantity: Some(limit),
            unit: "degrees",
        }),
        basis: match shape {
            GrainShape::Rounded => Basis::Published,
            GrainShape::Angular => Basis::Judgement,
        },
        source: Some(Source::Kleinhans2011),
    }
}

/// Where a layer meets floor, rim or air.
fn cuts(design: &Design) -> Vec<&'static str> {
    let bed = design.bed();
    [
        (
            bed.soil.runs_out,
            "the soil runs out before a wall and was cut at the floor",
        ),
        (
            bed.cap.runs_out,
            "the cap runs out before a wall and soil shows there",
        ),
        (bed.meets_rim(), "the bed was cut at the rim"),
        (
            bed.rises_above(design.water_level()),
            "part of the bed stands above the water",
        ),
    ]
    .into_iter()
    .filter_map(|(holds, says)| holds.then_some(says))
    .collect()
}

fn steps(design: &Design) -> Vec<WorkingStep> {
    let top = &design.bed().top;
    vec![
        step("lowest place of the bed", top.lowest.depth.mm(), "mm"),
        step("highest place of the bed", top.highest.depth.mm(), "mm"),
        step("steepest slope", top.slope_deg, "degrees"),
    ]
}
