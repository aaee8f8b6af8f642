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
            Self::CoarseStone => Band::new(0.0, 0.5, 1.0),
            Self::OpenTube => Band::exact(0.0),
        }
    }
}

/// Pressure of the water above the stone: density, gravity and depth multiplied.
pub fn static_head(submergence: Length, temperature: Temperature) -> Pressure {
    Pressure::from_pa(density(temperature).kg_m3() * GRAVITY_M_S2 * submergence.m())
}

/// Pressure that the pump must exceed, kPa: the head and the stone. A long or
/// narrow hose and a clogged stone add to it.
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
