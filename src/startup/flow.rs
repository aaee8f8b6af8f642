//! What a group of plants or the algae exchange with water and soil.

use std::ops::Add;

use super::uptake::Uptake;

/// Exchange of one group, per square metre of floor and day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Flow {
    /// Nitrogen taken from the water.
    pub(super) taken: Uptake,
    /// Nitrogen taken from the soil.
    pub(super) taken_from_soil: f64,
    /// Nitrogen given back as ammonium by living tissue.
    pub(super) returned_n: f64,
    /// Nitrogen in tissue that died.
    pub(super) dead_n: f64,
    /// Nitrogen in plants taken out.
    pub(super) harvested_n: f64,
    /// Phosphorus taken from the water.
    pub(super) taken_p: f64,
    /// Phosphorus in tissue that died.
    pub(super) dead_p: f64,
}

impl Add for Flow {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self {
            taken: Uptake {
                ammonia: self.taken.ammonia + other.taken.ammonia,
                nitrite: self.taken.nitrite + other.taken.nitrite,
                nitrate: self.taken.nitrate + other.taken.nitrate,
            },
            taken_from_soil: self.taken_from_soil + other.taken_from_soil,
            returned_n: self.returned_n + other.returned_n,
            dead_n: self.dead_n + other.dead_n,
            harvested_n: self.harvested_n + other.harvested_n,
            taken_p: self.taken_p + other.taken_p,
            dead_p: self.dead_p + other.dead_p,
        }
    }
}
