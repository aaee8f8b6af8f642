//! The sections of a plan on night, flow, light, animals and heat, named as in JSON.

use serde::Serialize;

use crate::catalogue::Animal;
use crate::plan::estimate::Estimate;

/// A day and a night in the tank.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NightSection {
    /// Days since filling.
    pub day: f64,
    /// Members that the bands rest on; 0 for the central numbers alone.
    pub members: u32,
    /// What they were drawn with.
    pub seed: u64,
    /// Oxygen in balance with the air.
    pub saturation_mg_l: f64,
    /// The lowest oxygen of the day.
    pub dawn_oxygen_mg_l: Estimate,
    /// When it comes, hours since the lamp went on; at 24 it goes on again.
    pub dawn_hour: Estimate,
    /// Hours of the day under 5 mg/L.
    pub hours_under_5_mg_l: Estimate,
    /// Hours of the day under 3 mg/L.
    pub hours_under_3_mg_l: Estimate,
    /// The least air that keeps the low end of dawn oxygen at its limit, running day and
    /// night; none where no air pump would do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub air_needed_l_min: Option<f64>,
    /// The same, running while the lamp is off.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub air_needed_night_l_min: Option<f64>,
    /// Pressure that its pump must exceed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pump_pressure_kpa: Option<Estimate>,
    /// Carbon dioxide when the lamp goes off.
    pub co2_dusk_mg_l: Estimate,
    /// Carbon dioxide when it goes on again.
    pub co2_dawn_mg_l: Estimate,
    /// pH when the lamp goes on again.
    pub ph_dawn: Estimate,
    /// pH when it goes off.
    pub ph_dusk: Estimate,
    /// Hours from dusk until oxygen is at 3 mg/L in a power cut, one tank in ten
    /// sooner; none where it holds for three days.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub power_cut_h: Option<f64>,
}

/// How the water moves while the device runs.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FlowSection {
    /// Water volumes an hour.
    pub turnover_per_h: Estimate,
    /// Speed that plants feel.
    pub velocity_cm_s: Estimate,
    /// Still film on their leaves.
    pub film_mm: Estimate,
    /// Uptake of nitrogen through it from lean water, over uptake without it.
    pub uptake_pct: Estimate,
}

/// Light below the floaters.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LightSection {
    /// Half way down, while the lamp is on.
    pub par_mid_umol: Estimate,
    /// Half way down, over a day.
    pub daily_mol_m2: Estimate,
    /// Hours with which the submerged plants just live; none where there are none, or
    /// where no day is long enough.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub break_even_hours: Option<f64>,
}

/// Animals against what the tank carries.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AnimalsSection {
    /// Fresh mass of those in on the day.
    pub mass_g: f64,
    /// Carried by the oxygen at dawn.
    pub carried_by_oxygen_g: Estimate,
    /// Carried by the nitrogen that the plants take.
    pub carried_by_nitrogen_g: f64,
    /// So many of one kind alone are carried by both, and kept by practice.
    pub examples: Vec<AnimalCount>,
    /// Whether animals are planned that are given no feed: then nitrogen sets no limit.
    #[serde(skip)]
    pub unfed: bool,
}

/// So many animals of a kind.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct AnimalCount {
    /// Catalogue name.
    pub name: &'static str,
    /// Which.
    #[serde(skip)]
    pub animal: &'static Animal,
    /// How many.
    pub count: u32,
}

/// Heat, water and electricity.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HeatSection {
    /// Heater that holds the temperature with a margin; 0 where the room is warm enough.
    pub heater_w: f64,
    /// Heater and, where its lumens are known, lamp; pumps are not counted.
    pub kwh_per_year: f64,
    /// Of those, where the tariff is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost_per_year: Option<f64>,
    /// Water that evaporates.
    pub evaporation_l_per_week: f64,
    /// Hours in which a power cut cools the water by 4 K; none where it never does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cools_4_k_h: Option<f64>,
}

/// A night by itself, with its course.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Night {
    /// What the keeper calls the tank.
    pub name: String,
    /// The same as in a plan.
    #[serde(flatten)]
    pub section: NightSection,
    /// The same as in a plan.
    pub flow: FlowSection,
    /// The same as in a plan.
    pub light: LightSection,
    /// The same as in a plan.
    pub animals: AnimalsSection,
    /// The same as in a plan.
    pub heat: HeatSection,
    /// One row an hour, both ends of the day included.
    pub hours: Vec<HourRow>,
}

/// The water at one hour.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HourRow {
    /// Hours since the lamp went on.
    pub hour: f64,
    /// Dissolved oxygen.
    pub oxygen_mg_l: Estimate,
    /// Carbon dioxide.
    pub co2_mg_l: Estimate,
    /// pH.
    pub ph: Estimate,
}
