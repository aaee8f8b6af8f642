//! A formula followed through with the numbers of one design.

use serde::Serialize;

/// The working behind a number.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Working {
    /// The lines of the calculation, in order.
    pub steps: Vec<WorkingStep>,
}

/// One line of a working.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WorkingStep {
    /// What is computed.
    pub name: String,
    /// Its value.
    pub value: f64,
    /// The value's unit; empty for a pure number.
    pub unit: &'static str,
}

/// One line of a working.
pub fn step(name: &str, value: f64, unit: &'static str) -> WorkingStep {
    WorkingStep {
        name: name.to_owned(),
        value,
        unit,
    }
}
