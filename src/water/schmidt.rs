//! Schmidt numbers, which carry gas exchange from one gas and temperature to another.

use crate::source::Validity;
use crate::units::Temperature;

/// Where the polynomials hold.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", -2.0, 40.0);

/// A gas exchanged with the air.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Gas {
    /// O2.
    Oxygen,
    /// CO2.
    CarbonDioxide,
}

/// Kinematic viscosity over diffusivity, in fresh water.
///
/// ```text
/// O2   1745.1 - 124.34 t + 4.8055 t^2 - 0.10115  t^3 + 0.00086842 t^4
/// CO2  1923.6 - 125.06 t + 4.3773 t^2 - 0.085681 t^3 + 0.00070284 t^4      t in C
/// ```
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// Wanninkhof 2014 (`wanninkhof_2014`), table 1.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::{Gas, schmidt_number}};
/// // 600 is that of carbon dioxide at 20 C, by which gas exchange is tabulated
/// let schmidt = schmidt_number(Gas::CarbonDioxide, Temperature::from_celsius(20.0));
/// assert!((schmidt - 600.0).abs() < 1.0);
/// ```
///
/// # Limits
/// Diffusion coefficients differ by a few per cent between sources, and the number with
/// them.
pub fn schmidt_number(gas: Gas, temperature: Temperature) -> f64 {
    let coefficients = match gas {
        Gas::Oxygen => [1745.1, -124.34, 4.8055, -0.101_15, 0.000_868_42],
        Gas::CarbonDioxide => [1923.6, -125.06, 4.3773, -0.085_681, 0.000_702_84],
    };
    let t = temperature.celsius();
    coefficients.iter().rev().fold(0.0, |sum, a| sum * t + a)
}
