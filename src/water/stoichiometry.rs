//! What nitrification and photosynthesis take and give, by mass.

use crate::units::Alkalinity;
use crate::units::constants::{CACO3_MG_PER_MEQ, molar_mass};

/// Of this, the step from ammonia to nitrite: three atoms per atom of nitrogen.
pub const AMMONIA_OXIDATION_OXYGEN: f64 = 1.5 * molar_mass::O2 / molar_mass::N;

/// The step from nitrite to nitrate: one atom per atom of nitrogen.
pub const NITRITE_OXIDATION_OXYGEN: f64 = 0.5 * molar_mass::O2 / molar_mass::N;

/// Equivalents of alkalinity used up per mole of ammonia nitrified.
const NITRIFICATION_ACID: f64 = 2.0;

/// Moles of oxygen given off per mole of carbon fixed, by the nitrogen taken up
/// (both from memory).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NitrogenForm {
    /// 1.0 mol/mol.
    Ammonium,
    /// 1.2 mol/mol.
    Nitrate,
}

impl NitrogenForm {
    /// Moles of oxygen per mole of carbon.
    pub const fn photosynthetic_quotient(self) -> f64 {
        match self {
            Self::Ammonium => 1.0,
            Self::Nitrate => 1.2,
        }
    }
}

/// Alkalinity used up by nitrifying 1 mg/L of ammonia nitrogen.
///
/// ```text
/// Alk = 2 / M(N)        eq/g
/// ```
///
/// # Source
/// Stoichiometry: two protons for each ammonium oxidised to nitrate.
///
/// # Example
/// ```
/// use lentic::water::stoichiometry::alkalinity_per_nitrogen;
/// // 7.14 mg/L as calcium carbonate in textbooks
/// assert!((alkalinity_per_nitrogen().caco3_mg_l() - 7.14).abs() < 0.01);
/// ```
///
/// # Limits
/// The nitrogen built into the bacteria is left out: a few per cent too much.
pub fn alkalinity_per_nitrogen() -> Alkalinity {
    Alkalinity::from_caco3_mg_l(NITRIFICATION_ACID * CACO3_MG_PER_MEQ / molar_mass::N)
}
