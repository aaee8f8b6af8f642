//! `soil.deep`: soil deep enough to turn foul.

use super::bed_depths;
use super::declaration::{About, Judge, Rule};
use super::soil_depth::{RICH_SOIL_DEEP_MM, Richness, SOIL_DEEP_MM, SoilDepth, limits, verdict};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status};
use crate::plan::words;
use crate::source::Basis;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::SoilDeep,
    about: About::Bed,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::LayBed, Action::OpenBed],
    steps: |design, _| bed_depths::steps(design),
    explanation: Explanation {
        asks: "Is the soil so deep that it turns foul?",
        limits: || {
            let (watch, act) = SOIL_DEEP_MM;
            format!(
                "over {watch} mm at the deepest place watch, over {act} mm act; rich mixes (compost, fertilised) watch from {RICH_SOIL_DEEP_MM} mm"
            )
        },
        formula: || "depth at the deepest place".to_owned(),
        symbols: &[],
        range: || "common practice".to_owned(),
        basis: Basis::Practice,
        sources: &[],
    },
};

/// Soil deep enough to turn foul.
pub(in crate::plan) fn judged(design: &Design) -> Finding {
    let draft = design.draft();
    let deepest = design.bed().soil.deepest;
    let limits = limits(design);
    let status = match verdict(design) {
        SoilDepth::Sound | SoilDepth::Thin => Status::Ok,
        deep => deep.status(),
    };
    let depth = draft.units.depth(deepest.depth);
    let place = words::place(deepest.place);
    let kind = match limits.richness {
        Richness::Rich => "rich soil",
        Richness::Plain => "soil",
    };
    Finding {
        code: Code::SoilDeep,
        status,
        subject: format!("soil {place}"),
        value: Some(deepest.depth.mm()),
        unit: "mm",
        low: None,
        high: Some(limits.watch.mm()),
        says: if status == Status::Ok {
            format!("the soil is at most {depth} deep")
        } else {
            format!("{depth} of {kind} {place} makes much gas and lets go of much nitrogen")
        },
        remedy: (status != Status::Ok).then(|| {
            let most = limits.most(draft.units);
            Remedy {
                says: format!("lay it at most {} deep", draft.units.depth(most)),
                quantity: Some(most.mm()),
                unit: "mm",
            }
        }),
        basis: Basis::Practice,
        source: None,
    }
}
