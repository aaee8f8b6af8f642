//! `water.soft`: alkalinity that nitrification uses up.

use super::case::FlushCase;
use super::declaration::{About, Judge, Rule};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::plan::outcome::Plan;
use crate::source::{Basis, Source};
use crate::units::show;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::WaterSoft,
    about: About::Tank,
    judge: Judge::Flush(|case| vec![judged(case)]),
    orders: &[Action::ChangeWater],
    steps,
    explanation: Explanation {
        asks: "Does nitrification use up the alkalinity?",
        limits: || {
            format!(
                "watch where less than {LOW_ALKALINITY_MEQ_L} meq/L is left in the typical run, act where it runs out"
            )
        },
        formula: || {
            "alkalinity left = tap alkalinity - 0.0714 meq per mg N x (2 oxidised + taken up as ammonium - set free as ammonium - taken up or lost as nitrate), renewed by water changes".to_owned()
        },
        symbols: &[],
        range: || {
            "nitrogen that goes from soil or feed to nitrate costs one equivalent, from tap ammonia two; what soils give beside that is left out".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[Source::TimmonsEbeling],
    },
};

/// Alkalinity under which nitrification slows, meq/L: judgement, about 1.4 dKH.
const LOW_ALKALINITY_MEQ_L: f64 = 0.5;

/// Alkalinity that nitrification uses up.
fn judged(case: &FlushCase<'_>) -> Finding {
    let tap = case.design.draft().water.alkalinity;
    let used = case.alkalinity_used;
    let left = tap.meq_l() - used.value.typical;
    let status = if left <= 0.0 {
        Status::Act
    } else if left < LOW_ALKALINITY_MEQ_L {
        Status::Watch
    } else {
        Status::Ok
    };
    let figures = format!(
        "{} of {} meq/L",
        show::significant(used.value.typical.max(0.0), 2),
        show::significant(tap.meq_l(), 2)
    );
    Finding {
        code: Code::WaterSoft,
        status,
        subject: "alkalinity".to_owned(),
        value: Some(left),
        unit: "meq/L",
        low: Some(LOW_ALKALINITY_MEQ_L),
        high: None,
        says: match status {
            Status::Act => format!(
                "nitrification would use {figures} by day {:.0} and stall",
                used.day.typical
            ),
            Status::Watch => format!("nitrification uses {figures}: pH falls and it slows"),
            _ => format!("nitrification uses {figures}"),
        },
        remedy: (status >= Status::Watch).then(|| Remedy {
            says: "change water weekly, or add crushed coral or bicarbonate; not while ammonia is high, which a rising pH makes toxic".to_owned(),
            quantity: Some(LOW_ALKALINITY_MEQ_L - left),
            unit: "meq/L",
        }),
        basis: Basis::Judgement,
        source: None,
    }
}

fn steps(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let tap = design.draft().water.alkalinity.meq_l();
    let left = plan
        .findings
        .iter()
        .find(|finding| finding.code == Code::WaterSoft)
        .and_then(|finding| finding.value)
        .unwrap_or(tap);
    vec![
        step("alkalinity of the tap water", tap, "meq/L"),
        step("used at most by nitrification", tap - left, "meq/L"),
        step("left", left, "meq/L"),
    ]
}
