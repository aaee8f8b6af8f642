//! `plants.cover`: share of the surface under floaters.

use super::declaration::{About, Judge, Rule};
use crate::catalogue::PlantGroup;
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, step};
use crate::source::{Basis, Source};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::PlantsCover,
    about: About::Tank,
    judge: Judge::Design(|design| vec![judged(design)]),
    orders: &[Action::Plant],
    steps: |_, plan| vec![step("cover", plan.planting.floating_cover_pct, "%")],
    explanation: Explanation {
        asks: "Do the floaters leave light for the plants below?",
        limits: || {
            format!(
                "from {COVER_WATCH_PCT} % cover watch, from {COVER_ACT_PCT} % act; a note only where nothing but shade plants grows below"
            )
        },
        formula: || "share of the surface under floaters".to_owned(),
        symbols: &[],
        range: || {
            format!(
                "measured: two submerged plants grew under 33 % cover and shrank under 66 %; {COVER_WATCH_PCT} % between them is judgement"
            )
        },
        basis: Basis::Judgement,
        sources: &[Source::Larson2007],
    },
};

/// Floating cover from which the plants below are watched, and from which they starve, %.
const COVER_WATCH_PCT: f64 = 50.0;

const COVER_ACT_PCT: f64 = 66.0;

/// Share of the surface under floaters.
fn judged(design: &Design) -> Finding {
    let cover = design.planted().cover.percent();
    let below = plants_below(design);
    let status = match cover {
        _ if cover < COVER_WATCH_PCT || below == Below::Nothing => Status::Ok,
        _ if below == Below::ShadePlants => Status::Note,
        _ if cover < COVER_ACT_PCT => Status::Watch,
        _ => Status::Act,
    };
    let says = match status {
        Status::Ok => format!("floaters cover {cover:.0} % of the surface"),
        Status::Note => format!("floaters cover {cover:.0} %; only shade plants grow below"),
        Status::Watch => format!("floaters cover {cover:.0} %: plants below grow poorly"),
        Status::Act => format!("floaters cover {cover:.0} %: plants below starve"),
    };
    Finding {
        code: Code::PlantsCover,
        status,
        subject: "floaters".to_owned(),
        value: Some(cover),
        unit: "%",
        low: None,
        high: Some(COVER_WATCH_PCT),
        says,
        remedy: (status >= Status::Watch).then(|| Remedy {
            says: format!("thin them to under {COVER_WATCH_PCT:.0} % of the surface"),
            quantity: Some(cover - COVER_WATCH_PCT),
            unit: "%",
        }),
        basis: Basis::Judgement,
        source: Some(Source::Larson2007),
    }
}

/// What grows below the floaters.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Below {
    Nothing,
    ShadePlants,
    LightPlants,
}

fn plants_below(design: &Design) -> Below {
    let mut below = design
        .draft()
        .plants
        .iter()
        .filter(|planting| planting.plant.group != PlantGroup::Floater)
        .peekable();
    if below.peek().is_none() {
        Below::Nothing
    } else if below.all(|planting| planting.plant.shade_plant) {
        Below::ShadePlants
    } else {
        Below::LightPlants
    }
}
