//! What stands behind each finding and each figure.

use std::sync::OnceLock;

use serde::ser::SerializeStruct;
use serde::{Deserialize, Serialize, Serializer};

use super::row;
use crate::source::{Basis, Source};

/// What stands before the code of a finding whose status is a result of a row.
pub const FINDINGS: &str = "findings.";

/// The rule behind a finding code, or the formula behind figures that no finding judges.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
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
    pub basis: Basis,
    /// Keys of the sources.
    pub source: Vec<Source>,
}

/// The formulas behind figures that no finding judges.
pub fn figures() -> &'static [Topic] {
    static TOPICS: OnceLock<Vec<Topic>> = OnceLock::new();
    TOPICS.get_or_init(|| row::read(include_str!("data/topics.toml")))
}

impl Topic {
    /// What it rests on, in words.
    pub const fn rests_on(&self) -> &'static str {
        if self.source.is_empty() {
            self.basis.words()
        } else {
            self.basis.words_beside_sources()
        }
    }
}

impl Serialize for Topic {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut topic = serializer.serialize_struct("Topic", 8)?;
        topic.serialize_field("code", &self.code)?;
        topic.serialize_field("asks", &self.asks)?;
        topic.serialize_field("rule", &self.rule)?;
        topic.serialize_field("formula", &self.formula)?;
        topic.serialize_field("symbols", &self.symbols)?;
        topic.serialize_field("range", &self.range)?;
        topic.serialize_field("basis", self.rests_on())?;
        topic.serialize_field("source", &self.source)?;
        topic.end()
    }
}
