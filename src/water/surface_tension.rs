//! Surface tension of water against air.

use crate::source::Validity;
use crate::units::{SurfaceTension, Temperature};

/// Where the surface tension formula holds: triple point to critical point.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", 0.01, 373.946);

/// Critical temperature of water, K.
const CRITICAL_K: f64 = 647.096;

/// Surface tension of clean water; a film on the surface lowers it.
///
/// ```text
/// sigma = 235.8 mN/m tau^1.256 (1 - 0.625 tau),   tau = 1 - T / 647.096 K
/// ```
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// IAPWS R1-76(2014) (`iapws_r1_76`).
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::surface_tension};
/// let tension = surface_tension(Temperature::from_celsius(25.0));
/// assert!((tension.mn_m() - 71.97).abs() < 0.01); // the standard's table
/// ```
///
/// # Limits
/// Clean water. A film on the surface lowers it, and gas then enters pores sooner.
pub fn surface_tension(temperature: Temperature) -> SurfaceTension {
    let tau = 1.0 - temperature.kelvin() / CRITICAL_K;
    SurfaceTension::from_mn_m(235.8 * tau.powf(1.256) * (1.0 - 0.625 * tau))
}
