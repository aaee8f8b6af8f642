//! `soil.thin` and `soil.deep`.

use crate::design::Design;
use crate::finding::{Code, Finding, Remedy, Status};
use crate::plan::words;
use crate::source::Basis;
use crate::substrate::verdict::{Richness, SoilDepth, SoilDepthLimits};

fn limits(design: &Design) -> SoilDepthLimits {
    SoilDepthLimits::of(if design.draft().soil.material.rich {
        Richness::Rich
    } else {
        Richness::Plain
    })
}

fn verdict(design: &Design) -> SoilDepth {
    let soil = &design.bed().soil;
    limits(design).judge(soil.mean, soil.deepest.depth)
}

/// Soil too shallow to feed rooted plants.
pub(in crate::plan) fn thin(design: &Design) -> Finding {
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

/// Soil deep enough to turn foul.
pub(in crate::plan) fn deep(design: &Design) -> Finding {
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
        remedy: (status != Status::Ok).then(|| Remedy {
            says: format!("lay it less than {} deep", draft.units.depth(limits.watch)),
            quantity: Some(limits.watch.mm()),
            unit: "mm",
        }),
        basis: Basis::Practice,
        source: None,
    }
}
