//! What upkeep comes to: plain numbers, named with their unit as they are in JSON.

use serde::Serialize;

use crate::dosing::Dosing;
use crate::finding::{Caution, Status};
use crate::plan::Estimate;
use crate::result::results;

results! {
    /// A running tank, looked at on a day: what a week asks for, and what the years bring.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Upkeep {
        /// What the keeper calls the tank.
        pub name: String,
        /// the day after filling that is looked at
        pub day: u32 => Option,
        /// members that the bands rest on; 0 for the central numbers alone
        pub members: u32 => Option,
        /// what they were drawn with
        pub seed: u64 => Option,
        /// How it stands.
        #[serde(skip)]
        pub status: Status,
        /// the last weeks before the day, by the week
        pub upkeep: WeeklySection,
        /// the soil over the years
        pub ageing: AgeingSection,
        /// what hungry plants are given; absent where they are fed enough
        #[serde(flatten)]
        pub given: Option<Dosing>,
        /// why nothing may be given to hungry plants yet; absent where nothing stands against it
        #[serde(skip_serializing_if = "Option::is_none")]
        pub dosing_waits_for: Option<String> => "water.dosing",
        /// a power cut
        pub power: PowerSection,
        /// a share of the bed stirred or dug up; absent unless asked for
        #[serde(skip_serializing_if = "Option::is_none")]
        pub stir: Option<StirSection>,
        /// days without a keeper; absent unless asked for
        #[serde(skip_serializing_if = "Option::is_none")]
        pub away: Option<AwaySection>,
        /// the tank carried elsewhere; absent unless asked for
        #[serde(rename = "move", skip_serializing_if = "Option::is_none")]
        pub moved: Option<MoveSection>,
        /// the animals in a bucket; absent unless asked for
        #[serde(skip_serializing_if = "Option::is_none")]
        pub bucket: Option<BucketSection>,
        /// the year before the day, week by week
        pub weeks: Vec<WeekRow> => Count,
        /// hazards, and limits of what was computed
        pub cautions: Vec<Caution> => Caution,
    }

    /// What a week asks for and what it leaves.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct WeeklySection {
        /// fresh mass of floaters to take out a week; absent where none are kept
        #[serde(skip_serializing_if = "Option::is_none")]
        pub floaters_thin_g: Option<Estimate> => "upkeep.harvest" by Members,
        /// the same in loose, drained handfuls, where the catalogue weighs one
        #[serde(skip_serializing_if = "Option::is_none")]
        pub floaters_thin_handfuls: Option<Estimate> => "upkeep.harvest" by Members,
        /// the same as a share of the surface
        #[serde(skip_serializing_if = "Option::is_none")]
        pub floaters_thin_pct: Option<Estimate> => "upkeep.harvest" by Members,
        /// fresh mass of stems to cut at a time; absent where none come near their limit
        #[serde(skip_serializing_if = "Option::is_none")]
        pub stems_trim_g: Option<f64> => "upkeep.harvest",
        /// how often, once they stand at their limit
        #[serde(skip_serializing_if = "Option::is_none")]
        pub stems_trim_every_d: Option<Estimate> => "upkeep.harvest" by Members,
        /// what goes out with the plants taken
        pub removed: RemovedSection,
        /// where the nitrogen comes from, and where it goes beside the plants taken
        pub supply: SupplySection,
        /// nitrogen of the feed over what the plants would take well fed in their light; absent
        /// where nothing is fed or nothing grows
        #[serde(skip_serializing_if = "Option::is_none")]
        pub feed_share_pct: Option<Estimate> => "upkeep.nitrogen" by Members,
        /// nitrate that is gained a week beside water changes; below zero where plants win
        pub nitrate_rise_mg_l_per_week: Estimate => "upkeep.nitrate" by Members,
        /// nitrate before a water change once it repeats itself; absent without changes
        #[serde(skip_serializing_if = "Option::is_none")]
        pub nitrate_steady_mg_l: Option<Estimate> => "upkeep.nitrate" by Members,
        /// share of the water changed at a time that keeps nitrate at its limit; absent where
        /// none does, for the tap brings as much
        #[serde(skip_serializing_if = "Option::is_none")]
        pub change_needed_pct: Option<Estimate> => "upkeep.nitrate" by Members,
        /// water to top up
        pub top_up_l_per_week: f64 => "heat.balance",
        /// hardness after a water change once it repeats itself; absent without changes
        #[serde(skip_serializing_if = "Option::is_none")]
        pub hardness_steady_dgh: Option<f64> => "upkeep.creep",
        /// hardness that topping up adds in a month
        pub hardness_rise_dgh_per_month: f64 => "upkeep.creep",
        /// conductivity after a water change once it repeats itself; absent without changes
        #[serde(skip_serializing_if = "Option::is_none")]
        pub conductivity_steady_us_cm: Option<Estimate> => "upkeep.creep" by Numbers,
        /// alkalinity that is gained in a month beside water changes; below zero where it is lost
        pub alkalinity_rise_dkh_per_month: Estimate => "upkeep.alkalinity" by Members,
        /// alkalinity before a water change once it repeats itself; absent without changes
        #[serde(skip_serializing_if = "Option::is_none")]
        pub alkalinity_steady_dkh: Option<Estimate> => "upkeep.alkalinity" by Members,
        /// nitrogen that comes in less what goes out and stays; weighed prunings may leave some
        pub balance_residual_mg_per_week: Estimate => "upkeep.nitrogen" by Members,
    }

    /// What goes out with the plants taken.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct RemovedSection {
        /// nitrogen in the plants taken out
        pub n_mg_per_week: Estimate => "upkeep.nitrogen" by Members,
        /// phosphorus in them
        pub p_mg_per_week: Estimate => "upkeep.nitrogen" by Members,
        /// potassium in them
        pub k_mg_per_week: Estimate => "upkeep.potassium" by Numbers,
    }

    /// The account of nitrogen.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct SupplySection {
        /// nitrogen that feed leaves in the tank; absent where nothing is fed
        #[serde(skip_serializing_if = "Option::is_none")]
        pub feed_n_mg_per_week: Option<Estimate> => "upkeep.nitrogen" by Members,
        /// nitrogen that water changes bring
        pub tap_n_mg_per_week: f64 => "upkeep.nitrogen",
        /// nitrogen of the salts put in; absent where none were
        #[serde(skip_serializing_if = "Option::is_none")]
        pub dosed_n_mg_per_week: Option<f64> => "upkeep.nitrogen",
        /// nitrogen that the soil's stores set free
        pub soil_n_mg_per_week: Estimate => "upkeep.nitrogen" by Members,
        /// nitrogen that goes with changed water and to the air
        pub lost_n_mg_per_week: Estimate => "upkeep.nitrogen" by Members,
        /// nitrogen that stays: in plants, dead matter, bed and water
        pub kept_n_mg_per_week: Estimate => "upkeep.nitrogen" by Members,
    }

    /// The soil over the years.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct AgeingSection {
        /// what the soil sets free after some years
        pub years: Vec<YearRow> => Count,
        /// when the soil no longer gives what feed and tap leave plants to want; absent where
        /// these are enough, or it does for 30 years
        #[serde(skip_serializing_if = "Option::is_none")]
        pub falls_under_demand_years: Option<Estimate> => "upkeep.ageing" by Members,
        /// how long the bed's phosphorus lasts at the pace of the last weeks; absent where it does
        /// not dwindle, or lasts for longer than 30 years
        #[serde(skip_serializing_if = "Option::is_none")]
        pub phosphorus_lasts_years: Option<Estimate> => "upkeep.ageing" by Members,
    }

    /// What the soil sets free after some years.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct YearRow {
        /// years since flooding
        pub year: u32 => Count,
        /// nitrogen that the soil sets free
        pub release_mg_n_m2_d: Estimate => "upkeep.ageing" by Members,
        /// the same over what the plants of the day looked at would take well fed; absent where
        /// nothing grows
        #[serde(skip_serializing_if = "Option::is_none")]
        pub share_of_demand_pct: Option<Estimate> => "upkeep.ageing" by Members,
    }

    /// A power cut.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct PowerSection {
        /// from dusk until oxygen is at 3 mg/L, one tank in ten sooner; absent where it holds for
        /// three days
        #[serde(skip_serializing_if = "Option::is_none")]
        pub lasts_h: Option<f64> => "air.outage",
        /// tank water to dip out and pour back from 30 cm that makes up for it; absent where
        /// oxygen holds
        #[serde(skip_serializing_if = "Option::is_none")]
        pub pour_l_h: Option<f64> => "upkeep.pouring",
        /// time in which the water is 4 K colder; absent where the room holds it warmer
        #[serde(skip_serializing_if = "Option::is_none")]
        pub cools_4_k_h: Option<f64> => "heat.cooling",
    }

    /// A share of the bed stirred.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct StirSection {
        /// the share asked for
        pub share_pct: f64 => Option,
        /// ammonia that all of it at once would bring into the water
        pub ammonia_rise_mg_l: Estimate => "upkeep.stir" by Members,
        /// share that leaves ammonia at half its limit in nine tanks of ten
        pub safe_share_pct: f64 => "upkeep.stir",
        /// sessions that the share asked for takes; absent while the water bears none
        #[serde(skip_serializing_if = "Option::is_none")]
        pub sessions: Option<u32> => "upkeep.stir",
        /// days from one session to the next
        pub session_every_d: f64 => "upkeep.stir",
        /// water to draw off before a session
        pub change_before_pct: f64 => "upkeep.stir",
        /// water to change after a session, in nine tanks of ten enough for half the limit
        pub change_after_pct: f64 => "upkeep.stir",
        /// how long the cloud takes to settle
        pub clears_h: f64 => "upkeep.settling",
    }

    /// Days without a keeper.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct AwaySection {
        /// the days asked for
        pub days: f64 => Option,
        /// water that is missing at the end
        pub top_up_l: f64 => "upkeep.away",
        /// how far the level has fallen by then
        pub level_falls_cm: f64 => "upkeep.away",
        /// hardness at the end over that at the start
        pub hardness_factor: f64 => "upkeep.away",
        /// hours to leave the lamp on a day
        pub lamp_hours: f64 => "upkeep.away",
        /// whether somebody should look after the tank
        pub needs_helper: bool => "upkeep.away",
    }

    /// The tank carried elsewhere.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct MoveSection {
        /// the tank with its wet bed and its stones, drained
        pub carried_kg: f64 => "upkeep.move",
        /// whether the bed is better taken out
        pub bed_out: bool => "upkeep.move",
        /// water to take along
        pub water_kept_l: f64 => "upkeep.move",
        /// highest ammonia of the three weeks after
        pub ammonia_peak_mg_l: Estimate => "upkeep.move" by Members,
        /// highest nitrite of the three weeks after
        pub nitrite_peak_mg_l: Estimate => "upkeep.move" by Members,
    }

    /// The animals in a bucket.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct BucketSection {
        /// water in the bucket
        pub water_l: f64 => Option,
        /// hours until oxygen is at 4 mg/L, for animals that were handled; absent without animals
        #[serde(skip_serializing_if = "Option::is_none")]
        pub lasts_h: Option<f64> => "upkeep.bucket",
    }

    /// The tank on one day of the year.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct WeekRow {
        /// days since filling
        pub day: u32 => Count,
        /// nitrate on the day
        pub nitrate_mg_l: Estimate => "upkeep.nitrate" by Members,
        /// hardness on the day
        pub hardness_dgh: f64 => "upkeep.creep",
        /// fresh mass of the floaters on the day
        pub floating_g: Estimate => "plants.growth" by Members,
        /// fresh mass of the fast growers on the day
        pub fast_g: Estimate => "plants.growth" by Members,
    }
}
