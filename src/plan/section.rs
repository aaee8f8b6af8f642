//! The sections of a plan: plain numbers, named with their unit as they are in JSON.

use serde::Serialize;

use crate::result::results;
use crate::units::Length;

results! {
    /// The vessel and its water.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct TankSection {
        /// the tank's shape
        pub shape: &'static str => Spec,
        /// area the tank stands on, over its walls
        pub footprint_cm2: f64 => "tank.volume",
        /// area of the water surface
        pub surface_cm2: f64 => "tank.volume",
        /// what the tank holds inside to its rim, before bed and stones
        pub brimful_l: f64 => "tank.volume",
        /// free water over the bed and between the stones
        pub water_l: f64 => "tank.volume",
        /// from the water surface down to the mean top of the bed
        pub water_depth_cm: f64 => "tank.volume",
        /// water that the stones displace
        pub hardscape_l: f64 => "tank.volume",
    }

    /// Bags of one size.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct BagCount {
        /// size of the bag, as you wrote it
        pub size: String => Spec,
        /// how many bags of this size
        pub count: u32 => Section,
        /// price of one, as you gave it
        #[serde(skip_serializing_if = "Option::is_none")]
        pub price: Option<f64> => Spec,
    }

    /// Soil to buy and what it weighs.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct SoilSection {
        /// the soil, by its name in lentic list soils
        pub material: &'static str => Spec,
        /// mean depth of the soil
        pub depth_cm: f64 => "soil.deep",
        /// depth of the soil where it is thinnest
        pub thinnest_cm: f64 => "soil.thin",
        /// depth of the soil where it is deepest
        pub deepest_cm: f64 => "soil.deep",
        /// soil in place, settled
        pub volume_l: f64 => "soil.purchase",
        /// soil to buy, loose as sold, with the typical settling
        pub buy_l: f64 => "soil.purchase",
        /// the same if it settles least
        pub buy_low_l: f64 => "soil.purchase",
        /// the same if it settles most
        pub buy_high_l: f64 => "soil.purchase",
        /// what the soil in place weighs dry
        pub dry_mass_kg: f64 => "weight.floor",
        /// what the soil in place weighs with its pores full of water
        pub wet_mass_kg: f64 => "weight.floor",
        /// the cheapest set of your bag sizes that holds enough
        pub bags: Vec<BagCount> => "soil.purchase",
        /// what is in those bags, loose
        #[serde(skip_serializing_if = "Option::is_none")]
        pub bags_total_l: Option<f64> => "soil.purchase",
        /// what is left over of them
        #[serde(skip_serializing_if = "Option::is_none")]
        pub surplus_l: Option<f64> => "soil.purchase",
        /// price of those bags, where every size has one
        #[serde(skip_serializing_if = "Option::is_none")]
        pub cost: Option<f64> => "soil.purchase",
        /// how much dearer than the cheapest set they may be, where more is needed than is
        /// searched exactly
        #[serde(skip_serializing_if = "Option::is_none")]
        pub dearer_at_most: Option<f64> => "soil.purchase",
    }

    /// Cap to buy, what it weighs and how its grains stand.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct CapSection {
        /// the cap, by its name in lentic list caps
        pub material: &'static str => Spec,
        /// mean depth of the cap
        pub depth_cm: f64 => "cap.deep",
        /// depth of the cap where it is thinnest
        pub thinnest_cm: f64 => "cap.thin",
        /// depth of the cap where it is deepest
        pub deepest_cm: f64 => "cap.deep",
        /// cap in place
        pub volume_l: f64 => "cap.purchase",
        /// cap to buy, dry
        pub buy_kg: f64 => "cap.purchase",
        /// what the cap in place weighs dry
        pub dry_mass_kg: f64 => "cap.purchase",
        /// what the cap in place weighs with its pores full of water
        pub wet_mass_kg: f64 => "cap.purchase",
        /// the cheapest set of your bag sizes that holds enough
        pub bags: Vec<BagCount> => "cap.purchase",
        /// what is in those bags
        #[serde(skip_serializing_if = "Option::is_none")]
        pub bags_total_kg: Option<f64> => "cap.purchase",
        /// what is left over of them
        #[serde(skip_serializing_if = "Option::is_none")]
        pub surplus_kg: Option<f64> => "cap.purchase",
        /// price of those bags, where every size has one
        #[serde(skip_serializing_if = "Option::is_none")]
        pub cost: Option<f64> => "cap.purchase",
        /// how much dearer than the cheapest set they may be, where more is needed than is
        /// searched exactly
        #[serde(skip_serializing_if = "Option::is_none")]
        pub dearer_at_most: Option<f64> => "cap.purchase",
        /// size that 10 % of the cap by mass is finer than
        pub d10_mm: f64 => "cap.grains",
        /// size that 15 % of the cap by mass is finer than
        pub d15_mm: f64 => "cap.grains",
        /// size that half of the cap by mass is finer than
        pub d50_mm: f64 => "cap.grains",
        /// size that 85 % of the cap by mass is finer than
        pub d85_mm: f64 => "cap.grains",
        /// sound, or status and code of the worst finding on the cap
        pub verdict: String => Finding,
    }

    /// What the bed gives off and holds back.
    ///
    /// Methane made, over which `gas_ratio` is taken, is a rate by area, known to a factor of
    /// ten, that does not ask how deep the soil is.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct BedSection {
        /// most ammonium nitrogen that leaves the bed in a day, without plants
        pub release_peak_mg_n_m2_d: f64 => "cap.leak",
        /// ammonium nitrogen that leaves the bed in 21 days without plants, with what filling stirs
        /// up
        pub release_21_d_g_n_m2: f64 => "cap.leak",
        /// how deep oxygen reaches into the cap
        pub oxic_front_mm: f64 => "bed.oxygen",
        /// gas made in the soil over gas that can diffuse out; over 1 it bubbles
        pub gas_ratio: f64 => "bed.gas",
        /// pressure that gas needs to enter the cap's pores over the weight of the cap
        pub entry_over_overburden: f64 => "bed.gas",
    }

    /// What it all weighs.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct WeightSection {
        /// walls and bottom of the tank
        pub shell_kg: f64 => "weight.floor",
        /// soil with the water in its pores
        pub soil_kg: f64 => "weight.floor",
        /// cap with the water in its pores
        pub cap_kg: f64 => "weight.floor",
        /// stones
        pub hardscape_kg: f64 => "weight.floor",
        /// free water
        pub water_kg: f64 => "weight.floor",
        /// stand, lid and equipment
        pub stand_kg: f64 => "weight.floor",
        /// the filled tank with all that stands under and on it
        pub total_kg: f64 => "weight.floor",
        /// that weight over the tank's underside
        pub footprint_pressure_kpa: f64 => "weight.floor",
    }

    /// Stress and bend of the flat panes, for water to the rim.
    ///
    /// The stress of the longest pane is none where it needs a brace.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct PanesSection {
        /// stress that water to the rim puts in the longest pane
        #[serde(skip_serializing_if = "Option::is_none")]
        pub long_pane_stress_mpa: Option<f64> => "glass.pane",
        /// how far the longest pane bends
        #[serde(skip_serializing_if = "Option::is_none")]
        pub long_pane_deflection_mm: Option<f64> => "glass.pane",
        /// stress in the shortest pane
        #[serde(skip_serializing_if = "Option::is_none")]
        pub end_pane_stress_mpa: Option<f64> => "glass.pane",
    }

    /// The planting of day one against the flush.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct PlantingSection {
        /// share of the surface under floaters on day one
        pub floating_cover_pct: f64 => "plants.cover",
        /// fresh mass of the floaters on day one
        pub floating_g: f64 => "plants.mass",
        /// fresh mass of the fast growers on day one
        pub fast_g: f64 => "plants.mass",
        /// fresh mass of the slow growers on day one
        pub slow_g: f64 => "plants.mass",
        /// nitrogen that the plants take in 21 days over what the bed gives; 2 and over is enough
        pub index: f64 => "plants.load",
        /// share of the starts, 0 to 1, in which ammonia and nitrite stay under their limits
        pub probability_under_limits: f64 => "flush.chance",
        /// The smallest addition that meets the load.
        pub needed: NeededPlanting,
        /// by how much the index misses its limit; 0 where it does not
        pub shortfall_pct: f64 => "plants.load",
    }

    /// The planting after the smallest addition that meets the load.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct NeededPlanting {
        /// cover by floaters with the least addition that is enough
        pub floating_cover_pct: f64 => "plants.load",
        /// fresh floaters with that addition
        pub floating_g: f64 => "plants.load",
        /// fresh fast growers with that addition
        pub fast_g: f64 => "plants.load",
        /// what to add, in portions as sold
        pub portions: Vec<PortionCount> => "plants.load",
        /// the planting index with that addition
        pub index: f64 => "plants.load",
        /// the same with the addition
        pub probability_under_limits: f64 => "flush.chance",
        /// price of that addition, where the plants have one
        #[serde(skip_serializing_if = "Option::is_none")]
        pub cost: Option<f64> => Spec,
    }

    /// Portions of one plant.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct PortionCount {
        /// Share of the surface that floaters weighed out so cover, %.
        #[serde(skip)]
        pub cover_pct: Option<f64>,
        /// the plant to add, by its name in lentic list plants
        pub name: &'static str => Spec,
        /// how many portions of it, rounded up
        pub count: u32 => "plants.mass",
        /// what one portion is: a stem, a bunch, a gram
        pub portion: &'static str => "plants.mass",
    }

    /// What it costs, where prices are given.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct CostSection {
        /// the soil's bags, at your prices
        #[serde(skip_serializing_if = "Option::is_none")]
        pub soil: Option<f64> => Spec,
        /// the cap's bags, at your prices
        #[serde(skip_serializing_if = "Option::is_none")]
        pub cap: Option<f64> => Spec,
        /// the plants, at your prices
        #[serde(skip_serializing_if = "Option::is_none")]
        pub plants: Option<f64> => Spec,
        /// all of those that have a price
        pub total: f64 => Spec,
    }
}

impl SoilSection {
    /// Depth at the thinnest and the deepest place.
    pub fn depths(&self) -> [Length; 2] {
        [self.thinnest_cm, self.deepest_cm].map(Length::from_cm)
    }
}

impl CapSection {
    /// Depth at the thinnest and the deepest place.
    pub fn depths(&self) -> [Length; 2] {
        [self.thinnest_cm, self.deepest_cm].map(Length::from_cm)
    }
}
