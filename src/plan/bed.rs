//! What the bed gives off and holds back: the bed section and the numbers behind it.

use super::load::Load;
use super::section::BedSection;
use crate::catalogue::SoilKind;
use crate::design::Design;
use crate::substrate::diffusion::effective_diffusion;
use crate::substrate::gas::{
    GasLayer, METHANE_SOLUBILITY_MOL_M3, Overburden, PEAT_EBULLITION_MG_CH4_M2_D,
    dissolved_methane_ceiling_mg_m2_d,
};
use crate::substrate::oxygen::{Reductant, oxic_share_of_clean_cap};
use crate::units::{Concentration, Density, Length, Share};
use crate::water::{self, Solute, atmosphere, oxygen};

/// Methane made in fresh organic soil, mg/(m2 d): the middle of what peat gives off, by
/// its geometric mean.
fn organic_methane_mg_m2_d() -> f64 {
    let (low, high) = PEAT_EBULLITION_MG_CH4_M2_D;
    (low * high).sqrt()
}

/// Methane made in mineral soil, mg/(m2 d): judgement, a tenth of the organic rate.
const MINERAL_SHARE: f64 = 0.1;

/// The numbers behind the bed section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct BedFacts {
    /// Ammonium in the pore water at filling.
    pub(super) pore_water: Concentration,
    /// Oxygen in the water at saturation.
    pub(super) oxygen: Concentration,
    /// Depth that oxygen reaches in the cap.
    pub(super) oxic_front: Length,
    /// Methane made, mg/(m2 d).
    pub(super) methane_mg_m2_d: f64,
    /// Methane that can leave dissolved, mg/(m2 d).
    pub(super) ceiling_mg_m2_d: f64,
    /// Entry pressure over the cap's weight under water.
    pub(super) entry_ratio: f64,
}

impl BedFacts {
    /// The bed of a design with the pore water of its first day.
    pub(super) fn of(design: &Design, load: &Load<'_>) -> Self {
        let pore_water = Concentration::from_mg_l(load.first_pore_water_mg_l());
        let oxygen = oxygen_at_saturation(design);
        Self {
            pore_water,
            oxygen,
            oxic_front: oxic_front(design, oxygen, pore_water),
            methane_mg_m2_d: methane_made_mg_m2_d(design),
            ceiling_mg_m2_d: methane_ceiling_mg_m2_d(design),
            entry_ratio: entry_ratio(design),
        }
    }

    /// The section of the plan.
    pub(super) fn section(&self, load: &Load<'_>) -> BedSection {
        BedSection {
            release_peak_mg_n_m2_d: load.supply.peak_release.value * 1e3,
            release_21_d_g_n_m2: load.supply.total_g_m2(),
            oxic_front_mm: self.oxic_front.mm(),
            gas_ratio: self.methane_mg_m2_d / self.ceiling_mg_m2_d,
            entry_over_overburden: self.entry_ratio,
        }
    }
}

fn oxygen_at_saturation(design: &Design) -> Concentration {
    let pressure = atmosphere::pressure_at(design.draft().room.altitude);
    oxygen::saturation(design.draft().water.temperature, pressure)
}

fn oxic_front(design: &Design, oxygen: Concentration, pore_water: Concentration) -> Length {
    let temperature = design.draft().water.temperature;
    let free = |solute| water::diffusivity(solute, temperature).m2_s();
    let ammonium = Reductant::ammonium(free(Solute::Ammonium), pore_water);
    let share = oxic_share_of_clean_cap(free(Solute::Oxygen), oxygen, &[ammonium]);
    design.bed().cap.mean * share
}

/// Methane that the soil makes, mg/(m2 d).
///
/// # Limits
/// A rate by area whatever the depth: what peat was seen to give off is published by area
/// and known to a factor of ten. A thin soil makes less than this, a deep one more.
fn methane_made_mg_m2_d(design: &Design) -> f64 {
    match design.draft().soil.material.kind {
        SoilKind::Organic => organic_methane_mg_m2_d(),
        SoilKind::Mineral => organic_methane_mg_m2_d() * MINERAL_SHARE,
    }
}

fn methane_ceiling_mg_m2_d(design: &Design) -> f64 {
    let draft = design.draft();
    let free = water::diffusivity(Solute::Methane, draft.water.temperature).m2_s();
    let layer = |thickness: Length, porosity: f64| GasLayer {
        thickness,
        effective_m2_s: effective_diffusion(free, Share::from_fraction(porosity)),
    };
    dissolved_methane_ceiling_mg_m2_d(
        layer(design.bed().soil.mean, draft.soil.porosity().typical),
        layer(design.bed().cap.mean, draft.cap.porosity().typical),
        METHANE_SOLUBILITY_MOL_M3,
    )
}

fn entry_ratio(design: &Design) -> f64 {
    let draft = design.draft();
    let temperature = draft.water.temperature;
    let overburden = Overburden {
        thickness: design.bed().cap.mean,
        porosity: Share::from_fraction(draft.cap.porosity().typical),
        grain_density: Density::from_kg_m3(draft.cap.material.particle_density_kg_m3.typical),
        water_density: water::density(temperature),
    };
    let grain = Length::from_mm(draft.cap.d10_mm().typical);
    overburden.entry_ratio(water::surface_tension(temperature).n_m(), grain)
}
