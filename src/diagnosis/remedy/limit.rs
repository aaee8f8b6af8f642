//! The limits that a remedy has to meet.

use super::super::case::CaseHistory;
use super::super::measurement::Measurand;
use crate::plan::watch_limit_mg_l;
use crate::startup::Sample;
use crate::units::{Analyte, Concentration};

/// The nutrients that have a limit.
pub(super) const NUTRIENTS: [Measurand; 3] =
    [Measurand::Ammonia, Measurand::Nitrite, Measurand::Nitrate];

/// Limits on nitrogen in the water, mg N/L: those of the findings on the flush.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NitrogenLimits {
    /// Ammonia.
    pub ammonia: f64,
    /// Nitrite.
    pub nitrite: f64,
    /// Nitrate.
    pub nitrate: f64,
}

impl NitrogenLimits {
    /// Those of a case: its own where the spec has a goal.
    pub fn of(case: &CaseHistory<'_>) -> Self {
        let limit = |analyte: Analyte| {
            let own_scale = watch_limit_mg_l(case.design, analyte).unwrap_or(f64::INFINITY);
            analyte.element(Concentration::from_mg_l(own_scale)).mg_l()
        };
        Self {
            ammonia: limit(Analyte::Ammonia),
            nitrite: limit(Analyte::Nitrite),
            nitrate: limit(Analyte::Nitrate),
        }
    }

    /// That of one nutrient.
    pub(super) fn get(&self, of: Measurand) -> f64 {
        match of {
            Measurand::Ammonia => self.ammonia,
            Measurand::Nitrite => self.nitrite,
            Measurand::Nitrate => self.nitrate,
            _ => f64::INFINITY,
        }
    }

    /// Whether a day is under all of them.
    pub fn hold(&self, sample: &Sample) -> bool {
        let state = &sample.state;
        state.ammonia < self.ammonia && state.nitrite < self.nitrite && state.nitrate < self.nitrate
    }
}
