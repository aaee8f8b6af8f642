//! New water as it is reported.

use serde::Serialize;

use crate::finding::Caution;
use crate::mixture::SaltMass;
use crate::result::results;
use crate::source::Band;

results! {
    /// New water: what it is mixed of, what it is then, and the work in its order.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Makeup {
        /// what you call the tank; the file's name where the spec has none
        pub name: String => Spec,
        /// new water in all
        pub total_l: f64 => Option,
        /// its share of the water in the tank
        pub share_pct: f64 => "water.mixture",
        /// tap water in it
        pub tap_l: f64 => "water.mixture",
        /// softened water in it
        pub soft_l: f64 => "water.mixture",
        /// of the tap water so much from the hot tap; null where the taps are not known
        pub hot_l: Option<f64> => "water.warmth",
        /// of the tap water so much from the cold tap; null where the taps are not known
        pub cold_l: Option<f64> => "water.warmth",
        /// warmth of the mixture; null where the taps are not known
        pub temperature_c: Option<f64> => "water.warmth",
        /// by how much it warms the tank at once, below 0 where it cools it; null where the taps are not known
        pub tank_change_c: Option<f64> => "water.warmth",
        /// salts to dissolve in it
        pub salts: Vec<SaltMass> => "water.salts",
        /// its hardness
        pub hardness_dgh: f64 => "water.mixture",
        /// its alkalinity
        pub alkalinity_dkh: f64 => "water.mixture",
        /// its nitrate, as NO3
        pub nitrate_mg_l: f64 => "water.mixture",
        /// sodium that the salts bring
        pub sodium_mg_l: f64 => "water.salts",
        /// its conductivity
        pub conductivity_us_cm: Band => "water.mixture" by Numbers,
        /// over how many days it goes in, a part a day
        pub steps: u32 => "water.pace",
        /// new water of one such day
        pub step_l: f64 => "water.pace",
        /// conditioner for its tap water; null where no label is given or no chlorine is in it
        pub conditioner_ml: Option<f64> => "water.chlorine",
        /// conditioner for the whole tank, where the tap runs straight into it; null as above
        pub conditioner_tank_ml: Option<f64> => "water.chlorine",
        /// all chlorine of the tap water, as Cl2
        pub chlorine_mg_l: Band => "water.chlorine" by Numbers,
        /// ammonia nitrogen that the new water holds once its chlorine is bound
        pub ammonia_left_mg_l: Band => "water.chlorine" by Numbers,
        /// by how much it raises ammonia nitrogen in the tank
        pub ammonia_rise_mg_l: Band => "water.chlorine" by Numbers,
        /// how long it stands until free chlorine is gone; absent where that does not do it or is not needed
        #[serde(skip_serializing_if = "Option::is_none")]
        pub stand_h: Option<Band> => "water.chlorine" by Numbers,
        /// the same with air bubbling through it
        #[serde(skip_serializing_if = "Option::is_none")]
        pub stand_aerated_h: Option<Band> => "water.chlorine" by Numbers,
        /// what to do, in its order
        pub order: Vec<String> => "water.mixture" each "a step in words",
        /// hazards of the work
        pub cautions: Vec<Caution>,
    }
}
