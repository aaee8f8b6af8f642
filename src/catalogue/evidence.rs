//! What speaks for which cause of trouble: signs, facts of a spec, and questions that a look
//! answers, in one table.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use serde::{Deserialize, Serialize};

use super::Sign;
use super::row::parsed;
use crate::source::Basis;

/// How often something is so, by what is amiss.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Odds {
    /// How often it is so where nothing speaks for it, 0 to 1.
    pub usual: f64,
    /// By the name of a cause, how many times as often it is so where that is at work.
    pub speaks_for: BTreeMap<String, f64>,
    /// By the name of a cause, why.
    #[serde(default)]
    pub because: BTreeMap<String, String>,
}

impl Odds {
    /// How often it is so where a cause is at work, before any limit.
    ///
    /// ```text
    /// usual x ratio        ratio: 1 where the table names none
    /// ```
    pub fn share(&self, cause: &str) -> f64 {
        self.usual * self.speaks_for.get(cause).copied().unwrap_or(1.0)
    }
}

/// Something that the spec and the readings say by themselves.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct SpecFact {
    /// Name in snake case.
    pub name: String,
    /// Its name in results.
    pub reading: String,
    /// What it says of the tank where it holds.
    pub says: String,
    /// What it says where it does not.
    pub says_not: String,
    /// What the row rests on.
    pub basis: Basis,
    /// How often it holds.
    #[serde(flatten)]
    pub odds: Odds,
}

/// Something that can be looked at or measured at home.
#[derive(Debug, Clone, PartialEq, Deserialize)]
pub struct LookQuestion {
    /// Name in snake case.
    pub name: String,
    /// Its name in results.
    pub reading: String,
    /// What to do for an answer, as an order.
    pub asks: String,
    /// What the row rests on.
    pub basis: Basis,
    /// How often the answer is yes.
    #[serde(flatten)]
    pub odds: Odds,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct EvidenceTable {
    sign: Vec<Sign>,
    fact: Vec<SpecFact>,
    look: Vec<LookQuestion>,
}

fn table() -> &'static EvidenceTable {
    static TABLE: OnceLock<EvidenceTable> = OnceLock::new();
    TABLE.get_or_init(|| parsed(include_str!("data/evidence.toml")))
}

/// Every sign of the catalogue.
pub fn signs() -> &'static [Sign] {
    &table().sign
}

/// Every fact that is looked for in a spec and its readings.
pub fn facts() -> &'static [SpecFact] {
    &table().fact
}

/// Every question that a look answers.
pub fn questions() -> &'static [LookQuestion] {
    &table().look
}
