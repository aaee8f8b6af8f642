//! How the parts of a design stand, without its findings' words: what other judgements
//! lean on.

use super::load::Load;
use super::rule;
use crate::design::Design;
use crate::finding::{Remedy, Status};
use crate::numerics::rodas::IntegrationError;
use crate::units::Length;

/// Verdicts on the bed, and the planting against its load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// `cap.coarse`.
    pub coarse: Status,
    /// `cap.fine`.
    pub fine: Status,
    /// `cap.thin`.
    pub thin: Status,
    /// `cap.deep`.
    pub deep: Status,
    /// `soil.deep`.
    pub soil_deep: Status,
    /// The depth of cap under which it is watched.
    pub cap_wanted: Length,
    /// What the planting takes over what the bed gives off.
    pub index: f64,
}

/// How a design stands.
///
/// # Errors
/// As for [`plan`](super::plan()).
pub fn standing(design: &Design) -> Result<Standing, IntegrationError> {
    Ok(Standing {
        coarse: rule::cap_coarse::judged(design).status,
        fine: rule::cap_fine::judged(design).status,
        thin: rule::cap_thin::judged(design).status,
        deep: rule::cap_deep::judged(design).status,
        soil_deep: rule::soil_deep::judged(design).status,
        cap_wanted: rule::cap_thin::limits(design).watch_under,
        index: Load::of(design)?.index(design.planted()),
    })
}

/// The sand that brings the cap to a depth wherever it is thinner: where, how deep, how
/// much, in which bags.
pub fn sand_to(design: &Design, depth: Length) -> Remedy {
    rule::more_sand(design, depth)
}

/// Sand spread evenly over the whole bed: how deep, how much, in which bags.
pub fn sand_over(design: &Design, depth: Length) -> Remedy {
    rule::sand_over_all(design, depth)
}
