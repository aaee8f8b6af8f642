//! Algae: films on every surface and green water, as one mass.

use super::flow::{Flow, GroupChange, GroupStand};
use super::inputs::Conditions;
use super::surroundings::Surroundings;
use super::uptake::{Uptake, saturation};
use crate::numerics::real::Scalar;
use crate::parameters::{Algae, Parameters};

/// The algae under the conditions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct AlgalFilm {
    numbers: Algae<f64>,
    growth_per_d: f64,
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
    pub(super) fn change<S: Scalar>(
        &self,
        stand: &GroupStand<S>,
        surroundings: &Surroundings<S>,
    ) -> GroupChange<S> {
        let (numbers, mass) = (&self.numbers, stand.mass);
        let uptake = Uptake::of(&surroundings.offer, numbers.nitrogen_half, 1.0);
        let phosphorus = saturation(surroundings.phosphate, numbers.phosphorus_half);
        let grown = saturation(surroundings.light, numbers.light_half)
            * self.growth_per_d
            * uptake.total().min(phosphorus)
            * mass;
        let dead = mass * numbers.loss;
        let flow = Flow {
            grown,
            taken: uptake.splitting(grown * numbers.tissue_nitrogen),
            dead_n: dead * numbers.tissue_nitrogen,
            taken_p: grown * numbers.tissue_phosphorus,
            dead_p: dead * numbers.tissue_phosphorus,
            ..Flow::none()
        };
        GroupChange {
            mass: grown - dead,
            flow,
        }
    }
}
