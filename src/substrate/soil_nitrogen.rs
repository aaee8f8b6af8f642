//! Nitrogen that soil organic matter gives off over months, in moist soil with air.
//!
//! This is the slow pool. Flooding frees a fast one first, over days.

use crate::units::{Duration, Share, Temperature};

/// Days in a week.
const DAYS_PER_WEEK: f64 = 7.0;
/// Rate of the slow pool at 35 C, per week: 39 soils over 30 weeks, standard
/// error 0.009 (`stanford_smith_1972`).
pub const RATE_35_C_PER_WEEK: f64 = 0.054;
/// Intercept and slope (K) of the common logarithm of the rate per week
/// (`stanford_1973`, from memory).
const LOG_RATE: (f64, f64) = (6.16, 2299.0);
/// Temperatures of those incubations, C.
pub const RATE_TEMPERATURES_C: (f64, f64) = (5.0, 35.0);

/// The rate of the slow pool at a temperature, per week.
///
/// ```text
/// log10 k = 6.16 - 2299/T      T in K
/// ```
///
/// # Valid range
/// [`RATE_TEMPERATURES_C`].
///
/// # Source
/// Stanford et al. 1973 (`stanford_1973`, from memory).
///
/// # Example
/// ```
/// use lentic::{substrate::soil_nitrogen::rate_per_week, units::Temperature};
/// // 10^(6.16 - 2299 / 298.15)
/// assert!((rate_per_week(Temperature::from_celsius(25.0)) - 0.0281).abs() < 1e-4);
/// ```
///
/// # Limits
/// Moist soil with air, not a flooded one.
pub fn rate_per_week(temperature: Temperature) -> f64 {
    let (intercept, slope_k) = LOG_RATE;
    10f64.powf(intercept - slope_k / temperature.kelvin())
}

/// The share of the slow pool given off by a time.
///
/// ```text
/// N/N0 = 1 - exp(-k t)
/// ```
///
/// # Source
/// Stanford & Smith 1972. Its inverse at two weeks and 35 C, 9.77, turns a
/// two-week incubation into the whole pool (`stanford_1974`).
///
/// # Example
/// ```
/// use lentic::{substrate::soil_nitrogen::mineralised_share, units::Duration};
/// // the factor 9.77 printed for two weeks at 35 C
/// let share = mineralised_share(0.054, Duration::from_days(14.0)).fraction();
/// assert!((1.0 / share - 9.77).abs() < 0.01);
/// ```
///
/// # Limits
/// One pool at one rate; the fast pool of the first days is apart.
pub fn mineralised_share(rate_per_week: f64, time: Duration) -> Share {
    let weeks = time.days() / DAYS_PER_WEEK;
    Share::from_fraction(-(-rate_per_week * weeks).exp_m1())
}

/// The time in which half of the slow pool is given off.
///
/// ```text
/// t = ln 2 / k
/// ```
///
/// # Source
/// Stanford & Smith 1972 (`stanford_smith_1972`).
///
/// # Example
/// ```
/// use lentic::substrate::soil_nitrogen::{RATE_35_C_PER_WEEK, half_time};
/// // 12.8 weeks as printed
/// assert!((half_time(RATE_35_C_PER_WEEK).days() / 7.0 - 12.8).abs() < 0.05);
/// ```
pub fn half_time(rate_per_week: f64) -> Duration {
    Duration::from_days(std::f64::consts::LN_2 / rate_per_week * DAYS_PER_WEEK)
}
