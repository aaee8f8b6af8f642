//! The tank under every cause, each many times over.

use std::collections::HashMap;

use rayon::prelude::*;

use super::case::CaseHistory;
use super::cause::{ByCause, Cause};
use super::measurement::{Measurand, Measurement};
use super::scenario::{dimensions, middle, scenario};
use crate::numerics::quantile::quantiles;
use crate::numerics::rodas::IntegrationError;
use crate::numerics::sobol::Sobol;
use crate::plan::Options;
use crate::source::Band;
use crate::startup::{DailyStates, ModelEvent, ModelEventKind, State, courses};
use crate::units::Concentration;

/// Days that a forecast looks ahead.
pub const AHEAD_D: u32 = 28;
/// A reading that is there already is advised again after so many days.
pub const NEXT_READING_D: f64 = 7.0;
/// A measurement is put in so long before its day, so that the day shows it.
const JUST_BEFORE_D: f64 = 1e-3;
/// Readings that count in full; more of them count as so many together, for they share
/// the same tank and the same kit (judgement).
const FULL_READINGS: f64 = 6.0;

/// Nitrogen in the water on one day, mg N/L.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Nitrogen {
    /// Ammonia.
    pub ammonia: f64,
    /// Nitrite.
    pub nitrite: f64,
    /// Nitrate.
    pub nitrate: f64,
}

impl Nitrogen {
    /// The amount of a subject in its own unit, where the model follows it.
    fn own_scale(&self, of: Measurand) -> Option<f64> {
        let nitrogen = match of {
            Measurand::Ammonia => self.ammonia,
            Measurand::Nitrite => self.nitrite,
            Measurand::Nitrate => self.nitrate,
            _ => return None,
        };
        let element = Concentration::from_mg_l(nitrogen);
        Some(of.analyte()?.from_element(element).mg_l())
    }
}

/// One course that the tank may have taken.
#[derive(Debug, Clone, PartialEq)]
pub struct PossibleCourse {
    /// Where its numbers were drawn.
    pub place: Vec<f64>,
    /// One for each whole day, beyond the last reading by as many as are looked ahead.
    pub days: Vec<Nitrogen>,
}

impl PossibleCourse {
    /// Follows a case under a cause with the numbers of a place, up to the next reading that
    /// may be asked for.
    ///
    /// # Errors
    /// When they leave the finite ones.
    pub fn follow(
        case: &CaseHistory<'_>,
        cause: Cause,
        place: Vec<f64>,
    ) -> Result<Self, IntegrationError> {
        let tank = scenario(case, cause, &place);
        let (course, _) = courses(&tank.inputs, &tank.numbers, last_day(case), &[]);
        Ok(Self::of(place, &course?))
    }

    /// Follows a case as [`follow`](Self::follow) for the weeks ahead, with the water on its
    /// last day as measured.
    ///
    /// # Errors
    /// As for [`follow`](Self::follow).
    pub fn follow_from_measured(
        case: &CaseHistory<'_>,
        cause: Cause,
        place: Vec<f64>,
    ) -> Result<Self, IntegrationError> {
        let mut tank = scenario(case, cause, &place);
        if cause != Cause::KitError {
            tank.inputs.events.push(ModelEvent {
                day: (case.now_d() - JUST_BEFORE_D).max(0.0),
                kind: ModelEventKind::Measured(case.measured()),
            });
        }
        let days = case.now_d().ceil() as u32 + AHEAD_D;
        let (course, _) = courses(&tank.inputs, &tank.numbers, days, &[]);
        Ok(Self::of(place, &course?))
    }

    fn of(place: Vec<f64>, course: &[State]) -> Self {
        let water = |state: &State| Nitrogen {
            ammonia: state.ammonia,
            nitrite: state.nitrite,
            nitrate: state.nitrate,
        };
        Self {
            place,
            days: course.iter().map(water).collect(),
        }
    }

