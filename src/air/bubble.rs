//! Oxygen from rising bubbles, and the carbon dioxide they carry off.

use crate::source::Validity;
use crate::units::constants::{GAS_CONSTANT, PA_PER_ATM};
use crate::units::{Flow, Length, MassRate, Temperature};
use crate::water::{Gas, Solute, atmosphere, carbon_dioxide, diffusivity, oxygen};

/// Depths that the efficiencies per metre are meant for.
pub const SUBMERGENCE_VALIDITY: Validity = Validity::new("depth of the air stone", "m", 0.05, 1.0);

/// Oxygen in a cubic metre of dry air at 20 C and one atmosphere, kg: the
/// density 1.2041 times the mass fraction 0.2314.
pub const OXYGEN_IN_AIR_KG_M3: f64 = 1.2041 * 0.2314;

/// Growth of the transfer per degree.
const THETA: f64 = 1.024;
/// Temperature of the standard rate, C.
const STANDARD_CELSIUS: f64 = 20.0;

/// What breaks the air up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Diffuser {
    /// A fine stone or wood block.
    FineStone,
    /// An open tube, as in the riser of a sponge filter.
    OpenTube,
}

/// A stream of bubbles.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bubbles {
    /// Air, as at 20 C and one atmosphere.
    pub air: Flow,
    /// From the water surface down to the stone.
    pub submergence: Length,
    /// Share of the oxygen in the air that dissolves per metre of depth.
    pub efficiency_per_m: f64,
    /// Transfer in tank water over transfer in clean water.
    pub alpha: f64,
    /// Saturation in tank water over saturation in clean water.
    pub beta: f64,
}

impl Bubbles {
    /// Oxygen given to clean water without oxygen at 20 C and one atmosphere.
    ///
    /// ```text
    /// SOTR = W s h
    /// ```
    ///
    /// W the oxygen in the air supplied, s the efficiency per metre, h the depth.
    ///
    /// # Valid range
    /// [`SUBMERGENCE_VALIDITY`].
    ///
    /// # Source
    /// Definitions of the standard `asce_ewri_2_06`.
    ///
    /// # Example
    /// ```
    /// use lentic::air::Bubbles;
    /// use lentic::units::{Flow, Length};
    /// let bubbles = Bubbles {
    ///     air: Flow::from_l_min(1.0),
    ///     submergence: Length::from_cm(30.0),
    ///     efficiency_per_m: 0.04,
    ///     alpha: 1.0,
    ///     beta: 1.0,
    /// };
    /// // 0.06 m3/h of air with 278.6 g/m3, of which 1.2 % dissolves
    /// assert!((bubbles.standard_rate().g_h() - 0.06 * 278.6 * 0.012).abs() < 1e-3);
    /// ```
    ///
    /// # Limits
    /// The efficiency per metre of a small open stone was not measured: within a factor of two.
    pub fn standard_rate(&self) -> MassRate {
        let oxygen_g_h = self.air.l_h() * OXYGEN_IN_AIR_KG_M3;
        MassRate::from_g_h(oxygen_g_h * self.efficiency_per_m * self.submergence.m())
    }

