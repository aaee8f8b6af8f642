//! `soil.thin`: soil too shallow to feed rooted plants.

use super::bed_depths;
use super::declaration::{About, Judge, Rule};
use super::soil_depth::{SOIL_THIN_MM, SoilDepth, limits, verdict};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Status};
use crate::source::Basis;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::SoilThin,
    about: About::Bed,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::LayBed, Action::OpenBed],
    steps: |design, _| bed_depths::steps(design),
    explanation: Explanation {
        asks: "Is there soil enough to feed rooted plants?",
        limits: || format!("note where the mean depth is under {SOIL_THIN_MM} mm"),
        formula: || "mean depth of the soil".to_owned(),
        symbols: &[],
        range: || "common practice".to_owned(),
        basis: Basis::Practice,
        sources: &[],
    },
};

/// Soil too shallow to feed rooted plants.
fn judged(design: &Design) -> Finding {
    let soil = &design.bed().soil;
    let limits = limits(design);
    let units = design.draft().units;
    let depth = units.depth(soil.mean);
    let is_thin = verdict(design) == SoilDepth::Thin;
    Finding {
        code: Code::SoilThin,
        status: if is_thin { Status::Note } else { Status::Ok },
        subject: "soil".to_owned(),
        value: Some(soil.mean.mm()),
        unit: "mm",
        low: Some(limits.note_under.mm()),
        high: None,
        says: if is_thin {
            format!("{depth} of soil feeds rooted plants for a short time only")
        } else {
            format!("{depth} of soil on the mean feeds rooted plants")
        },
        remedy: None,
        basis: Basis::Practice,
        source: None,
    }
}
