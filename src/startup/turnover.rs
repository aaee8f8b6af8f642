//! What the bed and the bacteria do, and what they meet.

use super::habitat::Ways;
use super::nitrification::Oxidation;
use crate::numerics::real::Scalar;

/// What the bed and the bacteria do at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Turnover<S = f64> {
    pub(super) ammonia: Ways<S>,
    /// Phosphorus from the soil to the water, g/(m2 d).
    pub(super) released_p: S,
    /// Nitrite oxidised, g N/(m2 d), with the change of the cells.
    pub(super) nitrite: Oxidation<S>,
    /// Ammonia that the cap's oxic top turns into nitrate, g N/(m2 d).
    pub(super) oxidised_in_cap: S,
}

/// What the bed and its bacteria meet.
#[derive(Debug, Clone, Copy)]
pub(super) struct BedState<S> {
    /// Ammonium in the pore water, mg N/L.
    pub(super) pore_ammonium: S,
    /// Phosphate in the pore water, mg P/L.
    pub(super) pore_phosphate: S,
    /// Ammonia, nitrite and phosphate in the water, mg/L.
    pub(super) ammonia: S,
    pub(super) nitrite: S,
    pub(super) phosphate: S,
    /// g COD/m2.
    pub(super) ammonia_oxidisers: S,
    pub(super) nitrite_oxidisers: S,
}

impl<S: Scalar> Turnover<S> {
    /// The same of something else.
    pub(super) fn map<T>(&self, each: impl Fn(S) -> T) -> Turnover<T> {
        let (ammonia, nitrite) = (&self.ammonia, &self.nitrite);
        Turnover {
            ammonia: Ways {
                from_soil: each(ammonia.from_soil),
                to_water: each(ammonia.to_water),
                on_bed: each(ammonia.on_bed),
                elsewhere: each(ammonia.elsewhere),
                cells: each(ammonia.cells),
            },
            released_p: each(self.released_p),
            nitrite: Oxidation {
                nitrogen: each(nitrite.nitrogen),
                cells: each(nitrite.cells),
            },
            oxidised_in_cap: each(self.oxidised_in_cap),
        }
    }

    /// Ammonia oxidised at every place, g N/(m2 d).
    pub(super) fn ammonia_oxidised(&self) -> S {
        self.ammonia.on_bed + self.ammonia.elsewhere + self.oxidised_in_cap
    }
}
