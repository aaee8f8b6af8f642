//! How deep oxygen reaches into the bed.

use super::S_PER_DAY;
use crate::units::constants::molar_mass;
use crate::units::{Concentration, Length};

/// The oxic layer at the top of a bed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OxicLayer {
    /// How deep it reaches.
    pub depth: Length,
    /// Oxygen drawn from the water, mmol/m2/d.
    pub uptake_mmol_m2_d: f64,
}

/// The oxic layer of a bed that uses oxygen at a constant rate per volume.
///
/// ```text
/// z = sqrt(2 phi Ds C0 / R)      F = R z
/// ```
///
/// `phi Ds` is the effective diffusion coefficient of oxygen (m2/s), `C0` the
/// concentration in the water at the surface, `R` the use per volume of bed
/// (mol/m3/s): about 1e-4 to 1e-3 in organic mud, 1e-6 to 1e-5 in poor sand
/// (worked back from measured depths).
///
/// # Limits
/// Flat bed, dark, no burrows, no still film of water above: each shifts the front.
///
/// # Source
/// Bouldin 1968; Cai & Sayles 1996; both from memory.
///
/// # Example
/// ```
/// use lentic::{substrate::oxygen::oxic_layer, units::Concentration};
/// // sqrt(2 x 3.357e-10 m2/s x 0.2582 mol/m3 / 1e-5 mol/(m3 s)), at saturation and 25 C
/// let layer = oxic_layer(3.357e-10, Concentration::from_mg_l(8.263), 1e-5);
/// assert!((layer.depth.mm() - 4.164).abs() < 0.01);
/// ```
pub fn oxic_layer(effective_m2_s: f64, surface: Concentration, use_mol_m3_s: f64) -> OxicLayer {
    let surface_mol_m3 = oxygen_mol_m3(surface);
    let depth_m = (2.0 * effective_m2_s * surface_mol_m3 / use_mol_m3_s).sqrt();
    OxicLayer {
        depth: Length::from_m(depth_m),
        uptake_mmol_m2_d: use_mol_m3_s * depth_m * 1e3 * S_PER_DAY,
    }
}

/// Something dissolved at the base of the cap that uses oxygen up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reductant {
    /// Its diffusion coefficient in free water, m2/s.
    pub free_m2_s: f64,
    /// Its concentration at the cap's base, mol/m3.
    pub base_mol_m3: f64,
    /// Oxygen that oxidises one mole of it, mol.
    pub oxygen_demand: f64,
}

impl Reductant {
    /// Ammonium at this concentration of nitrogen: two moles of oxygen each.
    ///
    /// # Example
    /// ```
    /// use lentic::{substrate::oxygen::Reductant, units::Concentration};
    /// // 14.007 g of nitrogen to the mole
    /// let ammonium = Reductant::ammonium(1.983e-9, Concentration::from_mg_l(14.007));
    /// assert!((ammonium.base_mol_m3 - 1.0).abs() < 1e-9);
    /// ```
    pub fn ammonium(free_m2_s: f64, nitrogen: Concentration) -> Self {
        Self {
            free_m2_s,
            base_mol_m3: nitrogen.mg_l() / molar_mass::N,
            oxygen_demand: 2.0,
        }
    }
}

/// The oxic share of a cap of clean sand that is eaten into only from below.
///
/// ```text
/// z/L = D C0 / (D C0 + sum nu_i D_i C_i)
/// ```
///
/// Oxygen from above and reductants from below meet and react at once; the
/// cap's tortuosity cancels out.
///
/// # Source
/// Derived from Fick's law with both fluxes equal at the front.
///
/// # Example
/// ```
/// use lentic::substrate::oxygen::{Reductant, oxic_share_of_clean_cap};
/// use lentic::units::Concentration;
/// let ammonium = Reductant::ammonium(1.983e-9, Concentration::from_mg_l(5.0));
/// let share =
///     oxic_share_of_clean_cap(2.377e-9, Concentration::from_mg_l(8.263), &[ammonium]);
/// // 2.377 x 0.2582 / (2.377 x 0.2582 + 2 x 1.983 x 5 / 14.007)
/// assert!((share - 0.3023).abs() < 0.001);
/// ```
///
/// # Limits
/// Methane, iron and sulfide from below bring the front nearer to the surface: errs deep.
pub fn oxic_share_of_clean_cap(
    oxygen_free_m2_s: f64,
    surface: Concentration,
    reductants: &[Reductant],
) -> f64 {
    let supply = oxygen_free_m2_s * oxygen_mol_m3(surface);
    let demand: f64 = reductants
        .iter()
        .map(|one| one.oxygen_demand * one.free_m2_s * one.base_mol_m3)
        .sum();
    supply / (supply + demand)
}

/// Dissolved oxygen in mol/m3.
fn oxygen_mol_m3(oxygen: Concentration) -> f64 {
    oxygen.mg_l() / (2.0 * molar_mass::O)
}
