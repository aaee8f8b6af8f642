//! Algae: films on every surface and green water, as one mass.

use super::flow::Flow;
use super::inputs::Conditions;
use super::state::State;
use super::uptake::{Offer, Uptake, saturation};
use crate::parameters::{Algae, Parameters};

/// The algae under the conditions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct AlgalFilm {
    numbers: Algae<f64>,
    growth_per_d: f64,
}

/// Exchange and change of the algae.
pub(super) struct AlgalChange {
    pub(super) flow: Flow,
    pub(super) mass: f64,
}

impl AlgalFilm {
    pub(super) fn new(parameters: &Parameters<f64>, conditions: &Conditions) -> Self {
        Self {
            numbers: parameters.algae,
            growth_per_d: parameters.algae.growth * conditions.day_share(),
        }
    }

    /// Growth and loss.
    ///
    /// ```text
    /// grown = mu h/12 I/(K + I) min(a + o, P/(Kp + P)) A       w = 1
    /// dead  = l A
    /// ```
    ///
    /// # Source
    /// Form and most values: Janse 2005, thesis, Wageningen.
    pub(super) fn change(&self, state: &State, offer: &Offer, light: f64) -> AlgalChange {
        let numbers = &self.numbers;
        let mass = state.algae;
        let uptake = Uptake::of(offer, numbers.nitrogen_half, 1.0);
        let phosphorus = saturation(state.phosphate, numbers.phosphorus_half);
        let grown = self.growth_per_d
            * saturation(light, numbers.light_half)
            * uptake.total().min(phosphorus)
            * mass;
        let dead = numbers.loss * mass;
        let flow = Flow {
            grown,
            taken: uptake.splitting(numbers.tissue_nitrogen * grown),
            dead_n: numbers.tissue_nitrogen * dead,
            taken_p: numbers.tissue_phosphorus * grown,
            dead_p: numbers.tissue_phosphorus * dead,
            ..Flow::default()
        };
        AlgalChange {
            mass: grown - dead,
            flow,
        }
    }
}
