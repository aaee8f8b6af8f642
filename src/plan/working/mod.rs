//! The working behind a finding: its formula followed through with a design's numbers.

mod bed;
mod daily;
mod figure;
mod flush;
mod vessel;

use super::Plan;
use crate::design::Design;
use crate::finding::{Code, Step, Working};

/// The steps behind a topic: those of its finding, or of the figures that rest on it. None
/// where nothing stands between what goes in and what comes out.
pub fn worked(design: &Design, plan: &Plan, code: &str) -> Working {
    match Code::find(code) {
        Some(code) => working(design, plan, code),
        None => Working {
            steps: figure::steps(design, plan, code),
        },
    }
}

/// The steps behind one finding of a plan.
pub fn working(design: &Design, plan: &Plan, code: Code) -> Working {
    let steps = match code {
        Code::CapCoarse => bed::coarse(design),
        Code::CapFine => bed::fine(design),
        Code::CapThin => bed::thin(design),
        Code::CapLeak => bed::leak(design, plan),
        Code::CapDeep | Code::SoilThin | Code::SoilDeep => bed::depths(design),
        Code::CapSlope => bed::slope(design),
        Code::BedGas => vec![
            step(
                "gas made over gas that diffuses out, G",
                plan.bed.gas_ratio,
                "",
            ),
            step(
                "entry pressure over overburden, M",
                plan.bed.entry_over_overburden,
                "",
            ),
        ],
        Code::BedOxygen => vec![step("oxic front", plan.bed.oxic_front_mm, "mm")],
        Code::PlantsLoad | Code::PlantsMix => flush::load(plan),
        Code::PlantsCover => vec![step("cover", plan.planting.floating_cover_pct, "%")],
        Code::PlantsListed | Code::CheckWater | Code::CheckCause => Vec::new(),
        Code::AnimalsDiggers => bed::diggers(design),
        Code::AirDawn => daily::dawn(plan),
        Code::FlowSlack | Code::FlowStrong => daily::flow(plan),
        Code::LightShort | Code::LightLong => daily::light(design, plan),
        Code::AnimalsLoad => daily::animals(plan),
        Code::FlushAmmonia | Code::FlushNitrite | Code::FlushNitrate => flush::flush(plan),
        Code::AnimalsEarly => flush::early(design, plan),
        Code::WaterSoft => flush::soft(design, plan),
        Code::WeightFloor => vessel::weight(plan),
        Code::GlassPane => vessel::panes(design, plan),
    };
    Working { steps }
}

fn step(name: &str, value: f64, unit: &'static str) -> Step {
    Step {
        name: name.to_owned(),
        value,
        unit,
    }
}
