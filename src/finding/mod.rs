//! Judged results: a finding, its remedy, a caution, and the working behind a number.

pub mod action;
pub mod caution;
pub mod code;
pub mod explanation;
pub mod status;
pub mod working;

pub use action::Action;
pub use caution::Caution;
pub use code::Code;
pub use explanation::{Explanation, Sentence};
pub use status::Status;
pub use working::{Step, Working, step};

use serde::Serialize;

use crate::source::{Basis, Source};

/// One judged result.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Finding {
    /// Which rule judged.
    pub code: Code,
    /// How it stands.
    pub status: Status,
    /// What was judged, in words: "cap at the front".
    pub subject: String,
    /// The number that was held against the limits.
    pub value: Option<f64>,
    /// The unit of the value and the limits.
    pub unit: &'static str,
    /// Below this the status is worse than ok.
    pub low: Option<f64>,
    /// Above this the status is worse than ok.
    pub high: Option<f64>,
    /// The result in one or two sentences.
    pub says: String,
    /// What to do, where something is to be done.
    pub remedy: Option<Remedy>,
    /// What the limits rest on.
    pub basis: Basis,
    /// The source of the limits, where there is one.
    pub source: Option<Source>,
}

/// What to do about a finding, with its quantity.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Remedy {
    /// The step in one sentence.
    pub says: String,
    /// How much of it.
    pub quantity: Option<f64>,
    /// The unit of the quantity.
    pub unit: &'static str,
}
