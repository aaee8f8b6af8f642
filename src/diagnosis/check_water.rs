//! `check.water`: the last readings against their limits.

use super::Diagnosis;
use super::case::CaseHistory;
use super::measurement::{Measurand, Measurement};
use crate::finding::{Code, Explanation, Finding, Status, WorkingStep, step};
use crate::plan::{act_limit_mg_l, watch_limit_mg_l};
use crate::source::{Basis, Source};
use crate::startup::limits;
use crate::units::show::significant;

/// What stands behind it.
pub(super) const EXPLANATION: Explanation = Explanation {
    asks: "Are the last readings within their limits?",
    limits: || {
        let (ammonia, nitrite, nitrate) = (limits::AMMONIA, limits::NITRITE, limits::NITRATE);
        format!(
            "ammonia from {} mg N/L watch, from {:.1} act; nitrite from {} mg/L watch, from {:.1} act; nitrate from {} mg/L watch, from {} act; [goal] replaces what is watched",
            ammonia.watch, ammonia.act, nitrite.watch, nitrite.act, nitrate.watch, nitrate.act
        )
    },
    formula: || {
        format!(
            "un-ionised ammonia = TAN / (1 + 10^(0.09018 + 2729.92/T - pH)), from {} mg N/L on a step that cannot wait",
            limits::UN_IONISED.act
        )
    },
    symbols: &["TAN: total ammonia as nitrogen", "T: temperature in K"],
    range: || {
        "one reading off a colour card is good to a fifth; a tank without animals has nothing to be hurried for".to_owned()
    },
    basis: Basis::Judgement,
    sources: &[
        Source::EpaAmmonia2013,
        Source::Kroupova2008,
        Source::Camargo2005,
        Source::Emerson1975,
    ],
};

/// The findings on the last readings.
pub(super) fn judged(case: &CaseHistory<'_>) -> impl Iterator<Item = Finding> {
    let read = [Measurand::Ammonia, Measurand::Nitrite, Measurand::Nitrate].into_iter();
    read.filter_map(|of| water(case, &case.latest(of)?))
}

/// The last reading of a nutrient against its limits.
fn water(case: &CaseHistory<'_>, reading: &Measurement) -> Option<Finding> {
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

pub(super) fn steps(diagnosis: &Diagnosis) -> Vec<WorkingStep> {
    let findings = diagnosis.findings.iter();
    findings
        .filter(|finding| finding.code == Code::CheckWater)
        .flat_map(|finding| {
            let read = finding
                .value
                .map(|value| step(&format!("{} read", finding.subject), value, finding.unit));
            let limit = finding.high.map(|high| {
                step(
                    &format!("{} watched from", finding.subject),
                    high,
                    finding.unit,
                )
            });
            [read, limit].into_iter().flatten()
        })
        .collect()
}
