//! `flush.nitrate`: how high nitrate rises.

use super::case::FlushCase;
use super::declaration::{About, Judge, Rule};
use super::peak::{self, JudgedPeak};
use crate::finding::{Action, Code, Explanation, Finding};
use crate::source::{Basis, Source};
use crate::startup::limits::{self};
use crate::units::Analyte;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::FlushNitrate,
    about: About::Tank,
    judge: Judge::Flush(|case| vec![judged(case)]),
    orders: &[Action::LayBed, Action::Plant, Action::ChangeWater],
    steps: |_, plan| peak::steps(plan),
    explanation: Explanation {
        asks: "How high does nitrate rise?",
        limits: || {
            format!(
                "typical peak from {} mg NO3/L watch (common practice), from {} act; [goal] replaces the watch limit",
                limits::NITRATE.watch,
                limits::NITRATE.act
            )
        },
        formula: || "dNO3/dt = (nitrite oxidised - taken by plants - denitrified) / z".to_owned(),
        symbols: &["z: water over a square metre of floor"],
        range: || {
            "long exposure of sensitive animals counts from 10 mg N/L, 44 mg NO3/L".to_owned()
        },
        basis: Basis::Practice,
        sources: &[Source::Camargo2005, Source::Veraart2011],
    },
};

/// How high nitrate rises.
fn judged(case: &FlushCase<'_>) -> Finding {
    let peak = case.startup.nitrate_peak_mg_l;
    let watch = case.watch_limit(Analyte::Nitrate, limits::NITRATE.watch);
    peak::finding(
        case,
        Code::FlushNitrate,
        peak::status(peak.typical(), (watch, limits::NITRATE.act)),
        &JudgedPeak {
            name: "nitrate",
            unit: "mg NO3/L",
            value: peak,
            day: None,
            watch,
            share_over: case.startup.share_over_limit.nitrate,
            aside: String::new(),
        },
        &limits::NITRATE,
    )
}
