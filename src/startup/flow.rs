//! What a group of plants or the algae exchange with water and soil.

use std::ops::Add;

use super::algae::AlgalChange;
use super::floating::FloatingChange;
use super::submerged::{FastChange, SlowChange};
use super::uptake::Uptake;

/// Exchange of one group, per square metre of floor and day.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Flow {
    /// Dry tissue made, before any is lost.
    pub(super) grown: f64,
    /// Nitrogen taken from the water.
    pub(super) taken: Uptake,
    /// Nitrogen taken from the soil.
    pub(super) rooted_n: f64,
    /// Nitrogen given back as ammonium by living tissue.
    pub(super) returned_n: f64,
    /// Nitrogen in tissue that died.
    pub(super) dead_n: f64,
    /// Nitrogen in plants taken out.
    pub(super) harvested_n: f64,
    /// Phosphorus taken from the water.
    pub(super) taken_p: f64,
    /// Phosphorus taken from the soil.
    pub(super) rooted_p: f64,
    /// Phosphorus given back to the water by living tissue.
    pub(super) returned_p: f64,
    /// Phosphorus in tissue that died.
    pub(super) dead_p: f64,
    /// Phosphorus in plants taken out.
    pub(super) harvested_p: f64,
}

impl Flow {
    /// What a stand with a store of nitrogen gains on balance.
    pub(super) fn stored_n(&self) -> f64 {
        self.taken.total() + self.rooted_n - self.returned_n - self.dead_n - self.harvested_n
    }

    /// What a stand with a store of phosphorus gains on balance.
    pub(super) fn stored_p(&self) -> f64 {
        self.taken_p + self.rooted_p - self.returned_p - self.dead_p - self.harvested_p
    }
}

impl Add for Flow {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            grown: self.grown + other.grown,
            taken: Uptake {
                ammonia: self.taken.ammonia + other.taken.ammonia,
                nitrite: self.taken.nitrite + other.taken.nitrite,
                nitrate: self.taken.nitrate + other.taken.nitrate,
            },
            rooted_n: self.rooted_n + other.rooted_n,
            returned_n: self.returned_n + other.returned_n,
            dead_n: self.dead_n + other.dead_n,
            harvested_n: self.harvested_n + other.harvested_n,
            taken_p: self.taken_p + other.taken_p,
            rooted_p: self.rooted_p + other.rooted_p,
            returned_p: self.returned_p + other.returned_p,
            dead_p: self.dead_p + other.dead_p,
            harvested_p: self.harvested_p + other.harvested_p,
        }
    }
}

/// Exchange and change of every group.
pub(super) struct Changes {
    pub(super) floating: FloatingChange,
    pub(super) fast: FastChange,
    pub(super) slow: SlowChange,
    pub(super) algae: AlgalChange,
}

impl Changes {
    /// The exchange of all of them.
    pub(super) fn flow(&self) -> Flow {
        self.floating.flow + self.fast.flow + self.slow.flow + self.algae.flow
    }
}
