//! Oxygen used by animals, by plants in the dark and by the bed.

use crate::source::Validity;
use crate::units::constants::molar_mass;
use crate::units::{Area, Mass, MassRate, Temperature};

/// Temperatures of the fish measured.
pub const FISH_TEMPERATURE: Validity = Validity::new("water temperature", "C", 0.0, 30.0);
/// Body masses for which the line stands; below it may err by a factor of 2.
pub const FISH_MASS: Validity = Validity::new("body mass of an animal", "g", 1.0, 1000.0);

/// Growth of plant respiration per ten degrees (from memory).
const PLANT_Q10: f64 = 2.0;
/// Growth of the bed's oxygen use per degree (`thomann_1972`, from memory).
const BED_THETA: f64 = 1.065;

/// Oxygen use of a resting fish.
///
/// ```text
/// R = exp(15.7 - 5020 / T) (M / 50 g)^0.80     mmol O2/h, T in K
/// ```
///
/// # Valid range
/// [`FISH_TEMPERATURE`] and [`FISH_MASS`].
///
/// # Source
/// Clarke and Johnston 1999 (`clarke_johnston_1999`): the Arrhenius line of 69
/// species at 50 g, and the mass exponent of all data.
///
/// # Example
/// ```
/// use lentic::{air::demand::fish_at_rest, units::{Mass, Temperature}};
/// let rate = fish_at_rest(Mass::from_g(5.0), Temperature::from_celsius(25.0));
/// assert!((rate.mg_h() - 1.6266).abs() < 0.008);
/// ```
///
/// # Limits
/// At rest: what swimming and feeding cost comes on top. Bodies under a gram may
/// differ by a factor of two.
pub fn fish_at_rest(body: Mass, temperature: Temperature) -> MassRate {
    let mmol_h = (15.7 - 5020.0 / temperature.kelvin()).exp() * (body.g() / 50.0).powf(0.80);
    MassRate::from_mg_h(mmol_h * molar_mass::O2)
}

/// Oxygen use of plants in the dark.
///
/// ```text
/// R = rate m 2^((T - 22.5) / 10)
/// ```
///
/// `rate_mg_g_h` that at 22.5 C, m the dry mass.
///
/// # Source
/// From memory, after `owens_maris_1964` and `mcdonnell_weeter_1971`.
///
/// # Example
/// ```
/// use lentic::{air::demand::plants_in_the_dark, units::{Mass, Temperature}};
/// let rate = plants_in_the_dark(Mass::from_g(2.0), Temperature::from_celsius(32.5), 1.5);
/// assert!((rate.mg_h() - 2.0 * 1.5 * 2.0).abs() < 1e-9);
/// ```
///
/// # Limits
/// Plants draw on the gas within them at first, so that the water bears less: errs high.
pub fn plants_in_the_dark(dry: Mass, temperature: Temperature, rate_mg_g_h: f64) -> MassRate {
    let warmth = PLANT_Q10.powf((temperature.celsius() - 22.5) / 10.0);
    MassRate::from_mg_h(rate_mg_g_h * warmth * dry.g())
}

/// Oxygen use of the bed.
///
/// ```text
/// R = rate A 1.065^(T - 20)
/// ```
///
/// `rate_g_m2_d` that at 20 C, A the floor.
///
/// # Source
/// Thomann 1972 (`thomann_1972`, from memory) for the warmth; the rate is a judgement.
///
/// # Example
/// ```
/// use lentic::{air::demand::bed, units::{Area, Temperature}};
/// let rate = bed(Area::from_m2(0.5), Temperature::from_celsius(20.0), 0.8);
/// assert!((rate.g_d() - 0.4).abs() < 1e-12);
/// ```
///
/// # Limits
/// No bed of soil under sand was measured.
pub fn bed(floor: Area, temperature: Temperature, rate_g_m2_d: f64) -> MassRate {
    let warmth = BED_THETA.powf(temperature.celsius() - 20.0);
    MassRate::from_g_d(rate_g_m2_d * warmth * floor.m2())
}
