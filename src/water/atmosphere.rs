//! The air above the water: pressure at an altitude, vapour pressure.

use crate::source::Validity;
use crate::units::{Length, Pressure, Temperature};

/// Pressure at sea level in the standard atmosphere.
pub const SEA_LEVEL: Pressure = Pressure::from_pa(crate::units::constants::PA_PER_ATM);

/// Where the pressure formula holds: the troposphere.
pub const ALTITUDE_VALIDITY: Validity = Validity::new("altitude", "m", 0.0, 11_000.0);

/// Where the vapour pressure formula holds.
pub const VAPOUR_VALIDITY: Validity = Validity::new("water temperature", "C", 0.0, 40.0);

/// Air pressure at an altitude; the weather moves it by 3 % either way.
///
/// ```text
/// P = 101.325 kPa (1 - 2.25577e-5 z)^5.25588        z in m
/// ```
///
/// # Valid range
/// [`ALTITUDE_VALIDITY`].
///
/// # Source
/// Standard atmosphere (`iso_2533`).
///
/// # Example
/// ```
/// use lentic::{units::Length, water::atmosphere::pressure_at};
/// // 898.8 hPa in the standard's table, from memory
/// assert!((pressure_at(Length::from_m(1000.0)).kpa() - 89.88).abs() < 0.02);
/// ```
///
/// # Limits
/// Above the troposphere the formula falls to nothing and then makes no number.
pub fn pressure_at(altitude: Length) -> Pressure {
    SEA_LEVEL * (1.0 - 2.255_77e-5 * altitude.m()).powf(5.255_88)
}

/// Pressure of water vapour over water.
///
/// ```text
/// ln(p / atm) = 11.8571 - 3840.70 / T - 216961 / T^2        T in K
/// ```
///
/// # Valid range
/// [`VAPOUR_VALIDITY`]; there within 0.1 % of IAPWS-95.
///
/// # Source
/// Benson and Krause 1984 (`benson_krause_1984`) as in `apha_4500_o`; constants
/// from memory.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::atmosphere::vapour_pressure};
/// // 3.169 kPa in steam tables, from memory
/// assert!((vapour_pressure(Temperature::from_celsius(25.0)).kpa() / 3.169 - 1.0).abs() < 2e-3);
/// ```
///
/// # Limits
/// Pure vapour: in air under one atmosphere there is 0.4 % more of it.
pub fn vapour_pressure(temperature: Temperature) -> Pressure {
    let t_k = temperature.kelvin();
    Pressure::from_atm((11.8571 - 3840.70 / t_k - 216_961.0 / (t_k * t_k)).exp())
}
