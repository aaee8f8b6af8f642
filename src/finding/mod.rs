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
pub use working::{Working, WorkingStep, step};

use serde::Serialize;

use crate::result::results;
use crate::source::{Basis, Source};

results! {
    /// One judged result.
    ///
    /// The subject is said in words: "cap at the front".
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Finding {
        /// which rule judged
        pub code: Code => Finding,
        /// how it stands: ok, note, watch or act
        pub status: Status => Finding,
        /// what was judged
        pub subject: String => Finding,
        /// the number held against the limits, in the unit beside it
        pub value: Option<f64> => Finding,
        /// unit of the value and its limits
        pub unit: &'static str => Finding,
        /// below this it is worse than ok
        pub low: Option<f64> => Finding,
        /// above this it is worse than ok
        pub high: Option<f64> => Finding,
        /// the finding in a sentence or two
        pub says: String => Finding,
        /// what to do, or null where there is nothing to do
        pub remedy: Option<Remedy> => Finding,
        /// what the limits rest on: published, practice, judgement, measured, memory
        pub basis: Basis => Finding,
        /// source of the limits, by its key in lentic list sources
        pub source: Option<Source> => Finding,
    }

    /// What to do about a finding, with its quantity.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Remedy {
        /// the step in one sentence
        pub says: String => Finding,
        /// how much of it, in the unit beside it
        pub quantity: Option<f64> => Finding,
        /// unit of that quantity
        pub unit: &'static str => Finding,
    }
}
