//! Warnings that go with a design whatever its findings.

use serde::Serialize;

use crate::source::Source;

/// A hazard, or a limit of what was computed, said in one or two sentences.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Caution {
    /// Its stable name: `hazard.silica_dust`, `range.temperature`.
    pub code: &'static str,
    /// The warning.
    pub says: String,
    /// Its source, where there is one.
    pub source: Option<Source>,
}
