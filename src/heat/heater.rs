//! What the heater must give.

use crate::source::Band;
use crate::units::{Power, Temperature, Volume};
use crate::water::density::{SPECIFIC_HEAT_J_KG_K, density};

/// Heater power over the loss at the coldest the room gets (judgement).
pub const MARGIN: Band = Band::new(1.25, 1.25, 1.5);

/// Hours in a year of 365.25 days, thousands.
const KILOHOURS_PER_YEAR: f64 = 8.766;

/// Heater power for a loss; none where the room is the warmer.
///
/// ```text
/// P = margin Q
/// ```
///
/// `margin` as [`MARGIN`].
///
/// # Source
/// Judgement: a quarter to a half over the loss on the coldest day.
///
/// # Example
/// ```
/// use lentic::{heat::heater, units::Power};
/// assert!((heater::power(Power::from_watts(20.0), 1.25).watts() - 25.0).abs() < 1e-12);
/// ```
pub fn power(loss: Power, margin: f64) -> Power {
    loss.max(Power::ZERO) * margin
}

/// Electricity that holds the temperature for a year at this loss, kWh.
///
/// ```text
/// E = 8.766 kh Q
/// ```
///
/// # Source
/// Arithmetic: a year of 365.25 days.
///
/// # Example
/// ```
/// use lentic::{heat::heater, units::Power};
/// assert!((heater::kwh_per_year(Power::from_watts(10.0)) - 87.66).abs() < 1e-9);
/// ```
///
/// # Limits
/// The room is taken as given all year: in a warm summer less is used.
pub fn kwh_per_year(loss: Power) -> f64 {
    loss.max(Power::ZERO).watts() * KILOHOURS_PER_YEAR
}

/// Heat capacity of a volume of water, J/K.
///
/// ```text
/// m c = rho V c
/// ```
///
/// # Source
/// Density as [`density()`]; specific heat by IAPWS-95,
/// [`SPECIFIC_HEAT_J_KG_K`].
///
/// # Example
/// ```
/// use lentic::{heat::heater, units::{Temperature, Volume}};
/// // 0.99705 kg x 4181.3 J/(kg K)
/// let litre = heater::heat_capacity_j_k(Volume::from_litres(1.0), Temperature::from_celsius(25.0));
/// assert!((litre - 4169.0).abs() < 0.5);
/// ```
///
/// # Limits
/// Bed, stones and glass are left out.
pub fn heat_capacity_j_k(water: Volume, temperature: Temperature) -> f64 {
    (density(temperature) * water).kg() * SPECIFIC_HEAT_J_KG_K
}
