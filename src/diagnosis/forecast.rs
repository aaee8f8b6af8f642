//! What becomes of the water in the next weeks if nothing is done.

use std::ops::RangeInclusive;

use serde::Serialize;

use super::case::CaseHistory;
use super::hypotheses::{AHEAD_D, Nitrogen, PossibleCourse};
use super::measurement::Measurand;
use crate::result::results;
use crate::source::Band;
use crate::startup::limits::{READY_AMMONIA_MG_N_L, READY_NITRITE_MG_N_L};
use crate::units::{Analyte, Concentration};

/// Shares that a band shows.
const SHARES: [f64; 3] = [0.1, 0.5, 0.9];

results! {
    /// One day ahead.
    #[derive(Debug, Clone, Copy, PartialEq, Serialize)]
    pub struct ForecastDay {
        /// days after flooding
        pub day: f64 => Count,
        /// total ammonia on the day, as nitrogen
        pub ammonia_mg_l: Band => "flush.ammonia" by Members,
        /// nitrite on the day, as NO2
        pub nitrite_mg_l: Band => "flush.nitrite" by Members,
        /// nitrate on the day, as NO3
        pub nitrate_mg_l: Band => "flush.nitrate" by Members,
    }
}

/// A nutrient on a day, as it was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadPoint {
    /// Days after flooding.
    pub day: f64,
    /// Which.
    pub analyte: Analyte,
    /// How much, on its own scale.
    pub mg_l: f64,
}

/// The nutrients that were read.
pub fn read(case: &CaseHistory<'_>) -> Vec<ReadPoint> {
    let points = case.log.iter().filter_map(|measured| {
        let analyte = match measured.of {
            Measurand::Ammonia => Analyte::Ammonia,
            Measurand::Nitrite => Analyte::Nitrite,
            Measurand::Nitrate => Analyte::Nitrate,
            _ => return None,
        };
        Some(ReadPoint {
            day: measured.day,
            analyte,
            mg_l: measured.value.number(),
        })
    });
    points.collect()
}

/// The weeks ahead, from today on.
pub fn days(case: &CaseHistory<'_>, members: &[(f64, PossibleCourse)]) -> Vec<ForecastDay> {
    let today = case.now_d().round() as usize;
    between(case, members, today..=today + AHEAD_D as usize)
}

/// As many days before today as ahead of it.
pub fn past(case: &CaseHistory<'_>, members: &[(f64, PossibleCourse)]) -> Vec<ForecastDay> {
    let today = case.now_d().round() as usize;
    between(
        case,
        members,
        today.saturating_sub(AHEAD_D as usize)..=today,
    )
}

fn between(
    case: &CaseHistory<'_>,
    members: &[(f64, PossibleCourse)],
    days: RangeInclusive<usize>,
) -> Vec<ForecastDay> {
    days.filter_map(|day| {
        let of = |analyte: Analyte, nitrogen: fn(&Nitrogen) -> f64| {
            let own = move |water: &Nitrogen| {
                analyte
                    .from_element(Concentration::from_mg_l(nitrogen(water).max(0.0)))
                    .mg_l()
            };
            let values = members
                .iter()
                .filter_map(|(weight, member)| Some((own(member.days.get(day)?), *weight)));
            band(values.collect())
        };
        Some(ForecastDay {
            day: case.keeper_day(day as f64),
            ammonia_mg_l: of(Analyte::Ammonia, |water| water.ammonia)?,
            nitrite_mg_l: of(Analyte::Nitrite, |water| water.nitrite)?,
            nitrate_mg_l: of(Analyte::Nitrate, |water| water.nitrate)?,
        })
    })
    .collect()
}

/// The day from which ammonia and nitrite stay low, as a band; none where its middle is
/// beyond the days followed.
pub fn ready_day(case: &CaseHistory<'_>, members: &[(f64, PossibleCourse)]) -> Option<Band> {
    let today = case.now_d().round() as usize;
    let last = today + AHEAD_D as usize;
    let up = |water: &Nitrogen| {
        water.ammonia >= READY_AMMONIA_MG_N_L || water.nitrite >= READY_NITRITE_MG_N_L
    };
    let days = members.iter().map(|(weight, member)| {
        let ahead = member.days.iter().enumerate().skip(today);
        let last_up = ahead
            .filter(|(_, water)| up(water))
            .map(|(day, _)| day)
            .max();
        let ready = last_up.map_or(today, |day| day + 1);
        (ready as f64, *weight)
    });
    let band = band(days.collect())?;
    (band.typical <= last as f64).then(|| {
        Band::new(
            case.keeper_day(band.low),
            case.keeper_day(band.typical),
            case.keeper_day(band.high.min(last as f64)),
        )
    })
}

/// Weighted 10, 50 and 90 %.
fn band(mut values: Vec<(f64, f64)>) -> Option<Band> {
    values.retain(|(value, weight)| value.is_finite() && *weight > 0.0);
    values.sort_by(|a, b| a.0.total_cmp(&b.0));
    let whole: f64 = values.iter().map(|(_, weight)| weight).sum();
    let last = values.last()?.0;
    let [low, typical, high] = SHARES.map(|share| {
        let mut sum = 0.0;
        let at = values.iter().find(|(_, weight)| {
            sum += weight;
            sum >= share * whole
        });
        at.map_or(last, |(value, _)| *value)
    });
    Some(Band::new(low, typical, high))
}

#[cfg(test)]
#[allow(clippy::float_cmp, reason = "these results must be exact")]
mod tests {
    use super::band;
    use crate::source::Band;

    #[test]
    fn a_band_goes_by_weight_and_not_by_count() {
        let values = vec![(1.0, 0.05), (2.0, 0.60), (9.0, 0.05), (3.0, 0.30)];
        assert_eq!(band(values), Some(Band::new(2.0, 2.0, 3.0)));
        assert_eq!(band(Vec::new()), None);
    }
}
