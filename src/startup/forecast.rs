//! What an ensemble says: bands, shares over limits, and what drives the spread.

use rayon::prelude::*;

use super::ensemble::Member;
use super::trajectory::Sample;
use crate::numerics::correlation::Ranking;
use crate::numerics::quantile::{quantile, quantiles};
use crate::parameters::descriptions;
use crate::source::Band;

/// The shares that a band shows.
const LOW: f64 = 0.1;
const MIDDLE: f64 = 0.5;
const HIGH: f64 = 0.9;
/// Correlations weaker than this are left out: with 200 members chance alone gives
/// about 0.07.
const WEAKEST: f64 = 0.2;

/// One day of a forecast; amounts of plants and algae in g dry over the whole floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnsembleDay {
    /// Days since filling.
    pub day: f64,
    /// mg N/L.
    pub ammonia: Band,
    /// mg N/L.
    pub nitrite: Band,
    /// mg N/L.
    pub nitrate: Band,
    /// mg P/L.
    pub phosphate: Band,
    /// Floaters, g dry/m2.
    pub floating: Band,
    /// Growth that their store of phosphorus allows, as a share of full growth.
    pub floating_p_share: Band,
    /// Fast growers, g dry/m2.
    pub fast: Band,
    /// Slow growers, g dry/m2.
    pub slow: Band,
    /// Algae, g dry/m2.
    pub algae: Band,
    /// Released by the bed, g N/(m2 d).
    pub release: Band,
}

/// A largest value with its day, each as a band.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PeakBand {
    /// The value.
    pub value: Band,
    /// Days since filling.
    pub day: Band,
}

/// An ensemble in figures.
#[derive(Debug, Clone, PartialEq)]
pub struct Forecast {
    /// One for each whole day.
    pub days: Vec<EnsembleDay>,
    /// Highest ammonia from day 3 on, mg N/L.
    pub ammonia: PeakBand,
    /// Highest nitrite from day 3 on, mg N/L.
    pub nitrite: PeakBand,
    /// Highest nitrate, mg N/L.
    pub nitrate: PeakBand,
    /// Most alkalinity used at once, meq/L.
    pub alkalinity_used: PeakBand,
    /// Days on which light and nutrients in the water favour algae.
    pub algae_window_days: Band,
    /// The days after which ammonia and nitrite stay low, 10, 50 and 90 %; none where
    /// that share of the members is never ready.
    pub ready_day: [Option<f64>; 3],
    /// What drives the spread, strongest first for each result.
    pub drivers: Vec<Influence>,
}

/// How a number drives a result.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Influence {
    /// The number's name.
    pub number: &'static str,
    /// The result.
    pub on: Outcome,
    /// Spearman's rank correlation.
    pub rank_correlation: f64,
}

/// A result that numbers drive.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Outcome {
    /// Highest ammonia from day 3 on.
    AmmoniaPeak,
    /// Highest nitrite from day 3 on.
    NitritePeak,
    /// The day after which both stay low; never counts as later than any.
    ReadyDay,
}

impl Outcome {
    const ALL: [Self; 3] = [Self::AmmoniaPeak, Self::NitritePeak, Self::ReadyDay];

    fn of(self, member: &Member) -> f64 {
        match self {
            Self::AmmoniaPeak => member.ammonia.value,
            Self::NitritePeak => member.nitrite.value,
            Self::ReadyDay => member.ready_day.unwrap_or(f64::MAX),
        }
    }
}

impl Forecast {
    /// The figures of some members; none without any.
    pub fn of(members: &[Member]) -> Option<Self> {
        let first = members.first()?;
        let peak = |of: fn(&Member) -> super::Peak| PeakBand {
            value: band(members.iter().map(|member| of(member).value)),
            day: band(members.iter().map(|member| of(member).day)),
        };
        Some(Self {
            days: (0..first.days.len())
                .into_par_iter()
                .map(|day| a_day(members, day))
                .collect(),
            ammonia: peak(|member| member.ammonia),
            nitrite: peak(|member| member.nitrite),
            nitrate: peak(|member| member.nitrate),
            alkalinity_used: peak(|member| member.alkalinity_used),
            algae_window_days: band(members.iter().map(|member| member.algae_window_days)),
            ready_day: days(members, |member| member.ready_day),
            drivers: drivers(members),
        })
    }
}

/// Share of the members for which something holds.
pub fn share(members: &[Member], holds: impl Fn(&Member) -> bool) -> f64 {
    let count = members.iter().filter(|member| holds(member)).count();
    count as f64 / members.len().max(1) as f64
}

