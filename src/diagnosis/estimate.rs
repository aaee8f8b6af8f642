//! The tank as it most likely stands under a cause, and what becomes of it.

use super::case::CaseHistory;
use super::cause::Cause;
use super::hypotheses::{AHEAD_D, Hypotheses, followed};
use super::scenario::{Scenario, middle, scenario};
use crate::numerics::rodas::IntegrationError;
use crate::startup::ensemble::days_of;
use crate::startup::{ModelEvent, ModelEventKind, Sample};

/// A tank that fits the readings best under a cause, with the water as last measured.
#[derive(Debug, Clone, PartialEq)]
pub struct TankEstimate {
    /// The cause.
    pub cause: Cause,
    /// Its history up to now, and from there on if nothing is done.
    pub tank: Scenario,
    /// Today as the model counts, d.
    pub now_d: f64,
}

impl TankEstimate {
    /// The member under which the readings are likeliest; the central tank without any.
    pub fn of(case: &CaseHistory<'_>, hypotheses: &Hypotheses, cause: Cause) -> Self {
        let readings = followed(case);
        let members = hypotheses.members(cause).iter();
        let best = members
            .map(|member| (member.log_likelihood(case, &readings), member))
            .max_by(|a, b| a.0.total_cmp(&b.0));
        let place = match best {
            Some((_, member)) if !readings.is_empty() => member.place.clone(),
            _ => middle(),
        };
        let mut tank = scenario(case, cause, &place);
        let now_d = case.now_d();
        tank.inputs.events.retain(|event| event.day <= now_d);
        if cause != Cause::KitError {
            tank.inputs.events.push(ModelEvent {
                day: now_d,
                kind: ModelEventKind::Measured(case.measured()),
            });
        }
        Self { cause, tank, now_d }
    }

    /// Every day of a tank from now on, today first.
    ///
    /// # Errors
    /// When its numbers leave the finite ones.
    pub fn ahead(&self, tank: &Scenario) -> Result<Vec<Sample>, IntegrationError> {
        let until = self.now_d.ceil() as u32 + AHEAD_D;
        let days = days_of(&tank.inputs, &tank.numbers, until)?;
        let ahead = days.into_iter().filter(|sample| sample.day >= self.now_d);
        Ok(ahead.collect())
    }
}
