//! Evaporation from still water into still air.

use super::moist_air::MoistAir;
use crate::source::{Band, Validity};
use crate::units::constants::HOURS_PER_DAY;
use crate::units::{Area, MassRate, Power, Pressure, Share, Temperature};

/// Water temperatures of the experiments behind the formula.
pub const WATER_VALIDITY: Validity = Validity::new("water temperature", "C", 7.0, 94.0);
/// Air temperatures of the experiments.
pub const AIR_VALIDITY: Validity = Validity::new("room temperature", "C", 6.0, 35.0);
/// Relative humidities of the experiments.
pub const HUMIDITY_VALIDITY: Validity = Validity::new("room humidity", "%", 28.0, 95.0);
/// Water surfaces of the experiments.
pub const AREA_VALIDITY: Validity = Validity::new("water surface", "m2", 0.07, 425.0);

/// Evaporation under a cover glass over that of an open tank (judgement).
pub const LID_FACTOR: Band = Band::new(0.05, 0.10, 0.15);

/// Water and room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Climate {
    /// Of the water.
    pub water: Temperature,
    /// Of the air in the room.
    pub air: Temperature,
    /// Relative, of the air in the room.
    pub humidity: Share,
    /// Of the air; see [`pressure_at`](crate::water::atmosphere::pressure_at).
    pub pressure: Pressure,
}

impl Climate {
    /// Water that evaporates from an open surface, the larger of what rises with
    /// light moist air and what the air's unrest carries off.
    ///
    /// ```text
    /// E1 = C rw (rr - rw)^(1/3) (Ww - Wr)      kg/(m2 h), where rr > rw
    /// E2 = 5e-5 (pw - pr)                      kg/(m2 h), p in Pa
    /// C  = 35, or 40 where rr - rw < 0.02 kg/m3
    /// ```
    ///
    /// r the density, W the humidity ratio, p the vapour pressure; w for air
    /// saturated at the temperature of the water, r for the room. Below zero
    /// where vapour of the room settles on the water.
    ///
    /// # Valid range
    /// [`WATER_VALIDITY`], [`AIR_VALIDITY`], [`HUMIDITY_VALIDITY`] and
    /// [`AREA_VALIDITY`]; there within 18 % in the mean.
    ///
    /// # Source
    /// Shah 2014 (`shah_2014`); 35 and 5e-5 as quoted
    /// elsewhere, 40 and the factor rw from memory. The densities are taken as
    /// those of the moist air, which agrees with the analogy of heat and mass
    /// transfer (Sh = 0.15 Ra^(1/3)) within 7 %.
    ///
    /// # Example
    /// ```
    /// use lentic::heat::Climate;
    /// use lentic::units::{Area, Share, Temperature};
    /// use lentic::water::atmosphere::SEA_LEVEL;
    /// let room = Climate {
    ///     water: Temperature::from_celsius(25.0),
    ///     air: Temperature::from_celsius(20.0),
    ///     humidity: Share::from_percent(50.0),
    ///     pressure: SEA_LEVEL,
    /// };
    /// let rate = room.evaporation(Area::from_m2(1.0));
    /// assert!((rate.kg_h() / 0.1620 - 1.0).abs() < 0.02);
    /// ```
    ///
    /// # Limits
    /// Still air: a fan or a draught takes more. A film or leaves on the surface hold it back.
    pub fn evaporation(&self, surface: Area) -> MassRate {
        let film = MoistAir::new(self.water, Share::from_fraction(1.0), self.pressure);
        let room = MoistAir::new(self.air, self.humidity, self.pressure);
        let kg_m2_h = rising(&film, &room).max(5e-5 * (film.vapour - room.vapour).pa());
        MassRate::from_kg_h(kg_m2_h * surface.m2())
    }
}

/// Evaporation carried off by the rise of air lighter than that of the room, kg/(m2 h).
fn rising(film: &MoistAir, room: &MoistAir) -> f64 {
    let lighter_kg_m3 = room.density().kg_m3() - film.density().kg_m3();
    if lighter_kg_m3 <= 0.0 {
        return f64::NEG_INFINITY;
    }
    let c = if lighter_kg_m3 < 0.02 { 40.0 } else { 35.0 };
    let moister = film.humidity_ratio() - room.humidity_ratio();
    c * film.density().kg_m3() * lighter_kg_m3.cbrt() * moister
}

/// Heat that vaporises a gram of water, J.
///
/// ```text
/// L = 2500.8 - 2.36 t + 0.0016 t^2 - 0.00006 t^3      J/g, t in C
/// ```
///
/// # Valid range
/// [`LATENT_HEAT_VALIDITY`].
///
/// # Source
/// Rogers and Yau 1989 (`rogers_yau_1989`), table 2.1, from memory.
///
/// # Example
/// ```
/// use lentic::{heat::evaporation::latent_heat_j_g, units::Temperature};
/// // 2441.7 by IAPWS-95
/// let heat = latent_heat_j_g(Temperature::from_celsius(25.0));
/// assert!((heat / 2441.7 - 1.0).abs() < 1e-3);
/// ```
pub fn latent_heat_j_g(temperature: Temperature) -> f64 {
    let t = temperature.celsius();
    2500.8 - 2.36 * t + 0.0016 * t * t - 0.000_06 * t * t * t
}

/// Where the latent heat holds.
pub const LATENT_HEAT_VALIDITY: Validity = Validity::new("water temperature", "C", 0.0, 40.0);

/// Heat that water takes along as it evaporates.
///
/// ```text
/// P = L E
/// ```
///
/// L as [`latent_heat_j_g`], E the mass of water in a time.
///
/// # Source
/// As [`latent_heat_j_g`].
///
/// # Example
/// ```
/// use lentic::{heat::evaporation::latent_power, units::{MassRate, Temperature}};
/// // 0.1620 kg/h x 2441.7 kJ/kg
/// let power = latent_power(MassRate::from_kg_h(0.1620), Temperature::from_celsius(25.0));
/// assert!((power.watts() - 109.9).abs() < 0.2);
/// ```
pub fn latent_power(rate: MassRate, temperature: Temperature) -> Power {
    let g_s = rate.g_h() / SECONDS_PER_HOUR;
    Power::from_watts(g_s * latent_heat_j_g(temperature))
}

/// Seconds in an hour.
const SECONDS_PER_HOUR: f64 = 3600.0;

/// Litres that evaporate in a week, at a kilogram a litre: what is to be topped up.
///
/// # Example
/// ```
/// use lentic::{heat::evaporation::litres_per_week, units::MassRate};
/// assert!((litres_per_week(MassRate::from_kg_h(0.035)) - 0.035 * 168.0).abs() < 1e-9);
/// ```
pub fn litres_per_week(rate: MassRate) -> f64 {
    rate.kg_h() * HOURS_PER_DAY * 7.0
}
