//! What is given, as it is reported.

use serde::Serialize;

use crate::result::results;

results! {
    /// What hungry plants are given.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Dosing {
        /// salts to give, each after a test
        pub dosing: Vec<Dose> => "water.dosing",
        /// nitrogen among the roots instead, for what no salt may bring; null where none is wanted or the bed does not bear it
        pub root_zone: Option<RootZone>,
    }

    /// A salt as it is given.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Dose {
        /// what shops call it
        pub salt: &'static str => Section,
        /// what plants need of the element that it is given for
        pub need_mg_per_week: f64 => Section,
        /// so much of it
        pub salt_mg_per_week: f64 => Section,
        /// salt in a litre of the stock solution
        pub stock_g_per_l: f64 => Section,
        /// stock solution of one dose
        pub dose_ml: f64 => Section,
        /// how many doses in a week at most
        pub doses_per_week: u32 => Section,
        /// by how much a dose raises nitrate, as NO3
        pub raises_nitrate_mg_l: f64 => Section,
        /// where potassium settles with all of the salts; null for salts without it, and where it goes on rising
        pub potassium_steady_mg_l: Option<f64> => Section,
        /// what keeps it from bringing all that is needed; null where it does
        pub capped_by: Option<&'static str> => Section,
        /// dry food a day that brings the rest; null where nothing is left or no animals eat it
        pub feed_instead_mg: Option<f64> => Section,
        /// the reading from which none is given, of what it is given for
        pub stop_at_mg_l: f64 => Section,
    }

    /// Nitrogen pressed into the bed in spots.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct RootZone {
        /// how many spots
        pub spots: u32 => "water.root_zone",
        /// nitrogen of one spot
        pub nitrogen_mg: f64 => "water.root_zone",
        /// how far they lie apart
        pub grid_cm: f64 => "water.root_zone",
    }
}
