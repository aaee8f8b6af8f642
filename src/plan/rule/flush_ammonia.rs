//! `flush.ammonia`: how high ammonia rises, in total and un-ionised.

use super::case::FlushCase;
use super::declaration::{About, Judge, Rule};
use super::peak::{self, JudgedPeak};
use crate::finding::{Action, Code, Explanation, Finding};
use crate::plan::load::JUDGED_DAYS;
use crate::source::{Basis, Source};
use crate::startup::limits::{self};
use crate::units::constants::molar_mass;
use crate::units::{Analyte, show};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::FlushAmmonia,
    about: About::Tank,
    judge: Judge::Flush(|case| vec![judged(case)]),
    orders: &[Action::LayBed, Action::Plant, Action::ChangeWater],
    steps: |_, plan| peak::steps(plan),
    explanation: Explanation {
        asks: "How high does ammonia rise?",
        limits: || {
            let (total, un_ionised) = (limits::AMMONIA, limits::UN_IONISED);
            format!(
                "from day {} on, typical peak from {} mg N/L watch, from {:.1} act; un-ionised ammonia, at the pH of that day's dusk, from {} mg N/L watch, from {} act; [goal] replaces the watch limit",
                JUDGED_DAYS.0, total.watch, total.act, un_ionised.watch, un_ionised.act
            )
        },
        formula: || {
            "dTAN/dt = (release + feed + returned by dying plants - taken by plants - oxidised) / z; un-ionised share = 1 / (1 + 10^(pKa - pH)), pKa = 0.09018 + 2729.92 / T".to_owned()
        },
        symbols: &[
            "TAN: total ammonia as nitrogen",
            "z: water over a square metre of floor",
        ],
        range: || {
            format!(
                "an ensemble over the soil's, the plants' and the bacteria's uncertain numbers; the share of it over the limit is printed beside the typical peak. No source holds the limits: {} mg N/L un-ionised lies above the Canadian guideline of {} mg NH3/L, which is {:.3} mg N/L",
                limits::UN_IONISED.watch,
                limits::GUIDELINE_UN_IONISED_MG_NH3_L,
                limits::GUIDELINE_UN_IONISED_MG_NH3_L * molar_mass::N / molar_mass::NH3
            )
        },
        basis: Basis::Judgement,
        sources: &[
            Source::EpaAmmonia2013,
            Source::CcmeAmmonia,
            Source::Emerson1975,
            Source::HiattGrady2008,
            Source::Sin2008,
            Source::VanneckeVolcke2015,
            Source::EpaNitrogen1993,
        ],
    },
};

/// How high ammonia rises, in total and un-ionised.
fn judged(case: &FlushCase<'_>) -> Finding {
    let peak = case.startup.ammonia_peak_mg_l;
    let un_ionised = case.startup.un_ionised_peak_mg_l;
    let watch = case.watch_limit(Analyte::Ammonia, limits::AMMONIA.watch);
    let status = peak::status(peak.typical(), (watch, limits::AMMONIA.act)).max(peak::status(
        un_ionised.typical(),
        (limits::UN_IONISED.watch, limits::UN_IONISED.act),
    ));
    peak::finding(
        case,
        Code::FlushAmmonia,
        status,
        &JudgedPeak {
            name: "ammonia",
            unit: "mg N/L",
            value: peak,
            day: Some(case.startup.ammonia_peak_day),
            watch,
            share_over: case.startup.share_over_limit.ammonia,
            aside: format!(
                ", {} of it un-ionised",
                show::significant(un_ionised.typical().max(0.0), 1)
            ),
        },
        &limits::AMMONIA,
    )
}
