//! Carbon dioxide that water holds in balance with air.

use super::atmosphere;
use crate::source::Validity;
use crate::units::constants::molar_mass;
use crate::units::{Concentration, Pressure, Share, Temperature};

/// Where the solubility formulas hold.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", -1.0, 40.0);

/// Carbon dioxide in outdoor air, by volume of dry air: about 420 ppm (from
/// memory). A lived-in room holds up to twice or three times as much.
pub const OUTDOOR_AIR: Share = Share::from_fraction(420e-6);

/// Solubility of carbon dioxide in fresh water, mol/(kg atm).
///
/// ```text
/// ln K0 = -60.2409 + 93.4517 (100/T) + 23.3585 ln(T/100)        T in K
/// ```
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// Weiss 1974 (`weiss_1974`), at salinity 0.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::carbon_dioxide::solubility_mol_kg_atm};
/// // 0.03406 in the paper's table II, from memory
/// let solubility = solubility_mol_kg_atm(Temperature::from_celsius(25.0));
/// assert!((solubility - 0.03406).abs() < 2e-5);
/// ```
///
/// # Limits
/// Without salt; that of a freshwater tank lowers it by far less than a kit reads.
pub fn solubility_mol_kg_atm(temperature: Temperature) -> f64 {
    ln_solubility(temperature, [-60.2409, 93.4517, 23.3585]).exp()
}

/// The same per litre of water, mol/(L atm).
///
/// ```text
/// ln K0 = -58.0931 + 90.5069 (100/T) + 22.2940 ln(T/100)
/// ```
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// Weiss 1974 (`weiss_1974`), at salinity 0.
///
/// # Example
/// ```
/// use lentic::units::Temperature;
/// use lentic::water::carbon_dioxide::{solubility_mol_kg_atm, solubility_mol_l_atm};
/// // a litre at 25 C weighs 0.997 kg
/// let warm = Temperature::from_celsius(25.0);
/// let kg_per_l = solubility_mol_l_atm(warm) / solubility_mol_kg_atm(warm);
/// assert!((kg_per_l - 0.997).abs() < 0.002);
/// ```
///
/// # Limits
/// As [`solubility_mol_kg_atm`].
pub fn solubility_mol_l_atm(temperature: Temperature) -> f64 {
    ln_solubility(temperature, [-58.0931, 90.5069, 22.2940]).exp()
}

/// Dissolved carbon dioxide in balance with moist air.
///
/// ```text
/// CO2 = K0 x (P - p)
/// ```
///
/// x the share in dry air, P the air pressure, p the vapour pressure.
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// Weiss 1974 (`weiss_1974`).
///
/// # Example
/// ```
/// use lentic::units::Temperature;
/// use lentic::water::{atmosphere, carbon_dioxide::{OUTDOOR_AIR, air_equilibrium}};
/// let co2 = air_equilibrium(Temperature::from_celsius(25.0), atmosphere::SEA_LEVEL, OUTDOOR_AIR);
/// assert!((co2.mg_l() - 0.61).abs() < 0.01);
/// ```
///
/// # Limits
/// The air of a lived-in room holds more than [`OUTDOOR_AIR`], and so does water in it.
pub fn air_equilibrium(
    temperature: Temperature,
    pressure: Pressure,
    in_air: Share,
) -> Concentration {
    let dry_air = pressure - atmosphere::vapour_pressure(temperature);
    let mol_l = solubility_mol_l_atm(temperature) * in_air.fraction() * dry_air.atm();
    Concentration::from_mg_l(mol_l * molar_mass::CO2 * 1000.0)
}

fn ln_solubility(temperature: Temperature, [a, b, c]: [f64; 3]) -> f64 {
    let hundreds_k = temperature.kelvin() / 100.0;
    a + b / hundreds_k + c * hundreds_k.ln()
}
