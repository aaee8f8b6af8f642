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
pub fn vapour_pressure(temperature: Temperature) -> Pressure {
    let t_k = temperature.kelvin();
    Pressure::from_atm((11.8571 - 3840.70 / t_k - 216_961.0 / (t_k * t_k)).exp())
}
