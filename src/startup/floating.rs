//! Floating plants: fed by the water, lit from above.

use super::flow::{Flow, GroupChange, GroupStand};
use super::inputs::Conditions;
use super::surroundings::Surroundings;
use super::uptake::{Store, Uptake, saturation};
use crate::numerics::real::Scalar;
use crate::parameters::{Floating, Parameters};
use crate::units::Temperature;

/// Duckweed's lower end, optimum and upper end of growth, C (Klein et al. 2022).
const LOWEST_C: f64 = 8.0;
const BEST_C: f64 = 26.7;
const HIGHEST_C: f64 = 40.5;
/// Factor per 10 C on losses, here about 25 C (Klein et al. 2022).
const LOSS_Q10: f64 = 2.0;
const REFERENCE_C: f64 = 25.0;
/// Daily light for which growth is given, mol/m2.
const REFERENCE_MOL_M2_D: f64 = 2.0;
/// Rate at which what stands above the allowed mass is taken off, 1/d.
pub(super) const HARVEST_PER_D: f64 = 2.0;

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

/// Growth at a daily light over growth at 2 mol/m2.
///
/// ```text
/// DLI/(K + DLI) (K + 2)/2
/// ```
fn lit(daily_light: f64, half: f64) -> f64 {
    saturation(daily_light, half) / saturation(REFERENCE_MOL_M2_D, half)
}

/// Gross growth at 2 mol/m2 of light a day of floaters that grow at a rate net of their
/// loss in plenty of light.
///
/// ```text
/// (r + l) 2/(K + 2)
/// ```
///
/// # Source
/// The light law of the stand's own growth.
///
/// # Example
/// ```
/// use lentic::startup::floating::reference_growth_per_d;
/// // duckweed: 0.47 gross a day in plenty of light, 0.188 at 2 mol/m2
/// assert!((reference_growth_per_d(0.42, 0.05, 3.0) - 0.188).abs() < 1e-12);
/// ```
pub fn reference_growth_per_d(net_per_d: f64, loss_per_d: f64, daily_light_half: f64) -> f64 {
    (net_per_d + loss_per_d) * saturation(REFERENCE_MOL_M2_D, daily_light_half)
}

impl FloatingStand {
    /// Rates that do not change with the state.
    ///
    /// ```text
    /// growth = g2 DLI/(K + DLI) (K + 2)/2 f(T)/f(25 C),   loss = l 2^((T - 25)/10)
    /// ```
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let numbers = parameters.floating;
        let temperature = Temperature::from_celsius(conditions.temperature_c);
        let warmth = warmth(temperature) / warmth(Temperature::from_celsius(REFERENCE_C));
        let daily_light = parameters.lamp.level * conditions.daily_light_mol_m2();
        let loss_warmth = LOSS_Q10.powf((conditions.temperature_c - REFERENCE_C) / 10.0);
        Self {
            numbers,
            oxidised_preference: parameters.water.oxidised_preference,
            growth_per_d: numbers.growth * lit(daily_light, numbers.daily_light_half) * warmth,
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

    /// Growth that the store of phosphorus allows, as a share of full growth; none without
    /// floaters.
    pub(super) fn phosphorus_share(&self, stand: &GroupStand<f64>) -> f64 {
        self.phosphorus(stand).growth_share()
    }

    fn phosphorus<S: Scalar>(&self, stand: &GroupStand<S>) -> Store<S> {
        let numbers = &self.numbers;
        Store::of(
            stand.phosphorus,
            stand.mass,
            numbers.least_phosphorus,
            numbers.most_phosphorus,
        )
    }

    /// Growth, uptake, death and thinning.
    ///
    /// ```text
    /// grown     = growth min(store N, store P) (1 - F/F_max) started F
    /// nitrogen  = V (a + o) room F
    /// phosphate = Vp P/(Kp + P) room F
    /// dead      = dead_share loss F
    /// leak      = 0.5 max(0, N_F - Qmax F), of phosphorus alike
    /// harvested = 2 max(0, F - allowed)
    /// ```
    ///
    /// # Source
    /// Growth and crowding: Klein et al. 2022 (`klein_2022`), Driever et al. 2005
    /// (`driever_2005`). Stores: Droop 1973 (`droop_1973`, from memory). Shares of loss and leak: judgement.
    pub(super) fn change<S: Scalar>(
        &self,
        stand: &GroupStand<S>,
        surroundings: &Surroundings<S>,
        started: S,
    ) -> GroupChange<S> {
        let numbers = &self.numbers;
        let mass = stand.mass;
        let nitrogen = Store::of(
            stand.nitrogen,
            mass,
            numbers.least_nitrogen,
            numbers.most_nitrogen,
        );
        let phosphorus = self.phosphorus(stand);
        let grown = nitrogen.growth_share().min(phosphorus.growth_share())
            * self.growth_per_d
            * (mass / numbers.capacity).complement()
            * started
            * mass;
        let uptake = Uptake::of(
            &surroundings.offer,
            numbers.nitrogen_half,
            self.oxidised_preference,
        );
        let taken = uptake.times(nitrogen.room() * mass * numbers.uptake);
        let taken_p = saturation(surroundings.phosphate, numbers.phosphorus_half)
            * numbers.phosphorus_uptake
            * phosphorus.room()
            * mass;
        let loss = mass * self.loss_per_d;
        let dead = loss * numbers.dead_share;
        let harvested = self.allowed_g_m2.map_or(S::splat(0.0), |allowed| {
            (mass - allowed).positive_part() * HARVEST_PER_D
        });
        let flow = Flow {
            grown,
            taken,
            returned_n: nitrogen.leak_per_d() * mass,
            dead_n: nitrogen.content * dead,
            harvested_n: nitrogen.content * harvested,
            taken_p,
            returned_p: phosphorus.leak_per_d() * mass,
            dead_p: phosphorus.content * dead,
            harvested_p: phosphorus.content * harvested,
            ..Flow::none()
        };
        GroupChange {
            mass: grown - loss - harvested,
            flow,
        }
    }
}
