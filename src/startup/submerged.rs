//! Submerged plants: fast ones with stores, slow ones of fixed content.

use super::clock::Settling;
use super::floating::HARVEST_PER_D;
use super::flow::Flow;
use super::inputs::Conditions;
use super::state::State;
use super::uptake::{Offer, Store, Uptake, saturation, share_of};
use crate::parameters::{Fast, Parameters, Slow, Submerged};
use crate::units::Temperature;

/// Factor per degree on growth, up to the warmest temperature that helps
/// (judgement: 1.03-1.10; Barko et al. 1982 to at least 28 C).
const GROWTH_THETA: f64 = 1.07;
const WARMEST_C: f64 = 28.0;
const REFERENCE_C: f64 = 25.0;
/// Pore water nitrogen and phosphorus at half uptake by roots (judgement).
const ROOT_HALF_MG_N_L: f64 = 0.5;
const ROOT_HALF_MG_P_L: f64 = 0.1;
/// Pore water below which roots find nothing, mg N/L; keeps the soil from
/// being overdrawn and changes nothing above.
const EMPTY_SOIL_MG_L: f64 = 1e-4;
/// Light for which the growth of fast plants is given.
const REFERENCE_UMOL_M2_S: f64 = 50.0;
const REFERENCE_HOURS: f64 = 10.0;
/// Respiration at rest over that in full growth (judgement).
pub(super) const RESTING_SHARE: f64 = 0.4;
/// Phosphate at half growth of slow plants over that at half uptake of fast ones (judgement).
const SLOW_HALF_SHARE: f64 = 0.25;
/// Share of the melt of fast plants that slow ones suffer (judgement).
const SLOW_MELT_SHARE: f64 = 0.5;

/// Growth of submerged plants at a temperature over that at 25 C.
///
/// ```text
/// 1.07^(min(T, 28) - 25)
/// ```
///
/// # Source
/// Judgement, within 1.03 to 1.10 a degree; helped to at least 28 C in Barko et al. 1982
/// (`barko_1982`).
///
/// # Example
/// ```
/// use lentic::{startup::submerged::warmth, units::Temperature};
/// // 1.07^-5
/// assert!((warmth(Temperature::from_celsius(20.0)) - 1.0 / 1.07_f64.powi(5)).abs() < 1e-12);
/// assert!((warmth(Temperature::from_celsius(25.0)) - 1.0).abs() < 1e-12);
/// ```
///
/// # Limits
/// Above 28 C it stands still, where real plants begin to suffer: errs high.
pub fn warmth(temperature: Temperature) -> f64 {
    GROWTH_THETA.powf(temperature.celsius().min(WARMEST_C) - REFERENCE_C)
}

/// What the plants meet at one moment.
#[derive(Debug, Clone, Copy)]
pub(super) struct Surroundings {
    /// Nitrogen in the water.
    pub(super) offer: Offer,
    /// Mean light in the water, umol/(m2 s).
    pub(super) light: f64,
    /// Ammonium in the pore water that roots can draw down, mg N/L.
    pub(super) pore_ammonium: f64,
    /// Phosphate in the pore water, mg P/L.
    pub(super) pore_phosphate: f64,
}

/// A stand of fast submerged plants under the conditions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FastStand {
    numbers: Fast<f64>,
    shared: Submerged<f64>,
    oxidised_preference: f64,
    /// Gross growth in endless light with full stores, 1/d.
    growth_per_d: f64,
    /// Mass above which stems are cut back, g/m2.
    allowed_g_m2: Option<f64>,
}

/// Exchange and change of a fast stand.
pub(super) struct FastChange {
    pub(super) flow: Flow,
    pub(super) mass: f64,
    pub(super) nitrogen: f64,
    pub(super) phosphorus: f64,
}

/// Growth of fast plants in endless light of some hours a day, all else as in the tank, 1/d.
///
/// ```text
/// g50 1.07^(min(T, 28) - 25) (h/10) (50 + K)/50
/// ```
pub(super) fn endless_light_growth(numbers: &Fast<f64>, water: Temperature, hours: f64) -> f64 {
    numbers.growth * numbers.carbon_factor * warmth(water) * hours
        / REFERENCE_HOURS
        / saturation(REFERENCE_UMOL_M2_S, numbers.light_half)
}