fn a_day(members: &[Member], day: usize) -> EnsembleDay {
    let of = |value: fn(&Sample) -> f64| {
        band(
            members
                .iter()
                .filter_map(|member| Some(value(member.days.get(day)?))),
        )
    };
    EnsembleDay {
        day: day as f64,
        ammonia: of(|sample| sample.state.ammonia),
        nitrite: of(|sample| sample.state.nitrite),
        nitrate: of(|sample| sample.state.nitrate),
        phosphate: of(|sample| sample.state.phosphate),
        floating: of(|sample| sample.state.floating),
        floating_p_share: of(|sample| sample.floating_p_share),
        fast: of(|sample| sample.state.fast),
        slow: of(|sample| sample.state.slow),
        algae: of(|sample| sample.state.algae),
        release: of(|sample| sample.release_g_m2_d),
    }
}

/// 10, 50 and 90 % of some numbers; zero without any.
fn band(values: impl Iterator<Item = f64>) -> Band {
    let [low, typical, high] = quantiles(values, [LOW, MIDDLE, HIGH]).unwrap_or_default();
    Band { low, typical, high }
}

/// 10, 50 and 90 % of the days on which something comes about in the members. Never counts as
/// later than any day; a share between a day and never is never.
pub fn days(members: &[Member], day: fn(&Member) -> Option<f64>) -> [Option<f64>; 3] {
    let last = members.iter().filter_map(day).fold(0.0, f64::max);
    // a finite stand-in, so that the difference of two of them is a number
    let mut days: Vec<f64> = members
        .iter()
        .map(|member| day(member).unwrap_or(f64::MAX))
        .collect();
    days.sort_by(f64::total_cmp);
    [LOW, MIDDLE, HIGH].map(|share| quantile(&days, share).filter(|day| *day <= last))
}

/// Every number that varies against every result that does.
fn drivers(members: &[Member]) -> Vec<Influence> {
    let numbers: Vec<(&str, Ranking)> = descriptions()
        .into_par_iter()
        .enumerate()
        .filter_map(|(place, description)| {
            let values = members
                .iter()
                .map(|member| member.numbers.get(place).copied());
            let values: Option<Vec<f64>> = values.collect();
            Some((description.name, Ranking::of(&values?)))
        })
        .collect();
    let on_result = |on: Outcome| {
        let results: Vec<f64> = members.iter().map(|member| on.of(member)).collect();
        let results = Ranking::of(&results);
        let influence = |(number, ranking): &(&'static str, Ranking)| {
            Some(Influence {
                number,
                on,
                rank_correlation: ranking.correlation(&results)?,
            })
        };
        let strength = |influence: &Influence| influence.rank_correlation.abs();
        let mut found: Vec<Influence> = numbers
            .iter()
            .filter_map(influence)
            .filter(|influence| strength(influence) >= WEAKEST)
            .collect();
        found.sort_by(|a, b| strength(b).total_cmp(&strength(a)));
        found
    };
    Outcome::ALL.into_iter().flat_map(on_result).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::startup::Peak;

    /// A member that is ready on a day and ranks by it.
    fn member(ready_day: Option<f64>) -> Member {
        let peak = Peak {
            value: ready_day.unwrap_or(99.0),
            day: 0.0,
        };
        Member {
            index: 0,
            numbers: vec![peak.value, 1.0, -peak.value],
            days: Vec::new(),
            ammonia: peak,
            nitrite: peak,
            nitrate: peak,
            alkalinity_used: peak,
            ready_day,
            hardy_ready_day: ready_day,
            algae_window_days: 0.0,
            changed_on: Vec::new(),
        }
    }

    fn ready_days(members: &[Member]) -> [Option<f64>; 3] {
        days(members, |member| member.ready_day)
    }

    #[test]
    fn members_that_are_never_ready_count_as_late() {
        let members: Vec<Member> = (0..11)
            .map(|day| member((day < 8).then(|| f64::from(day))))
            .collect();
        assert_eq!(ready_days(&members), [Some(1.0), Some(5.0), None]);
        assert_eq!(ready_days(&[member(None)]), [None; 3]);
        assert_eq!(ready_days(&[member(Some(3.0))]), [Some(3.0); 3]);
    }

    #[test]
    fn a_driver_is_told_with_its_direction_and_a_fixed_number_is_none() {
        let members: Vec<Member> = (0..9).map(|day| member(Some(f64::from(day)))).collect();
        let drivers = drivers(&members);
        assert_eq!(drivers.len(), 2 * Outcome::ALL.len());
        for pair in drivers.chunks(2) {
            assert!((pair[0].rank_correlation - 1.0).abs() < 1e-12);
            assert!((pair[1].rank_correlation + 1.0).abs() < 1e-12);
            assert_eq!(pair[0].number, descriptions()[0].name);
            assert_eq!(pair[1].number, descriptions()[2].name);
        }
    }
}
