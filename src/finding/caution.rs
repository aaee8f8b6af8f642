//! Warnings that go with a design whatever its findings.

use serde::Serialize;

use crate::result::results;
use crate::source::Source;

results! {
    /// A hazard, or a limit of what was computed, said in one or two sentences.
    ///
    /// Names are stable: `hazard.silica_dust`, `range.temperature`.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Caution {
        /// the caution's name
        pub code: &'static str => Caution,
        /// the warning
        pub says: String => Caution,
        /// its source, by its key in lentic list sources
        pub source: Option<Source> => Caution,
    }
}