    /// Follows a case under some causes at one place; those that only add to what happens to
    /// a sound tank share its past.
    fn follow_all(
        case: &CaseHistory<'_>,
        place: &[f64],
        causes: &[Cause],
    ) -> Vec<(Cause, DailyStates)> {
        let sound = scenario(case, Cause::AsExpected, place);
        let (mut later, mut turns, mut followed) = (Vec::new(), Vec::new(), Vec::new());
        for &cause in causes {
            let tank = scenario(case, cause, place);
            if let Some(turn) = tank.turned_from(&sound) {
                later.push(cause);
                turns.push(turn.to_vec());
            } else {
                let (own, _) = courses(&tank.inputs, &tank.numbers, last_day(case), &[]);
                followed.push((cause, own));
            }
        }
        let (_, turned) = courses(&sound.inputs, &sound.numbers, last_day(case), &turns);
        followed.extend(later.into_iter().zip(turned));
        followed
    }

    /// What a kit would meet on a day of the model's, straight between days.
    pub fn expected(&self, of: Measurand, day: f64) -> Option<f64> {
        let last = self.days.len().checked_sub(1)?;
        let before = (day.floor() as usize).min(last);
        let after = (before + 1).min(last);
        let (from, to) = (
            self.days[before].own_scale(of)?,
            self.days[after].own_scale(of)?,
        );
        Some(from + (to - from) * (day - before as f64).clamp(0.0, 1.0))
    }

    /// Logarithm of the probability of the readings that a course explains.
    pub fn log_likelihood(&self, case: &CaseHistory<'_>, readings: &[Measurement]) -> f64 {
        let count = readings.len() as f64;
        let weight = (FULL_READINGS / count.max(1.0)).min(1.0);
        let each = readings.iter().map(|reading| {
            let kit = case.kit(reading.of);
            let expected = self.expected(reading.of, case.model_day(reading.day));
            match (kit, expected) {
                (Some(kit), Some(expected)) => kit.probability(reading.value, expected).ln(),
                _ => 0.0,
            }
        });
        each.sum::<f64>() * weight
    }
}

/// The last day on which a cause is asked what a kit would show: that of the next reading.
fn last_day(case: &CaseHistory<'_>) -> u32 {
    (case.now_d() + NEXT_READING_D).ceil() as u32
}

/// Whether a cause shows in the water; the others share the course of a sound tank.
const fn shows_in_water(cause: Cause) -> bool {
    !matches!(
        cause,
        Cause::HardnessCreep
            | Cause::StillWater
            | Cause::NightExchange
            | Cause::KitError
            | Cause::NoneOfThese
    )
}

/// How many runs it takes to follow a case under every cause.
pub fn runs(options: Options) -> u64 {
    let causes = Cause::ALL.iter().filter(|cause| shows_in_water(**cause));
    causes.count() as u64 * u64::from(options.members.max(1))
}

/// The causes with the courses the tank would take under each.
#[derive(Debug, Clone)]
pub struct Hypotheses {
    members: HashMap<Cause, Vec<PossibleCourse>>,
}

impl Hypotheses {
    /// Follows a case under every cause; without members the central numbers alone.
    ///
    /// # Errors
    /// When not even one course of a sound tank can be followed.
    pub fn of(case: &CaseHistory<'_>, options: Options) -> Result<Self, IntegrationError> {
        Self::with_progress(case, options, &|_| {})
    }

    /// As [`of`](Self::of); `advance` is told of each run that is done, from any thread.
    ///
    /// # Errors
    /// As for [`of`](Self::of).
    pub fn with_progress(
        case: &CaseHistory<'_>,
        options: Options,
        advance: &(dyn Fn(u64) + Sync),
    ) -> Result<Self, IntegrationError> {
        let causes: Vec<Cause> = Cause::ALL
            .iter()
            .copied()
            .filter(|cause| shows_in_water(*cause))
            .collect();
        let followed: Vec<Vec<(Cause, PossibleCourse)>> = places(options)
            .into_par_iter()
            .map(|place| {
                let courses = PossibleCourse::follow_all(case, &place, &causes);
                advance(courses.len() as u64);
                let courses = courses.into_iter();
                courses
                    .filter_map(|(cause, course)| {
                        Some((cause, PossibleCourse::of(place.clone(), &course.ok()?)))
                    })
                    .collect()
            })
            .collect();
        let mut members: HashMap<Cause, Vec<PossibleCourse>> = HashMap::new();
        for (cause, member) in followed.into_iter().flatten() {
            members.entry(cause).or_default().push(member);
        }
        if members.contains_key(&Cause::AsExpected) {
            Ok(Self { members })
        } else {
            Err(IntegrationError::NotFinite { time: 0.0 })
        }
    }