    /// Clearance of a gas by the bubbles: the flow of water that would carry as much gas if it
    /// left saturated.
    ///
    /// ```text
    /// oxygen           K = alpha SOTR 1.024^(T - 20) / C*20
    /// carbon dioxide   K = M (1 - exp(-r K_O2 / M)),   M = Q / (K0 R T),   r = sqrt(D_CO2 / D_O2)
    /// ```
    ///
    /// M is the clearance of bubbles that leave in balance, Q the air flow, K0 the solubility.
    ///
    /// # Source
    /// Oxygen: the standard `asce_ewri_2_06`. Carbon dioxide, after Matter-Mueller, Gujer and
    /// Giger 1981 (`matter_muller_1981`, from memory).
    ///
    /// # Example
    /// ```
    /// use lentic::air::Bubbles;
    /// use lentic::units::{Flow, Length, Temperature};
    /// use lentic::water::Gas;
    /// let bubbles = Bubbles {
    ///     air: Flow::from_l_min(1.0),
    ///     submergence: Length::from_cm(30.0),
    ///     efficiency_per_m: 0.04,
    ///     alpha: 1.0,
    ///     beta: 1.0,
    /// };
    /// // 200.6 mg/h into water that holds 9.09 mg/L at 20 C (iso_5814)
    /// let clearance = bubbles.clearance(Gas::Oxygen, Temperature::from_celsius(20.0));
    /// assert!((clearance.l_h() - 200.6 / 9.09).abs() < 0.05);
    /// ```
    ///
    /// # Limits
    /// A factor of two either way, by the efficiency per metre. See
    /// [`Exchange`](crate::air::Exchange) for what of it is the surface's own.
    pub fn clearance(&self, gas: Gas, temperature: Temperature) -> Flow {
        match gas {
            Gas::Oxygen => self.oxygen_clearance(temperature),
            Gas::CarbonDioxide => self.carbon_dioxide_clearance(temperature),
        }
    }

    /// `alpha SOTR 1.024^(T - 20) / C*20`.
    fn oxygen_clearance(&self, temperature: Temperature) -> Flow {
        let standard = Temperature::from_celsius(STANDARD_CELSIUS);
        let standard_mg_l = oxygen::saturation(standard, atmosphere::SEA_LEVEL).mg_l();
        let warmth = THETA.powf(temperature.celsius() - STANDARD_CELSIUS);
        Flow::from_l_h(self.alpha * self.standard_rate().mg_h() * warmth / standard_mg_l)
    }

    /// A bubble takes up carbon dioxide until it is in balance with the water.
    ///
    /// ```text
    /// K = M (1 - exp(-r K_O2 / M)),    M = Q / (K0 R T),    r = sqrt(D_CO2 / D_O2)
    /// ```
    ///
    /// M is the clearance of bubbles that leave in balance, Q the air flow, K0
    /// the solubility. After Matter-Mueller, Gujer and Giger 1981
    /// (`matter_muller_1981`, from memory).
    fn carbon_dioxide_clearance(&self, temperature: Temperature) -> Flow {
        let molar_volume_l_atm = GAS_CONSTANT * temperature.kelvin() * 1e3 / PA_PER_ATM;
        let held = carbon_dioxide::solubility_mol_l_atm(temperature) * molar_volume_l_atm;
        let balanced = self.air / held;
        if balanced == Flow::ZERO {
            return Flow::ZERO;
        }
        let slower = diffusivity(Solute::CarbonDioxide, temperature)
            / diffusivity(Solute::Oxygen, temperature);
        let unlimited = self.oxygen_clearance(temperature) * slower.sqrt();
        balanced * -(-(unlimited / balanced)).exp_m1()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bubbles(l_min: f64, efficiency_per_m: f64) -> Bubbles {
        Bubbles {
            air: Flow::from_l_min(l_min),
            submergence: Length::from_cm(30.0),
            efficiency_per_m,
            alpha: 1.0,
            beta: 1.0,
        }
    }

    #[test]
    fn bubbles_strip_no_more_carbon_dioxide_than_their_air_holds() {
        let temperature = Temperature::from_celsius(25.0);
        let co2 = |b: Bubbles| b.clearance(Gas::CarbonDioxide, temperature).l_min();
        let oxygen = |b: Bubbles| b.clearance(Gas::Oxygen, temperature).l_min();
        let greedy = bubbles(1.0, 3.0);
        assert!(co2(greedy) < 1.0 / 0.8 && co2(greedy) < oxygen(greedy));
        let scant = bubbles(1.0, 0.0001);
        let ratio = co2(scant) / oxygen(scant);
        assert!((ratio - 0.9).abs() < 0.05, "{ratio}");
        assert_eq!(
            bubbles(0.0, 0.04).clearance(Gas::CarbonDioxide, temperature),
            Flow::ZERO
        );
    }
}
