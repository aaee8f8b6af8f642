//! Submerged plants: fast ones with stores, slow ones of fixed content.

use super::clock::Settling;
use super::floating::HARVEST_PER_D;
use super::flow::{Flow, GroupChange, GroupStand};
use super::inputs::Conditions;
use super::surroundings::Surroundings;
use super::uptake::{Store, Uptake, saturation, share_of};
use crate::numerics::real::Scalar;
use crate::parameters::{Fast, Parameters, Slow, Submerged};
use crate::state::movement::film_half_mg_l;
use crate::units::Temperature;

/// Factor per degree on growth, up to the warmest temperature that helps
/// (judgement: 1.03-1.10; Barko et al. 1982 to at least 28 C).
const GROWTH_THETA: f64 = 1.07;
const WARMEST_C: f64 = 28.0;
const REFERENCE_C: f64 = 25.0;
/// Pore water nitrogen and phosphorus at half uptake by roots (judgement).
const ROOT_HALF_MG_N_L: f64 = 0.5;
const ROOT_HALF_MG_P_L: f64 = 0.1;
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

/// A stand of fast submerged plants under the conditions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FastStand {
    numbers: Fast<f64>,
    shared: Submerged<f64>,
    oxidised_preference: f64,
    /// Nitrogen in the water at half uptake, behind the film on the leaves, mg/L.
    nitrogen_half: f64,
    /// Gross growth in endless light with full stores, 1/d.
    growth_per_d: f64,
    /// Mass above which stems are cut back, g/m2.
    allowed_g_m2: Option<f64>,
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
            nitrogen_half: parameters.submerged.nitrogen_half
                + film_half_mg_l(
                    conditions.leaf_film,
                    water,
                    parameters.fast.uptake,
                    parameters.moving.leaf_area,
                ),
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
    fn respiration_per_d<S: Scalar>(&self, growth_per_d: S) -> S {
        let busy = growth_per_d * ((1.0 - RESTING_SHARE) / self.numbers.growth) + RESTING_SHARE;
        busy.min(S::splat(1.0)) * self.numbers.respiration
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
    pub(super) fn change<S: Scalar>(
        &self,
        stand: &GroupStand<S>,
        surroundings: &Surroundings<S>,
        settling: &Settling<S>,
    ) -> GroupChange<S> {
        let (numbers, shared) = (&self.numbers, &self.shared);
        let mass = stand.mass;
        let nitrogen = Store::of(
            stand.nitrogen,
            mass,
            numbers.least_nitrogen,
            numbers.most_nitrogen,
        );
        let phosphorus = Store::of(
            stand.phosphorus,
            mass,
            numbers.least_phosphorus,
            numbers.most_phosphorus,
        );
        let growth = saturation(surroundings.light, numbers.light_half)
            * self.growth_per_d
            * nitrogen.growth_share().min(phosphorus.growth_share())
            * settling.growing;
        let most_n = nitrogen.room() * mass * numbers.uptake;
        let most_p = phosphorus.room() * mass * numbers.phosphorus_uptake;
        let uptake = Uptake::of(
            &surroundings.offer,
            self.nitrogen_half,
            self.oxidised_preference,
        );
        let by_roots_n = settling.rooted
            * numbers.root_uptake
            * saturation(surroundings.pore_ammonium, ROOT_HALF_MG_N_L);
        let by_roots_p =
            settling.rooted * saturation(surroundings.pore_phosphate, ROOT_HALF_MG_P_L);
        let dead = (settling.melting * shared.melt + numbers.death) * mass;
        let trimmed = self.allowed_g_m2.map_or(S::splat(0.0), |allowed| {
            (mass - allowed).positive_part() * HARVEST_PER_D
        });
        let flow = Flow {
            grown: growth * mass,
            taken: uptake.times(most_n),
            rooted_n: most_n * by_roots_n,
            returned_n: nitrogen.leak_per_d() * mass,
            dead_n: nitrogen.content * dead,
            harvested_n: nitrogen.content * trimmed,
            taken_p: most_p * saturation(surroundings.phosphate, shared.phosphorus_half),
            rooted_p: most_p * by_roots_p,
            returned_p: phosphorus.leak_per_d() * mass,
            dead_p: phosphorus.content * dead,
            harvested_p: phosphorus.content * trimmed,
        };
        GroupChange {
            mass: (growth - self.respiration_per_d(growth)) * mass - dead - trimmed,
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
    pub(super) fn change<S: Scalar>(
        &self,
        stand: &GroupStand<S>,
        surroundings: &Surroundings<S>,
        settling: &Settling<S>,
    ) -> GroupChange<S> {
        let (numbers, shared) = (&self.numbers, &self.shared);
        let mass = stand.mass;
        let by_roots = settling.rooted * numbers.rooted_share * surroundings.soil_left();
        let uptake = Uptake::of(
            &surroundings.offer,
            shared.nitrogen_half,
            self.oxidised_preference,
        );
        let half = shared.phosphorus_half * SLOW_HALF_SHARE;
        let by_water = uptake.total().min(saturation(surroundings.phosphate, half));
        let limit = (by_roots + by_roots.complement() * by_water).min(S::splat(1.0));
        let gross = saturation(surroundings.light, numbers.light_half)
            * self.growth_per_d
            * limit
            * settling.growing;
        let surplus = gross - numbers.respiration;
        let net = surplus.positive_part() * mass;
        let lost = (-surplus).positive_part() * mass;
        let melt = settling.melting * (shared.melt * SLOW_MELT_SHARE);
        let dead = (melt + numbers.death) * mass;
        let rooted = net * share_of(by_roots, limit);
        let floated = net - rooted;
        let flow = Flow {
            grown: gross * mass,
            taken: uptake.splitting(floated * numbers.tissue_nitrogen),
            rooted_n: rooted * numbers.tissue_nitrogen,
            returned_n: lost * numbers.tissue_nitrogen,
            dead_n: dead * numbers.tissue_nitrogen,
            taken_p: floated * numbers.tissue_phosphorus,
            rooted_p: rooted * numbers.tissue_phosphorus,
            returned_p: lost * numbers.tissue_phosphorus,
            dead_p: dead * numbers.tissue_phosphorus,
            ..Flow::none()
        };
        GroupChange {
            mass: net - lost - dead,
            flow,
        }
    }
}
