//! What stands behind each finding.

use std::sync::OnceLock;

use serde::Deserialize;

use super::row;
use crate::source::Basis;

/// The rule behind a finding code.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Topic {
    /// The finding's code.
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
    /// What it rests on.
    pub basis: Basis,
    /// Keys of the sources.
    pub source: Vec<String>,
}

/// Every topic.
pub fn topics() -> &'static [Topic] {
    static TOPICS: OnceLock<Vec<Topic>> = OnceLock::new();
    TOPICS.get_or_init(|| row::read(include_str!("data/topics.toml")))
}

/// The topic of a finding code.
pub fn topic(code: &str) -> Option<&'static Topic> {
    topics().iter().find(|topic| topic.code == code)
}
