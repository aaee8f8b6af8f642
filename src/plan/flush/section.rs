//! The start-up section of a plan and the whole result of a start-up run, named as in JSON.

use serde::Serialize;

use crate::finding::{Action, Caution};
use crate::plan::estimate::Estimate;
use crate::plan::words::of_100;
use crate::result::results;
use crate::source::Band;
use crate::units::show::counted;

results! {
    /// How the first weeks go.
    ///
    /// `water_change_plan` and `probability_with_changes` tell of the changes by reading, where
    /// these are advised: `every_d` is the least between two of them, and each is made only
    /// where a test asks for it. `ready_day` is none where they never stay low.
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
        /// why there is no such day
        #[serde(skip_serializing_if = "Option::is_none")]
        pub ready_day_advised_reason: Option<String> => "animals.early",
        /// the kinds planned, surface snails where none are, and from when each may move in
        pub animals_from: Vec<AnimalDay> => "animals.early",
        /// days on which light and nutrients are left over for algae
        pub algae_window_days: Estimate => "light.long" by Members,
        /// Share of the ensemble over each limit.
        pub share_over_limit: ShareOverLimit,
        /// share of the starts, 0 to 1, in which ammonia and nitrite stay under their limits as
        /// the plan is written
        pub odds_as_written: f64 => "flush.chance",
        /// the same as the plan is advised: with changes by reading where they help, as
        /// written where they do not
        #[serde(skip_serializing_if = "Option::is_none")]
        pub odds_with_changes: Option<f64> => "flush.changes",
        /// Water changes by what tests read, where they hold more starts.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub changes_by_reading: Option<ReadingChanges>,
        /// why water changes by what tests read are not advised
        #[serde(skip_serializing_if = "Option::is_none")]
        pub changes_by_reading_reason: Option<String> => "flush.changes",
        /// water changes that hold the flush down, from the first test to the last change
        pub water_change_plan: Vec<ChangePlan> => "flush.changes",
        /// share of the starts, 0 to 1, that stay under the limits with those changes
        #[serde(skip_serializing_if = "Option::is_none")]
        pub probability_with_changes: Option<f64> => "flush.changes",
        /// what to do on which day
        pub calendar: Vec<CalendarEntry> => "flush.calendar",
    }

    /// A kind of animal, and from when it may move in.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct AnimalDay {
        /// its name in the catalogue
        pub name: &'static str => Spec,
        /// the day from which nine in ten starts are ready for it, not before practice puts it in
        pub day: f64 => "animals.early",
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

    /// A rule for the keeper: test, and change water where a test reads over a threshold.
    #[derive(Debug, Clone, Copy, PartialEq, Serialize)]
    pub struct ReadingChanges {
        /// share of the water replaced each time, 0 to 1
        pub share: f64 => "flush.changes",
        /// water is changed where ammonia reads over this, as nitrogen
        pub threshold_ammonia_mg_l: f64 => "flush.changes",
        /// and where nitrite reads over this, as NO2
        pub threshold_nitrite_mg_l: f64 => "flush.changes",
        /// days from one test to the next, and from one change to the next at least
        pub least_days_between: f64 => "flush.changes",
        /// changes that half of the starts come to at most
        pub expected: f64 => "flush.changes",
        /// changes that one start in ten comes to at most
        pub expected_low: f64 => "flush.changes",
        /// changes that nine starts in ten come to at most
        pub expected_high: f64 => "flush.changes",
        /// day on which nine starts in ten have had their last change; none where they have none
        pub last_day: Option<f64> => "flush.changes",
        /// water that the median start uses a week up to its last change, in fillings of the
        /// tank
        pub fillings_per_week: f64 => "flush.changes",
    }

    /// One stretch of water changes.
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
        /// The same with water changed by readings, for charts; none where that is not advised.
        #[serde(skip)]
        pub days_with_changes: Vec<DayRow>,
        /// your readings against the band of their day
        #[serde(skip_serializing_if = "Vec::is_empty")]
        pub readings: Vec<ReadingRow> => Spec,
        /// hazards, and limits of what was computed
        pub cautions: Vec<Caution> => Caution,
    }
}

impl StartupSection {
    /// "82 of 100 starts hold with changes by reading, 68 without".
    pub fn odds_in_words(&self) -> String {
        let as_written = of_100(self.odds_as_written);
        if self.members == 0 {
            let holds = if self.odds_as_written > 0.0 {
                "holds"
            } else {
                "does not hold"
            };
            return format!("the start with central numbers {holds}");
        }
        match (self.changes_by_reading, self.odds_with_changes) {
            (Some(_), Some(odds)) => format!(
                "{} of 100 starts hold with changes by reading, {as_written} without",
                of_100(odds)
            ),
            _ => format!("{as_written} of 100 starts hold"),
        }
    }
}

impl ReadingChanges {
    /// "about 8 changes (3 to 15), the last by day 50 in nine of ten starts".
    pub fn how_often(&self) -> String {
        let last = self.last_day.map_or_else(String::new, |day| {
            format!(", the last by day {day:.0} in nine of ten")
        });
        let expected = counted(self.expected, "change");
        if self.expected_high <= self.expected_low {
            format!("about {expected}{last}")
        } else {
            let (low, high) = (self.expected_low, self.expected_high);
            format!("about {expected} ({low:.0} to {high:.0}){last}")
        }
    }

    /// From the first test to the last change of nine starts in ten; none where these have
    /// no change.
    pub(super) fn stretch(&self) -> Option<ChangePlan> {
        Some(ChangePlan {
            from: self.least_days_between,
            until: self.last_day?,
            every_d: self.least_days_between,
            share_pct: self.share * 100.0,
        })
    }
}

/// A start for charts.
#[derive(Debug, Clone, Copy)]
pub struct Courses<'a> {
    /// Day by day, as the plan is written.
    pub as_written: &'a [DayRow],
    /// The same with water changed by readings; none where that is not advised.
    pub with_changes: &'a [DayRow],
    /// Its figures.
    pub section: &'a StartupSection,
    /// A keeper's readings.
    pub readings: &'a [ReadingRow],
}

impl Startup {
    /// The start for charts.
    pub fn courses(&self) -> Courses<'_> {
        Courses {
            as_written: &self.days,
            with_changes: &self.days_with_changes,
            section: &self.section,
            readings: &self.readings,
        }
    }

    /// The start in one or two sentences.
    pub fn summary(&self) -> String {
        let parts = [
            Some(self.section.odds_in_words()),
            Some(self.animals()),
            self.starvation(),
            self.outside(),
        ];
        let parts: Vec<String> = parts.into_iter().flatten().collect();
        parts.join("; ")
    }

    fn animals(&self) -> String {
        let reason = || self.section.ready_day_advised_reason.clone();
        match self.section.ready_day_advised {
            Some(day) => format!("animals from day {day:.0}, after two clean tests"),
            None => format!("no day for animals: {}", reason().unwrap_or_default()),
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
