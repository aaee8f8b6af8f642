//! The numbers behind a check's findings.

use super::{Diagnosis, check_cause, check_water};
use crate::dosing;
use crate::finding::{Code, Working, WorkingStep, step};

/// The steps behind a topic of a check.
pub fn working_of(diagnosis: &Diagnosis, code: &str) -> Working {
    match (Code::find(code), code) {
        (Some(code), _) => working(diagnosis, code),
        (None, "check.fit") => Working {
            steps: members(diagnosis),
        },
        _ => Working {
            steps: diagnosis
                .given
                .as_ref()
                .map_or_else(Vec::new, |given| dosing::steps(given, code)),
        },
    }
}

/// The steps behind a finding of a check.
pub fn working(diagnosis: &Diagnosis, code: Code) -> Working {
    let steps = match code {
        Code::CheckCause => check_cause::steps(diagnosis),
        Code::CheckWater => check_water::steps(diagnosis),
        _ => Vec::new(),
    };
    Working { steps }
}

fn members(diagnosis: &Diagnosis) -> Vec<WorkingStep> {
    let for_each = f64::from(diagnosis.members.max(1));
    let causes = diagnosis.causes.len() as f64;
    vec![
        step("members for each cause", for_each, ""),
        step("causes", causes, ""),
        step(
            "effective members left by the readings",
            diagnosis.effective_members,
            "",
        ),
    ]
}
