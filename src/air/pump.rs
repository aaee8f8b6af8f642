//! The pressure an air pump works against.

use super::bubble::Diffuser;
use crate::source::Band;
use crate::units::constants::GRAVITY_M_S2;
use crate::units::{Length, Pressure, Temperature};
use crate::water::density;

impl Diffuser {
    /// Pressure that it takes to press air through its pores, kPa (from memory).
    pub const fn pore_pressure_kpa(self) -> Band {
        match self {
            Self::FineStone => Band::new(2.0, 3.5, 5.0),
            Self::OpenTube => Band::exact(0.0),
        }
    }
}

/// Pressure of the water above the stone, the least that an air pump must give.
///
/// ```text
/// p = rho g h
/// ```
///
/// # Source
/// Hydrostatics; the density as [`density()`].
///
/// # Example
/// ```
/// use lentic::{air::pump::static_head, units::{Length, Temperature}};
/// // 997.05 kg/m3 x 9.80665 m/s2 x 0.30 m
/// let head = static_head(Length::from_cm(30.0), Temperature::from_celsius(25.0));
/// assert!((head.kpa() - 2.933).abs() < 0.001);
/// ```
pub fn static_head(submergence: Length, temperature: Temperature) -> Pressure {
    Pressure::from_pa(density(temperature).kg_m3() * GRAVITY_M_S2 * submergence.m())
}

/// Pressure that the pump must exceed, kPa: the head and the stone.
///
/// ```text
/// p = rho g h + p_stone
/// ```
///
/// # Source
/// Hydrostatics; the stone as [`Diffuser::pore_pressure_kpa`], from memory.
///
/// # Example
/// ```
/// use lentic::air::{Diffuser, pump::pump_pressure_kpa};
/// use lentic::units::{Length, Temperature};
/// let warm = Temperature::from_celsius(25.0);
/// let pressure = pump_pressure_kpa(Length::from_cm(30.0), Diffuser::FineStone, warm);
/// assert!((pressure.typical - (2.933 + 3.5)).abs() < 0.001);
/// ```
///
/// # Limits
/// A long or narrow hose and a clogged stone add to it: errs low.
pub fn pump_pressure_kpa(
    submergence: Length,
    diffuser: Diffuser,
    temperature: Temperature,
) -> Band {
    let head_kpa = static_head(submergence, temperature).kpa();
    let pores = diffuser.pore_pressure_kpa();
    Band::new(
        head_kpa + pores.low,
        head_kpa + pores.typical,
        head_kpa + pores.high,
    )
}
