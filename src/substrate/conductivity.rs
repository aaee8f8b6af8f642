//! How freely water runs through sand, and the pore share it has.

use crate::units::constants::GRAVITY_M_S2;
use crate::units::{Density, Length, Share};

/// Hazen's coefficient for clean loose sand, (cm/s)/cm2 (Hazen 1893; from
/// memory, 40 to 150 in use).
pub const HAZEN_COEFFICIENT: f64 = 100.0;
/// Grain sizes d10 that Hazen's rule was made for, mm.
pub const HAZEN_D10_MM: (f64, f64) = (0.1, 2.5);

/// Hydraulic conductivity by Hazen, m/s.
///
/// ```text
/// K [cm/s] = C d10^2      d10 in cm
/// ```
///
/// # Valid range
/// [`HAZEN_D10_MM`] and a uniformity under 5; water near 10 C. Outside, the
/// number is an extrapolation.
///
/// # Source
/// Hazen 1893 (`hazen_1893`).
///
/// # Example
/// ```
/// use lentic::substrate::conductivity::{HAZEN_COEFFICIENT, hazen_m_s};
/// use lentic::units::Length;
/// // 100 x 0.05^2 cm/s
/// let k = hazen_m_s(Length::from_mm(0.5), HAZEN_COEFFICIENT);
/// assert!((k - 2.5e-3).abs() < 1e-12);
/// ```
///
/// # Limits
/// Blind to packing: dense sand conducts half as much. [`kozeny_carman_m_s`] asks for it.
pub fn hazen_m_s(d10: Length, coefficient: f64) -> f64 {
    coefficient * d10.cm() * d10.cm() * 1e-2
}

/// Water as it runs through pores.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PoreWater {
    /// Density.
    pub density: Density,
    /// Dynamic viscosity, mPa s.
    pub viscosity_mpa_s: f64,
}

/// Hydraulic conductivity by Kozeny and Carman, m/s.
///
/// ```text
/// K = (rho g / mu) n^3 / (1 - n)^2 d^2 / 180
/// ```
///
/// `d` is d10 here. Writers who use 1/120 for 1/180 get one and a half times as much.
///
/// # Valid range
/// Laminar flow through sand without clay; pore share under 1.
///
/// # Source
/// Carman 1937 (`carman_1937`); the form with 1/180.
///
/// # Example
/// ```
/// use lentic::substrate::conductivity::{PoreWater, kozeny_carman_m_s};
/// use lentic::units::{Density, Length, Share};
/// let cold = PoreWater { density: Density::from_kg_m3(999.7), viscosity_mpa_s: 1.3059 };
/// let k = kozeny_carman_m_s(Length::from_mm(0.1), Share::from_percent(30.0), cold);
/// // 999.7 x 9.80665 / 1.3059e-3 x 0.3^3 / 0.7^2 x 1e-8 / 180
/// assert!((k - 2.298e-5).abs() < 1e-8);
/// ```
///
/// # Limits
/// Roots, gas and slime in the pores are left out: errs high in an old bed.
pub fn kozeny_carman_m_s(d10: Length, porosity: Share, water: PoreWater) -> f64 {
    let n = porosity.fraction();
    let permeability_m2 = n.powi(3) / (1.0 - n).powi(2) * d10.m().powi(2) / 180.0;
    let viscosity_pa_s = water.viscosity_mpa_s * 1e-3;
    water.density.kg_m3() * GRAVITY_M_S2 / viscosity_pa_s * permeability_m2
}

/// Pore share of a sand from its uniformity d60/d10.
///
/// ```text
/// n = 0.255 (1 + 0.83^Cu)
/// ```
///
/// # Source
/// Vukovic & Soro 1992 (`vukovic_soro_1992`).
///
/// # Valid range
/// Sands without fines; the source states no bounds in what was read.
///
/// # Example
/// ```
/// use lentic::substrate::conductivity::porosity_from_uniformity;
/// // 0.255 (1 + 0.83^2)
/// assert!((porosity_from_uniformity(2.0).fraction() - 0.4307).abs() < 1e-4);
/// ```
///
/// # Limits
/// Says nothing of packing: poured sand has more pores, shaken sand fewer.
pub fn porosity_from_uniformity(uniformity: f64) -> Share {
    Share::from_fraction(0.255 * (1.0 + 0.83f64.powf(uniformity)))
}
