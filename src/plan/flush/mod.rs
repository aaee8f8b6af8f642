//! The first weeks of a design: peaks, ready day, water changes, calendar.

pub(super) mod calendar;
mod changes;
mod course;
mod reading;
mod section;

pub use changes::CHANGE_PACES;
pub use section::{
    CalendarEntry, ChangePlan, DayRow, Driver, ReadingRow, ShareOverLimit, Startup, StartupSection,
};

pub(super) use course::{Flush, limit_n_mg_l, probability};

use crate::design::Design;
use crate::units::{Analyte, Concentration};

/// Ammonia that is watched and acted on, mg N/L: judgement after the chronic and acute
/// criteria of EPA 2013 at common pH and temperature.
pub(super) const AMMONIA_MG_L: (f64, f64) = (0.5, 1.0);
/// Un-ionised ammonia, mg N/L.
pub(super) const UN_IONISED_MG_L: (f64, f64) = (0.02, 0.05);
/// Nitrite, mg NO2/L.
pub(super) const NITRITE_MG_L: (f64, f64) = (0.33, 1.0);
/// Nitrate, mg NO3/L: practice, and twice the long-exposure figure of Camargo et al. 2005.
pub(super) const NITRATE_MG_L: (f64, f64) = (40.0, 88.0);

/// The watch limit of a nutrient on its own scale, the keeper's own where the spec has
/// one; none for others.
pub fn watch_limit_mg_l(design: &Design, analyte: Analyte) -> Option<f64> {
    let goal = &design.draft().goal;
    let (own, (watch, _)) = match analyte {
        Analyte::Ammonia => (goal.ammonia, AMMONIA_MG_L),
        Analyte::Nitrite => (goal.nitrite, NITRITE_MG_L),
        Analyte::Nitrate => (goal.nitrate, NITRATE_MG_L),
        Analyte::Phosphate => return None,
    };
    Some(own.map_or(watch, Concentration::mg_l))
}

/// The limit of a nutrient to act on, on its own scale; none for others.
pub fn act_limit_mg_l(analyte: Analyte) -> Option<f64> {
    match analyte {
        Analyte::Ammonia => Some(AMMONIA_MG_L.1),
        Analyte::Nitrite => Some(NITRITE_MG_L.1),
        Analyte::Nitrate => Some(NITRATE_MG_L.1),
        Analyte::Phosphate => None,
    }
}
