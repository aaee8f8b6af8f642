//! Light at the water surface from what is known of the lamp.

use std::f64::consts::PI;

use crate::source::Band;
use crate::units::{Area, Length, LuminousFlux, PhotonFlux};

/// Photons per lumen of white LEDs of 4000 to 6500 K, umol/s: from memory, the spectra of
/// common lamps lie in this band.
const UMOL_S_PER_LUMEN: Band = Band::new(0.012, 0.0145, 0.017);
/// What the cover glass, the housing and the tank's rim leave of it: judgement.
const LEFT_OVER: Band = Band::new(0.6, 0.8, 0.95);
/// A lamp that lets shade plants live, umol/(m2 s): judgement.
const LOW: Band = Band::new(15.0, 30.0, 45.0);
/// A common lamp for plants without added carbon dioxide: judgement.
const MEDIUM: Band = Band::new(40.0, 60.0, 90.0);
/// A strong lamp, which calls for many plants: judgement.
const HIGH: Band = Band::new(80.0, 120.0, 200.0);

/// A lamp in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LightClass {
    /// For shade plants.
    Low,
    /// For plants without added carbon dioxide.
    Medium,
    /// More than those need.
    High,
}

/// Photon flux density that a lamp in words stands for, umol/(m2 s).
///
/// # Source
/// Judgement.
///
/// # Example
/// ```
/// use lentic::plants::light::{LightClass, from_words};
/// assert!(from_words(LightClass::Low).high < from_words(LightClass::High).low);
/// ```
///
/// # Limits
/// A shop's word says nothing of the tank's depth: measure, or give lumens and height.
pub const fn from_words(class: LightClass) -> Band {
    match class {
        LightClass::Low => LOW,
        LightClass::Medium => MEDIUM,
        LightClass::High => HIGH,
    }
}

/// Photon flux density at the water under a lamp of known luminous flux, umol/(m2 s).
///
/// ```text
/// PAR = flux per lumen share left / A,   share = A / (A + pi h^2)
/// ```
///
/// `share` is what a small lamp that shines downwards by the cosine law sends into a
/// disc of area `A` at distance `h`.
///
/// # Source
/// Geometry of a Lambertian point source; the factors are memory and judgement.
///
/// # Example
/// ```
/// use lentic::plants::light::from_lumens;
/// use lentic::units::{Area, Length, LuminousFlux};
/// let par = from_lumens(
///     LuminousFlux::from_lumens(1400.0),
///     Length::from_cm(10.0),
///     Area::from_cm2(1290.0),
/// );
/// assert!(par.contains(100.0));
/// ```
///
/// # Limits
/// Panes that throw light back and lamps with lenses give more: errs low for these.
pub fn from_lumens(flux: LuminousFlux, height: Length, surface: Area) -> Band {
    let area_m2 = surface.m2();
    let share = area_m2 / (area_m2 + PI * height.m().powi(2));
    let par = |per_lumen: f64, left: f64| flux.lumens() * per_lumen * share * left / area_m2;
    Band::new(
        par(UMOL_S_PER_LUMEN.low, LEFT_OVER.low),
        par(UMOL_S_PER_LUMEN.typical, LEFT_OVER.typical),
        par(UMOL_S_PER_LUMEN.high, LEFT_OVER.high),
    )
}

/// Luminous flux of a lamp that gives so much light at the water: [`from_lumens`] turned
/// round, by its typical factors.
///
/// # Source
/// As [`from_lumens`].
///
/// # Example
/// ```
/// use lentic::plants::light::lumens_for;
/// use lentic::units::{Area, Length, PhotonFlux};
/// // 60 umol/(m2 s) on 0.126 m2, and as much again beside it from 20 cm:
/// // 60 x 0.2513 / (0.0145 x 0.8), worked by hand
/// let (height, surface) = (Length::from_cm(20.0), Area::from_m2(0.12566));
/// let lumens = lumens_for(PhotonFlux::from_umol_m2_s(60.0), height, surface).lumens();
/// assert!((lumens - 1300.0).abs() < 1.0);
/// ```
pub fn lumens_for(par: PhotonFlux, height: Length, surface: Area) -> LuminousFlux {
    let of_one = from_lumens(LuminousFlux::from_lumens(1.0), height, surface);
    LuminousFlux::from_lumens(par.umol_m2_s() / of_one.typical)
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    #[test]
    fn half_the_light_falls_on_a_surface_of_the_height_squared_times_pi() {
        let surface = Area::from_m2(PI * 0.04);
        let par = from_lumens(
            LuminousFlux::from_lumens(1000.0),
            Length::from_cm(20.0),
            surface,
        );
        for (found, per_lumen, left) in [
            (par.low, 0.012, 0.6),
            (par.typical, 0.0145, 0.8),
            (par.high, 0.017, 0.95),
        ] {
            let falls = 1000.0 * per_lumen * left / 2.0;
            assert_relative_eq!(found, falls / (PI * 0.04), max_relative = 1e-12);
        }
    }
}
