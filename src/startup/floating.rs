//! Floating plants: fed by the water, lit from above.

use super::flow::Flow;
use super::inputs::Conditions;
use super::state::State;
use super::uptake::{LEAK_PER_D, Store, Uptake, saturation};
use crate::parameters::{Floating, Parameters};
use crate::units::Temperature;

/// Duckweed's lower end, optimum and upper end of growth, C (Klein et al. 2022).
const LOWEST_C: f64 = 8.0;
const BEST_C: f64 = 26.7;
const HIGHEST_C: f64 = 40.5;
/// Factor per 10 C on losses, here about 25 C (Klein et al. 2022).
const LOSS_Q10: f64 = 2.0;
const REFERENCE_C: f64 = 25.0;
/// Rate at which what stands above the allowed cover is taken off, 1/d.
const HARVEST_PER_D: f64 = 2.0;

/// Growth of duckweed at a temperature as a share of growth at its best.
///
/// ```text
/// 10^(-((T - 26.7)/(E - 26.7))^2)      E = 8 C below, 40.5 C above the optimum
/// ```
///
/// # Source
/// Klein et al. 2022 (`klein_2022`), the default values.
///
/// # Example
/// ```
/// use lentic::{startup::floating::warmth, units::Temperature};
/// assert!((warmth(Temperature::from_celsius(24.0)) - 0.953).abs() < 5e-4);
/// ```
pub fn warmth(temperature: Temperature) -> f64 {
    let celsius = temperature.celsius();
    let end = if celsius < BEST_C {
        LOWEST_C
    } else {
        HIGHEST_C
    };
    10.0_f64.powf(-((celsius - BEST_C) / (end - BEST_C)).powi(2))
}

/// A stand of floaters under the conditions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FloatingStand {
    numbers: Floating<f64>,
    oxidised_preference: f64,
    /// Gross growth with full stores and no crowding, 1/d.
    growth_per_d: f64,
    /// Loss, 1/d.
    loss_per_d: f64,
    /// Mass above which plants are taken off, g/m2.
    allowed_g_m2: Option<f64>,
}

/// Exchange and change of the stand.
pub(super) struct FloatingChange {
    pub(super) flow: Flow,
    pub(super) mass: f64,
    pub(super) nitrogen: f64,
}

impl FloatingStand {
    /// Rates that do not change with the state.
    ///
    /// ```text
    /// growth = mu f(T) DLI/(K + DLI),   loss = l 2^((T - 25)/10)
    /// ```
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let numbers = parameters.floating;
        let temperature = Temperature::from_celsius(conditions.temperature_c);
        let daily_light = parameters.lamp.level * conditions.daily_light_mol_m2();
        let lit = saturation(daily_light, numbers.daily_light_half);
        let loss_warmth = LOSS_Q10.powf((conditions.temperature_c - REFERENCE_C) / 10.0);
        Self {
            numbers,
            oxidised_preference: parameters.water.oxidised_preference,
            growth_per_d: numbers.growth * lit * warmth(temperature),
            loss_per_d: numbers.loss * loss_warmth,
            allowed_g_m2: conditions
                .floaters_above
                .map(|cover| numbers.closed_layer * cover),
        }
    }

    /// Growth less loss of a settled, replete, uncrowded stand, 1/d.
    pub(super) fn replete_growth_per_d(&self) -> f64 {
        self.growth_per_d - self.loss_per_d
    }

    /// Growth, uptake, death and thinning.
    ///
    /// ```text
    /// grown     = growth min(store, P/(Kp + P)) (1 - F/F_max) started F
    /// uptake    = V (a + o) room F
    /// dead      = dead_share loss F
    /// leak      = 0.5 max(0, N_F - Qmax F)
    /// harvested = 2 max(0, F - allowed)
    /// ```
    ///
    /// # Source
    /// Growth and crowding: Klein et al. 2022 (`klein_2022`), Driever et al. 2005
    /// (`driever_2005`). Store: Droop 1973 (`droop_1973`, from memory). Shares of loss and leak: judgement.
    pub(super) fn change(&self, state: &State, started: f64) -> FloatingChange {
        let numbers = &self.numbers;
        let mass = state.floating;
        let store = Store::of(
            state.floating_n,
            mass,
            numbers.least_nitrogen,
            numbers.most_nitrogen,
        );
        let phosphorus = saturation(state.phosphate, numbers.phosphorus_half);
        let grown = self.growth_per_d
            * store.growth_share().min(phosphorus)
            * (1.0 - mass / numbers.capacity)
            * started
            * mass;
        let uptake = Uptake::of(state, numbers.nitrogen_half, self.oxidised_preference);
        let taken = uptake.times(numbers.uptake * store.room() * mass);
        let loss = self.loss_per_d * mass;
        let dead = loss * numbers.dead_share;
        let leaked = store.excess() * mass * LEAK_PER_D;
        let harvested = self
            .allowed_g_m2
            .map_or(0.0, |allowed| (mass - allowed).max(0.0) * HARVEST_PER_D);
        let flow = Flow {
            taken,
            taken_from_soil: 0.0,
            returned_n: leaked,
            dead_n: store.content * dead,
            harvested_n: store.content * harvested,
            taken_p: numbers.tissue_phosphorus * grown,
            dead_p: numbers.tissue_phosphorus * dead,
        };
        FloatingChange {
            mass: grown - loss - harvested,
            nitrogen: taken.total() - leaked - flow.dead_n - flow.harvested_n,
            flow,
        }
    }
}