impl FastStand {
    /// Rates that do not change with the state.
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let water = Temperature::from_celsius(conditions.temperature_c);
        Self {
            numbers: parameters.fast,
            shared: parameters.submerged,
            oxidised_preference: parameters.water.oxidised_preference,
            growth_per_d: endless_light_growth(&parameters.fast, water, conditions.light_hours),
            allowed_g_m2: conditions
                .stems_above_g_m2
                .map(|limit| limit.max(conditions.stems_planted_g_m2)),
        }
    }

    /// Growth less respiration and death of a settled, replete stand, 1/d.
    pub(super) fn replete_growth_per_d(&self, light: f64) -> f64 {
        let growth = self.growth_per_d * saturation(light, self.numbers.light_half);
        growth - self.respiration_per_d(growth) - self.numbers.death
    }

    /// Respiration at a gross growth, 1/d.
    ///
    /// ```text
    /// r min(1, 0.4 + 0.6 grow/g50)
    /// ```
    fn respiration_per_d(&self, growth_per_d: f64) -> f64 {
        let busy = RESTING_SHARE + (1.0 - RESTING_SHARE) * growth_per_d / self.numbers.growth;
        self.numbers.respiration * busy.min(1.0)
    }

    /// Growth, uptake by leaves and roots, death, trimming.
    ///
    /// ```text
    /// grown   = g50 f(T) (h/10) I/(K + I) (50 + K)/50 min(store N, store P) growing S
    /// leaves  = V (a + o) room S               Vp P/(Kp + P) room S
    /// roots   = V r rooted Cs/(0.5 + Cs) room S,  Vp rooted Cp/(0.1 + Cp) room S
    /// dead    = (d + melt exp(-t/10)) S
    /// leak    = 0.5 max(0, N_S - Qmax S), of phosphorus alike
    /// trimmed = 2 max(0, S - allowed)
    /// ```
    ///
    /// # Source
    /// Form: Janse 2005, thesis, Wageningen. Stores: Droop 1973. Uptake: ranges of short
    /// experiments. Rooting, lag, melt: common practice, no source.
    pub(super) fn change(
        &self,
        state: &State,
        surroundings: &Surroundings,
        settling: &Settling,
    ) -> FastChange {
        let (numbers, shared) = (&self.numbers, &self.shared);
        let mass = state.fast;
        let nitrogen = Store::of(
            state.fast_n,
            mass,
            numbers.least_nitrogen,
            numbers.most_nitrogen,
        );
        let phosphorus = Store::of(
            state.fast_p,
            mass,
            numbers.least_phosphorus,
            numbers.most_phosphorus,
        );
        let growth = self.growth_per_d
            * saturation(surroundings.light, numbers.light_half)
            * nitrogen.growth_share().min(phosphorus.growth_share())
            * settling.growing;
        let most_n = numbers.uptake * nitrogen.room() * mass;
        let most_p = numbers.phosphorus_uptake * phosphorus.room() * mass;
        let uptake = Uptake::of(
            &surroundings.offer,
            shared.nitrogen_half,
            self.oxidised_preference,
        );
        let by_roots_n = numbers.root_uptake
            * settling.rooted
            * saturation(surroundings.pore_ammonium, ROOT_HALF_MG_N_L);
        let by_roots_p =
            settling.rooted * saturation(surroundings.pore_phosphate, ROOT_HALF_MG_P_L);
        let dead = (numbers.death + shared.melt * settling.melting) * mass;
        let trimmed = self
            .allowed_g_m2
            .map_or(0.0, |allowed| (mass - allowed).max(0.0) * HARVEST_PER_D);
        let flow = Flow {
            grown: growth * mass,
            taken: uptake.times(most_n),
            rooted_n: most_n * by_roots_n,
            returned_n: nitrogen.leak_per_d() * mass,
            dead_n: nitrogen.content * dead,
            harvested_n: nitrogen.content * trimmed,
            taken_p: most_p * saturation(state.phosphate, shared.phosphorus_half),
            rooted_p: most_p * by_roots_p,
            returned_p: phosphorus.leak_per_d() * mass,
            dead_p: phosphorus.content * dead,
            harvested_p: phosphorus.content * trimmed,
        };
        FastChange {
            mass: (growth - self.respiration_per_d(growth)) * mass - dead - trimmed,
            nitrogen: flow.stored_n(),
            phosphorus: flow.stored_p(),
            flow,
        }
    }
}

