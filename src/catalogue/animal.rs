//! Animals, by kinds that matter to a bed and its water.

use serde::{Deserialize, Serialize};

use super::row::row;
use crate::source::{Band, Basis};

/// A kind of animal.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Animal {
    /// Name in snake case.
    pub name: String,
    /// Name for people.
    pub label: String,
    /// Trade words.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// Fresh mass of one adult.
    pub mass_g: Band,
    /// Depth to which it stirs the bed.
    pub digs_mm: Band,
    /// Whether it can live on air when the water lacks oxygen.
    pub air_breathing: bool,
    /// Whether it lives on algae and waste as much as on feed.
    pub grazes: bool,
    /// The earliest day it is put in, by practice, counted from filling.
    pub first_day: u16,
    /// Feed per day, of its body mass.
    pub feed_pct_per_d: Band,
    /// Protein in that feed.
    pub protein_pct: Band,
    /// What the numbers rest on.
    pub basis: Basis,
    /// Keys of the sources.
    #[serde(default)]
    pub source: Vec<String>,
    /// What to know about it.
    pub note: String,
}

row!(Animal, "animal", animals, "data/animals.toml");
