//! What plants and algae meet at one moment.

use super::uptake::Offer;
use crate::numerics::real::Scalar;

/// Pore water below which roots find nothing, mg/L; keeps the soil from
/// being overdrawn and changes nothing above.
const EMPTY_SOIL_MG_L: f64 = 1e-4;

/// Light and nutrients around the plants.
#[derive(Debug, Clone, Copy)]
pub(super) struct Surroundings<S> {
    /// Nitrogen in the water.
    pub(super) offer: Offer<S>,
    /// Phosphate in the water, mg P/L.
    pub(super) phosphate: S,
    /// Mean light in the water, umol/(m2 s).
    pub(super) light: S,
    /// Ammonium in the pore water that roots can draw down, mg N/L.
    pub(super) pore_ammonium: S,
    /// Phosphate in the pore water, mg P/L.
    pub(super) pore_phosphate: S,
}

impl<S: Scalar> Surroundings<S> {
    /// Whether roots find anything: all of it above a trace of both.
    pub(super) fn soil_left(&self) -> S {
        let scarcest = self.pore_ammonium.min(self.pore_phosphate);
        (scarcest / EMPTY_SOIL_MG_L).min(S::splat(1.0))
    }
}
