//! Biomass and water chemistry of a tank on one day: what the weeks after
//! flooding hand to the hours of a day, and how its water moves.

pub mod movement;

use crate::units::{Alkalinity, Concentration, Mass, MassRate, Share};

/// Ammonia nitrogen that animals give off per gram of protein eaten.
///
/// ```text
/// 0.16 N in protein x 0.80 assimilated x 0.80 excreted x 0.90 as ammonia = 0.092
/// ```
///
/// # Source
/// Timmons and Ebeling, *Recirculating Aquaculture* (`timmons_ebeling`, from memory).
pub const AMMONIA_PER_PROTEIN: f64 = 0.092;

/// A tank on a day; amounts are those of the whole tank, masses dry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DayState {
    /// Days since filling.
    pub day: f64,
    /// Floating plants.
    pub floating: Mass,
    /// Mass of floaters over that of one closed layer; over one where they lie in layers.
    pub cover: Share,
    /// Fast submerged plants.
    pub fast: Mass,
    /// Slow submerged plants.
    pub slow: Mass,
    /// Algae.
    pub algae: Mass,
    /// Ammonia nitrogen.
    pub ammonia: Concentration,
    /// Nitrogen of nitrite.
    pub nitrite_n: Concentration,
    /// Nitrogen of nitrate.
    pub nitrate_n: Concentration,
    /// Alkalinity of the tap water that nitrification has used up; what is left is never
    /// less than none.
    pub alkalinity_used: Alkalinity,
    /// Ammonia nitrogen oxidised at [`oxygen`](Self::oxygen).
    pub ammonia_oxidised: MassRate,
    /// Nitrite nitrogen oxidised at [`oxygen`](Self::oxygen).
    pub nitrite_oxidised: MassRate,
    /// Oxygen that the two rates hold for.
    pub oxygen: Concentration,
    /// Nitrogen that the plants' growth takes at this day's light, well fed.
    pub nitrogen_taken: MassRate,
}

impl DayState {
    /// A tank in which nothing lives and nothing is dissolved.
    pub const LIFELESS: Self = Self {
        day: 0.0,
        floating: Mass::ZERO,
        cover: Share::ZERO,
        fast: Mass::ZERO,
        slow: Mass::ZERO,
        algae: Mass::ZERO,
        ammonia: Concentration::ZERO,
        nitrite_n: Concentration::ZERO,
        nitrate_n: Concentration::ZERO,
        alkalinity_used: Alkalinity::ZERO,
        ammonia_oxidised: MassRate::ZERO,
        nitrite_oxidised: MassRate::ZERO,
        oxygen: Concentration::from_mg_l(7.0),
        nitrogen_taken: MassRate::ZERO,
    };

    /// Share of the surface under floaters.
    pub fn covered(&self) -> Share {
        self.cover.min(Share::from_fraction(1.0))
    }

    /// Submerged plants.
    pub fn submerged(&self) -> Mass {
        self.fast + self.slow
    }
}
