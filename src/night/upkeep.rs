//! Heat, water and electricity that a tank takes.

use crate::design::{Design, LightLevel, Material};
use crate::heat::cooling::cooling_time;
use crate::heat::evaporation::{LID_FACTOR, litres_per_week};
use crate::heat::{Climate, Enclosure, Glazing, HeatLoss, Top, heater};
use crate::units::{Duration, Power, Share, Temperature};
use crate::water::atmosphere;

/// Fall of temperature in a power cut that is counted to, K (judgement: what animals
/// bear within a day).
pub const FALL_K: f64 = 4.0;
/// Luminous flux of an LED lamp per watt drawn, lm/W (judgement: 80-130 on labels).
const LUMENS_PER_WATT: f64 = 100.0;
/// Days in a year, thousands of watts.
const KWH_PER_WATT_HOUR_DAILY: f64 = 365.25e-3;

/// What keeping a tank warm and lit takes.
#[derive(Debug, Clone, PartialEq)]
pub struct EnergyUse {
    /// Heat that the tank loses to the room; below zero where the room warms it.
    pub loss: Power,
    /// Heater that holds the temperature with a margin.
    pub heater: Power,
    /// Of the heater, kWh a year in a room as given all year.
    pub heater_kwh_per_year: f64,
    /// Of the lamp, where its lumens are known; pumps are never known.
    pub lamp_kwh_per_year: Option<f64>,
    /// Of all that is known, in the keeper's own currency, where the tariff is.
    pub cost_per_year: Option<f64>,
    /// Water that evaporates, L.
    pub evaporation_l_per_week: f64,
    /// Time in which a power cut cools the water by [`FALL_K`]; none where it never does.
    pub cools_in: Option<Duration>,
}

impl EnergyUse {
    /// Of all that is known.
    pub fn kwh_per_year(&self) -> f64 {
        self.heater_kwh_per_year + self.lamp_kwh_per_year.unwrap_or(0.0)
    }

    /// The upkeep of a design.
    pub fn of(design: &Design) -> Self {
        let (tank, climate) = (enclosure(design), climate(design));
        let loss = heat_loss(design).total();
        let heater_kwh_per_year = heater::kwh_per_year(loss);
        let lamp_kwh_per_year = lamp_kwh_per_year(design);
        let known = heater_kwh_per_year + lamp_kwh_per_year.unwrap_or(0.0);
        let cooled = Temperature::from_celsius(climate.water.celsius() - FALL_K);
        Self {
            loss,
            heater: heater::power(loss, heater::MARGIN.typical),
            heater_kwh_per_year,
            lamp_kwh_per_year,
            cost_per_year: design.draft().room.tariff.map(|tariff| tariff * known),
            evaporation_l_per_week: litres_per_week(tank.evaporation(&climate)),
            cools_in: cooling_time(&tank, &climate, design.water(), cooled),
        }
    }
}

/// The heat that a design loses to its room, by its ways.
pub fn heat_loss(design: &Design) -> HeatLoss {
    enclosure(design).loss(&climate(design))
}

fn enclosure(design: &Design) -> Enclosure {
    let tank = &design.draft().tank;
    Enclosure {
        sides: design.vessel().wall_area(design.water_level()),
        bottom: design.vessel().floor_area(),
        surface: design.surface(),
        glazing: match tank.material {
            Material::Glass => Glazing::Glass,
            Material::Acrylic => Glazing::Acrylic,
        },
        side_thickness: tank.wall,
        bottom_thickness: tank.bottom,
        top: if tank.lid {
            Top::Lid(Share::from_fraction(LID_FACTOR.typical))
        } else {
            Top::Open
        },
    }
}

fn climate(design: &Design) -> Climate {
    let room = design.draft().room;
    Climate {
        water: design.draft().water.temperature,
        air: room.temperature,
        humidity: room.humidity,
        pressure: atmosphere::pressure_at(room.altitude),
    }
}

fn lamp_kwh_per_year(design: &Design) -> Option<f64> {
    match design.draft().light.level {
        LightLevel::Lumens { flux, .. } => {
            let watts = flux.lumens() / LUMENS_PER_WATT;
            Some(watts * design.draft().light.hours * KWH_PER_WATT_HOUR_DAILY)
        }
        LightLevel::Par(_) | LightLevel::Class(_) => None,
    }
}