    /// The courses under a cause.
    pub fn members(&self, cause: Cause) -> &[PossibleCourse] {
        let own = self.members.get(&cause);
        let sound = || self.members.get(&Cause::AsExpected);
        own.or_else(sound).map_or(&[], Vec::as_slice)
    }

    /// Mean probability of some readings under each cause.
    pub fn likelihood(&self, case: &CaseHistory<'_>, readings: &[Measurement]) -> ByCause {
        let plain = ByCause::of(|cause| mean_likelihood(self.members(cause), case, readings));
        let wrong = self.likelihood_of_wrong_kit(case, readings);
        ByCause::of(|cause| match cause {
            Cause::KitError => wrong,
            _ => plain.get(cause),
        })
    }

    /// Mean probability where one of the kits shows anything at all.
    fn likelihood_of_wrong_kit(&self, case: &CaseHistory<'_>, readings: &[Measurement]) -> f64 {
        let subjects = subjects_of(readings);
        let mut sum = 0.0;
        for wrong in &subjects {
            let (by_wrong, others): (Vec<_>, Vec<_>) =
                readings.iter().copied().partition(|r| r.of == *wrong);
            let at_random: f64 = by_wrong
                .iter()
                .filter_map(|reading| case.kit(reading.of))
                .map(|kit| kit.at_random())
                .product();
            let sound = self.members(Cause::AsExpected);
            sum += at_random * mean_likelihood(sound, case, &others);
        }
        if subjects.is_empty() {
            1.0
        } else {
            sum / subjects.len() as f64
        }
    }

    /// What a kit would meet under a cause on a day of the model's: 10, 50 and 90 %.
    pub fn band(&self, cause: Cause, of: Measurand, day: f64) -> Option<Band> {
        let members = self.members(cause).iter();
        let expected = members.filter_map(|member| member.expected(of, day));
        let [low, typical, high] = quantiles(expected, [0.1, 0.5, 0.9])?;
        Some(Band::new(low, typical, high))
    }
}

/// The nutrients measured that the model follows.
pub fn subjects_of(readings: &[Measurement]) -> Vec<Measurand> {
    let mut subjects: Vec<Measurand> = readings.iter().map(|reading| reading.of).collect();
    subjects.sort_unstable();
    subjects.dedup();
    subjects
}

fn mean_likelihood(
    members: &[PossibleCourse],
    case: &CaseHistory<'_>,
    readings: &[Measurement],
) -> f64 {
    let sum: f64 = members
        .iter()
        .map(|member| member.log_likelihood(case, readings).exp())
        .sum();
    sum / members.len().max(1) as f64
}

fn places(options: Options) -> Vec<Vec<f64>> {
    let points = Sobol::new(options.seed);
    let place = |index: u32| {
        (0..dimensions() as u32)
            .map(|dimension| points.coordinate(index, dimension))
            .collect()
    };
    match options.members {
        0 => vec![middle()],
        members => (0..members).map(place).collect(),
    }
}

/// Readings of one nutrient that are weighed at most; of more, as many evenly spread.
pub const MOST_WEIGHED: usize = 60;

/// The readings of a case that are weighed: those that the model follows, of a long log
/// so many of each nutrient, evenly spread and with the last.
pub fn followed(case: &CaseHistory<'_>) -> Vec<Measurement> {
    let log: Vec<Measurement> = case
        .log
        .iter()
        .copied()
        .filter(|reading| case.kit(reading.of).is_some())
        .collect();
    subjects_of(&log)
        .into_iter()
        .flat_map(|of| {
            spread(
                log.iter()
                    .copied()
                    .filter(|reading| reading.of == of)
                    .collect(),
            )
        })
        .collect()
}

fn spread(own: Vec<Measurement>) -> Vec<Measurement> {
    let count = own.len();
    if count <= MOST_WEIGHED {
        return own;
    }
    (1..=MOST_WEIGHED)
        .map(|place| own[place * count / MOST_WEIGHED - 1])
        .collect()
}
