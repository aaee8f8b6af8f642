//! The limits that a design is held to: its keeper's own, else those of the start.

use crate::design::Design;
use crate::startup::limits;
use crate::units::{Analyte, Concentration};

/// The watch limit of a nutrient on its own scale, the keeper's own where the spec has
/// one; none for others.
pub fn watch_limit_mg_l(design: &Design, analyte: Analyte) -> Option<f64> {
    let goal = &design.draft().goal;
    let (own, limit) = match analyte {
        Analyte::Ammonia => (goal.ammonia, limits::AMMONIA),
        Analyte::Nitrite => (goal.nitrite, limits::NITRITE),
        Analyte::Nitrate => (goal.nitrate, limits::NITRATE),
        Analyte::Phosphate => return None,
    };
    Some(own.map_or(limit.watch, Concentration::mg_l))
}

/// The limit of a nutrient to act on, on its own scale; none for others.
pub fn act_limit_mg_l(analyte: Analyte) -> Option<f64> {
    match analyte {
        Analyte::Ammonia => Some(limits::AMMONIA.act),
        Analyte::Nitrite => Some(limits::NITRITE.act),
        Analyte::Nitrate => Some(limits::NITRATE.act),
        Analyte::Phosphate => None,
    }
}

/// The watch limit as nitrogen, mg N/L.
pub(super) fn limit_n_mg_l(design: &Design, analyte: Analyte) -> f64 {
    watch_limit_mg_l(design, analyte).map_or(f64::INFINITY, |own_scale| {
        analyte.element(Concentration::from_mg_l(own_scale)).mg_l()
    })
}
