//! What every way of nitrogen, phosphorus and alkalinity adds to the rates.
//!
//! ```text
//! dTAN = (to_water - x + feed + leached + decayed + returned - taken - rW) / z
//! dNO2 = (rB + rW - rN - taken - v NO2) / z
//! dNO3 = (x + rN - taken - v NO3) / z
//! dP   = (jP + feed + returned - taken) / z
//! dD   = dead - leached + faeces - decayed
//! ```
//!
//! `x` what the cap's oxic top oxidises, `z` water volume over floor area, `v` velocity
//! of denitrification, `rB`, `rW` and `rN` oxidation of ammonia on the bed and elsewhere
//! and of nitrite.

use super::flow::{Flow, Gains};
use super::inputs::Conditions;
use super::soil::Freed;
use super::state::State;
use super::turnover::Turnover;
use crate::parameters::Parameters;
use crate::state::AMMONIA_PER_PROTEIN;
use crate::water::stoichiometry::alkalinity_per_nitrogen;

/// Nitrogen in protein.
const NITROGEN_PER_PROTEIN: f64 = 0.16;
/// Equivalents of alkalinity that the oxidation of a mole of ammonia uses; ammonium from
/// organic matter gives one, its uptake takes one, uptake and loss of the oxidised forms
/// give one.
const EQUIVALENTS_PER_OXIDATION: f64 = 2.0;

/// Nitrogen that a gram of protein in feed leaves in a tank, g: as ammonia, and in faeces of
/// which the animals retain a share.
pub fn fed_nitrogen(retained: f64) -> [f64; 2] {
    let in_faeces = (NITROGEN_PER_PROTEIN - AMMONIA_PER_PROTEIN) * (1.0 - retained);
    [AMMONIA_PER_PROTEIN, in_faeces]
}

/// What goes on in proportion to one store alone, g/(m2 d).
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FirstOrderRates {
    pub(super) freed: Freed,
    /// Nitrogen of dead matter that breaks down.
    pub(super) decayed_n: f64,
    /// Lost as gas.
    pub(super) nitrite_lost: f64,
    pub(super) nitrate_lost: f64,
}

/// How what goes on is shared out. Its parts are linear, and add up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Balance {
    /// Floor area over water volume, 1/m.
    per_depth: f64,
    /// Alkalinity in the water for the nitrogen of one equivalent, meq/L for g/m2.
    meq_per_g: f64,
    /// Shares of what is in dead tissue.
    leached_share: f64,
    dead_phosphorus_share: f64,
}

impl Balance {
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        let water = &parameters.water;
        let per_depth = 1.0 / conditions.depth_m;
        Self {
            per_depth,
            meq_per_g: per_depth * alkalinity_per_nitrogen().meq_l() / EQUIVALENTS_PER_OXIDATION,
            leached_share: water.leached_share,
            dead_phosphorus_share: water.dead_phosphorus_share,
        }
    }

    /// Rates of change by bed and bacteria, per day.
    pub(super) fn of_turnover(&self, turnover: &Turnover) -> State {
        let ammonia = &turnover.ammonia;
        let oxidised = turnover.ammonia_oxidised();
        State {
            soil_n: -ammonia.from_soil,
            soil_p: -turnover.released_p,
            ammonia: (ammonia.to_water - turnover.oxidised_in_cap - ammonia.elsewhere)
                * self.per_depth,
            nitrite: (ammonia.on_bed + ammonia.elsewhere - turnover.nitrite.nitrogen)
                * self.per_depth,
            nitrate: (turnover.oxidised_in_cap + turnover.nitrite.nitrogen) * self.per_depth,
            phosphate: turnover.released_p * self.per_depth,
            ammonia_oxidisers: ammonia.cells,
            nitrite_oxidisers: turnover.nitrite.cells,
            released_n: ammonia.from_soil,
            released_p: turnover.released_p,
            alkalinity_used: (oxidised * EQUIVALENTS_PER_OXIDATION - ammonia.from_soil)
                * self.meq_per_g,
            ..State::NOTHING
        }
    }

    /// The same by plants and algae.
    pub(super) fn of_living(&self, living: &Flow, gains: &Gains) -> State {
        let (taken, floating, fast) = (&living.taken, &gains.floating, &gains.fast);
        let leached_n = living.dead_n * self.leached_share;
        let back_p = living.dead_p * self.dead_phosphorus_share;
        let ammonia = leached_n + living.returned_n - taken.ammonia;
        State {
            stable_p: living.dead_p - back_p,
            soil_n: -living.rooted_n,
            soil_p: -living.rooted_p,
            ammonia: ammonia * self.per_depth,
            nitrite: -taken.nitrite * self.per_depth,
            nitrate: -taken.nitrate * self.per_depth,
            phosphate: (back_p + living.returned_p - living.taken_p) * self.per_depth,
            floating: floating.mass,
            floating_n: floating.nitrogen,
            floating_p: floating.phosphorus,
            fast: fast.mass,
            fast_n: fast.nitrogen,
            fast_p: fast.phosphorus,
            slow: gains.slow,
            algae: gains.algae,
            detritus_n: living.dead_n - leached_n,
            harvested_n: living.harvested_n,
            harvested_p: living.harvested_p,
            alkalinity_used: -(ammonia + taken.nitrite + taken.nitrate) * self.meq_per_g,
            ..State::NOTHING
        }
    }

    /// The same by what goes on in proportion to one store alone.
    pub(super) fn of_standing(&self, standing: &FirstOrderRates) -> State {
        let (freed, decayed_n) = (&standing.freed, standing.decayed_n);
        let gas_n = standing.nitrite_lost + standing.nitrate_lost;
        State {
            fast_soil_n: -freed.fast_n,
            slow_soil_n: -freed.slow_n,
            stable_soil_n: -freed.stable_n,
            reducible_p: -freed.reduced_p,
            stable_p: -freed.stable_p,
            soil_n: freed.nitrogen(),
            soil_p: freed.phosphorus(),
            ammonia: decayed_n * self.per_depth,
            nitrite: -standing.nitrite_lost * self.per_depth,
            nitrate: -standing.nitrate_lost * self.per_depth,
            detritus_n: -decayed_n,
            denitrified_n: gas_n,
            alkalinity_used: -(decayed_n + gas_n) * self.meq_per_g,
            ..State::NOTHING
        }
    }

    /// The same by feed.
    pub(super) fn of_feed(&self, parameters: &Parameters<f64>, conditions: &Conditions) -> State {
        let water = &parameters.water;
        let feed = conditions.feed_g_m2_d;
        let protein = feed * conditions.feed_protein;
        let [ammonia_n, faeces_n] = fed_nitrogen(water.feed_retained).map(|part| protein * part);
        let phosphorus = feed * water.feed_phosphorus;
        State {
            ammonia: ammonia_n * self.per_depth,
            phosphate: phosphorus * self.per_depth,
            detritus_n: faeces_n,
            added_n: ammonia_n + faeces_n,
            added_p: phosphorus,
            alkalinity_used: -ammonia_n * self.meq_per_g,
            ..State::NOTHING
        }
    }
}
