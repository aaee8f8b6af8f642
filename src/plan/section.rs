//! The sections of a plan: plain numbers, named with their unit as they are in JSON.

use serde::Serialize;

use crate::units::Length;

/// The vessel and its water.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct TankSection {
    /// The shape's word.
    pub shape: &'static str,
    /// Area the tank stands on, over the walls.
    pub footprint_cm2: f64,
    /// Water surface.
    pub surface_cm2: f64,
    /// Inside, to the rim.
    pub brimful_l: f64,
    /// Free water above the bed, between the stones.
    pub water_l: f64,
    /// From the water surface to the mean top of the bed.
    pub water_depth_cm: f64,
    /// What stones displace.
    pub hardscape_l: f64,
}

/// Bags of one size.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BagCount {
    /// The size as the keeper wrote it, in the units shown.
    pub size: String,
    /// How many.
    pub count: u32,
    /// Price of one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<f64>,
}

/// Soil to buy and what it weighs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SoilSection {
    /// Catalogue name.
    pub material: &'static str,
    /// Mean depth.
    pub depth_cm: f64,
    /// Depth at the thinnest place.
    pub thinnest_cm: f64,
    /// Depth at the deepest place.
    pub deepest_cm: f64,
    /// In place, settled.
    pub volume_l: f64,
    /// As sold, loose, with the settling allowance.
    pub buy_l: f64,
    /// Least and most to buy by the band of the settling allowance.
    pub buy_low_l: f64,
    /// See `buy_low_l`.
    pub buy_high_l: f64,
    /// Dry.
    pub dry_mass_kg: f64,
    /// With its pores full of water.
    pub wet_mass_kg: f64,
    /// The cheapest set, where bag sizes are given.
    pub bags: Vec<BagCount>,
    /// In those bags.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bags_total_l: Option<f64>,
    /// Left over.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub surplus_l: Option<f64>,
    /// Of those bags.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
}

/// Cap to buy, what it weighs and how its grains stand.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CapSection {
    /// Catalogue name.
    pub material: &'static str,
    /// Mean depth.
    pub depth_cm: f64,
    /// Depth at the thinnest place.
    pub thinnest_cm: f64,
    /// Depth at the deepest place.
    pub deepest_cm: f64,
    /// In place.
    pub volume_l: f64,
    /// To buy, dry.
    pub buy_kg: f64,
    /// In place, dry.
    pub dry_mass_kg: f64,
    /// With its pores full of water.
    pub wet_mass_kg: f64,
    /// The cheapest set, where bag sizes are given.
    pub bags: Vec<BagCount>,
    /// In those bags.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bags_total_kg: Option<f64>,
    /// Left over.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub surplus_kg: Option<f64>,
    /// Of those bags.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
    /// 10 % of the grains by mass are finer.
    pub d10_mm: f64,
    /// 15 % are finer.
    pub d15_mm: f64,
    /// 50 % are finer.
    pub d50_mm: f64,
    /// 85 % are finer.
    pub d85_mm: f64,
    /// One word on the cap: `sound`, or the worst of its findings.
    pub verdict: String,
}

/// What the bed gives off and holds back.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BedSection {
    /// Highest daily release of ammonium nitrogen.
    pub release_peak_mg_n_m2_d: f64,
    /// Released in the first 21 days, with what filling stirs up.
    pub release_21_d_g_n_m2: f64,
    /// Depth that oxygen reaches in the cap.
    pub oxic_front_mm: f64,
    /// Methane made over methane that can diffuse out; what is made is a rate by area,
    /// known to a factor of ten, that does not ask how deep the soil is.
    pub gas_ratio: f64,
    /// Pressure for gas to enter the cap's pores over the weight of the cap.
    pub entry_over_overburden: f64,
}

/// What it all weighs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WeightSection {
    /// Walls and bottom.
    pub shell_kg: f64,
    /// Soil with the water in its pores.
    pub soil_kg: f64,
    /// Cap with the water in its pores.
    pub cap_kg: f64,
    /// Stones.
    pub hardscape_kg: f64,
    /// Free water.
    pub water_kg: f64,
    /// Stand, lid and equipment.
    pub stand_kg: f64,
    /// All of it.
    pub total_kg: f64,
    /// The total over the footprint.
    pub footprint_pressure_kpa: f64,
}

/// Stress and bend of the flat panes, for water to the rim.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PanesSection {
    /// In the longest pane; none where it needs a brace.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub long_pane_stress_mpa: Option<f64>,
    /// How far the longest pane bends.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub long_pane_deflection_mm: Option<f64>,
    /// In the shortest pane.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_pane_stress_mpa: Option<f64>,
}

/// The planting of day one against the flush.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlantingSection {
    /// Share of the surface under floaters.
    pub floating_cover_pct: f64,
    /// Fresh floaters.
    pub floating_g: f64,
    /// Fresh fast growers.
    pub fast_g: f64,
    /// Fresh slow growers.
    pub slow_g: f64,
    /// What the planting can take over what the bed gives off.
    pub index: f64,
    /// Share of the ensemble in which ammonia and nitrite stay under their limits.
    pub probability_under_limits: f64,
    /// The smallest addition that meets the load.
    pub needed: NeededPlanting,
    /// By how much the index misses its limit.
    pub shortfall_pct: f64,
}

/// The planting after the smallest addition that meets the load.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NeededPlanting {
    /// Share of the surface under floaters.
    pub floating_cover_pct: f64,
    /// Fresh floaters.
    pub floating_g: f64,
    /// Fresh fast growers.
    pub fast_g: f64,
    /// What to add to the mix, in portions.
    pub portions: Vec<PortionCount>,
    /// The index then.
    pub index: f64,
    /// The probability then.
    pub probability_under_limits: f64,
    /// Of the addition, where prices are given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
}

/// Portions of one plant.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PortionCount {
    /// Catalogue name.
    pub name: &'static str,
    /// How many.
    pub count: u32,
    /// Of what: `stem`, `bunch`, ...
    pub portion: &'static str,
}

/// What it costs, where prices are given.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CostSection {
    /// Soil bags.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soil: Option<f64>,
    /// Cap bags.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cap: Option<f64>,
    /// Plants.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plants: Option<f64>,
    /// Of those known.
    pub total: f64,
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
