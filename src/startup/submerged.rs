//! Submerged plants: fast ones with a nitrogen store, slow ones of fixed content.

use super::clock::Settling;
use super::flow::Flow;
use super::inputs::Conditions;
use super::state::State;
use super::uptake::{LEAK_PER_D, Store, Uptake, saturation, share_of};
use crate::parameters::{Fast, Parameters, Slow, Submerged};
use crate::units::Temperature;

/// Factor per degree on growth, up to the warmest temperature that helps
/// (judgement: 1.03-1.10; Barko et al. 1982 to at least 28 C).
const GROWTH_THETA: f64 = 1.07;
const WARMEST_C: f64 = 28.0;
const REFERENCE_C: f64 = 25.0;
/// Pore water nitrogen at half uptake by roots, mg N/L.
const ROOT_HALF_MG_L: f64 = 0.5;
/// Pore water below which roots find nothing, mg N/L; keeps the soil from
/// being overdrawn and changes nothing above.
const EMPTY_SOIL_MG_L: f64 = 1e-4;
/// Carbon factor for which the growth rate of slow plants is given.
pub(super) const USUAL_CARBON_FACTOR: f64 = 0.6;
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
    /// Mean light in the water, umol/(m2 s).
    pub(super) light: f64,
    /// Ammonium in the pore water, mg N/L.
    pub(super) pore_water_mg_l: f64,
}

/// A stand of fast submerged plants under the conditions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FastStand {
    numbers: Fast<f64>,
    shared: Submerged<f64>,
    oxidised_preference: f64,
    /// Gross growth in full light with full stores, 1/d.
    growth_per_d: f64,
}

/// Exchange and change of a fast stand.
pub(super) struct FastChange {
    pub(super) flow: Flow,
    pub(super) mass: f64,
    pub(super) nitrogen: f64,
}

impl FastStand {
    /// Rates that do not change with the state.
    ///
    /// ```text
    /// growth = mu 1.07^(min(T, 28) - 25) fC h/12
    /// ```
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let temperature = Temperature::from_celsius(conditions.temperature_c);
        let factor = warmth(temperature) * conditions.day_share();
        Self {
            numbers: parameters.fast,
            shared: parameters.submerged,
            oxidised_preference: parameters.water.oxidised_preference,
            growth_per_d: parameters.fast.growth * parameters.submerged.carbon_factor * factor,
        }
    }

    /// Growth less respiration and death of a settled, replete stand, 1/d.
    pub(super) fn replete_growth_per_d(&self, light: f64) -> f64 {
        let lit = saturation(light, self.numbers.light_half);
        self.growth_per_d * lit - self.numbers.respiration - self.numbers.death
    }

    /// Growth, uptake by leaves and roots, death.
    ///
    /// ```text
    /// grown  = growth I/(K + I) min(store, fP) growing S
    /// fP     = 1 - (1 - P/(Kp + P)) (1 - rooted)
    /// leaves = V (a + o) room S
    /// roots  = V r rooted Cs/(0.5 + Cs) room S
    /// dead   = (d + melt exp(-t/10)) S
    /// leak   = 0.5 max(0, N_S - Qmax S)
    /// ```
    ///
    /// # Source
    /// Form: Janse 2005, thesis, Wageningen. Uptake: ranges of short
    /// experiments. Rooting, lag, melt: common practice, no source.
    pub(super) fn change(
        &self,
        state: &State,
        surroundings: &Surroundings,
        settling: &Settling,
    ) -> FastChange {
        let (numbers, shared) = (&self.numbers, &self.shared);
        let mass = state.fast;
        let store = Store::of(
            state.fast_n,
            mass,
            numbers.least_nitrogen,
            numbers.most_nitrogen,
        );
        let by_water = saturation(state.phosphate, shared.phosphorus_half);
        let phosphorus = 1.0 - (1.0 - by_water) * (1.0 - settling.rooted);
        let grown = self.growth_per_d
            * saturation(surroundings.light, numbers.light_half)
            * store.growth_share().min(phosphorus)
            * settling.growing
            * mass;
        let largest = numbers.uptake * store.room() * mass;
        let uptake = Uptake::of(state, shared.nitrogen_half, self.oxidised_preference);
        let taken = uptake.times(largest);
        let pore_water = saturation(surroundings.pore_water_mg_l, ROOT_HALF_MG_L);
        let rooted = largest * numbers.root_uptake * settling.rooted * pore_water;
        let dead = (numbers.death + shared.melt * settling.melting) * mass;
        let leaked = store.excess() * mass * LEAK_PER_D;
        let flow = Flow {
            taken,
            taken_from_soil: rooted,
            returned_n: leaked,
            dead_n: store.content * dead,
            harvested_n: 0.0,
            taken_p: shared.tissue_phosphorus * grown * share_of(by_water, phosphorus),
            dead_p: shared.tissue_phosphorus * dead,
        };
        FastChange {
            mass: grown - numbers.respiration * mass - dead,
            nitrogen: taken.total() + rooted - leaked - flow.dead_n,
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
    /// growth = mu 1.07^(min(T, 28) - 25) fC/0.6 h/12
    /// ```
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let temperature = Temperature::from_celsius(conditions.temperature_c);
        let factor = warmth(temperature) * conditions.day_share() / USUAL_CARBON_FACTOR;
        Self {
            numbers: parameters.slow,
            shared: parameters.submerged,
            oxidised_preference: parameters.water.oxidised_preference,
            growth_per_d: parameters.slow.growth * parameters.submerged.carbon_factor * factor,
        }
    }

    /// Net growth with nitrogen of fixed content, or loss where light is short.
    ///
    /// ```text
    /// gross  = growth I/(K + I) limit growing
    /// limit  = min(1, rG + (1 - rG) min(a + o, P/(Kp + P)))     rG = r rooted
    /// net    = max(0, gross - respiration) G,  lost = max(0, respiration - gross) G
    /// dead   = (d + 0.5 melt exp(-t/10)) G
    /// ```
    ///
    /// Of the nitrogen in `net` the share `rG/limit` comes by the roots; `lost`
    /// tissue returns its nitrogen to the water.
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
        let soil_left = (surroundings.pore_water_mg_l.max(0.0) / EMPTY_SOIL_MG_L).min(1.0);
        let by_roots = numbers.rooted_share * settling.rooted * soil_left;
        let uptake = Uptake::of(state, shared.nitrogen_half, self.oxidised_preference);
        let phosphorus = saturation(state.phosphate, shared.phosphorus_half);
        let by_water = uptake.total().min(phosphorus);
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
        let need = numbers.tissue_nitrogen * net;
        let flow = Flow {
            taken: uptake.splitting(need * (1.0 - root_share)),
            taken_from_soil: need * root_share,
            returned_n: numbers.tissue_nitrogen * lost,
            dead_n: numbers.tissue_nitrogen * dead,
            harvested_n: 0.0,
            taken_p: shared.tissue_phosphorus * net * (1.0 - root_share),
            dead_p: shared.tissue_phosphorus * dead,
        };
        SlowChange {
            mass: net - lost - dead,
            flow,
        }
    }
}
