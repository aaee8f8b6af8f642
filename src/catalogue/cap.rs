//! Sands and gravels for the cap.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::row::row;
use crate::source::{Band, Basis, Source};

/// The shape of grains; it rules how steep they stand and how dense they pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Grains {
    /// Crushed.
    Angular,
    /// Worn by water or wind.
    Rounded,
}

/// What speaks against a cap apart from its grain size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum CapCaution {
    /// A slag; whether metals leach from it in a tank is not settled.
    Slag,
    /// Sold unwashed, and may hold lime.
    DirtAndLime,
    /// Dissolves, and raises hardness and alkalinity.
    RaisesHardness,
}

/// A sand or gravel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cap {
    /// Name in snake case.
    pub name: String,
    /// Name for people.
    pub label: String,
    /// Trade words.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// Size that 10 % by mass is finer than: the effective size.
    pub d10_mm: Band,
    /// Size that 15 % by mass is finer than.
    pub d15_mm: Band,
    /// Size that half by mass is finer than.
    pub d50_mm: Band,
    /// Size that 60 % by mass is finer than.
    pub d60_mm: Band,
    /// Size that 85 % by mass is finer than.
    pub d85_mm: Band,
    /// Share finer than 0.075 mm, as sold.
    pub fines_pct: Band,
    /// Dry mass per volume of the layer.
    pub dry_bulk_kg_m3: Band,
    /// Share of the layer that is not solid.
    pub porosity: Band,
    /// Density of the grains.
    pub particle_density_kg_m3: Band,
    /// Shape of the grains.
    pub grains: Grains,
    /// What speaks against it apart from its grain size.
    pub caution: Option<CapCaution>,
    /// What the numbers rest on.
    pub basis: Basis,
    /// What those fields rest on that differ from it.
    #[serde(default)]
    pub basis_of: BTreeMap<String, Basis>,
    /// Keys of the sources.
    #[serde(default)]
    pub source: Vec<Source>,
    /// What to know about it.
    pub note: String,
}

row!(Cap, "cap", caps, "data/caps.toml");
