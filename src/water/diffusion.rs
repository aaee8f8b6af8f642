//! Molecular diffusion in free water.

use crate::source::Validity;
use crate::units::constants::GAS_CONSTANT;
use crate::units::{Diffusivity, Temperature};

/// Where the coefficients hold; sources differ by 8 % for oxygen, 2-4 % for
/// carbon dioxide.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", 0.0, 30.0);

/// What diffuses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Solute {
    /// O2.
    Oxygen,
    /// CO2.
    CarbonDioxide,
    /// CH4.
    Methane,
    /// H2S.
    HydrogenSulfide,
    /// HS-.
    Hydrosulfide,
    /// NH4+.
    Ammonium,
    /// NO2-.
    Nitrite,
    /// NO3-.
    Nitrate,
    /// H2PO4-, most of the phosphate below pH 7.
    DihydrogenPhosphate,
    /// HPO4--, most of the phosphate above pH 7.
    HydrogenPhosphate,
    /// PO4---.
    Phosphate,
    /// HCO3-.
    Bicarbonate,
}

/// Diffusion coefficient in free water; in a bed it is less, by tortuosity.
///
/// ```text
/// ions     D = (m0 + m1 t) 1e-10
/// O2, CO2  D = (a + b T / mu) 1e-9
/// CH4      D = 3047e-9 exp(-18360 / (R T))
/// H2S      D = 4.72e-11 T / (mu 35.2^0.6)
/// mu       = 1.7909 - 0.06144 t + 1.4510e-3 t^2 - 1.6826e-5 t^3
/// ```
///
/// D in m2/s, t in C, T in K, mu in mPa s.
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// Boudreau 1997 (`boudreau_1997`), with methane after Jaehne et al. 1987
/// (`jahne_1987_diffusion`); constants as carried in the R package marelac 2.1.11.
/// The viscosity is part of the fit and therefore its own.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::{Solute, diffusivity}};
/// let d = diffusivity(Solute::Ammonium, Temperature::from_celsius(25.0));
/// assert!((d.m2_s() - 1.982e-9).abs() < 0.01e-9);
/// ```
///
/// # Limits
/// Sources differ by 8 % for oxygen. The viscosity fit lies 3 % low at 35 C, so that the
/// gases err high above the range.
pub fn diffusivity(solute: Solute, temperature: Temperature) -> Diffusivity {
    let t = temperature.celsius();
    let t_k = temperature.kelvin();
    let ion = |m0: f64, m1: f64| (m0 + m1 * t) * 1e-10;
    let gas = |a: f64, b: f64| (a + b * t_k / viscosity_mpa_s(t)) * 1e-9;
    Diffusivity::from_m2_s(match solute {
        Solute::Oxygen => gas(0.2604, 0.006_383),
        Solute::CarbonDioxide => gas(0.1954, 0.005_089),
        Solute::Methane => 3047e-9 * (-18_360.0 / (GAS_CONSTANT * t_k)).exp(),
        Solute::HydrogenSulfide => 4.72e-11 * t_k / (viscosity_mpa_s(t) * 35.2_f64.powf(0.6)),
        Solute::Hydrosulfide => ion(10.4, 0.273),
        Solute::Ammonium => ion(9.50, 0.413),
        Solute::Nitrite => ion(10.3, 0.331),
        Solute::Nitrate => ion(9.50, 0.388),
        Solute::DihydrogenPhosphate => ion(4.02, 0.223),
        Solute::HydrogenPhosphate => ion(3.26, 0.177),
        Solute::Phosphate => ion(2.62, 0.143),
        Solute::Bicarbonate => ion(5.06, 0.275),
    })
}

/// Viscosity as the coefficients above were fitted with it.
fn viscosity_mpa_s(t: f64) -> f64 {
    1.7909 - 0.061_44 * t + 1.4510e-3 * t * t - 1.6826e-5 * t * t * t
}
