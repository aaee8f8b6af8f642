//! The ways of ammonium and phosphate out of the bed.

use super::inputs::Conditions;
use crate::parameters::Parameters;
use crate::substrate::release::{CappedSoil, Passage, Substance, sorbed_retardation};
use crate::units::Temperature;
use crate::water::{Solute, diffusivity};

/// Diffusion coefficient of phosphate in free water at 25 C, m2/d (from memory).
const PHOSPHATE_DIFFUSIVITY_M2_D: f64 = 0.83e-4;
/// Diffusion of ions in water at a temperature over that at 25 C.
fn mobility(temperature_c: f64) -> f64 {
    let at = |celsius| diffusivity(Solute::Ammonium, Temperature::from_celsius(celsius));
    at(temperature_c) / at(25.0)
}

/// How ammonium and phosphate get out of the bed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Passages {
    pub(super) ammonium: Passage,
    pub(super) phosphate: Passage,
}

/// The same of the two solutes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct OfEach {
    pub(super) ammonium: f64,
    pub(super) phosphate: f64,
}

impl Passages {
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let (soil, cap) = (&parameters.soil, &parameters.cap);
        let mobility = mobility(conditions.temperature_c);
        let bed = CappedSoil {
            soil_depth_m: conditions.soil_depth_m,
            soil_porosity: soil.porosity,
            soil_dry_bulk_density_kg_m3: soil.dry_bulk_density,
            cap_depth_m: conditions.cap_depth_m,
            cap_porosity: cap.porosity,
            effective_grain_mm: cap.effective_grain,
            pore_exchange_per_d: cap.pore_exchange,
            enhancement: cap.enhancement,
        };
        let ammonium = Substance {
            diffusivity_m2_d: cap.ammonium_diffusivity * mobility,
            soil_kd_l_kg: soil.ammonium_kd,
            cap_retardation: cap.retardation,
        };
        let phosphate = Substance {
            diffusivity_m2_d: PHOSPHATE_DIFFUSIVITY_M2_D * mobility,
            soil_kd_l_kg: soil.phosphate_kd,
            cap_retardation: sorbed_retardation(
                cap.porosity,
                cap.phosphate_kd,
                cap.effective_grain,
            ),
        };
        Self {
            ammonium: Passage::new(&bed, &ammonium),
            phosphate: Passage::new(&bed, &phosphate),
        }
    }

    /// Share of the steady release that a cap lets through some days after it was laid.
    pub(super) fn rise(&self, clean_cap_m: OfEach, days: f64) -> OfEach {
        OfEach {
            ammonium: self.ammonium.rise(clean_cap_m.ammonium, days),
            phosphate: self.phosphate.rise(clean_cap_m.phosphate, days),
        }
    }
}
