//! Viscosity of water.

use crate::source::Validity;
use crate::units::{Temperature, Viscosity};

/// Where the viscosity formula was compared with its standard.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", 0.0, 40.0);

/// Viscosity at 20 C, mPa s.
const AT_20_C_MPA_S: f64 = 1.002;

/// Dynamic viscosity of water.
///
/// ```text
/// log10(mu / 1.002 mPa s) = d / (t + 96) (1.2364 - 1.37e-3 d + 5.7e-6 d^2),  d = 20 - t
/// ```
///
/// # Valid range
/// [`VALIDITY`]; there within 0.1 % of IAPWS R12-08.
///
/// # Source
/// Kestin, Sokolov and Wakeham 1978 (`kestin_1978`), constants from memory.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::viscosity};
/// // 0.8900 mPa s by IAPWS R12-08
/// let viscosity = viscosity(Temperature::from_celsius(25.0));
/// assert!((viscosity.mpa_s() / 0.8900 - 1.0).abs() < 0.003);
/// ```
///
/// # Limits
/// Clean water at one atmosphere.
pub fn viscosity(temperature: Temperature) -> Viscosity {
    let t = temperature.celsius();
    let d = 20.0 - t;
    let exponent = d / (t + 96.0) * (1.2364 - 1.37e-3 * d + 5.7e-6 * d * d);
    Viscosity::from_mpa_s(AT_20_C_MPA_S * 10_f64.powf(exponent))
}
