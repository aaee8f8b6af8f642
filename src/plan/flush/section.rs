//! The start-up section of a plan and the whole result of a start-up run, named as in JSON.

use serde::Serialize;

use crate::finding::{Action, Caution};
use crate::plan::estimate::Estimate;
use crate::result::results;
use crate::source::Band;

results! {
    /// How the first weeks go.
    ///
    /// `probability_with_changes` is of the first members alone where that misses what was asked.
    /// `ready_day` is none where they never stay low.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct StartupSection {
        /// days followed after flooding
        pub days: u32 => Option,
        /// members of the ensemble that were followed; 0 for the central numbers alone
        pub members: u32 => Option,
        /// members left out because their numbers could not be followed
        pub members_lost: u32 => Count,
        /// what the ensemble was drawn with
        pub seed: u64 => Option,
        /// highest total ammonia from day 3 on, as nitrogen
        pub ammonia_peak_mg_l: Estimate => "flush.ammonia" by Members,
        /// day of that peak, after flooding
        pub ammonia_peak_day: Estimate => "flush.ammonia" by Members,
        /// highest nitrite from day 3 on, as NO2
        pub nitrite_peak_mg_l: Estimate => "flush.nitrite" by Members,
        /// day of that peak, after flooding
        pub nitrite_peak_day: Estimate => "flush.nitrite" by Members,
        /// highest nitrate, as NO3
        pub nitrate_peak_mg_l: Estimate => "flush.nitrate" by Members,
        /// highest un-ionised ammonia from day 3 on, as nitrogen, at the pH of that day's
        /// dusk: the part that poisons
        pub un_ionised_peak_mg_l: Estimate => "flush.ammonia" by Members,
        /// first day after which ammonia and nitrite stay low
        pub ready_day: Option<Estimate> => "animals.early" by Members,
        /// why there is no such day, or none in some of the starts
        #[serde(skip_serializing_if = "Option::is_none")]
        pub ready_day_reason: Option<String> => "animals.early",
        /// the late end of the ready days, not before practice allows the first animals
        pub ready_day_advised: Option<f64> => "animals.early",
        /// days on which light and nutrients are left over for algae
        pub algae_window_days: Estimate => "light.long" by Members,
        /// Share of the ensemble over each limit.
        pub share_over_limit: ShareOverLimit,
        /// water changes that hold the flush down, where the chance asked for is missed
        pub water_change_plan: Vec<ChangePlan> => "flush.changes",
        /// share of the starts, 0 to 1, that stay under the limits with those changes
        #[serde(skip_serializing_if = "Option::is_none")]
        pub probability_with_changes: Option<f64> => "flush.changes",
        /// what to do on which day
        pub calendar: Vec<CalendarEntry> => "flush.calendar",
    }

    /// Share of the ensemble that passes each limit from day 3 on, 0 to 1.
    #[derive(Debug, Clone, Copy, PartialEq, Serialize)]
    pub struct ShareOverLimit {
        /// share of the starts, 0 to 1, in which ammonia passes its limit
        pub ammonia: f64 => "flush.ammonia",
        /// the same for nitrite
        pub nitrite: f64 => "flush.nitrite",
        /// the same for nitrate
        pub nitrate: f64 => "flush.nitrate",
    }

    /// One stretch of regular water changes.
    #[derive(Debug, Clone, Copy, PartialEq, Serialize)]
    pub struct ChangePlan {
        /// first day of the changes
        pub from: f64 => "flush.changes",
        /// last day of the changes
        pub until: f64 => "flush.changes",
        /// days from one change to the next
        pub every_d: f64 => "flush.changes",
        /// share of the water replaced each time
        pub share_pct: f64 => "flush.changes",
    }

    /// Something to do on a day.
    #[derive(Debug, Clone, PartialEq, Eq, Serialize)]
    pub struct CalendarEntry {
        /// days after flooding; below zero before it
        pub day: i32 => "flush.calendar",
        /// the date, where the spec says when the tank starts
        #[serde(skip_serializing_if = "Option::is_none")]
        pub date: Option<String> => Spec,
        /// what to do
        #[serde(rename = "do")]
        pub what: String => "flush.calendar",
        /// The work that this is, from which its cautions follow.
        #[serde(skip)]
        pub actions: Vec<Action>,
    }

    /// The whole result of a start-up run.
    ///
    /// The rows of `days` stand in place of the number of days in a plan.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Startup {
        /// What the keeper calls the tank.
        pub name: String,
        /// The same as in a plan.
        #[serde(flatten)]
        pub section: StartupSection,
        /// the uncertain numbers that move the results most, the strongest first
        pub drivers: Vec<Driver> => "flush.drivers",
        /// first day on which floaters lack phosphorus, in the typical run
        #[serde(skip_serializing_if = "Option::is_none")]
        pub floaters_starve_from_day: Option<f64> => "flush.phosphate",
        /// share of the starts, 0 to 1, in which ammonia and nitrite stay under their limits
        pub probability_under_limits: f64 => "flush.chance",
        /// the tank day by day
        pub days: Vec<DayRow> => Count,
        /// your readings against the band of their day
        #[serde(skip_serializing_if = "Vec::is_empty")]
        pub readings: Vec<ReadingRow> => Spec,
        /// hazards, and limits of what was computed
        pub cautions: Vec<Caution> => Caution,
    }
}

