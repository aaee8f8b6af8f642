//! How deep oxygen reaches into the bed.

use crate::units::Concentration;
use crate::units::constants::molar_mass;

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
