//! Signs that a keeper sees, smells or counts.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::row::row;
use crate::source::{Basis, Source};

/// A sign that something may be amiss, or is as usual for the tank's age.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sign {
    /// Name in snake case.
    pub name: String,
    /// Name for people.
    pub label: String,
    /// Other words for it.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// What the row rests on.
    pub basis: Basis,
    /// Keys of the sources.
    #[serde(default)]
    pub source: Vec<Source>,
    /// How to tell it.
    pub note: String,
    /// Whether a keeper who looks would see and write it down: then it is not there where it
    /// is not written.
    #[serde(default = "is_common")]
    pub common: bool,
    /// How often it is seen where nothing speaks for it, 0 to 1.
    pub usual: f64,
    /// By the name of a cause, how many times as often it is seen where that is at work.
    pub speaks_for: BTreeMap<String, f64>,
}

const fn is_common() -> bool {
    true
}

row!(Sign, "sign", signs, "data/signs.toml");
