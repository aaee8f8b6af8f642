//! The planting of day one by group, in grams and cover.

use super::{Amount, Planting};
use crate::catalogue::{Plant, PlantGroup};
use crate::source::Band;
use crate::units::{Area, Mass, Share};

/// Fresh and dry mass of the same plants.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Biomass {
    /// Drained.
    pub fresh: Mass,
    /// Dried.
    pub dry: Mass,
}

/// The areas that a share of cover is a share of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Areas {
    /// Of the water, for floaters.
    pub surface: Area,
    /// Of the bed, for all others.
    pub floor: Area,
}

/// How the floaters of a planting grow, on the average of their mass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FloaterTraits {
    /// Net growth with everything in plenty, 1/d.
    pub growth_per_d: Band,
    /// Dry mass at which growth ends, g/m2.
    pub most_g_m2: Band,
}

impl FloaterTraits {
    fn of(plant: &Plant) -> Self {
        Self {
            growth_per_d: plant.rgr_good_per_d,
            most_g_m2: plant.max_g_dry_m2,
        }
    }

    /// These with a share of others among them.
    fn mixed(self, other: Self, share: f64) -> Self {
        let between = |own: Band, other: Band| {
            let at = |own: f64, other: f64| own * (1.0 - share) + other * share;
            Band::new(
                at(own.low, other.low),
                at(own.typical, other.typical),
                at(own.high, other.high),
            )
        };
        Self {
            growth_per_d: between(self.growth_per_d, other.growth_per_d),
            most_g_m2: between(self.most_g_m2, other.most_g_m2),
        }
    }
}

/// A planting by group.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Planted {
    /// Floaters.
    pub floating: Biomass,
    /// The floaters among them that draw no nitrogen from the air.
    pub feeding_floaters: Biomass,
    /// How those grow; none without any.
    pub floater_traits: Option<FloaterTraits>,
    /// Fast growers.
    pub fast: Biomass,
    /// Slow growers.
    pub slow: Biomass,
    /// Share of the surface under floaters; over one where they lie in layers.
    pub cover: Share,
    /// Share of the fast growers' leaves above the water.
    pub emergent: Share,
    /// Share of the fast growers' mass that uses bicarbonate.
    pub fast_users: Share,
    /// The same of the slow growers.
    pub slow_users: Share,
}

impl Planting {
    /// Fresh and dry mass; none where the plant is not sold by the portion counted.
    pub fn biomass(&self, areas: Areas) -> Option<Biomass> {
        let plant = self.plant;
        let dry_per_fresh = plant.dry_per_fresh.typical;
        let dry = match self.amount {
            Amount::Cover(share) => {
                let area = match plant.group {
                    PlantGroup::Floater => areas.surface,
                    PlantGroup::Fast | PlantGroup::Slow => areas.floor,
                };
                closed(plant, area) * share.fraction()
            }
            Amount::Fresh(fresh) => fresh * dry_per_fresh,
            Amount::Portions(count, portion) => {
                let grams = plant.fresh_g.get(&portion)?.typical;
                Mass::from_g(count * grams * dry_per_fresh)
            }
        };
        Some(Biomass {
            fresh: dry / dry_per_fresh,
            dry,
        })
    }
}

/// Dry mass of a plant that covers an area once.
pub fn closed(plant: &Plant, area: Area) -> Mass {
    Mass::from_g(plant.full_cover_g_dry_m2.typical * area.m2())
}

impl Planted {
    /// Adds up a planting; portions without a mass count as nothing.
    pub fn of(plantings: &[Planting], areas: Areas) -> Self {
        let mut planted = Self::default();
        let mut emergent_dry = Mass::ZERO;
        let (mut fast_users, mut slow_users) = (Mass::ZERO, Mass::ZERO);
        for planting in plantings {
            let Some(biomass) = planting.biomass(areas) else {
                continue;
            };
            match planting.plant.group {
                PlantGroup::Floater => planted.add_floater(planting.plant, biomass, areas.surface),
                PlantGroup::Fast => {
                    planted.fast += biomass;
                    emergent_dry = emergent_dry + biomass.dry * planting.emergent.fraction();
                    fast_users = fast_users + biomass.dry * planting.plant.bicarbonate_use();
                }
                PlantGroup::Slow => {
                    planted.slow += biomass;
                    slow_users = slow_users + biomass.dry * planting.plant.bicarbonate_use();
                }
            }
        }
        if planted.fast.dry > Mass::ZERO {
            planted.emergent = Share::from_fraction(emergent_dry / planted.fast.dry);
            planted.fast_users = Share::from_fraction(fast_users / planted.fast.dry);
        }
        if planted.slow.dry > Mass::ZERO {
            planted.slow_users = Share::from_fraction(slow_users / planted.slow.dry);
        }
        planted
    }

    fn add_floater(&mut self, plant: &Plant, biomass: Biomass, surface: Area) {
        self.floating += biomass;
        let cover = Share::from_fraction(biomass.dry / closed(plant, surface));
        if !plant.fixes_nitrogen {
            self.feeding_floaters += biomass;
            let own = FloaterTraits::of(plant);
            let all = self.feeding_floaters.dry;
            self.floater_traits = Some(match self.floater_traits {
                Some(others) if all > Mass::ZERO => others.mixed(own, biomass.dry / all),
                _ => own,
            });
        }
        self.cover = self.cover + cover;
    }

    /// Dry mass of a closed surface of this mix of floaters over a surface, g/m2;
    /// none without floaters.
    pub fn closed_surface_g_m2(&self, surface: Area) -> Option<f64> {
        (self.cover > Share::ZERO)
            .then(|| self.floating.dry.g() / surface.m2() / self.cover.fraction())
    }
}

impl std::ops::AddAssign for Biomass {
    fn add_assign(&mut self, other: Self) {
        self.fresh = self.fresh + other.fresh;
        self.dry = self.dry + other.dry;
    }
}