/// A stand of slow submerged plants under the conditions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SlowStand {
    numbers: Slow<f64>,
    shared: Submerged<f64>,
    oxidised_preference: f64,
    growth_per_d: f64,
}

/// Exchange and change of a slow stand.
pub(super) struct SlowChange {
    pub(super) flow: Flow,
    pub(super) mass: f64,
}

impl SlowStand {
    /// Rates that do not change with the state.
    ///
    /// ```text
    /// growth = mu 1.07^(min(T, 28) - 25) h/12
    /// ```
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let temperature = Temperature::from_celsius(conditions.temperature_c);
        Self {
            numbers: parameters.slow,
            shared: parameters.submerged,
            oxidised_preference: parameters.water.oxidised_preference,
            growth_per_d: parameters.slow.growth * warmth(temperature) * conditions.day_share(),
        }
    }

    /// Net growth with tissue of fixed content, or loss where light is short.
    ///
    /// ```text
    /// gross  = growth I/(K + I) limit growing
    /// limit  = min(1, rG + (1 - rG) min(a + o, P/(Kp/4 + P)))     rG = r rooted
    /// net    = max(0, gross - respiration) G,  lost = max(0, respiration - gross) G
    /// dead   = (d + 0.5 melt exp(-t/10)) G
    /// ```
    ///
    /// Of the nitrogen and phosphorus in `net` the share `rG/limit` comes by the roots;
    /// `lost` tissue returns both to the water.
    ///
    /// # Source
    /// Judgement, on the growth forms of Nielsen and Sand-Jensen 1991, *Aquatic
    /// Botany* 39:109.
    pub(super) fn change(
        &self,
        state: &State,
        surroundings: &Surroundings,
        settling: &Settling,
    ) -> SlowChange {
        let (numbers, shared) = (&self.numbers, &self.shared);
        let mass = state.slow;
        let by_roots = numbers.rooted_share * settling.rooted * surroundings.soil_left();
        let uptake = Uptake::of(
            &surroundings.offer,
            shared.nitrogen_half,
            self.oxidised_preference,
        );
        let half = shared.phosphorus_half * SLOW_HALF_SHARE;
        let by_water = uptake.total().min(saturation(state.phosphate, half));
        let limit = (by_roots + (1.0 - by_roots) * by_water).min(1.0);
        let gross = self.growth_per_d
            * saturation(surroundings.light, numbers.light_half)
            * limit
            * settling.growing;
        let net = (gross - numbers.respiration).max(0.0) * mass;
        let lost = (numbers.respiration - gross).max(0.0) * mass;
        let melt = shared.melt * settling.melting * SLOW_MELT_SHARE;
        let dead = (numbers.death + melt) * mass;
        let root_share = share_of(by_roots, limit);
        let (rooted, floated) = (net * root_share, net * (1.0 - root_share));
        let flow = Flow {
            grown: gross * mass,
            taken: uptake.splitting(numbers.tissue_nitrogen * floated),
            rooted_n: numbers.tissue_nitrogen * rooted,
            returned_n: numbers.tissue_nitrogen * lost,
            dead_n: numbers.tissue_nitrogen * dead,
            taken_p: numbers.tissue_phosphorus * floated,
            rooted_p: numbers.tissue_phosphorus * rooted,
            returned_p: numbers.tissue_phosphorus * lost,
            dead_p: numbers.tissue_phosphorus * dead,
            ..Flow::default()
        };
        SlowChange {
            mass: net - lost - dead,
            flow,
        }
    }
}

impl Surroundings {
    /// Whether roots find anything: all of it above a trace of both.
    fn soil_left(&self) -> f64 {
        let nitrogen = self.pore_ammonium / EMPTY_SOIL_MG_L;
        let phosphorus = self.pore_phosphate / EMPTY_SOIL_MG_L;
        nitrogen.min(phosphorus).min(1.0)
    }
}
