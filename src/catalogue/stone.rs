//! Stones and wood laid on the bed.

use serde::{Deserialize, Serialize};

use super::row::row;
use crate::source::{Band, Basis, Source};

/// A stone, or wood heavy enough to lie like one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stone {
    /// Name in snake case.
    pub name: String,
    /// Name for people.
    pub label: String,
    /// Trade words.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// Mass per outer volume, which is what it displaces.
    pub density_kg_m3: Band,
    /// Whether it dissolves and raises hardness and alkalinity.
    pub raises_hardness: bool,
    /// What the numbers rest on.
    pub basis: Basis,
    /// Keys of the sources.
    #[serde(default)]
    pub source: Vec<Source>,
    /// What to know about it.
    #[serde(default)]
    pub note: String,
}

row!(Stone, "stone", stones, "data/stones.toml");
