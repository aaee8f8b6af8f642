//! The soil's stores, and what sets them free.

use super::state::State;
use crate::parameters::{Parameters, Soil};
use crate::substrate::release::Passage;
use crate::substrate::soaking::left_after_soaking;

/// Factor per 10 C on everything that breaks down, here about 25 C.
const BREAKDOWN_Q10: f64 = 2.0;
const REFERENCE_C: f64 = 25.0;
const DAYS_A_YEAR: f64 = 365.25;

/// How much faster things break down at a temperature than at 25 C.
///
/// ```text
/// 2^((T - 25)/10)
/// ```
pub(super) fn breakdown_warmth(temperature_c: f64) -> f64 {
    BREAKDOWN_Q10.powf((temperature_c - REFERENCE_C) / 10.0)
}

/// Rate constants of a soil at a temperature, 1/d.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Breakdown {
    fast: f64,
    slow: f64,
    stable: f64,
    reduction: f64,
    stable_p: f64,
    /// Days of mineralisation that roots leave.
    left_d: f64,
}

/// What becomes free at one moment, g/(m2 d).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Freed {
    pub(super) fast_n: f64,
    pub(super) slow_n: f64,
    pub(super) stable_n: f64,
    pub(super) reduced_p: f64,
    pub(super) stable_p: f64,
}

impl Freed {
    pub(super) fn nitrogen(&self) -> f64 {
        self.fast_n + self.slow_n + self.stable_n
    }

    pub(super) fn phosphorus(&self) -> f64 {
        self.reduced_p + self.stable_p
    }
}

impl Breakdown {
    pub(super) fn new(soil: &Soil<f64>, warmth: f64) -> Self {
        Self {
            fast: soil.mineralisation * warmth,
            slow: soil.slow_mineralisation * warmth,
            stable: soil.stable_mineralisation / DAYS_A_YEAR * warmth,
            reduction: soil.reduction * warmth,
            stable_p: soil.stable_phosphorus_return / DAYS_A_YEAR * warmth,
            left_d: soil.exchange_turnover,
        }
    }

    /// What becomes free of each store, in proportion to it.
    ///
    /// # Source
    /// Pools of first order: Stanford and Smith 1972 (`stanford_smith_1972`), Zou et al. 2018
    /// (`zou_2018`); phosphorus set free as iron is reduced: judgement.
    pub(super) fn freed(&self, state: &State) -> Freed {
        Freed {
            fast_n: self.fast * state.fast_soil_n,
            slow_n: self.slow * state.slow_soil_n,
            stable_n: self.stable * state.stable_soil_n,
            reduced_p: self.reduction * state.reducible_p,
            stable_p: self.stable_p * state.stable_p,
        }
    }

    /// Ammonium that roots can draw down: all above some days of what becomes free, which
    /// stays on the exchanger.
    ///
    /// ```text
    /// max(0, N - tau m)
    /// ```
    ///
    /// # Source
    /// Turnover of exchangeable ammonium under a bed of milfoil, 9.5 to 24 d (from memory).
    pub(super) fn within_reach(&self, soil_n: f64, freed: &Freed) -> f64 {
        (soil_n - self.left_d * freed.nitrogen()).max(0.0)
    }

    /// Slopes of what is within reach with the fast, the slow and the stable store.
    pub(super) fn reach_slopes(&self) -> [f64; 3] {
        [self.fast, self.slow, self.stable].map(|rate| -self.left_d * rate)
    }
}

/// Concentration in pore water of what a bed holds; none without soil.
pub(super) fn pore_water(held_g_m2: f64, passage: &Passage) -> f64 {
    if passage.store_m > 0.0 {
        held_g_m2 / passage.store_m
    } else {
        0.0
    }
}

/// Shares that soaking and draining leave.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Left {
    /// Of the ammonium.
    pub ammonium: f64,
    /// Of the phosphate.
    pub phosphate: f64,
}

impl Soil<f64> {
    /// What some rounds of soaking and draining leave of a soil's ammonium and phosphate.
    pub fn left_after_soaking(&self, rounds: u32) -> Left {
        let left = |kd| left_after_soaking(self.porosity, self.dry_bulk_density, kd, rounds);
        Left {
            ammonium: left(self.ammonium_kd),
            phosphate: left(self.phosphate_kd),
        }
    }
}

/// A state with the stores of a fresh soil.
///
/// ```text
/// rho Ls TN shares,   rho Ls N_min,   rho Ls P_red,   store Cp
/// ```
pub(super) fn filled(
    parameters: &Parameters<f64>,
    soil_depth_m: f64,
    phosphate: &Passage,
    state: State,
) -> State {
    let soil = &parameters.soil;
    let soil_kg_m2 = soil.dry_bulk_density * soil_depth_m;
    let total_n = soil_kg_m2 * soil.total_nitrogen;
    State {
        fast_soil_n: total_n * soil.fast_share,
        slow_soil_n: total_n * soil.slow_share,
        stable_soil_n: total_n * (1.0 - soil.fast_share - soil.slow_share).max(0.0),
        reducible_p: soil_kg_m2 * soil.reducible_phosphorus,
        soil_n: soil_kg_m2 * soil.mineral_nitrogen,
        soil_p: phosphate.store_m * soil.pore_phosphate,
        ..state
    }
}
