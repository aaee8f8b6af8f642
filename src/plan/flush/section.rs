//! The start-up section of a plan and the whole result of a start-up run, named as in JSON.

use serde::Serialize;

use crate::finding::Action;
use crate::plan::estimate::Estimate;
use crate::source::Band;

/// How the first weeks go.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StartupSection {
    /// Days followed.
    pub days: u32,
    /// Members of the ensemble that were followed; 0 for the central numbers alone.
    pub members: u32,
    /// Members left out because their numbers could not be followed.
    pub members_lost: u32,
    /// What the ensemble was drawn with.
    pub seed: u64,
    /// Highest total ammonia from day 3 on, as nitrogen.
    pub ammonia_peak_mg_l: Estimate,
    /// Its day.
    pub ammonia_peak_day: Estimate,
    /// Highest nitrite from day 3 on, as NO2.
    pub nitrite_peak_mg_l: Estimate,
    /// Its day.
    pub nitrite_peak_day: Estimate,
    /// Highest nitrate, as NO3.
    pub nitrate_peak_mg_l: Estimate,
    /// Highest un-ionised ammonia from day 3 on, as nitrogen.
    pub un_ionised_peak_mg_l: Estimate,
    /// First day after which ammonia and nitrite stay low; none when never.
    pub ready_day: Option<Estimate>,
    /// Why there is no ready day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ready_day_reason: Option<String>,
    /// The late end of the ready days, not before the practice floor.
    pub ready_day_advised: Option<f64>,
    /// Days on which light and nutrients in the water favour algae.
    pub algae_window_days: Estimate,
    /// Share of the ensemble over each limit.
    pub share_over_limit: ShareOverLimit,
    /// The water changes that reach the probability asked for.
    pub water_change_plan: Vec<ChangePlan>,
    /// Share of the ensemble in which ammonia and nitrite stay under their limits with
    /// them; of its first members alone where that misses what was asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub probability_with_changes: Option<f64>,
    /// What to do on which day.
    pub calendar: Vec<CalendarEntry>,
}

/// Share of the ensemble that passes each limit from day 3 on, 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ShareOverLimit {
    /// Ammonia.
    pub ammonia: f64,
    /// Nitrite.
    pub nitrite: f64,
    /// Nitrate.
    pub nitrate: f64,
}

/// One stretch of regular water changes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ChangePlan {
    /// First day.
    pub from: f64,
    /// Last day.
    pub until: f64,
    /// Days between two changes.
    pub every_d: f64,
    /// Share of the water replaced.
    pub share_pct: f64,
}

/// Something to do on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CalendarEntry {
    /// Days since flooding; below zero before it.
    pub day: i32,
    /// The date, where the spec says when it starts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// What to do.
    #[serde(rename = "do")]
    pub what: String,
    /// The work that this is, from which its cautions follow.
    #[serde(skip)]
    pub actions: Vec<Action>,
}

/// The whole result of a start-up run.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Startup {
    /// What the keeper calls the tank.
    pub name: String,
    /// The same as in a plan.
    #[serde(flatten)]
    pub section: StartupSection,
    /// The numbers that drive the spread, strongest first.
    pub drivers: Vec<Driver>,
    /// The first day on which floaters lack phosphorus, where they do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub floaters_starve_from_day: Option<f64>,
    /// Share of the ensemble in which ammonia and nitrite stay under their limits.
    pub probability_under_limits: f64,
    /// One row a day; in place of the number of days in a plan.
    pub days: Vec<DayRow>,
    /// The keeper's readings against the band.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub readings: Vec<ReadingRow>,
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

/// A number that drives the spread.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Driver {
    /// The number's name: `soil.mineral_nitrogen`.
    pub parameter: &'static str,
    /// What it drives: `ammonia_peak_mg_l`.
    pub on: &'static str,
    /// Spearman's rank correlation.
    pub rank_correlation: f64,
}

/// The tank on a day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DayRow {
    /// Days since flooding.
    pub day: u32,
    /// Total ammonia, as nitrogen.
    pub ammonia_mg_l: Estimate,
    /// Nitrite, as NO2.
    pub nitrite_mg_l: Estimate,
    /// Nitrate, as NO3.
    pub nitrate_mg_l: Estimate,
    /// Phosphate, as phosphorus.
    pub phosphate_p_mg_l: Estimate,
    /// Fresh floaters.
    pub floating_g: Estimate,
    /// Fresh fast growers.
    pub fast_g: Estimate,
    /// Fresh slow growers.
    pub slow_g: Estimate,
    /// Dry algae.
    pub algae_g: Estimate,
    /// Ammonium nitrogen given off by the bed.
    pub release_mg_n_m2_d: Estimate,
}

/// A reading against the band of its day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ReadingRow {
    /// Days since flooding.
    pub day: f64,
    /// What was measured: `ammonia`.
    pub analyte: &'static str,
    /// The reading, on the scale of the band.
    pub value_mg_l: f64,
    /// The band of that day.
    pub band_mg_l: Band,
    /// `inside`, `above` or `below`.
    pub lies: &'static str,
}