impl Startup {
    /// The start in one or two sentences.
    pub fn summary(&self) -> String {
        let parts = [
            self.odds(),
            Some(self.animals()),
            self.starvation(),
            self.outside(),
        ];
        let parts: Vec<String> = parts.into_iter().flatten().collect();
        parts.join("; ")
    }

    fn odds(&self) -> Option<String> {
        (self.section.members > 0).then(|| {
            format!(
                "ammonia and nitrite stay under their limits in {:.0} % of the starts",
                self.probability_under_limits * 100.0
            )
        })
    }

    fn animals(&self) -> String {
        match (self.section.ready_day, self.section.ready_day_advised) {
            (_, Some(advised)) => {
                format!("animals from day {advised:.0}, after two clean tests")
            }
            (Some(_), None) => "animals late, and only after two clean tests".to_owned(),
            (None, _) => "no day for animals within the days followed".to_owned(),
        }
    }

    fn starvation(&self) -> Option<String> {
        let day = self.floaters_starve_from_day?;
        Some(format!(
            "floaters run short of phosphorus from day {day:.0} unless animals are fed"
        ))
    }

    fn outside(&self) -> Option<String> {
        let outside = self.readings.iter().filter(|row| row.lies != "inside");
        (!self.readings.is_empty()).then(|| {
            format!(
                "{} of {} readings lie outside the band",
                outside.count(),
                self.readings.len()
            )
        })
    }
}

results! {
    /// A number that drives the spread.
    ///
    /// A number is named as `soil.mineral_nitrogen`, a result as `ammonia_peak_mg_l`; the
    /// correlation is that of ranks, after Spearman.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Driver {
        /// the uncertain number
        pub parameter: &'static str => "flush.drivers",
        /// the result that it moves
        pub on: &'static str => "flush.drivers",
        /// how strongly, from -1 to 1; below 0 a larger number makes the result smaller
        pub rank_correlation: f64 => "flush.drivers",
    }

    /// The tank on a day.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct DayRow {
        /// days after flooding
        pub day: u32 => Count,
        /// total ammonia on the day, as nitrogen
        pub ammonia_mg_l: Estimate => "flush.ammonia" by Members,
        /// nitrite on the day, as NO2
        pub nitrite_mg_l: Estimate => "flush.nitrite" by Members,
        /// nitrate on the day, as NO3
        pub nitrate_mg_l: Estimate => "flush.nitrate" by Members,
        /// phosphate on the day, as phosphorus
        pub phosphate_p_mg_l: Estimate => "flush.phosphate" by Members,
        /// fresh mass of the floaters on the day
        pub floating_g: Estimate => "plants.growth" by Members,
        /// fresh mass of the fast growers on the day
        pub fast_g: Estimate => "plants.growth" by Members,
        /// fresh mass of the slow growers on the day
        pub slow_g: Estimate => "plants.growth" by Members,
        /// dry mass of the algae on the day
        pub algae_g: Estimate => "algae.growth" by Members,
        /// ammonium nitrogen that the bed gives off on the day
        pub release_mg_n_m2_d: Estimate => "cap.leak" by Members,
    }

    /// A reading against the band of its day.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct ReadingRow {
        /// days after flooding
        pub day: f64 => Spec,
        /// what was measured
        pub analyte: &'static str => Spec,
        /// what you read, on the scale of the band
        pub value_mg_l: f64 => Spec,
        /// what the run has on that day
        pub band_mg_l: Band => "flush.chance" by Members,
        /// where the reading lies: inside the band, above or below
        pub lies: &'static str => "flush.chance",
    }
}
