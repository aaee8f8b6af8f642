//! Signs that a keeper sees, smells or counts.

use serde::{Deserialize, Serialize};

use super::evidence::{Odds, signs};
use super::row::impl_row;
use crate::source::{Basis, Source};

/// A sign that something may be amiss, or is as usual for the tank's age.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
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
    /// How often it is seen.
    #[serde(flatten)]
    pub odds: Odds,
}

const fn is_common() -> bool {
    true
}

impl_row!(Sign, "sign", signs);
