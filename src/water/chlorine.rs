//! Chlorine of tap water: how long it stands, and the ammonia that chloramine leaves.

use crate::source::Band;
use crate::units::Concentration;
use crate::units::constants::molar_mass;

/// Molar mass of what chlorine is reported as, Cl2, g/mol.
const CL2: f64 = 2.0 * molar_mass::CL;
/// Hours in which free chlorine of standing water halves (judgement).
pub const HALF_LIFE_STILL_H: Band = Band::new(4.0, 12.0, 24.0);
/// The same with air bubbling through it (judgement).
pub const HALF_LIFE_AERATED_H: Band = Band::new(1.0, 2.0, 4.0);
/// Free chlorine that life bears for long, mg/L (from memory: a chronic criterion of 0.011).
const BORNE_MG_L: f64 = 0.01;

/// Ammonia nitrogen that chloramine leaves once its chlorine is bound.
///
/// ```text
/// N = Cl2 M(N) / M(Cl2)
/// ```
///
/// # Source
/// Molar masses: monochloramine holds one atom of nitrogen for a molecule of Cl2.
///
/// # Example
/// ```
/// use lentic::units::Concentration;
/// use lentic::water::chlorine::nitrogen_left;
/// // one part of nitrogen to 5.06 of chlorine
/// let left = nitrogen_left(Concentration::from_mg_l(5.06));
/// assert!((left.mg_l() - 1.0).abs() < 0.001);
/// ```
///
/// # Limits
/// Ammonia that the supplier has in excess comes on top.
pub fn nitrogen_left(chlorine: Concentration) -> Concentration {
    chlorine * (molar_mass::N / CL2)
}

/// Hours that tap water stands until its free chlorine is gone.
///
/// ```text
/// t = h log2(C / 0.01)
/// ```
///
/// # Source
/// Decay by halves; h as [`HALF_LIFE_STILL_H`] and [`HALF_LIFE_AERATED_H`], judgement.
///
/// # Example
/// ```
/// use lentic::units::Concentration;
/// use lentic::water::chlorine::{HALF_LIFE_STILL_H, standing_h};
/// // 1 to 0.01 mg/L is 6.64 halves of 12 h
/// let hours = standing_h(Concentration::from_mg_l(1.0), HALF_LIFE_STILL_H);
/// assert!((hours.typical - 79.7).abs() < 0.1);
/// ```
///
/// # Limits
/// A test strip decides. Chloramine does not go by standing.
pub fn standing_h(chlorine: Concentration, half_life_h: Band) -> Band {
    half_life_h.scaled((chlorine.mg_l() / BORNE_MG_L).log2().max(0.0))
}
