//! What a soil still sets free after years.

use super::inputs::{Conditions, Inputs};
use super::passages::Passages;
use super::soil::{Breakdown, breakdown_warmth, filled};
use super::state::State;
use crate::numerics::root::first_crossing;
use crate::parameters::Parameters;

/// How finely a day is looked for.
const TOLERANCE_D: f64 = 1.0;

/// The nitrogen stores of a soil as it is flooded, each with the share that becomes free in
/// a day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SoilStores {
    /// g N/m2 and 1/d.
    stores: [(f64, f64); 3],
}

impl SoilStores {
    /// Those of a tank at its own temperature.
    pub fn of(inputs: &Inputs, parameters: &Parameters<f64>) -> Self {
        let conditions = Conditions::new(inputs);
        let phosphate = Passages::new(parameters, &conditions).phosphate;
        let depth_m = conditions.soil_depth_m;
        let fresh = filled(parameters, depth_m, &phosphate, State::NOTHING);
        let warmth = breakdown_warmth(conditions.temperature_c);
        let freed = Breakdown::new(&parameters.soil, warmth).freed(&fresh);
        let store = |held: f64, freed: f64| (held, if held > 0.0 { freed / held } else { 0.0 });
        Self {
            stores: [
                store(fresh.fast_soil_n, freed.fast_n),
                store(fresh.slow_soil_n, freed.slow_n),
                store(fresh.stable_soil_n, freed.stable_n),
            ],
        }
    }

    /// Nitrogen set free some days after flooding, g/(m2 d).
    ///
    /// ```text
    /// release = sum N k exp(-k t)
    /// ```
    ///
    /// `N` a store as it is flooded, g/m2; `k` the share of it that becomes free in a day at
    /// the temperature of the tank.
    ///
    /// # Source
    /// Pools of first order: Stanford and Smith 1972 (`stanford_smith_1972`), Zou et al. 2018
    /// (`zou_2018`): the stores of a run, in closed form.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// use lentic::startup::{Inputs, Parameters, SoilStores};
    /// let (tank, numbers) = (Inputs::reference(), Parameters::<Band>::reference().central());
    /// let stores = SoilStores::of(&tank, &numbers);
    /// let (first, later) = (stores.release_g_m2_d(0.0), stores.release_g_m2_d(365.0));
    /// assert!(later < first / 5.0);
    /// ```
    ///
    /// # Limits
    /// What the exchanger and the dead matter of plants hold back comes later and is left out:
    /// errs low in an old planted bed.
    pub fn release_g_m2_d(&self, day: f64) -> f64 {
        let stores = self.stores.iter();
        stores
            .map(|(held, rate)| held * rate * (-rate * day).exp())
            .sum()
    }

    /// Days from flooding until it sets free no more than an amount, g/(m2 d); none where it
    /// does so for longer than `most_d`.
    pub fn falls_to(&self, amount_g_m2_d: f64, most_d: f64) -> Option<f64> {
        let has_fallen = |day: f64| self.release_g_m2_d(day) <= amount_g_m2_d;
        if has_fallen(0.0) {
            return Some(0.0);
        }
        first_crossing(has_fallen, 0.0, most_d, TOLERANCE_D).ok()
    }
}
