//! Oxygen that water holds in balance with air.

use super::atmosphere;
use crate::source::Validity;
use crate::units::{Concentration, Pressure, Temperature};

/// Temperatures at which the solubility formula holds.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", 0.0, 40.0);

/// Air pressures at which the pressure term holds (from memory); compared with
/// the USGS form at 0.8-1.03 atm.
pub const PRESSURE_VALIDITY: Validity = Validity::new("air pressure", "atm", 0.5, 1.1);

/// Coefficients of ln C*, by power of 1/T.
const LN_SATURATION: [f64; 5] = [
    -139.344_11,
    1.575_701e5,
    -6.642_308e7,
    1.243_800e10,
    -8.621_949e11,
];

/// Dissolved oxygen at saturation with water-saturated air.
///
/// ```text
/// ln C* = -139.34411 + 1.575701e5/T - 6.642308e7/T^2 + 1.243800e10/T^3 - 8.621949e11/T^4
/// C     = C* P (1 - p/P)(1 - theta P) / ((1 - p)(1 - theta))
/// theta = 0.000975 - 1.426e-5 t + 6.436e-8 t^2
/// ```
///
/// C in mg/L, T in K, t in C, P and the vapour pressure p in atm.
///
/// # Valid range
/// [`VALIDITY`] and [`PRESSURE_VALIDITY`].
///
/// # Source
/// Benson and Krause 1984 (`benson_krause_1984`) in the form of `apha_4500_o`; the
/// constants of theta from memory.
///
/// # Limits
/// The salts of a freshwater tank (under 0.5 g/kg) would lower it by 0.3 % at most.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::{atmosphere, oxygen}};
/// let saturation = oxygen::saturation(Temperature::from_celsius(25.0), atmosphere::SEA_LEVEL);
/// assert!((saturation.mg_l() - 8.26).abs() < 0.01); // iso_5814
/// ```
pub fn saturation(temperature: Temperature, pressure: Pressure) -> Concentration {
    let inverse_t = temperature.kelvin().recip();
    let ln_saturation = LN_SATURATION
        .iter()
        .rev()
        .fold(0.0, |sum, a| sum * inverse_t + a);
    Concentration::from_mg_l(ln_saturation.exp() * pressure_factor(temperature, pressure))
}

/// Saturation at a pressure over saturation at one atmosphere.
fn pressure_factor(temperature: Temperature, pressure: Pressure) -> f64 {
    let t = temperature.celsius();
    let vapour_atm = atmosphere::vapour_pressure(temperature).atm();
    let theta = 0.000_975 - 1.426e-5 * t + 6.436e-8 * t * t;
    let at = |p_atm: f64| (p_atm - vapour_atm) * (1.0 - theta * p_atm);
    at(pressure.atm()) / at(1.0)
}
