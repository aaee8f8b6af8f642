//! `flush.nitrite`: how high nitrite rises.

use super::case::FlushCase;
use super::declaration::{About, Judge, Rule};
use super::peak::{self, JudgedPeak};
use crate::finding::{Action, Code, Explanation, Finding};
use crate::plan::load::JUDGED_DAYS;
use crate::source::{Basis, Source};
use crate::startup::limits::{self};
use crate::units::Analyte;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::FlushNitrite,
    about: About::Tank,
    judge: Judge::Flush(|case| vec![judged(case)]),
    orders: &[Action::LayBed, Action::Plant, Action::ChangeWater],
    steps: |_, plan| peak::steps(plan),
    explanation: Explanation {
        asks: "How high does nitrite rise?",
        limits: || {
            format!(
                "from day {} on, typical peak from {} mg NO2/L watch, from {:.1} act; [goal] replaces the watch limit",
                JUDGED_DAYS.0,
                limits::NITRITE.watch,
                limits::NITRITE.act
            )
        },
        formula: || {
            "dNO2/dt = (ammonia oxidised - nitrite oxidised - taken by plants - denitrified) / z"
                .to_owned()
        },
        symbols: &["z: water over a square metre of floor"],
        range: || {
            format!(
                "chloride protects many animals; limits are for soft water. {} lies above the lowest effect published, {} mg NO2/L (none at {})",
                limits::NITRITE.watch,
                limits::NITRITE_LOWEST_EFFECT_MG_L,
                limits::NITRITE_NO_EFFECT_MG_L
            )
        },
        basis: Basis::Judgement,
        sources: &[
            Source::Kroupova2008,
            Source::HiattGrady2008,
            Source::Sin2008,
            Source::VanneckeVolcke2015,
        ],
    },
};

/// How high nitrite rises.
fn judged(case: &FlushCase<'_>) -> Finding {
    let peak = case.startup.nitrite_peak_mg_l;
    let watch = case.watch_limit(Analyte::Nitrite, limits::NITRITE.watch);
    peak::finding(
        case,
        Code::FlushNitrite,
        peak::status(peak.typical(), (watch, limits::NITRITE.act)),
        &JudgedPeak {
            name: "nitrite",
            unit: "mg NO2/L",
            value: peak,
            day: Some(case.startup.nitrite_peak_day),
            watch,
            share_over: case.startup.share_over_limit.nitrite,
            aside: String::new(),
        },
        &limits::NITRITE,
    )
}
