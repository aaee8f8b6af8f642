//! `check.cause`: the likeliest cause of what was read and seen.

use super::cause::Cause;
use super::{CauseResult, Diagnosis};
use crate::finding::{Code, Explanation, Finding, Status, WorkingStep, step};
use crate::source::{Basis, Source};

/// A cause is taken to be at work from this probability on (judgement).
const LIKELY: f64 = 0.5;

/// What stands behind it.
pub(super) const EXPLANATION: Explanation = Explanation {
    asks: "Which cause goes best with what was read and seen?",
    limits: || {
        let percent = LIKELY * 100.0;
        format!(
            "every cause starts even; watch where one that is not \"as expected\" reaches {percent} %; under {percent} % and less than twice the next they are called alike"
        )
    },
    formula: || {
        "p(cause | all) ~ p(cause) mean over members of prod P(reading | member) x prod P(sign | cause) x prod P(fact | cause); weight of evidence = log10(P(evidence | cause) / mean over causes)".to_owned()
    },
    symbols: &[
        "member: one run of the start-up model with the cause's change and one draw of its uncertain numbers",
        "P(reading | member): a log-normal error of a fifth with one of the model beside it, cut at the marks of the kit's card, open at both ends",
        "P(sign | cause): usual share times the ratio of lentic list signs, 85 % of it written down",
        "fact: what the spec itself says",
    ],
    range: || {
        "ratios of signs and facts are practice put into figures, not counts; of a cause outside the list no more is said than that it is none of these; causes that show alike in the water are told apart by signs alone".to_owned()
    },
    basis: Basis::Judgement,
    sources: &[Source::Good1985],
};

/// The leading cause.
pub(super) fn judged(first: &CauseResult, alike: &[Cause]) -> Finding {
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

pub(super) fn steps(diagnosis: &Diagnosis) -> Vec<WorkingStep> {
    let mut steps = vec![step(
        "probability of each cause before any evidence",
        diagnosis.prior,
        "",
    )];
    if let Some(first) = diagnosis.leading() {
        steps.extend(first.evidence.iter().map(|evidence| {
            step(
                &format!("weight of: {}", evidence.says),
                evidence.weight,
                "(log10)",
            )
        }));
        steps.push(step(
            &format!("probability of {}", first.cause.label()),
            first.probability,
            "",
        ));
    }
    if let Some(second) = diagnosis.causes.get(1) {
        steps.push(step(
            &format!("probability of {}, the next", second.cause.label()),
            second.probability,
            "",
        ));
    }
    steps
}
