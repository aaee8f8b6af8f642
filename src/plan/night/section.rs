//! The sections of a plan on night, flow, light, animals and heat, named as in JSON.

use serde::Serialize;

use crate::catalogue::Animal;
use crate::finding::Caution;
use crate::plan::estimate::Estimate;
use crate::result::results;

results! {
    /// A day and a night in the tank.
    ///
    /// The air needed holds the low end of dawn oxygen, and is none where no pump would do.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct NightSection {
        /// the day after filling that is looked at
        pub day: f64 => Option,
        /// members that the bands rest on; 0 for the central numbers alone
        pub members: u32 => Option,
        /// what they were drawn with
        pub seed: u64 => Option,
        /// oxygen in balance with the air
        pub saturation_mg_l: f64 => "air.dawn",
        /// the lowest oxygen of the day, as a rule just before the lamp goes on
        pub dawn_oxygen_mg_l: Estimate => "air.dawn" by Members,
        /// when that is, counted from lights-on; at 24 the lamp goes on again
        pub dawn_hour: Estimate => "air.dawn" by Members,
        /// hours of the day with oxygen under 5 mg/L
        pub hours_under_5_mg_l: Estimate => "air.dawn" by Members,
        /// hours of the day with oxygen under 3 mg/L
        pub hours_under_3_mg_l: Estimate => "air.dawn" by Members,
        /// least air, day and night, that keeps dawn oxygen at its limit; 0 where the surface is
        /// enough
        #[serde(skip_serializing_if = "Option::is_none")]
        pub air_needed_l_min: Option<f64> => "air.needed",
        /// least air while the lamp is off that does the same
        #[serde(skip_serializing_if = "Option::is_none")]
        pub air_needed_night_l_min: Option<f64> => "air.needed",
        /// pressure that the air pump must exceed
        #[serde(skip_serializing_if = "Option::is_none")]
        pub pump_pressure_kpa: Option<Estimate> => "air.pump" by Numbers,
        /// carbon dioxide as the lamp goes off
        pub co2_dusk_mg_l: Estimate => "air.carbon" by Members,
        /// carbon dioxide as the lamp goes on
        pub co2_dawn_mg_l: Estimate => "air.carbon" by Members,
        /// pH as the lamp goes on
        pub ph_dawn: Estimate => "air.carbon" by Members,
        /// pH as the lamp goes off
        pub ph_dusk: Estimate => "air.carbon" by Members,
        /// from dusk until oxygen is at 3 mg/L in a power cut, one tank in ten sooner; absent where
        /// it holds for three days
        #[serde(skip_serializing_if = "Option::is_none")]
        pub power_cut_h: Option<f64> => "air.outage",
    }

    /// How the water moves while the device runs.
    ///
    /// Uptake is that of nitrogen from lean water.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct FlowSection {
        /// how often an hour the device moves the tank's water
        pub turnover_per_h: Estimate => "flow.slack" by Numbers,
        /// speed of the water at the plants
        pub velocity_cm_s: Estimate => "flow.slack" by Numbers,
        /// still film of water on the leaves
        pub film_mm: Estimate => "flow.slack" by Numbers,
        /// nitrogen taken through that film over what would be taken without it
        pub uptake_pct: Estimate => "flow.slack" by Numbers,
    }

    /// Light below the floaters.
    ///
    /// `break_even_hours` is none where no plants are under water, or no day is long enough.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct LightSection {
        /// light for plants half way down, below the floaters, while the lamp is on
        pub par_mid_umol: Estimate => "light.lamp" by Numbers,
        /// the same over a day
        pub daily_mol_m2: Estimate => "light.lamp" by Numbers,
        /// hours of lamp a day on which the plants under water just live
        #[serde(skip_serializing_if = "Option::is_none")]
        pub break_even_hours: Option<f64> => "light.short",
    }

    /// Animals against what the tank carries.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct AnimalsSection {
        /// fresh mass of the animals that are in on the day looked at
        pub mass_g: f64 => Spec,
        /// fresh mass of animals that oxygen at dawn carries
        pub carried_by_oxygen_g: Estimate => "animals.load" by Members,
        /// fresh mass of animals whose waste the plants' growth takes
        pub carried_by_nitrogen_g: f64 => "animals.load",
        /// how many of one kind alone both would carry, no more than practice keeps in the water
        pub examples: Vec<AnimalCount> => "animals.load",
        /// Whether animals are planned that are given no feed: then nitrogen sets no limit.
        #[serde(skip)]
        pub unfed: bool,
    }

    /// So many animals of a kind.
    #[derive(Debug, Clone, Copy, PartialEq, Serialize)]
    pub struct AnimalCount {
        /// the kind, by its name in lentic list animals
        pub name: &'static str => Spec,
        /// Which.
        #[serde(skip)]
        pub animal: &'static Animal,
        /// how many of it alone
        pub count: u32 => "animals.load",
    }

    /// Heat, water and electricity.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct HeatSection {
        /// heater that holds the temperature, with a margin; 0 where the room is warm enough
        pub heater_w: f64 => "heat.balance",
        /// electricity of heater and, where its lumens are known, lamp; pumps are not counted
        pub kwh_per_year: f64 => "heat.balance",
        /// that electricity by your tariff
        #[serde(skip_serializing_if = "Option::is_none")]
        pub cost_per_year: Option<f64> => "heat.balance",
        /// water to top up; below zero vapour of the room settles on the water
        pub evaporation_l_per_week: f64 => "heat.balance",
        /// time in which a power cut cools the water by 4 K; absent where the room holds it warmer
        #[serde(skip_serializing_if = "Option::is_none")]
        pub cools_4_k_h: Option<f64> => "heat.cooling",
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
        /// the day hour by hour, both ends included
        pub hours: Vec<HourRow> => Count,
        /// hazards, and limits of what was computed
        pub cautions: Vec<Caution> => Caution,
    }

    /// The water at one hour.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct HourRow {
        /// hours since lights-on
        pub hour: f64 => Count,
        /// dissolved oxygen at the hour
        pub oxygen_mg_l: Estimate => "air.dawn" by Members,
        /// carbon dioxide at the hour
        pub co2_mg_l: Estimate => "air.carbon" by Members,
        /// pH at the hour
        pub ph: Estimate => "air.carbon" by Members,
    }
}
