//! What stands behind each finding and each figure.

use std::sync::OnceLock;

use serde::{Deserialize, Serialize, Serializer};

use super::row;
use crate::source::{Basis, Source};

/// What stands before the code of a finding whose status is a result of a row.
pub const FINDINGS: &str = "findings.";

/// The rule behind a finding code, or the formula behind figures that no finding judges.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Topic {
    /// The finding's code, or a name of the same form.
    pub code: String,
    /// The question it answers.
    pub asks: String,
    /// The limits.
    pub rule: String,
    /// The formula.
    pub formula: String,
    /// What its symbols mean.
    pub symbols: Vec<String>,
    /// How far it holds.
    pub range: String,
    /// What it rests on; written in words.
    #[serde(serialize_with = "in_words")]
    pub basis: Basis,
    /// Keys of the sources.
    pub source: Vec<Source>,
}

/// The formulas behind figures that no finding judges.
pub fn figures() -> &'static [Topic] {
    static TOPICS: OnceLock<Vec<Topic>> = OnceLock::new();
    TOPICS.get_or_init(|| row::read(include_str!("data/topics.toml")))
}

/// The basis as explanations have it.
#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "the signature is that of the serialiser"
)]
fn in_words<S: Serializer>(basis: &Basis, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(basis.words())
}
