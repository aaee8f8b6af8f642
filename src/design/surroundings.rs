//! Water, light, air and room as asked for.

use super::tap::{Disinfectant, Softened, TopUp, WaterGoal};
use crate::plants::light::LightClass;
use crate::units::{
    Alkalinity, Concentration, Conductivity, Duration, Flow, Hardness, Length, LuminousFlux,
    PhotonFlux, Share, Temperature,
};

/// The water filled in and changed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct FillWater {
    /// Kept in the tank.
    pub temperature: Temperature,
    /// Of the tank water.
    pub ph: f64,
    /// Of the tap water.
    pub alkalinity: Alkalinity,
    /// Of the tap water.
    pub hardness: Hardness,
    /// Total ammonia of the tap water, as nitrogen.
    pub ammonia: Concentration,
    /// Nitrite of the tap water, as NO2.
    pub nitrite: Concentration,
    /// Nitrate of the tap water, as NO3.
    pub nitrate: Concentration,
    /// Phosphate of the tap water, as PO4.
    pub phosphate: Option<Concentration>,
    /// Potassium of the tap water.
    pub potassium: Option<Concentration>,
    /// Magnesium of the tap water.
    pub magnesium: Option<Concentration>,
    /// Iron of the tap water.
    pub iron: Option<Concentration>,
    /// Of the tap water.
    pub conductivity: Option<Conductivity>,
    /// What the tap water is kept clean with.
    pub disinfectant: Option<Disinfectant>,
    /// All chlorine of the tap water, free and bound, as Cl2.
    pub chlorine: Option<Concentration>,
    /// At the cold tap.
    pub cold: Option<Temperature>,
    /// At the hot tap.
    pub hot: Option<Temperature>,
    /// Water without hardness that tap water is mixed with.
    pub softened: Softened,
    /// What water lost to the air is replaced with.
    pub top_up: TopUp,
    /// The water that is asked for.
    pub goal: WaterGoal,
    /// Regular water changes.
    pub change: Option<WaterChange>,
}

/// A regular water change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaterChange {
    /// Share of the water replaced.
    pub share: Share,
    /// How often.
    pub every: Duration,
    /// First day.
    pub from: f64,
    /// Last day.
    pub until: f64,
}

impl WaterChange {
    /// The days on which water is changed.
    pub fn days(self) -> impl Iterator<Item = f64> {
        let every = self.every.days();
        let count = ((self.until - self.from) / every).floor().max(0.0) as u32;
        (0..=count).map(move |round| self.from + f64::from(round) * every)
    }
}

/// The lamp.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Light {
    /// How bright.
    pub level: LightLevel,
    /// Hours a day.
    pub hours: f64,
}

/// How the lamp's brightness is known.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LightLevel {
    /// Measured at the water surface.
    Par(PhotonFlux),
    /// In words.
    Class(LightClass),
    /// From the lamp's label and its height above the water.
    Lumens {
        /// Luminous flux.
        flux: LuminousFlux,
        /// Lamp to water.
        height: Length,
    },
}

/// Air or flow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// What moves it.
    pub device: FlowDevice,
    /// Of air; of water for a pump.
    pub flow: Flow,
    /// How deep the device hangs.
    pub depth: Length,
    /// When it runs.
    pub hours: DutyHours,
}

/// What moves air or water.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FlowDevice {
    /// Nothing.
    None,
    /// A porous stone on an air pump.
    AirStone,
    /// A sponge filter lifted by air.
    SpongeFilter,
    /// A water pump or power filter.
    Pump,
}

/// When a device runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DutyHours {
    /// All day and night.
    Always,
    /// While the lamp is off.
    Night,
    /// While the lamp is on.
    Day,
}

/// The room around the tank.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Room {
    /// Air temperature.
    pub temperature: Temperature,
    /// Relative humidity.
    pub humidity: Share,
    /// Above sea level.
    pub altitude: Length,
    /// Price of a kilowatt-hour, in the keeper's own currency.
    pub tariff: Option<f64>,
}
