//! What the heater must give.

use crate::source::Band;
use crate::units::{Duration, Power, Temperature, Volume};
use crate::water::density::{SPECIFIC_HEAT_J_KG_K, density};

/// Heater power over the loss at the coldest the room gets (judgement).
pub const MARGIN: Band = Band::new(1.25, 1.25, 1.5);

/// Hours in a year of 365.25 days, thousands.
const KILOHOURS_PER_YEAR: f64 = 8.766;
/// Seconds in an hour.
const SECONDS_PER_HOUR: f64 = 3600.0;

/// Heater power for a loss with a [`MARGIN`]; none where the room is the warmer.
pub fn power(loss: Power, margin: f64) -> Power {
    loss.max(Power::ZERO) * margin
}

/// Electricity that holds the temperature for a year at this loss, kWh.
pub fn kwh_per_year(loss: Power) -> f64 {
    loss.max(Power::ZERO).watts() * KILOHOURS_PER_YEAR
}

/// Heat capacity of a volume of water, J/K.
pub fn heat_capacity_j_k(water: Volume, temperature: Temperature) -> f64 {
    (density(temperature) * water).kg() * SPECIFIC_HEAT_J_KG_K
}

/// Power that warms water by a number of kelvin in a time, nothing lost.
///
/// ```text
/// P = m c dT / t
/// ```
pub fn warm_up_power(
    water: Volume,
    temperature: Temperature,
    rise_k: f64,
    within: Duration,
) -> Power {
    let seconds = within.hours() * SECONDS_PER_HOUR;
    Power::from_watts(heat_capacity_j_k(water, temperature) * rise_k / seconds)
}
