//! The numbers behind a check's findings.

use super::Diagnosis;
use crate::finding::{Code, Step, Working};

/// The steps behind a topic of a check.
pub fn worked(diagnosis: &Diagnosis, code: &str) -> Working {
    match (Code::find(code), code) {
        (Some(code), _) => working(diagnosis, code),
        (None, "check.fit") => Working {
            steps: members(diagnosis),
        },
        _ => Working { steps: Vec::new() },
    }
}

/// The steps behind a finding of a check.
pub fn working(diagnosis: &Diagnosis, code: Code) -> Working {
    let steps = match code {
        Code::CheckCause => cause(diagnosis),
        Code::CheckWater => water(diagnosis),
        _ => Vec::new(),
    };
    Working { steps }
}

fn step(name: String, value: f64, unit: &'static str) -> Step {
    Step { name, value, unit }
}

fn members(diagnosis: &Diagnosis) -> Vec<Step> {
    let for_each = f64::from(diagnosis.members.max(1));
    let causes = diagnosis.causes.len() as f64;
    vec![
        step("members for each cause".to_owned(), for_each, ""),
        step("causes".to_owned(), causes, ""),
        step(
            "effective members left by the readings".to_owned(),
            diagnosis.effective_members,
            "",
        ),
    ]
}

fn cause(diagnosis: &Diagnosis) -> Vec<Step> {
    let mut steps = vec![step(
        "probability of each cause before any evidence".to_owned(),
        diagnosis.prior,
        "",
    )];
    if let Some(first) = diagnosis.leading() {
        steps.extend(first.evidence.iter().map(|evidence| {
            step(
                format!("weight of: {}", evidence.says),
                evidence.weight,
                "(log10)",
            )
        }));
        steps.push(step(
            format!("probability of {}", first.cause.label()),
            first.probability,
            "",
        ));
    }
    if let Some(second) = diagnosis.causes.get(1) {
        steps.push(step(
            format!("probability of {}, the next", second.cause.label()),
            second.probability,
            "",
        ));
    }
    steps
}

fn water(diagnosis: &Diagnosis) -> Vec<Step> {
    let findings = diagnosis.findings.iter();
    findings
        .filter(|finding| finding.code == Code::CheckWater)
        .flat_map(|finding| {
            let read = finding
                .value
                .map(|value| step(format!("{} read", finding.subject), value, finding.unit));
            let limit = finding.high.map(|high| {
                step(
                    format!("{} watched from", finding.subject),
                    high,
                    finding.unit,
                )
            });
            [read, limit].into_iter().flatten()
        })
        .collect()
}
