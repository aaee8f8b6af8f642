//! Density and heat capacity of water.

use crate::source::Validity;
use crate::units::{Density, Temperature};

/// Where the density formula holds.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", 0.0, 150.0);

/// Specific heat of water at 25 C, J/(kg K) (IAPWS-95); within 0.3 % at 10-40 C.
pub const SPECIFIC_HEAT_J_KG_K: f64 = 4181.3;

/// Coefficients of the numerator, by power of t.
const NUMERATOR: [f64; 6] = [
    999.839_52,
    16.945_176,
    -7.987_040_1e-3,
    -46.170_461e-6,
    105.563_02e-9,
    -280.542_53e-12,
];
/// The factor of t in the denominator.
const DENOMINATOR: f64 = 16.879_850e-3;

/// Density of air-free water at one atmosphere.
///
/// ```text
/// rho = (a0 + a1 t + ... + a5 t^5) / (1 + b t)     kg/m3, t in C
/// ```
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// Kell 1975 (`kell_1975`), constants from memory; within 0.004 kg/m3 of IAPWS-95
/// at 0-40 C.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water};
/// let rho = water::density(Temperature::from_celsius(20.0));
/// assert!((rho.kg_m3() - 998.204).abs() < 0.005);
/// ```
///
/// # Limits
/// Salts and fine matter are left out; those of a tank add under 0.1 %.
pub fn density(temperature: Temperature) -> Density {
    let t = temperature.celsius();
    let numerator = NUMERATOR.iter().rev().fold(0.0, |sum, a| sum * t + a);
    Density::from_kg_m3(numerator / (1.0 + DENOMINATOR * t))
}
