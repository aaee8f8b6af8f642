//! Soils for the lower, nutrient layer.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::row::row;
use crate::source::{Band, Basis, Source};

/// What a soil is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SoilKind {
    /// Sand, silt and clay.
    Mineral,
    /// Peat, bark, coir, compost.
    Organic,
}

/// A soil, as a wet layer that has settled.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Soil {
    /// Name in snake case.
    pub name: String,
    /// Name for people.
    pub label: String,
    /// Trade words.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// What it is made of.
    pub kind: SoilKind,
    /// Whether it holds much compost or fertiliser.
    pub rich: bool,
    /// Dry mass per volume of the layer.
    pub dry_bulk_kg_m3: Band,
    /// Share of the layer that is not solid.
    pub porosity: Band,
    /// Density of the solid matter.
    pub particle_density_kg_m3: Band,
    /// All nitrogen, per kg dry.
    pub total_n_g_kg: Band,
    /// Ammonium and nitrate at the start, per kg dry.
    pub mineral_n_g_kg: Band,
    /// Share of the nitrogen that breaks down within weeks of flooding.
    pub fast_n_share: Band,
    /// Share of the nitrogen that breaks down over months.
    pub slow_n_share: Band,
    /// Share of the remaining nitrogen that becomes free in a year at 25 C.
    pub stable_n_per_year: Band,
    /// Phosphate phosphorus in the pore water at flooding.
    pub pore_phosphate_mg_p_l: Band,
    /// Phosphorus that flooding sets free, per kg dry.
    pub reducible_p_g_kg: Band,
    /// Phosphate held by the solids against that in pore water.
    pub phosphate_kd_l_kg: Band,
    /// Ammonium held by the solids against that in pore water.
    pub ammonium_kd_l_kg: Band,
    /// Organic matter in the dry soil.
    pub organic_matter_pct: Band,
    /// Volume of the settled layer per volume bought.
    pub settled_share: Band,
    /// Size that 15 % by mass is finer than; mineral soils alone.
    pub d15_mm: Option<Band>,
    /// Size that 85 % by mass is finer than; mineral soils alone.
    pub d85_mm: Option<Band>,
    /// Share finer than 0.075 mm of what passes 4.75 mm; mineral soils alone.
    pub fines_pct: Option<Band>,
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

row!(Soil, "soil", soils, "data/soils.toml");
