//! `check.water` and `check.cause`.

use super::CauseResult;
use super::case::Case;
use super::cause::Cause;
use super::measurement::{Measurement, Subject};
use crate::finding::{Code, Finding, Status};
use crate::plan::{act_limit_mg_l, watch_limit_mg_l};
use crate::source::Basis;
use crate::units::show::significant;

/// A cause is taken to be at work from this probability on (judgement).
const LIKELY: f64 = 0.5;

/// The findings of a check beside those on the bed.
pub(super) fn all(case: &Case<'_>, causes: &[CauseResult], alike: &[Cause]) -> Vec<Finding> {
    let mut findings: Vec<Finding> = [Subject::Ammonia, Subject::Nitrite, Subject::Nitrate]
        .into_iter()
        .filter_map(|of| water(case, &case.latest(of)?))
        .collect();
    if !case.is_blind() {
        findings.extend(causes.first().map(|first| cause(first, alike)));
    }
    findings
}

/// The last reading of a nutrient against its limits.
fn water(case: &Case<'_>, reading: &Measurement) -> Option<Finding> {
    let analyte = reading.of.analyte()?;
    let watch = watch_limit_mg_l(case.design, analyte)?;
    let act = act_limit_mg_l(analyte)?;
    let value = reading.value.at_least();
    let status = match value {
        value if value >= act => Status::Act,
        value if value >= watch => Status::Watch,
        _ => Status::Ok,
    };
    let word = reading.of.word();
    Some(Finding {
        code: Code::CheckWater,
        status,
        subject: word.to_owned(),
        value: Some(value),
        unit: "mg/L",
        low: None,
        high: Some(watch),
        says: format!(
            "{word} was last read at {} mg/L, on day {}",
            reading.value.shown(2),
            significant(reading.day, 3)
        ),
        remedy: None,
        basis: Basis::Judgement,
        source: None,
    })
}

/// The leading cause.
fn cause(first: &CauseResult, alike: &[Cause]) -> Finding {
    let is_sound = first.cause == Cause::AsExpected;
    let status = match first.probability {
        _ if is_sound => Status::Ok,
        probability if probability >= LIKELY => Status::Watch,
        _ => Status::Note,
    };
    let percent = format!("{:.0} %", first.probability * 100.0);
    let says = if alike.is_empty() {
        format!("{} ({percent}): {}", first.cause.label(), first.says)
    } else {
        let others: Vec<&str> = alike.iter().skip(1).map(|cause| cause.label()).collect();
        format!(
            "{} ({percent}), not to be told apart from {}",
            first.cause.label(),
            others.join(", ")
        )
    };
    Finding {
        code: Code::CheckCause,
        status,
        subject: first.cause.label().to_owned(),
        value: Some(first.probability),
        unit: "probability",
        low: None,
        high: None,
        says,
        remedy: None,
        basis: Basis::Judgement,
        source: None,
    }
}
