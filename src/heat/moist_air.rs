//! Density and humidity of moist air, as a mixture of ideal gases.

use crate::units::constants::{GAS_CONSTANT, molar_mass};
use crate::units::{Density, Pressure, Share, Temperature};
use crate::water::atmosphere;

/// Molar mass of dry air, g/mol (`iso_2533`).
const DRY_AIR_G_MOL: f64 = 28.9644;
/// Molar mass of water, g/mol.
const WATER_G_MOL: f64 = 2.0 * molar_mass::H + molar_mass::O;

/// Moist air at a temperature, vapour pressure and pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MoistAir {
    /// Of the air.
    pub temperature: Temperature,
    /// Of the water vapour in it.
    pub vapour: Pressure,
    /// Of both together.
    pub pressure: Pressure,
}

impl MoistAir {
    /// Air of a relative humidity; 100 % lies upon water.
    ///
    /// ```text
    /// p = phi f p_water,    f = 1.0007 + 3.46e-6 P        P in hPa
    /// ```
    ///
    /// # Source
    /// The enhancement f of vapour in air, about 0.4 %: Buck 1981
    /// (`buck_1981`, from memory).
    ///
    /// # Example
    /// ```
    /// use lentic::heat::moist_air::MoistAir;
    /// use lentic::units::{Share, Temperature};
    /// use lentic::water::atmosphere::SEA_LEVEL;
    /// let half = Share::from_percent(50.0);
    /// let room = MoistAir::new(Temperature::from_celsius(25.0), half, SEA_LEVEL);
    /// assert!((room.vapour.pa() - 1592.0).abs() < 5.0); // humid air of the library CoolProp 8.0.0
    /// ```
    ///
    /// # Limits
    /// As the vapour pressure of [`atmosphere`], in its range.
    pub fn new(temperature: Temperature, humidity: Share, pressure: Pressure) -> Self {
        let enhancement = 1.0007 + 3.46e-8 * pressure.pa();
        let over_water = atmosphere::vapour_pressure(temperature);
        Self {
            temperature,
            vapour: over_water * enhancement * humidity.fraction(),
            pressure,
        }
    }

    /// Mass of vapour and dry air in a volume.
    ///
    /// ```text
    /// rho = (Ma (P - p) + Mw p) / (R T)
    /// ```
    ///
    /// # Source
    /// Mixture of ideal gases.
    ///
    /// # Example
    /// ```
    /// use lentic::heat::moist_air::MoistAir;
    /// use lentic::units::{Share, Temperature};
    /// use lentic::water::atmosphere::SEA_LEVEL;
    /// let half = Share::from_percent(50.0);
    /// let room = MoistAir::new(Temperature::from_celsius(25.0), half, SEA_LEVEL);
    /// assert!((room.density().kg_m3() - 1.1774).abs() < 0.001); // humid air of the library CoolProp 8.0.0
    /// ```
    pub fn density(&self) -> Density {
        let dry_pa = (self.pressure - self.vapour).pa();
        let g_per_m3 = (DRY_AIR_G_MOL * dry_pa + WATER_G_MOL * self.vapour.pa())
            / (GAS_CONSTANT * self.temperature.kelvin());
        Density::from_kg_m3(g_per_m3 * 1e-3)
    }

    /// Mass of vapour over mass of dry air.
    ///
    /// ```text
    /// W = (Mw / Ma) p / (P - p)
    /// ```
    ///
    /// # Source
    /// Mixture of ideal gases.
    ///
    /// # Example
    /// ```
    /// use lentic::heat::moist_air::MoistAir;
    /// use lentic::units::{Share, Temperature};
    /// use lentic::water::atmosphere::SEA_LEVEL;
    /// let half = Share::from_percent(50.0);
    /// let room = MoistAir::new(Temperature::from_celsius(25.0), half, SEA_LEVEL);
    /// assert!((room.humidity_ratio() - 0.00993).abs() < 0.00005); // humid air of the library CoolProp 8.0.0
    /// ```
    pub fn humidity_ratio(&self) -> f64 {
        WATER_G_MOL / DRY_AIR_G_MOL * (self.vapour / (self.pressure - self.vapour))
    }
}
