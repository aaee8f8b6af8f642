//! The weeks ahead once the remedy of the likeliest cause is done.

use super::case::CaseHistory;
use super::remedy::Treatment;
use crate::startup::Sample;
use crate::units::{Analyte, Concentration};

/// A day of the tank as it most likely stands, its remedy done; each on its own scale.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DoneDay {
    /// Days after flooding.
    pub day: f64,
    /// Total ammonia, as nitrogen.
    pub ammonia_mg_l: f64,
    /// Nitrite, as NO2.
    pub nitrite_mg_l: f64,
    /// Nitrate, as NO3.
    pub nitrate_mg_l: f64,
}

/// The days that follow a treatment; none where it changes nothing in the water, or the
/// numbers leave the finite ones.
pub(super) fn days(case: &CaseHistory<'_>, treatment: &Treatment) -> Vec<DoneDay> {
    let (estimate, tank) = (&treatment.estimate, &treatment.tank);
    if *tank == estimate.tank {
        return Vec::new();
    }
    let ahead = estimate.ahead(tank).unwrap_or_default();
    let day = |sample: &Sample| {
        let own = |analyte: Analyte, nitrogen_mg_l: f64| {
            let nitrogen = Concentration::from_mg_l(nitrogen_mg_l.max(0.0));
            analyte.from_element(nitrogen).mg_l()
        };
        let state = &sample.state;
        DoneDay {
            day: case.keeper_day(sample.day),
            ammonia_mg_l: own(Analyte::Ammonia, state.ammonia),
            nitrite_mg_l: own(Analyte::Nitrite, state.nitrite),
            nitrate_mg_l: own(Analyte::Nitrate, state.nitrate),
        }
    };
    ahead.iter().map(day).collect()
}
