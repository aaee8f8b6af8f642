//! A number held against its limits.

use crate::finding::{Code, Finding, Remedy, Status};
use crate::source::{Basis, Source};

/// A number held against its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Verdict {
    /// How it stands.
    pub status: Status,
    /// The number.
    pub value: f64,
    /// Its unit and that of the limits.
    pub unit: &'static str,
    /// Below this the status is worse than ok.
    pub low: Option<f64>,
    /// Above this the status is worse than ok.
    pub high: Option<f64>,
    /// What the limits rest on.
    pub basis: Basis,
    /// Their source, where there is one.
    pub source: Option<Source>,
}

pub(super) fn finding(
    code: Code,
    verdict: Verdict,
    subject: &str,
    says: String,
    remedy: Option<Remedy>,
) -> Finding {
    Finding {
        code,
        status: verdict.status,
        subject: subject.to_owned(),
        value: Some(verdict.value),
        unit: verdict.unit,
        low: verdict.low,
        high: verdict.high,
        says,
        remedy,
        basis: verdict.basis,
        source: verdict.source,
    }
}
